/**
 * Files that a person saves and loads: everything stays on the device.
 */
import { element } from "./element.js";
import { say } from "./words.js";

/** More bytes than a record can have are not even read. */
const MOST_BYTES = 20_000_000;

/** @param {string} text @param {string} name @param {string} type */
export function saveFile(text, name, type) {
  const address = URL.createObjectURL(new Blob([text], { type: `${type};charset=utf-8` }));
  element("a", { href: address, download: name }).click();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

/**
 * @param {File} file
 * @returns {Promise<{name: string, text: string, problem: string}>}  problem: a sentence, or ""
 */
export async function textOf(file) {
  const { name } = file;
  if (file.size > MOST_BYTES) {
    return { name, text: "", problem: say("The file is far too large for a record.") };
  }
  try {
    return { name, text: await file.text(), problem: "" };
  } catch {
    return { name, text: "", problem: say("The browser could not read the file.") };
  }
}

/**
 * A file name of letters that every system takes, such as practice-record-ana-bee-2026-11-26.json.
 *
 * @param {string} begin @param {string} name @param {string} day @param {string} ending
 */
export function fileName(begin, name, day, ending) {
  const plain = name.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, "-").replace(/^-+|-+$/g, "");
  return `${[begin, plain, day].filter(Boolean).join("-")}.${ending}`;
}
