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

/** The parts that the host sent uncompressed, and whose twins came instead. */
const twins = new Set();

/**
 * @param {string} url
 * @returns {Promise<Response>}
 */
export async function part(url) {
  const kept = await stored(url);
  if (kept) {
    return kept;
  }
  const response = await fetched(url);
  if (response.headers.has("Content-Encoding")) {
    return response;
  }
  await response.body?.cancel();
  twins.add(url);
  return twinOf(url);
}

/**
 * Puts parts that were fetched into the browser's storage, and takes older ones out. They come
 * from the browser's own cache, so this asks no network; where that fails, nothing is stored.
 *
 * @param {string} runtime  address of the folder of all runtimes of the site
 * @param {string[]} urls
 */
export async function storeParts(runtime, urls) {
  const options = /** @type {RequestInit} */ ({ cache: "only-if-cached", mode: "same-origin" });
  try {
    const store = await caches.open(STORE);
    for (const url of urls) {
      if (!(await caches.match(url))) {
        await store.put(url, await (twins.has(url) ? twinOf(url, options) : fetched(url, options)));
      }
    }
    for (const { url } of await store.keys()) {
      if (url.startsWith(runtime) && !urls.includes(url)) {
        await store.delete(url);
      }
    }
  } catch {
    // Storage is refused or full, or nothing was cached: the next visit asks the host again.
  }
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

/**
 * Fetches the gzip twin of a part and decodes it.
 *
 * @param {string} url
 * @param {RequestInit} [options]
 */
async function twinOf(url, options) {
  const twin = await fetched(`${url}.gz`, options);
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
