/**
 * The moves of a practice call that its buttons and links ask for, as calculators/practice/moves.py
 * reads them, where a problem with each is told, and what comes next.
 *
 * @typedef {{move: any, place?: string}} Asked  place: a part of the page; the bar where there is none
 */
import { marked } from "../words.js";

/** What comes next, by its name in what Python shows: the words of the bar's button, and where it leads. */
export const NEXT = /** @type {Record<string, [string, string]>} */ ({
  search: [marked("Name the cause"), "#name-the-cause"],
  repair: [marked("Repair it"), "#repair"],
  prove: [marked("Prove it"), "#prove"],
  tell: [marked("Tell the customer"), "#tell-the-customer"],
  over: [marked("Read the debrief"), "[data-part=debrief]"],
});

/** Where problems are told beside what was typed; "code-problem" is that of a call's code. */
export const PROBLEMS = ["code-problem", "name-problem", "confidence-problem", "remedy-problem", "proof-problem", "text-problem"];

/**
 * @param {HTMLElement} pressed  a button
 * @param {import("./call_memory.js").Kept} kept
 * @returns {Asked}
 */
export function moveOf(pressed, { typed, parts }) {
  const { action } = pressed.dataset;
  switch (action) {
    case "check": {
      const block = /** @type {HTMLElement} */ (pressed.closest("[data-check]"));
      return { move: { do: "check", check: block.dataset.check } };
    }
    case "name": {
      const { cause, second, confidence } = typed;
      return { move: { do: "name", cause, second: second || null, confidence: percent(confidence) }, place: "name-problem" };
    }
    case "remedy":
      return { move: { do: "remedy", remedy: typed.remedy, parts }, place: "remedy-problem" };
    case "prove":
      return { move: { do: "prove", check: typed.proof }, place: "proof-problem" };
    case "tell":
      return { move: { do: "tell", text: typed.text ?? "" }, place: "text-problem" };
    default:
      return { move: { do: action } };
  }
}

/** @param {Element} link  that is followed while a call goes on @returns {Asked} */
export function lookUpOf(link) {
  return { move: { do: "look-up", page: String(link.getAttribute("href")) } };
}

/** @param {string | undefined} text  such as "80", "80 %" or "80,5" @returns {number | string}  the text itself where it is no number */
function percent(text) {
  const plain = (text ?? "").replace("%", "").replace(",", ".").trim();
  return plain && Number.isFinite(Number(plain)) ? Number(plain) : plain;
}
