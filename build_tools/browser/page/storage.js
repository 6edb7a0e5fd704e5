/**
 * The browser's storage for this site. It may be refused, or hold what another edition or a person
 * put there: then what a page keeps lives as long as the page.
 */

/** @param {string} key @returns {string}  "" where nothing is kept */
export function recalledText(key) {
  try {
    return localStorage.getItem(key) ?? "";
  } catch {
    return "";
  }
}

/** @param {string} key @param {string} text @returns {boolean}  whether it is kept */
export function keepText(key, text) {
  try {
    localStorage.setItem(key, text);
    return true;
  } catch {
    return false;
  }
}

/** @param {string} key */
export function forgetText(key) {
  try {
    localStorage.removeItem(key);
  } catch {
    // Nothing was kept.
  }
}

/**
 * @template {object} State
 * @param {string} key  under which a state is kept as JSON
 * @param {State} fresh  a new state
 * @returns {State}  the same with whatever was kept of its kind
 */
export function recalledState(key, fresh) {
  try {
    const kept = JSON.parse(recalledText(key) || "{}");
    for (const [name, value] of Object.entries(fresh)) {
      if (typeof kept[name] === typeof value && Array.isArray(kept[name]) === Array.isArray(value) && kept[name]) {
        /** @type {any} */ (fresh)[name] = kept[name];
      }
    }
  } catch {
    // Damaged: begin anew.
  }
  return fresh;
}
