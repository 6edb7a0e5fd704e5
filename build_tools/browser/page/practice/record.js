/**
 * The learner's record in this browser. Whatever changes it reads it again first, one tab at a
 * time, so that two open pages lose nothing of each other. Where the browser keeps nothing, what
 * is added lives as long as the page, and a sentence says so.
 *
 * What a record is: calculators/practice/record.py. Here only so much is checked that nothing
 * unreadable is ever written over; Python judges the rest.
 *
 * @typedef {object} Attempt
 * @property {string} item  the exercise, or for a call “call” with its family, under which calls of a family come back
 * @property {string} family
 * @property {string} skill  "" where only the family tells it
 * @property {boolean} right
 * @property {boolean} sure  whether the learner was sure of the answer
 * @property {number} score  from 0 to 1; a call's points divided by 100
 * @property {boolean} critical  whether something was done that hurts people
 * @property {string} [seed]  what draws the same exercise again
 * @property {string} [code]  what draws the same call again
 *
 * @typedef {{skill: string, day: string, level: number, observer: string, system: string}} Observation
 * @typedef {Attempt & {at: string, day: string}} KeptAttempt
 * @typedef {{version: number, name: string, attempts: KeptAttempt[], observed: Observation[]}} PersonRecord
 * @typedef {{kept: boolean, sentence: string}} Written  sentence: "" when it is kept
 */
import { recalledText } from "../storage.js";
import { marked, say } from "../words.js";

export const KEY = "handbook-record";
const VERSION = 1;
/** As in record.py: one more, and Python would not read the record again. */
const MOST_ATTEMPTS = 15_000;
/** From here on a stated confidence in a call's cause counts as sure. */
const SURE_FROM = 80;
const CHANGED = "handbook-record-changed";

export const UNREADABLE = marked("The record in this browser cannot be read by this edition of the handbook. It is left as it is: save it as a file from “My record” before you delete it.");
export const NOT_KEPT = marked("This browser keeps nothing for this site, or has no room left: save your record as a file from “My record” before you close this page.");

export const FULL = marked("Your record is full: save it as a file from “My record”, delete it there, and begin a new one.");

/** What the browser would not keep: the record as it is on this page only. @type {string | null} */
let unkept = null;

/**
 * The entries that this page added, as text: a browser may hand a page's write on to another page
 * only after that page has written over it, even where they take turns. Then they are added anew.
 */
const added = { attempts: /** @type {Set<string>} */ (new Set()), observed: /** @type {Set<string>} */ (new Set()) };
const LISTS = /** @type {const} */ (["attempts", "observed"]);

/** @returns {PersonRecord} */
export function newRecord() {
  return { version: VERSION, name: "", attempts: [], observed: [] };
}

/** @param {any} debrief  see calculators/practice/debrief.py @returns {Attempt}  the finished call */
export function callAttempt({ family, right, sure, score, critical, code }) {
  return { item: `call: ${family}`, family, skill: "", right, sure: sure >= SURE_FROM, score: score / 100, critical: critical.length > 0, code };
}

