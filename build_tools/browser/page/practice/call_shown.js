/**
 * What a practice call shows after a move: the customer, the readings, how each check stands, what
 * was named and repaired, and what can be done now.
 */
import { button, element, part } from "../element.js";
import { tellBeside } from "../telling.js";
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

/**
 * @param {HTMLElement} section
 * @param {any} picture  see calculators/practice/pictured.py
 * @param {Record<string, {title: string}>} causes
 */
export function showPicture(section, picture, causes) {
  part(section, "customer").hidden = false;
  part(section, "work").hidden = false;
  part(section, "finish").hidden = picture.over;
  showCustomer(section, picture);
  showReadings(section, picture);
  showChecks(section, picture);
  showRepairs(section, picture, causes);
  showActions(section, picture);
}

/** @param {HTMLElement} section @param {any} picture */
function showCustomer(section, picture) {
  part(section, "code").textContent = picture.code;
  const words = picture.words.map((/** @type {string} */ said) => element("blockquote", {}, `“${said}”`));
  part(section, "said").replaceChildren(...words, element("p", {}, say("On the telephone it was noted as: {complaint}.", { complaint: picture.complaint })));
  const { control, water, lines } = picture.home;
  const all = [{ label: say("Control"), shown: control }, { label: say("Water"), shown: water }, ...lines];
  part(section, "home").replaceChildren(...rows(all));
}

/** @param {HTMLElement} section @param {any} picture */
function showReadings(section, picture) {
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
 * @param {any} picture
 * @param {any} move  the last one
 * @returns {string}  the clock, and what the move has shown
 */
export function clockInWords({ minutes, readings, proofs }, move) {
  const shown = /** @type {Record<string, Reading[]>} */ ({ check: readings, prove: proofs })[move?.do]?.at(-1);
  return say("{minutes} on the clock.{last}", { minutes: minutesIn(minutes), last: shown ? ` ${inWords(shown)}` : "" });
}

/** @param {Reading} reading */
function inWords(reading) {
  const lines = reading.lines.map((one) => `${one.label} ${one.shown}`).join(", ");
  const told = reading.ready ? lines || reading.label : say("on its way");
  return `${reading.title}: ${told}.${reading.danger ? ` You see this: ${reading.danger}` : ""}`;
}

/** @param {HTMLElement} section @param {any} picture */
function showChecks(section, picture) {
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
  const isTold = ["needs", "impossible", "spoiled"].includes(state.state);
  tellBeside(part(block, "note"), isTold ? state.why : "");
  const words = { read: say("read"), waiting: say("on its way"), spoiled: say("evidence gone"), impossible: say("not possible here") };
  part(block, "answer").textContent = /** @type {Record<string, string>} */ (words)[state.state] ?? "";
  part(block, "shown").replaceChildren(...(reading ? shown(reading) : []));
  button(block, "check").hidden = isOver || state.state !== "open";
}

/** @param {HTMLElement} section @param {any} picture @param {Record<string, {title: string}>} causes */
function showRepairs(section, { named, remedies }, causes) {
  const titles = (/** @type {string[]} */ names) => names.map((name) => causes[name].title).join(" and ");
  const stated = named.map((/** @type {any} */ one) => say("{causes}, {confidence} % sure", { causes: titles(one.causes), confidence: one.confidence }));
  const made = remedies.map((/** @type {any} */ one) => say("Repaired at {minutes}: {parts}", { minutes: minutesIn(one.at), parts: [causes[one.remedy].title, ...one.parts].join("; ") }));
  const items = (/** @type {string[]} */ texts) => texts.map((text) => element("li", {}, text));
  part(section, "named").replaceChildren(...items(stated));
  part(section, "remedies").replaceChildren(...items(made));
  part(section, "repair").hidden = !named.length;
  part(section, "prove").hidden = !remedies.length;
  part(section, "tell").hidden = !remedies.length;
}

/** @param {HTMLElement} section @param {any} picture */
function showActions(section, { over, consent, safe, waiting }) {
  const isDone = /** @type {Record<string, boolean>} */ ({ consent, "make-safe": safe });
  for (const action of ["consent", "make-safe", "wait", "stop"]) {
    button(section, action).disabled = over || Boolean(isDone[action]);
  }
  button(section, "wait").hidden = !waiting;
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
