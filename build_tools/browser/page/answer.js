/**
 * Puts an answer of `calculators.run` into a form, in the shape the built page has it.
 * Every text goes in as text.
 */
import { element, part } from "./element.js";
import { say } from "./words.js";

/**
 * @param {HTMLElement} block  the form's answer block
 * @param {any} result
 */
export function showAnswer(block, result) {
  part(block, "for").textContent = inOneLine(result.inputs);
  part(block, "values").replaceChildren(...Object.entries(result.values).map(valueRow));
  part(block, "warnings").replaceChildren(...result.warnings.map(warningRow));
  part(block, "workings").replaceChildren(...result.workings.map(workingRow));
  markEnglish(block, result.english ?? []);
}

/**
 * On a page of another language, texts that have no translation are read out as English.
 *
 * @param {HTMLElement} block
 * @param {string[]} english
 */
export function markEnglish(block, english) {
  const texts = document.createTreeWalker(block, NodeFilter.SHOW_TEXT);
  const found = [];
  while (texts.nextNode()) {
    if (english.includes(String(texts.currentNode.nodeValue).trim())) {
      found.push(/** @type {Text} */ (texts.currentNode));
    }
  }
  for (const text of found) {
    const marked = element("span", { lang: "en" });
    text.replaceWith(marked);
    marked.append(text);
  }
}

/**
 * Puts the picture of an answer into the form, or takes the old one away. The calculators draw it
 * from their own labels and numbers; it is read as a drawing, so that nothing in it can run.
 *
 * @param {HTMLElement} block
 * @param {string} picture  SVG, or nothing
 */
export function showPicture(block, picture) {
  const drawn = picture ? [new DOMParser().parseFromString(picture, "image/svg+xml").documentElement] : [];
  part(block, "picture").replaceChildren(...drawn);
}

/**
 * Says whether the shown answer belongs to the numbers in the fields or to earlier ones.
 *
 * @param {HTMLElement} block
 * @param {boolean} isCurrent
 */
export function markAnswer(block, isCurrent) {
  block.dataset.answer = isCurrent ? "current" : "earlier";
  part(block, "for-label").textContent = isCurrent ? say("For:") : say("Still for the earlier numbers:");
}

/**
 * @param {Record<string, {label: string, shown: string}>} named  a result's inputs or values
 * @returns {string}
 */
export function inOneLine(named) {
  return Object.values(named)
    .map(({ label, shown }) => `${label}: ${shown}`)
    .join(" · ");
}

/** @param {[string, any]} entry */
function valueRow([name, { label, shown, rounding }]) {
  const description = element("dd", {}, element("strong", {}, shown));
  if (rounding) {
    description.append(" ", element("small", {}, rounding));
  }
  const row = element("div", {}, element("dt", {}, label), description);
  row.dataset.output = name;
  return row;
}

/** @param {string} warning */
function warningRow(warning) {
  return element("li", {}, element("strong", {}, say("Take note:")), ` ${warning}`);
}

/** @param {{sentence: string, formula: string, numbers: string, result: string}} step */
export function workingRow({ sentence, formula, numbers, result }) {
  return element(
    "li",
    {},
    sentence,
    " ",
    element("span", { className: "live-form__formula" }, formula),
    " ",
    element("span", { className: "live-form__numbers" }, `= ${numbers}`),
    " ",
    element("strong", {}, `= ${result}`),
  );
}
