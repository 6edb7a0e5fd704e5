/**
 * What a person enters in a practice call and has not sent yet: from the fields into what is kept,
 * and back into them.
 */
import { fields, part } from "../element.js";

/** @typedef {import("./call_memory.js").Kept} Kept */

/**
 * Puts what was kept into the fields.
 *
 * @param {HTMLElement} section
 * @param {Kept} kept
 */
export function fillIn(section, kept) {
  for (const field of fields(section, "[data-keep]")) {
    field.value = kept.typed[String(field.dataset.keep)] ?? "";
  }
  for (const box of fields(section, "[data-replaced]")) {
    box.checked = kept.parts.includes(box.value);
  }
  tellParts(section, kept);
}

/**
 * Takes what is in a field now.
 *
 * @param {HTMLElement} section
 * @param {Kept} kept
 * @param {HTMLInputElement} field
 */
export function takeEntry(section, kept, field) {
  if (field.dataset.keep) {
    kept.typed[field.dataset.keep] = field.value;
  } else if (field.dataset.replaced !== undefined) {
    kept.parts = fields(section, "[data-replaced]:checked").map((box) => box.value);
    tellParts(section, kept);
  }
}

/** @param {HTMLElement} section @param {Kept} kept */
function tellParts(section, { parts }) {
  part(section, "parts-chosen").textContent = parts.length ? String(parts.length) : "";
}
