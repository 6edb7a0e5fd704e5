/**
 * Editions: which one is out, and which one this phone keeps. A kept edition is one cache, named
 * by its date and id; a note in the cache "handbook" tells which cache is whole.
 *
 * @typedef {{id: string, date: string, size: number}} Edition
 */

const SECONDS_TO_WAIT = 5;
const START_OF_NAME = "edition ";
const OPEN_PAGE = "open page of ";

/**
 * @param {string} site
 * @returns {Promise<Edition | null>}  null without a network
 */
export async function editionOut(site) {
  try {
    const signal = AbortSignal.timeout(SECONDS_TO_WAIT * 1000);
    const response = await fetch(new URL("edition.json", site), { cache: "no-store", signal });
    return response.ok ? await response.json() : null;
  } catch {
    return null;
  }
}

/** @param {Edition} edition */
export function cacheOf({ id, date }) {
  return `${START_OF_NAME}${date} ${id}`;
}

/** @returns {Promise<{id: string, date: string} | null>}  the edition that is here as a whole */
export async function keptEdition() {
  try {
    const noted = await (await caches.open("handbook")).match("kept");
    const [, date, id] = noted ? (await noted.text()).split(" ") : [];
    return id ? { id, date } : null;
  } catch {
    return null;
  }
}

/** @param {Edition} edition  whose cache is whole */
export async function noteKept(edition) {
  await (await caches.open("handbook")).put("kept", new Response(cacheOf(edition)));
}

/** Takes a kept edition, and what was begun of another, off the phone. */
export async function removeEditions() {
  await caches.delete("handbook");
  await removeWhere(() => true);
}

/**
 * Removes editions older than the kept one, unless a page of one is still open somewhere: it may
 * yet need a script of its own edition.
 *
 * @param {string} date  of the page that asks
 */
export async function removeOlderEditions(date) {
  holdWhileOpen(date);
  const kept = await keptEdition();
  const { held = [] } = (await navigator.locks?.query()) ?? {};
  const isOldOneOpen = held.some(({ name }) => name?.startsWith(OPEN_PAGE) && name < OPEN_PAGE + date);
  if (kept?.date === date && !isOldOneOpen) {
    await removeWhere((name) => name < START_OF_NAME + date);
  }
}

/** @param {string} date */
function holdWhileOpen(date) {
  navigator.locks?.request(OPEN_PAGE + date, { mode: "shared" }, () => new Promise(() => {}));
}

/** @param {(name: string) => boolean} isToGo */
async function removeWhere(isToGo) {
  for (const name of await caches.keys()) {
    if (name.startsWith(START_OF_NAME) && isToGo(name)) {
      await caches.delete(name);
    }
  }
}

/** @param {string} date  as 2026-11-25 */
export function inWords(date) {
  const format = new Intl.DateTimeFormat(document.documentElement.lang, {
    dateStyle: "long",
    timeZone: "UTC",
  });
  return format.format(new Date(date));
}
