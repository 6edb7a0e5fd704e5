/**
 * The complaints that a customer's words may mean, each a button.
 */
import { element, part } from "../element.js";
import { answerIn } from "./record.js";
import { say } from "../words.js";

/**
 * @param {HTMLElement} section  the call
 * @param {string} words
 * @param {{complaint: string, heard: string}[]} found  see calculators/diagnosis/heard.py
 */
export function showComplaints(section, words, found) {
  const block = /** @type {HTMLElement} */ (section.querySelector("[data-check=complaint]"));
  const buttons = found.map(({ complaint, heard }) => {
    const nearest = element("small", {}, heard && ` as in “${heard}”`);
    const button = element("button", { type: "button", className: "call__button" }, answerIn(block, complaint), nearest);
    button.dataset.action = "complaint";
    button.dataset.complaint = complaint;
    return button;
  });
  const nothing = say("No complaint is known by these words: choose from the list.");
  part(section, "heard").replaceChildren(...buttons, ...(words.trim() && !found.length ? [element("p", {}, nothing)] : []));
}
