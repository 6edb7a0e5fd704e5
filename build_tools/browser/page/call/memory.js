/**
 * A call in the browser's storage, so that a locked phone loses nothing. Where storage is refused,
 * the call lives as long as its page.
 *
 * @typedef {object} CallState
 * @property {string} begun  when, as in 2026-11-25T14:30:00.000Z
 * @property {Record<string, string>} kept  fields that are no answers: words, unit, water
 * @property {Record<string, string>} answers  by check: a result, "not sure" or "not done"
 * @property {string[]} unsure  checks whose result was not seen well
 * @property {Record<string, Record<string, string>>} numbers  by check: texts as typed
 * @property {string[]} dangers  what was found that ends the work
 * @property {string[]} excluded  causes that a repair has not cured
 * @property {Record<string, string>} record  the texts of the visit record
 */

/** @returns {CallState} */
export function newCall() {
  return { begun: new Date().toISOString(), kept: {}, answers: {}, unsure: [], numbers: {}, dangers: [], excluded: [], record: {} };
}

export class CallMemory {
  #key;

  /** @param {string} site  address of the site, as several may share a host */
  constructor(site) {
    this.#key = `call in ${new URL(site).pathname}`;
  }

  /** @returns {CallState}  what was kept; a new call where nothing was, or nothing readable */
  recall() {
    const fresh = newCall();
    try {
      const kept = JSON.parse(localStorage.getItem(this.#key) ?? "{}");
      for (const [name, value] of Object.entries(fresh)) {
        if (typeof kept[name] === typeof value && Array.isArray(kept[name]) === Array.isArray(value) && kept[name]) {
          /** @type {any} */ (fresh)[name] = kept[name];
        }
      }
    } catch {
      // Refused, or damaged: begin anew.
    }
    return fresh;
  }

  /** @param {CallState} state @returns {boolean}  whether it is kept */
  keep(state) {
    try {
      localStorage.setItem(this.#key, JSON.stringify(state));
      return true;
    } catch {
      return false;
    }
  }

  forget() {
    try {
      localStorage.removeItem(this.#key);
    } catch {
      // Nothing was kept.
    }
  }
}
