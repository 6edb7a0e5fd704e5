/**
 * The practice call in the browser's storage: its code and moves, from which Python makes the same
 * call again, and what is typed but not sent yet.
 *
 * @typedef {object} Kept
 * @property {string} code  "" where no call was begun
 * @property {object[]} moves  as calculators/practice/moves.py reads them
 * @property {Record<string, string>} typed  by field
 * @property {string[]} parts  ticked for the next repair
 * @property {boolean} recorded  whether the finished call is in the learner's record
 */

export const KEY = "handbook-practice-call";

/** @returns {Kept} */
export function nothingKept() {
  return { code: "", moves: [], typed: {}, parts: [], recorded: false };
}

/** @returns {Kept}  what was kept; nothing where it cannot be read */
export function recall() {
  const fresh = nothingKept();
  try {
    const kept = JSON.parse(localStorage.getItem(KEY) ?? "{}");
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

/** @param {Kept} kept @returns {boolean}  whether it is kept */
export function keep(kept) {
  try {
    localStorage.setItem(KEY, JSON.stringify(kept));
    return true;
  } catch {
    return false;
  }
}