/** @param {Date} [now] @returns {string}  the learner's own day, such as 2026-11-26 */
export function today(now = new Date()) {
  const two = (/** @type {number} */ number) => String(number).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/**
 * The text of the record as it is kept; "" where there is none.
 *
 * @returns {string}
 */
export function recordText() {
  if (unkept !== null) {
    return unkept;
  }
  return recalledText(KEY);
}

/**
 * @returns {{record: PersonRecord, problem: string}}  a new record where none is kept; with a
 *   problem, too, but then nothing may be written
 */
export function readRecord() {
  const text = recordText();
  const record = text ? parsed(text) : newRecord();
  return { record: record ?? newRecord(), problem: record ? "" : say(UNREADABLE) };
}

/**
 * Changes the record as it is now, not as it was when the page read it.
 *
 * @param {(record: PersonRecord) => string | void} change  returns a sentence where it cannot be made
 * @returns {Promise<Written>}
 */
export function writeRecord(change) {
  return alone(() => {
    const { record, problem } = readRecord();
    if (problem) {
      return { kept: false, sentence: problem };
    }
    const refused = change(record);
    return refused ? { kept: false, sentence: refused } : store(record);
  });
}

/**
 * Puts a record in the place of the one that was read, where no other page has changed it since.
 *
 * @param {string} read  the text that was read, of recordText
 * @param {PersonRecord | null} record  null deletes it
 * @returns {Promise<Written & {changed: boolean}>}  changed: another page was first; nothing is done
 */
export function replaceRecord(read, record) {
  return alone(() => {
    if (recordText() !== read) {
      return { kept: false, sentence: "", changed: true };
    }
    return { ...store(record), changed: false };
  });
}

/**
 * Adds one answer to the record.
 *
 * @param {Attempt} attempt
 * @returns {Promise<Written>}  what to tell the learner, if anything
 */
export function addAttempt(attempt) {
  const { item, family, skill, right, sure, score, critical, seed, code } = attempt;
  const drawn = code === undefined ? { seed: String(seed) } : { code: String(code) };
  if (!item || !family || (seed === undefined) === (code === undefined) || !(score >= 0 && score <= 1)) {
    throw new TypeError("An answer needs its item, its family, a score from 0 to 1, and a seed or a code.");
  }
  const now = new Date();
  const added = { at: now.toISOString(), day: today(now), item, family, skill: skill ?? "", right: Boolean(right), sure: Boolean(sure), score, critical: Boolean(critical), ...drawn };
  return writeRecord((record) => {
    if (record.attempts.length >= MOST_ATTEMPTS) {
      return say(FULL);
    }
    record.attempts.push(added);
  });
}

/**
 * Tells of every change, of this page and of others.
 *
 * @param {() => void} told
 * @returns {() => void}  stops it
 */
export function onRecordChange(told) {
  const stored = (/** @type {StorageEvent} */ event) => (event.key === KEY || event.key === null) && told();
  addEventListener("storage", stored);
  addEventListener(CHANGED, told);
  return () => {
    removeEventListener("storage", stored);
    removeEventListener(CHANGED, told);
  };
}

/** @param {string} text @returns {PersonRecord | null}  null where it is no record of this version */
function parsed(text) {
  try {
    const data = JSON.parse(text);
    const isOne = data?.version === VERSION && typeof data.name === "string" && Array.isArray(data.attempts) && Array.isArray(data.observed);
    return isOne ? data : null;
  } catch {
    return null;
  }
}

/** @param {PersonRecord | null} record  null forgets it @returns {Written} */
function store(record) {
  remember(record);
  try {
    if (record === null) {
      localStorage.removeItem(KEY);
    } else {
      localStorage.setItem(KEY, JSON.stringify(record));
    }
    unkept = null;
  } catch {
    unkept = record ? JSON.stringify(record) : "";
  }
  dispatchEvent(new Event(CHANGED));
  return unkept === null ? { kept: true, sentence: "" } : { kept: false, sentence: say(NOT_KEPT) };
}

/** @param {PersonRecord | null} record  what takes the place of the record that is there now */
function remember(record) {
  const before = parsed(recordText());
  for (const list of LISTS) {
    if (record === null) {
      added[list].clear();
    }
    const old = new Set(texts(before, list));
    texts(record, list).filter((text) => !old.has(text)).forEach((text) => added[list].add(text));
  }
}

/** @param {PersonRecord | null} record @param {"attempts" | "observed"} list @returns {string[]} */
function texts(record, list) {
  return (record?.[list] ?? []).map((entry) => JSON.stringify(entry, Object.keys(entry).sort()));
}

/**
 * Adds anew what another page wrote over; where that page deleted the record, it is forgotten.
 *
 * @param {StorageEvent} event
 */
async function bringBack({ key, newValue }) {
  if (newValue === null && (key === KEY || key === null)) {
    LISTS.forEach((list) => added[list].clear());
  }
  if (key !== KEY || newValue === null || !lost(parsed(newValue))) {
    return;
  }
  await writeRecord((record) => {
    for (const list of LISTS) {
      const there = new Set(texts(record, list));
      const missing = [...added[list]].filter((text) => !there.has(text)).map((text) => JSON.parse(text));
      record[list].push(...missing);
    }
    record.attempts.sort((one, other) => (one.at < other.at ? -1 : Number(one.at > other.at)));
  });
}

/** @param {PersonRecord | null} record @returns {boolean}  whether something that this page added is not in it */
function lost(record) {
  return record !== null && LISTS.some((list) => {
    const there = new Set(texts(record, list));
    return [...added[list]].some((text) => !there.has(text));
  });
}

addEventListener("storage", bringBack);

/**
 * Runs one change at a time, across all pages of the site where the browser can do that.
 *
 * @template T
 * @param {() => T} change
 * @returns {Promise<T>}
 */
async function alone(change) {
  if (navigator.locks) {
    return navigator.locks.request(KEY, async () => change());
  }
  return change();
}
