/**
 * What a practice call shows after a move: the customer, the readings, how each check stands.
 */
import { element } from "../element.js";
import { say } from "../words.js";

/**
 * @typedef {{label: string, shown: string}} Line
 * @typedef {{check: string, title: string, at: number, ready: boolean, lines: Line[], label: string, danger: string}} Reading
 * @typedef {{check: string, state: string, why: string}} CheckState
 */

/** @param {number} minutes */
export function minutesIn(minutes) {
  return say("{minutes} min", { minutes: Math.round(minutes * 10) / 10 });
}

/** @param {HTMLElement} section @param {any} picture  see calculators/practice/pictured.py */
export function showCustomer(section, picture) {
  part(section, "code").textContent = picture.code;
  const words = picture.words.map((/** @type {string} */ said) => element("blockquote", {}, `“${said}”`));
  part(section, "said").replaceChildren(...words, element("p", {}, say("On the telephone it was noted as: {complaint}.", { complaint: picture.complaint })));
  const { control, water, lines } = picture.home;
  const all = [{ label: say("Control"), shown: control }, { label: say("Water"), shown: water }, ...lines];
  part(section, "home").replaceChildren(...rows(all));
}

/** @param {HTMLElement} section @param {any} picture */
export function showReadings(section, picture) {
  part(section, "readings").replaceChildren(...picture.readings.map(item));
  part(section, "no-readings").hidden = picture.readings.length > 0;
  part(section, "proofs").replaceChildren(...picture.proofs.map(item));
  const told = [];
  if (picture.sprayed) {
    told.push(say("Something was opened under pressure: water sprayed through the room."));
  }
  if (picture.consent) {
    told.push(say("The customer has agreed to opening."));
  }
  if (picture.safe) {
    told.push(say("The unit is safe until the next check or repair needs it in service."));
  }
  part(section, "safety").textContent = told.join(" ");
}

/**
 * What was read last, in a sentence.
 *
 * @param {Reading} reading
 */
export function inWords(reading) {
  const lines = reading.lines.map((one) => `${one.label} ${one.shown}`).join(", ");
  const told = reading.ready ? lines || reading.label : say("on its way");
  return `${reading.title}: ${told}.${reading.danger ? ` You see this: ${reading.danger}` : ""}`;
}

/** @param {HTMLElement} section @param {any} picture */
export function showChecks(section, picture) {
  const readings = new Map(picture.readings.map((/** @type {Reading} */ one) => [one.check, one]));
  for (const state of /** @type {CheckState[]} */ (picture.checks)) {
    const block = section.querySelector(`details[data-check="${CSS.escape(state.check)}"]`);
    if (block instanceof HTMLElement) {
      showCheck(block, state, readings.get(state.check), picture.over);
    }
  }
}

/** @param {HTMLElement} block @param {CheckState} state @param {Reading | undefined} reading @param {boolean} isOver */
function showCheck(block, state, reading, isOver) {
  const note = part(block, "note");
  const isTold = ["needs", "impossible", "spoiled"].includes(state.state);
  note.textContent = isTold ? state.why : "";
  note.hidden = !isTold;
  const words = { read: say("read"), waiting: say("on its way"), spoiled: say("evidence gone"), impossible: say("not possible here") };
  part(block, "answer").textContent = /** @type {Record<string, string>} */ (words)[state.state] ?? "";
  part(block, "shown").replaceChildren(...(reading ? shown(reading) : []));
  const button = /** @type {HTMLButtonElement} */ (block.querySelector("[data-action=check]"));
  button.hidden = isOver || state.state !== "open";
}

/** @param {Reading} reading */
function item(reading) {
  return element("li", {}, element("strong", {}, reading.title), " ", element("small", {}, say("at {minutes}", { minutes: minutesIn(reading.at) })), ...shown(reading));
}

/**
 * What an instrument shows, and folded under it what the handbook calls that; what only an eye
 * sees is told at once.
 *
 * @param {Reading} reading
 * @returns {HTMLElement[]}
 */
function shown(reading) {
  if (!reading.ready) {
    return [element("p", {}, say("Not ready yet. Do something else meanwhile, or wait."))];
  }
  const parts = [];
  if (reading.lines.length) {
    parts.push(element("dl", { className: "practice-call__lines" }, ...rows(reading.lines)));
    const summary = element("summary", {}, element("span", { className: "call__title" }, say("What the handbook calls this")));
    parts.push(element("details", { className: "practice-call__called" }, summary, element("p", {}, reading.label)));
  } else {
    parts.push(element("p", {}, reading.label));
  }
  if (reading.danger) {
    parts.push(element("p", { className: "call__danger" }, say("You see this: {danger}", { danger: reading.danger })));
  }
  return parts;
}

/** @param {Line[]} lines */
function rows(lines) {
  return lines.map(({ label, shown: text }) => element("div", {}, element("dt", {}, label), element("dd", {}, text)));
}

/** @param {HTMLElement} block @param {string} name @returns {HTMLElement} */
export function part(block, name) {
  return /** @type {HTMLElement} */ (block.querySelector(`[data-part=${name}]`));
}
