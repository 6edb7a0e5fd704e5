/**
 * The visit record: what was read, found, done and advised, as text to print, copy or save.
 */
import { copyText } from "../copying.js";
import { saveFile } from "../files.js";
import { say } from "../words.js";

/**
 * @param {HTMLElement} section  the call
 * @param {import("./memory.js").CallState} state
 * @param {string} leader  what leads, in words
 * @returns {string}
 */
export function recordText(section, state, leader) {
  const begun = new Date(state.begun).toLocaleString(document.documentElement.lang, { dateStyle: "long", timeStyle: "short" });
  const lines = [say("Visit record, {begun}", { begun }), ""];
  const add = (/** @type {string} */ label, /** @type {string | undefined} */ text) => text?.trim() && lines.push(`${label}: ${text.trim()}`);
  const chosen = (/** @type {string} */ id) => /** @type {HTMLSelectElement} */ (section.querySelector(id)).selectedOptions[0]?.text ?? "";
  const texts = new Map(
    [...section.querySelectorAll("textarea[data-record]")].map((field) => [
      /** @type {HTMLElement} */ (field).dataset.record,
      { label: labelOf(section, field.id), text: /** @type {HTMLTextAreaElement} */ (field).value },
    ]),
  );
  const write = (/** @type {string} */ name) => add(texts.get(name)?.label ?? "", texts.get(name)?.text);
  write("customer");
  add(say("The customer’s words"), state.kept.words);
  for (const name of ["unit", "water"]) {
    if (state.kept[name]) {
      add(name === "unit" ? say("Unit") : say("Water"), chosen(name === "unit" ? "#call-control" : "#call-water"));
    }
  }
  lines.push("", say("Readings"));
  for (const block of section.querySelectorAll("[data-check]")) {
    const check = String(/** @type {HTMLElement} */ (block).dataset.check);
    if (state.answers[check]) {
      const numbers = numbersOf(block, state.numbers[check] ?? {});
      const doubt = state.unsure.includes(check) ? " (not seen well)" : "";
      lines.push(`- ${titleOf(block)}: ${answerIn(block, state.answers[check])}${doubt}${numbers && ` (${numbers})`}`);
    }
  }
  for (const danger of state.dangers) {
    lines.push(`- Work stopped: ${danger}`);
  }
  lines.push("", say("Finding"));
  const found = state.record.cause ? chosen("#call-finding") : "";
  add(say("Cause"), found || say("not found yet"));
  add(say("The handbook’s ranking"), leader);
  for (const fault of state.excluded) {
    const title = [...section.querySelectorAll("#call-finding option")].find((one) => /** @type {HTMLOptionElement} */ (one).value === fault)?.textContent;
    add(say("Ruled out by a repair"), title ?? "");
  }
  lines.push("");
  ["work", "before", "after", "advice"].forEach(write);
  return `${lines.join("\n").replace(/\n{3,}/g, "\n\n").trim()}\n`;
}

/**
 * @param {string} text
 * @param {string} begun  when the call began
 * @returns {string}  what to tell
 */
export function saveRecord(text, begun) {
  saveFile(text, `visit-record-${begun.slice(0, 10)}.txt`, "text/plain");
  return say("The record is saved as a file.");
}

/** @param {string} text @returns {Promise<string>}  what to tell */
export async function copyRecord(text) {
  return (await copyText(text)) ? say("The record is copied.") : say("This browser does not let the page copy: mark the text below and copy it.");
}

/**
 * @param {Element} block  of a check
 * @param {string} answer
 * @returns {string}  as the page words it
 */
export function answerIn(block, answer) {
  const input = block.querySelector(`input[type=radio][value="${CSS.escape(answer)}"]`);
  return input?.nextElementSibling?.firstChild?.textContent ?? answer;
}

/** @param {Element} block */
function titleOf(block) {
  return (block.querySelector(".call__title") ?? block.querySelector("legend"))?.textContent ?? "";
}

/** @param {Element} block @param {Record<string, string>} texts */
function numbersOf(block, texts) {
  return Object.entries(texts)
    .filter(([, text]) => text.trim())
    .map(([name, text]) => `${block.querySelector(`input[name="${CSS.escape(name)}"]`)?.previousElementSibling?.textContent ?? name}: ${text.trim()}`)
    .join("; ");
}

/** @param {HTMLElement} section @param {string} id */
function labelOf(section, id) {
  return section.querySelector(`label[for="${id}"]`)?.textContent ?? "";
}
