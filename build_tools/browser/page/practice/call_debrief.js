/**
 * The debrief of a finished practice call: what it was, the score, and the replay.
 */
import { element } from "../element.js";
import { minutesIn } from "./call_shown.js";

/**
 * @typedef {{title: string, link: string}} Link
 * @typedef {Link & {procedures: Link[], lessons: Link[]}} Cause
 */

/**
 * @param {any} told  see calculators/practice/debrief.py
 * @param {Record<string, Cause>} causes
 * @returns {HTMLElement[]}
 */
export function debriefParts(told, causes) {
  return [
    element("h2", { tabIndex: -1 }, `The debrief: ${told.score} of 100 points`),
    ...told.critical.map((/** @type {string} */ sentence) => element("p", { className: "call__danger" }, `Critical: ${sentence}`)),
    element("h3", {}, "What it was"),
    ...told.faults.map((/** @type {any} */ fault) => whatItWas(fault, causes[fault.fault])),
    ...(told.brought ? [element("p", {}, "The first of the two brought the second.")] : []),
    ...(told.danger ? [element("p", {}, `A danger was in this home: ${told.danger}`)] : []),
    element("h3", {}, "The points"),
    points(told),
    element("h3", {}, "The words to the customer"),
    element("p", {}, wordsTold(told.words)),
    element("h3", {}, "Beside you on the same call"),
    ...others(told),
  ];
}

/**
 * @param {any} replay  see calculators/practice/debrief.py
 * @returns {HTMLElement[]}
 */
export function replayParts(replay) {
  const { day, visit, regenerations } = replay.history;
  const when = day === null ? "Nothing went wrong in these days." : `The fault began on day ${day}, and you came on day ${visit}.`;
  const drawn = new DOMParser().parseFromString(replay.history.picture, "image/svg+xml").documentElement;
  const picture = element("figure", { className: "practice-call__history" }, drawn);
  return [
    element("h3", {}, "What each reading was worth"),
    ...(replay.steps.length ? [steps(replay.steps)] : [element("p", {}, "You read nothing before you named a cause.")]),
    element("h3", {}, "What went on in the home"),
    element("p", {}, `${when} Dashed uprights are its ${regenerations} regenerations.`),
    picture,
  ];
}

/** @param {any} fault @param {Cause} cause */
function whatItWas(fault, cause) {
  const tests = element("p", {}, `A right closing test here: ${fault.tests.join("; ") || "none that this home could show"}.`);
  const links = [link(cause), ...cause.procedures.map(link), ...cause.lessons.map(link)];
  const list = element("ul", { className: "call__links" }, ...links.map((one) => element("li", {}, one)));
  return element("div", {}, element("p", {}, element("strong", {}, fault.title), ". What it does, and what to do about it, stands on its page."), tests, list);
}

/** @param {Link} to */
function link(to) {
  return element("a", { href: to.link, target: "_blank", rel: "noopener" }, to.title);
}

/** @param {any} told */
function points(told) {
  const rows = told.parts.map((/** @type {any} */ one) => [one.part, `${one.points} of ${one.most}`]);
  const taken = told.taken.map((/** @type {any} */ one) => [one.sentence, `−${one.points}`]);
  return table(["Part", "Points"], [...rows, ...taken, ["Together", String(told.score)]]);
}

/** @param {any} words */
function wordsTold(words) {
  const missing = [words.found ? "" : "what you found", words.done ? "" : "what you did", words.watch ? "" : "what to watch"].filter(Boolean);
  const sentences = [];
  if (!words.long) {
    sentences.push("Too few words to tell a customer anything.");
  }
  if (missing.length) {
    sentences.push(`No word was found for ${missing.join(", and for ")}.`);
  }
  if (words.jargon.length) {
    sentences.push(`Words that a customer may not know: ${words.jargon.join(", ")}.`);
  }
  sentences.push("This looks only for words, and understands nothing: read your text to somebody.");
  return sentences.join(" ");
}

/** @param {any} told @returns {HTMLElement[]} */
function others(told) {
  const row = (/** @type {string} */ name, /** @type {any} */ one) => [name, one.found ? minutesIn(one.minutes) : `not found in ${minutesIn(one.minutes)}`, one.wrong.join("; ") || "none"];
  const rows = [["You", minutesIn(told.minutes), told.wrong.join("; ") || "none"], row("The diagnosis of this handbook", told.diagnosis), row("All checks in their order", told.fixed)];
  const order = told.diagnosis.steps.join("; ") || "no check at all";
  return [
    table(["Who", "Minutes to the cause", "Repairs in vain"], rows),
    element("p", {}, `The order of the diagnosis: ${order}.`),
  ];
}

/** @param {any[]} all */
function steps(all) {
  const rows = all.map((one) => {
    const side = one.words === "nothing" ? "nothing" : `${one.words}, ${one.for ? "for" : "against"} it`;
    const better = one.same ? "the same" : one.better || "naming the cause";
    return [`${one.title}: ${one.label}`, minutesIn(one.minutes), side, one.chance, one.leader, better];
  });
  return table(["Reading", "Took", "Said of the true cause", "Its chance then", "What led then", "The diagnosis would have made"], rows);
}

/** @param {string[]} head @param {string[][]} rows */
function table(head, rows) {
  const top = element("tr", {}, ...head.map((text) => element("th", { scope: "col" }, text)));
  const body = rows.map((cells) => element("tr", {}, ...cells.map((text, place) => cell(text, head[place]))));
  const made = element("table", {}, element("thead", {}, top), element("tbody", {}, ...body));
  const kind = head.length > 2 ? "practice-call__table practice-call__table--wide" : "practice-call__table";
  return element("div", { className: kind, tabIndex: 0, role: "region", ariaLabel: head.join(", ") }, made);
}

/** @param {string} text @param {string} label */
function cell(text, label) {
  const made = element("td", {}, text);
  made.dataset.label = label; // shown beside it on a phone
  return made;
}
