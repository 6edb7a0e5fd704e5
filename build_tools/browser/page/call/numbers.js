/**
 * Numbers that are typed at a check: what is wrong with them, and the result that they show.
 *
 * @typedef {{result: string | null, problems: Record<string, string>, sentence: string}} Read  see
 *   calculators/diagnosis/numbers.py
 */
import { answerIn } from "./record.js";
import { say } from "../words.js";

/** @type {Read} */
export const NOTHING_READ = { result: null, problems: {}, sentence: "" };

/** @param {Record<string, string>} texts */
export function isEmpty(texts) {
  return Object.values(texts).every((text) => !text.trim());
}

/**
 * @param {HTMLElement} block  of the check
 * @param {Read} read
 * @returns {boolean}  whether there is a result; it is then chosen
 */
export function showRead(block, read) {
  for (const field of block.querySelectorAll("[data-numbers] input")) {
    const input = /** @type {HTMLInputElement} */ (field);
    // A field that nobody has come to yet is no problem.
    const sentence = (input.value.trim() && read.problems[input.name]) || "";
    const problem = /** @type {HTMLElement} */ (input.nextElementSibling);
    problem.textContent = sentence;
    problem.hidden = !sentence;
    if (sentence) {
      input.setAttribute("aria-invalid", "true");
    } else {
      input.removeAttribute("aria-invalid");
    }
  }
  const told = /** @type {HTMLElement} */ (block.querySelector("[data-part=read]"));
  told.textContent = read.sentence;
  const radio = read.result && block.querySelector(`input[type=radio][value="${CSS.escape(read.result)}"]`);
  if (!(radio instanceof HTMLInputElement)) {
    return false;
  }
  radio.checked = true;
  told.textContent = say("This shows: {answer}.", { answer: answerIn(block, String(read.result)) });
  return true;
}
