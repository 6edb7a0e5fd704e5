/**
 * What is said of a marked question, and its solution. Every text goes in as text.
 */
import { workingRow } from "../answer.js";
import { element } from "../element.js";
import { say } from "../words.js";

/** @param {any} result  see calculators/practice/exercises.py @returns {string} */
export function inAWord(result) {
  if (result.critical) {
    return say("Not like this: somebody could get hurt.");
  }
  if (result.right) {
    return say("Right.");
  }
  return result.score ? say("Not yet: {score} of 100.", { score: Math.round(100 * result.score) }) : say("Not yet.");
}

/** @param {any} result @param {string} noted  what became of it in the record */
export function showResult(result, noted) {
  const heading = element("p", { className: "exercise__word" }, inAWord(result));
  heading.dataset.right = String(result.right);
  heading.dataset.critical = String(result.critical);
  const beside = Object.values(result.fields).map((/** @type {any} */ one) => one.feedback).join(" ");
  const more = result.feedback.filter((/** @type {string} */ one) => Array.isArray(result.fields.order?.wrong) || !beside.includes(one));
  const sentences = result.right ? [] : more.map((/** @type {string} */ one) => element("li", {}, one));
  const solution = element("details", { className: "exercise__solution", open: result.right }, element("summary", {}, say("The solution")), ...rows(result.answers), ...result.solution.flatMap(part));
  return [heading, ...(sentences.length ? [element("ul", {}, ...sentences)] : []), ...(noted ? [element("p", { className: "exercise__help" }, noted)] : []), solution];
}

/** @param {any} one  a part of a solution */
function part(one) {
  return [
    element("h3", {}, one.title),
    ...list("ol", "live-form__workings", one.workings.map(workingRow)),
    ...list("ol", "", one.ordered.map((/** @type {string} */ text) => element("li", {}, text))),
    ...list("ul", "", one.sentences.map((/** @type {string} */ text) => element("li", {}, text))),
  ];
}

/** @param {"ol" | "ul"} tag @param {string} className @param {HTMLElement[]} items */
function list(tag, className, items) {
  return items.length ? [element(tag, { className }, ...items)] : [];
}

/** @param {{label: string, shown: string}[]} given @returns {HTMLElement[]} */
export function rows(given) {
  if (!given.length) {
    return [];
  }
  const made = given.map(({ label, shown }) => element("div", {}, element("dt", {}, label), element("dd", {}, shown)));
  return [element("dl", { className: "exercise__given" }, ...made)];
}
