/**
 * Fetches the large parts of the runtime: small on the way, and fast on the next visit.
 *
 * A part is looked for in the browser's storage first, where it lies decoded. A host that
 * compresses what it serves sends it so; from any other host its gzip twin is fetched instead.
 */

const STORE = "runtime parts";

const MEDIA_TYPES = {
  wasm: "application/wasm",
  bin: "application/octet-stream",
  zip: "application/zip",
};

/** What was fetched and is yet to be stored. @type {Map<string, Response>} */
const toStore = new Map();

/**
 * @param {string} url
 * @returns {Promise<Response>}
 */
export async function runtimePart(url) {
  return (await stored(url)) ?? fetchPart(url);
}

/**
 * The same for a worker that calls storeParts afterwards: what is fetched waits for that.
 *
 * @param {string} url
 * @returns {Promise<Response>}
 */
export async function partToStore(url) {
  const kept = await stored(url);
  if (kept) {
    return kept;
  }
  const response = await fetchPart(url);
  toStore.set(url, response.clone());
  return response;
}

/**
 * Puts the parts that were fetched, and smaller files used with them, into the browser's storage,
 * and takes older ones out.
 *
 * @param {string} runtime  address of the folder of all runtimes of the site
 * @param {string[]} urls  everything that shall be there
 */
export async function storeParts(runtime, urls) {
  try {
    const store = await caches.open(STORE);
    for (const url of urls) {
      if (!(await caches.match(url))) {
        await store.put(url, toStore.get(url) ?? (await fetched(url, { cache: "force-cache" })));
      }
    }
    for (const { url } of await store.keys()) {
      if (url.startsWith(runtime) && !urls.includes(url)) {
        await store.delete(url);
      }
    }
  } catch {
    // Storage is refused or full: the next visit asks the host again.
  }
  toStore.clear();
}

/** Forgets every stored part, as one of them may be damaged. */
export async function forgetParts() {
  try {
    await caches.delete(STORE);
  } catch {
    // Where storage is refused, nothing is stored.
  }
}

/** @param {string} url */
async function stored(url) {
  try {
    return await caches.match(url);
  } catch {
    return undefined;
  }
}

/** @param {string} url */
async function fetchPart(url) {
  const response = await fetched(url);
  if (response.headers.has("Content-Encoding")) {
    return response;
  }
  await response.body?.cancel();
  const twin = await fetched(`${url}.gz`);
  // Some hosts take the ending for an encoding; what they send arrives decoded.
  const body = twin.headers.has("Content-Encoding")
    ? twin.body
    : twin.body?.pipeThrough(new DecompressionStream("gzip"));
  const ending = /** @type {keyof typeof MEDIA_TYPES} */ (url.split(".").at(-1));
  return new Response(body, { headers: { "Content-Type": MEDIA_TYPES[ending] } });
}

/**
 * @param {string} url
 * @param {RequestInit} [options]
 */
export async function fetched(url, options) {
  const response = await fetch(url, options);
  if (!response.ok) {
    throw new Error(`the file ${url.split("/").at(-1)} is not there (${response.status})`);
  }
  return response;
}
