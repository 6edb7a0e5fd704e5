/**
 * Which check comes next, and what has to come before a check.
 */
import { elements, part } from "../element.js";
import { tellBeside } from "../telling.js";
import { say } from "../words.js";

/**
 * @param {any} picture  see calculators/diagnosis/picture.py; null before the first one
 * @returns {{check: string | undefined, word: string}}  the check to make now, if there is one
 */
export function following(picture) {
  const { next, stop } = picture ?? {};
  if (stop?.why === "found" && !stop.proved && stop.prove.length) {
    return { check: stop.prove[0], word: say("Prove it") };
  }
  const goesOn = !stop || stop.why === "nothing more to learn";
  return { check: goesOn ? next?.check : undefined, word: say("Next") };
}

/**
 * Says beside each check what has to come before it.
 *
 * @param {HTMLElement} section  the call
 * @param {{locked: Record<string, string[]>, waiting: Record<string, {check: string}[]>}} picture
 */
export function showNotes(section, { locked, waiting }) {
  const titles = (/** @type {string[]} */ checks) => checks.map((check) => titleOf(section, check)).join(", ");
  for (const block of elements(section, "details.call__check")) {
    const check = String(block.dataset.check);
    const sentences = [];
    if (locked[check]) {
      sentences.push(say("This destroys what others would show. Make these first: {titles}.", { titles: titles(locked[check]) }));
    }
    if (waiting[check]) {
      sentences.push(say("This needs a finding first: {titles}.", { titles: titles(waiting[check].map((one) => one.check)) }));
    }
    tellBeside(part(block, "note"), sentences.join(" "));
  }
}

/** @param {HTMLElement} section @param {string} check */
export function titleOf(section, check) {
  return section.querySelector(`details[data-check="${CSS.escape(check)}"] .call__title`)?.textContent ?? check;
}
