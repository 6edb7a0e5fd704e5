/**
 * Shows the expected readings of one unit alone, where the reader stands before that unit: one
 * choice for all procedures and for the call, kept in the browser's storage. Paper shows every unit.
 */
import { SITE } from "./place.js";
import { keepText, recalledText } from "./storage.js";
import { say } from "./words.js";

const KEY = `unit in ${SITE.pathname}`;

/**
 * Keeps a unit for all pages, "" for none.
 *
 * @param {string} unit
 */
export function keepUnit(unit) {
  keepText(KEY, unit);
}

/** @returns {string}  the unit that was chosen on any page, "" for none */
export function recalledUnit() {
  return recalledText(KEY);
}

export function mountUnitChoice() {
  /** @type {HTMLElement | null} */
  const place = document.querySelector(".unit-choice:not([data-mounted])");
  const select = place?.querySelector("select");
  if (!place || !select) {
    return;
  }
  place.dataset.mounted = "";
  place.hidden = false;
  select.value = recalledUnit();
  if (select.selectedIndex < 0) {
    select.value = ""; // a unit that the shop no longer carries
  }
  const status = place.querySelector("[role=status]");
  const show = () => showUnit(select.value, status, chosenTitle(select));
  select.addEventListener("change", () => {
    keepUnit(select.value);
    show();
  });
  show();
}

/**
 * @param {string} unit  "" for all
 * @param {Element | null} status
 * @param {string} title
 */
function showUnit(unit, status, title) {
  const tables = tablesOfReadings();
  for (const table of tables) {
    const rows = [...table.tBodies[0].rows];
    const ofUnit = rows.filter((row) => !unit || row.cells[0].dataset.unit === unit);
    for (const row of rows) {
      row.hidden = !ofUnit.includes(row);
    }
    table.toggleAttribute("data-one-unit", Boolean(unit));
    table.toggleAttribute("data-no-reading", ofUnit.length === 0);
  }
  if (status) {
    const has = tables.some((table) => !table.hasAttribute("data-no-reading"));
    const told = has ? say("The steps show the readings of this unit only") : say("No step here has a reading of this unit");
    status.textContent = unit ? `${told}: ${title}.` : "";
  }
}

/** @returns {HTMLTableElement[]} */
function tablesOfReadings() {
  const cells = /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll("td[data-unit]"));
  const tables = new Set([...cells].map((cell) => cell.closest("table")));
  return /** @type {HTMLTableElement[]} */ ([...tables].filter(Boolean));
}

/** @param {HTMLSelectElement} select */
function chosenTitle(select) {
  return select.selectedOptions[0]?.text ?? "";
}
