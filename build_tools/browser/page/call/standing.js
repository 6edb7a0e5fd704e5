/**
 * Shows where a call stands: the reasons, the ranked causes and their links. Every text goes in as
 * text.
 *
 * @typedef {{title: string, link: string, procedures: {title: string, link: string}[]}} Cause
 */
import { element, part } from "../element.js";
import { tellBeside } from "../telling.js";
import { say } from "../words.js";

const CAUSES_SHOWN = 5;

/**
 * @param {HTMLElement} block
 * @param {any} picture  see calculators/diagnosis/picture.py
 * @param {Record<string, Cause>} causes
 * @param {{excluded: string[], unitLink: string}} call
 */
export function showStanding(block, picture, causes, { excluded, unitLink }) {
  const isDanger = picture.stop?.why === "danger";
  tellBeside(part(block, "danger"), isDanger ? picture.explanation.join(" ") : "");
  part(block, "explanation").replaceChildren(
    ...(isDanger ? [] : picture.explanation.map((/** @type {string} */ sentence) => element("p", {}, sentence))),
    ...picture.problems.map((/** @type {string} */ sentence) => element("p", {}, sentence)),
  );
  const ranked = picture.causes.slice(0, CAUSES_SHOWN).map((/** @type {any} */ { fault, chance, words, before }, /** @type {number} */ place) =>
    causeRow(fault, causes[fault], { chance, words, before }, place, unitLink),
  );
  const out = excluded.filter((fault) => causes[fault]).map((fault) => ruledOut(fault, causes[fault]));
  part(block, "causes").replaceChildren(...ranked, ...out);
  part(block, "unknown").textContent = say("Something that is not in this handbook: {words}.", { words: picture.unknown.words });
}

/**
 * @param {string} fault
 * @param {Cause} cause
 * @param {{chance: number, words: string, before: string}} shares
 * @param {number} place
 * @param {string} unitLink
 */
function causeRow(fault, cause, { chance, words, before }, place, unitLink) {
  const bar = element("span", { className: "call__share" });
  bar.style.setProperty("--share", String(chance));
  bar.setAttribute("aria-hidden", "true");
  const row = element("li", {}, element("a", { href: cause.link }, cause.title), ` ${words}`, element("small", {}, ` (${before} before any reading)`), bar);
  if (place < 2) {
    const links = cause.procedures.map(({ title, link }) => element("a", { href: link }, title));
    if (unitLink) {
      links.push(element("a", { href: unitLink }, say("The unit’s numbers")));
    }
    const out = element("button", { type: "button", className: "call__button" }, say("Repaired, and it was not this"));
    out.dataset.action = "exclude";
    out.dataset.fault = fault;
    const list = element("ul", { className: "call__links" }, ...links.map((link) => element("li", {}, link)), element("li", {}, out));
    row.append(list);
  }
  return row;
}

/** @param {string} fault @param {Cause} cause */
function ruledOut(fault, cause) {
  const back = element("button", { type: "button", className: "call__button" }, say("Consider it again"));
  back.dataset.action = "include";
  back.dataset.fault = fault;
  return element("li", { className: "call__out" }, say("{title}: ruled out by a repair. ", { title: cause.title }), back);
}
