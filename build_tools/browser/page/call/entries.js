/**
 * What a person enters in a call: from the fields into the state of the call, and back into them.
 */
import { elements, fields, part } from "../element.js";
import { hiddenAttribute, isOwnSystem, shownSystem, withUnit } from "../units/typed.js";
import { say } from "../words.js";
import { answerIn } from "./record.js";

/** @typedef {import("./memory.js").CallState} CallState */

const NUMBERS = "[data-numbers] input";

/**
 * Takes what is in a field now.
 *
 * @param {CallState} state
 * @param {HTMLInputElement} field
 * @returns {string}  what it was: "words", "unit", "water", "record", "danger", "number", "doubt" or
 *   "answer", which is taken when it is shown
 */
export function takeEntry(state, field) {
  const { keep, record, danger } = field.dataset;
  const check = checkOf(field);
  if (keep) {
    state.kept[keep] = field.value;
    return keep;
  }
  if (record) {
    state.record[record] = field.value;
    return "record";
  }
  if (danger) {
    state.dangers = withOrWithout(state.dangers, danger, field.checked);
    return "danger";
  }
  if (field.matches(NUMBERS)) {
    state.numbers[check] = { ...state.numbers[check], [field.name]: field.value };
    return "number";
  }
  if (field.dataset.part === "unsure") {
    state.unsure = withOrWithout(state.unsure, check, field.checked);
    return "doubt";
  }
  return "answer";
}

/**
 * Puts what was kept into the fields, in the units that are shown.
 *
 * @param {HTMLElement} section  the call
 * @param {CallState} state
 */
export function fillIn(section, state) {
  bringIntoUnits(section, state);
  for (const field of fields(section, "[data-keep]")) {
    field.value = state.kept[String(field.dataset.keep)] ?? "";
  }
  for (const field of fields(section, "[data-record]")) {
    field.value = state.record[String(field.dataset.record)] ?? "";
  }
  fillInDangers(section, state);
  for (const block of checksIn(section)) {
    fillInCheck(block, state);
    showAnswer(section, state, block);
  }
}

/** @param {HTMLElement} section @param {CallState} state */
function fillInDangers(section, state) {
  const boxes = fields(section, "[data-danger]");
  for (const box of boxes) {
    box.checked = state.dangers.includes(String(box.dataset.danger));
  }
  // A danger of an older edition, which has no box here any more, could never be taken back.
  state.dangers = state.dangers.filter((danger) => boxes.some((box) => box.dataset.danger === danger));
}

/** @param {HTMLElement} block @param {CallState} state */
function fillInCheck(block, { answers, unsure, numbers }) {
  const check = checkOf(block);
  choose(block, answers[check]);
  for (const doubt of fields(block, "[data-part=unsure]")) {
    doubt.checked = unsure.includes(check);
  }
  for (const field of fields(block, NUMBERS)) {
    field.value = numbers[check]?.[field.name] ?? "";
  }
}

/**
 * @param {HTMLElement} block  of a check
 * @param {string | undefined} answer  that is chosen; none takes the choice back
 */
export function choose(block, answer) {
  for (const radio of fields(block, "input[type=radio]")) {
    radio.checked = radio.value === answer;
  }
}

/**
 * Shows an answer at the head of its check.
 *
 * @param {HTMLElement} section
 * @param {CallState} state
 * @param {HTMLElement} block  of the check
 */
export function showAnswer(section, { answers }, block) {
  const check = checkOf(block);
  const isFolded = block.matches("details");
  const shown = isFolded ? part(block, "answer") : section.querySelector(`[data-for="${check}"]`);
  if (shown) {
    shown.textContent = answers[check] ? answerIn(block, answers[check]) : isFolded ? "" : say("not chosen");
  }
}

/**
 * Gives what was typed in the system that is not shown its units, and dangers their words.
 *
 * @param {HTMLElement} section
 * @param {CallState} state
 */
function bringIntoUnits(section, state) {
  const { kept, numbers } = state;
  const wasOther = kept.units ? kept.units !== shownSystem() : !isOwnSystem();
  for (const block of wasOther ? checksIn(section) : []) {
    const typed = numbers[checkOf(block)] ?? {};
    for (const field of fields(block, NUMBERS)) {
      if (typed[field.name]) {
        typed[field.name] = withUnit(typed[field.name], hiddenAttribute(field, "data-unit"));
      }
    }
  }
  kept.units = shownSystem();
  const boxes = fields(section, "[data-danger]");
  state.dangers = state.dangers.map((danger) => {
    const box = boxes.find((one) => hiddenAttribute(one, "data-danger") === danger);
    return box?.dataset.danger ?? danger;
  });
}

/** @param {Element} within  a check, or a field of it @returns {string}  its name, "" for none */
export function checkOf(within) {
  return blockOf(within)?.dataset.check ?? "";
}

/** @param {Element} within @returns {HTMLElement | null}  the block of the check that it belongs to */
export function blockOf(within) {
  return within.closest("[data-check]");
}

/** @param {HTMLElement} section */
function checksIn(section) {
  return elements(section, "[data-check]");
}

/** @param {string[]} list @param {string} one @param {boolean} isIn */
export function withOrWithout(list, one, isIn) {
  const others = list.filter((other) => other !== one);
  return isIn ? [...others, one] : others;
}
