/**
 * Editions of one site: which one is out, and which one this phone keeps. A kept edition is one
 * cache, named by its date and id; a note beside them tells which of them is whole.
 *
 * @typedef {{id: string, date: string, size: number}} Edition
 */

const SECONDS_TO_WAIT = 5;
const OPEN_PAGE = "open page of ";

export class Editions {
  #site;
  #names;

  /** @param {string} site  address of the site */
  constructor(site) {
    this.#site = site;
    this.#names = `edition in ${new URL(site).pathname} of `;
  }

  /** @returns {Promise<Edition | null>}  the one that is out; null without a network */
  async out() {
    try {
      const signal = AbortSignal.timeout(SECONDS_TO_WAIT * 1000);
      const address = new URL("edition.json", this.#site);
      const response = await fetch(address, { cache: "no-store", signal });
      return response.ok ? await response.json() : null;
    } catch {
      return null;
    }
  }

  /** @returns {Promise<{id: string, date: string} | null>}  the one that is here as a whole */
  async kept() {
    try {
      const noted = await caches.match(this.#note, { cacheName: "kept editions" });
      const [date, id] = noted ? (await noted.text()).slice(this.#names.length).split(" ") : [];
      return id ? { id, date } : null;
    } catch {
      return null;
    }
  }

  /**
   * @param {Edition} edition
   * @returns {string}  the name of its cache
   */
  cacheOf({ id, date }) {
    return `${this.#names}${date} ${id}`;
  }

  /** @param {Edition} edition  whose cache is whole: see service_worker.js, which reads the note */
  async noteKept(edition) {
    const notes = await caches.open("kept editions");
    await notes.put(this.#note, new Response(this.cacheOf(edition)));
  }

  /** Takes a kept edition, and what was begun of another, off the phone. */
  async remove() {
    await (await caches.open("kept editions")).delete(this.#note);
    await this.#removeWhere(() => true);
  }

  /**
   * Removes editions older than the kept one, unless a page of one is still open somewhere: it may
   * yet need a script of its own edition.
   *
   * @param {string} date  of the page that asks
   */
  async removeOlder(date) {
    navigator.locks?.request(OPEN_PAGE + date, { mode: "shared" }, () => new Promise(() => {}));
    const kept = await this.kept();
    const { held = [] } = (await navigator.locks?.query()) ?? {};
    const isOldOneOpen = held.some(
      ({ name }) => name?.startsWith(OPEN_PAGE) && name < OPEN_PAGE + date,
    );
    if (kept?.date === date && !isOldOneOpen) {
      await this.#removeWhere((name) => name < this.#names + date);
    }
  }

  get #note() {
    return new URL("kept-edition", this.#site).href;
  }

  /** @param {(name: string) => boolean} isToGo */
  async #removeWhere(isToGo) {
    for (const name of await caches.keys()) {
      if (name.startsWith(this.#names) && isToGo(name)) {
        await caches.delete(name);
      }
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
