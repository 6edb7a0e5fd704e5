/**
 * The debrief of a finished practice call: what it was, the score, and the replay.
 */
import { element } from "../element.js";
import { minutesIn } from "./call_shown.js";
import { say } from "../words.js";

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
    element("h2", { tabIndex: -1 }, say("The debrief: {score} of 100 points", { score: told.score })),
    ...told.critical.map((/** @type {string} */ sentence) => element("p", { className: "call__danger" }, say("Critical: {sentence}", { sentence }))),
    element("h3", {}, say("What it was")),
    ...told.faults.map((/** @type {any} */ fault) => whatItWas(fault, causes[fault.fault])),
    ...(told.brought ? [element("p", {}, say("The first of the two brought the second."))] : []),
    ...(told.danger ? [element("p", {}, say("A danger was in this home: {danger}", { danger: told.danger }))] : []),
    element("h3", {}, say("The points")),
    points(told),
    element("h3", {}, say("The words to the customer")),
    element("p", {}, wordsTold(told.words)),
    element("h3", {}, say("Beside you on the same call")),
    ...others(told),
  ];
}

/**
 * @param {any} replay  see calculators/practice/debrief.py
 * @returns {HTMLElement[]}
 */
export function replayParts(replay) {
  const { day, visit, regenerations } = replay.history;
  const when = day === null ? say("Nothing went wrong in these days.") : say("The fault began on day {day}, and you came on day {visit}.", { day, visit });
  const drawn = new DOMParser().parseFromString(replay.history.picture, "image/svg+xml").documentElement;
  const picture = element("figure", { className: "practice-call__history" }, drawn);
  return [
    element("h3", {}, say("What each reading was worth")),
    ...(replay.steps.length ? [steps(replay.steps)] : [element("p", {}, say("You read nothing before you named a cause."))]),
    element("h3", {}, say("What went on in the home")),
    element("p", {}, say("{when} Dashed uprights are its {regenerations} regenerations.", { when, regenerations })),
    picture,
  ];
}

/** @param {any} fault @param {Cause} cause */
function whatItWas(fault, cause) {
  const tests = element("p", {}, say("A right closing test here: {tests}.", { tests: fault.tests.join("; ") || "none that this home could show" }));
  const links = [link(cause), ...cause.procedures.map(link), ...cause.lessons.map(link)];
  const list = element("ul", { className: "call__links" }, ...links.map((one) => element("li", {}, one)));
  return element("div", {}, element("p", {}, element("strong", {}, fault.title), say(". What it does, and what to do about it, stands on its page.")), tests, list);
}

/** @param {Link} to */
function link(to) {
  return element("a", { href: to.link, target: "_blank", rel: "noopener" }, to.title);
}

/** @param {any} told */
function points(told) {
  const rows = told.parts.map((/** @type {any} */ one) => [one.part, say("{points} of {most}", { points: one.points, most: one.most })]);
  const taken = told.taken.map((/** @type {any} */ one) => [one.sentence, `−${one.points}`]);
  return table([say("Part"), say("Points")], [...rows, ...taken, [say("Together"), String(told.score)]]);
}

/** @param {any} words */
function wordsTold(words) {
  const missing = [words.found ? "" : say("what you found"), words.done ? "" : say("what you did"), words.watch ? "" : say("what to watch")].filter(Boolean);
  const sentences = [];
  if (!words.long) {
    sentences.push(say("Too few words to tell a customer anything."));
  }
  if (missing.length) {
    sentences.push(say("No word was found for {words}.", { words: missing.join(", and for ") }));
  }
  if (words.jargon.length) {
    sentences.push(say("Words that a customer may not know: {jargon}.", { jargon: words.jargon.join(", ") }));
  }
  sentences.push(say("This looks only for words, and understands nothing: read your text to somebody."));
  return sentences.join(" ");
}

/** @param {any} told @returns {HTMLElement[]} */
function others(told) {
  const row = (/** @type {string} */ name, /** @type {any} */ one) => [name, one.found ? minutesIn(one.minutes) : say("not found in {minutes}", { minutes: minutesIn(one.minutes) }), one.wrong.join("; ") || say("none")];
  const you = { minutes: told.minutes, wrong: told.wrong, found: told.right };
  const rows = [row(say("You"), you), row(say("The diagnosis of this handbook"), told.diagnosis), row(say("All checks in their order"), told.fixed)];
  const order = told.diagnosis.steps.join("; ") || say("no check at all");
  return [
    table([say("Who"), say("Minutes to the cause"), say("Repairs in vain")], rows),
    element("p", {}, say("The order of the diagnosis: {order}.", { order })),
  ];
}

/** @param {any[]} all */
function steps(all) {
  const rows = all.map((one) => {
    const side = one.words === "nothing" ? "nothing" : say("{words}, {side} it", { words: one.words, side: one.for ? "for" : "against" });
    const better = one.same ? say("the same") : one.better || say("naming the cause");
    return [`${one.title}: ${one.label}`, minutesIn(one.minutes), side, one.chance, one.leader, better];
  });
  return table([say("Reading"), say("Took"), say("Said of the true cause"), say("Its chance then"), say("What led then"), say("The diagnosis would have made")], rows);
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
