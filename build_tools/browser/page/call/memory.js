/**
 * A call in the browser's storage, so that a locked phone loses nothing. Where storage is refused,
 * the call lives as long as its page.
 *
 * @typedef {object} CallState
 * @property {string} begun  when, as in 2026-11-25T14:30:00.000Z
 * @property {Record<string, string>} kept  fields that are no answers: words, unit, water
 * @property {Record<string, string>} answers  by check: a result, "not sure" or "not done"
 * @property {string[]} unsure  checks whose result was not seen well
 * @property {Record<string, Record<string, string>>} numbers  by check: texts as typed
 * @property {string[]} dangers  what was found that ends the work
 * @property {string[]} excluded  causes that a repair has not cured
 * @property {Record<string, string>} record  the texts of the visit record
 */
import { SITE } from "../place.js";
import { forgetText, keepText, recalledState } from "../storage.js";

const KEY = `call in ${SITE.pathname}`;

/** @returns {CallState} */
export function newCall() {
  return { begun: new Date().toISOString(), kept: {}, answers: {}, unsure: [], numbers: {}, dangers: [], excluded: [], record: {} };
}

/** @returns {CallState}  what was kept; a new call where nothing was, or nothing readable */
export function recallCall() {
  return recalledState(KEY, newCall());
}

/** @param {CallState} state @returns {boolean}  whether it is kept */
export function keepCall(state) {
  return keepText(KEY, JSON.stringify(state));
}

export function forgetCall() {
  forgetText(KEY);
}

/** @param {CallState} state @returns {boolean}  whether anything was answered or recorded */
export function isBegun({ answers, record }) {
  return [...Object.values(answers), ...Object.values(record)].some(Boolean);
}

/**
 * @param {CallState} state
 * @param {string} [control]  of the unit that was chosen
 * @returns {object}  the call as calculators/diagnosis/call.py takes it
 */
export function askedOf({ answers, unsure, kept, excluded, dangers }, control) {
  const readings = Object.entries(answers).filter(([check]) => check !== "complaint");
  return {
    complaint: answers.complaint ?? null,
    home: { control: control ?? null, water: kept.water || null },
    readings: Object.fromEntries(readings.map(([check, result]) => [check, { result, sure: !unsure.includes(check) }])),
    excluded,
    dangers,
  };
}
