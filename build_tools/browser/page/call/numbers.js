/**
 * Numbers that are typed at a check: what is wrong with them, and the result that they show.
 *
 * @typedef {{result: string | null, problems: Record<string, string>, sentence: string}} Read  see
 *   calculators/diagnosis/numbers.py
 */
import { fields, part } from "../element.js";
import { markWrong, tellBeside } from "../telling.js";
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
  for (const input of fields(block, "[data-numbers] input")) {
    // A field that nobody has come to yet is no problem.
    const sentence = (input.value.trim() && read.problems[input.name]) || "";
    tellBeside(/** @type {HTMLElement} */ (input.nextElementSibling), sentence);
    markWrong(input, Boolean(sentence));
  }
  const told = part(block, "read");
  told.textContent = read.sentence;
  const radio = read.result && block.querySelector(`input[type=radio][value="${CSS.escape(read.result)}"]`);
  if (!(radio instanceof HTMLInputElement)) {
    return false;
  }
  radio.checked = true;
  told.textContent = say("This shows: {answer}.", { answer: answerIn(block, String(read.result)) });
  return true;
}
