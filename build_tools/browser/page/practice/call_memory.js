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
import { keepText, recalledState } from "../storage.js";

const KEY = "handbook-practice-call";

/** @returns {Kept} */
export function nothingKept() {
  return { code: "", moves: [], typed: {}, parts: [], recorded: false };
}

/** @returns {Kept}  what was kept; nothing where it cannot be read */
export function recall() {
  return recalledState(KEY, nothingKept());
}

/** @param {Kept} kept @returns {boolean}  whether it is kept */
export function keep(kept) {
  return keepText(KEY, JSON.stringify(kept));
}
