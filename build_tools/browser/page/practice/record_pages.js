/**
 * Brings the pages around a record to life, each by what its section is for.
 */
import { showCrew } from "./crew.js";
import { showMyRecord } from "./my_record.js";
import { RecordSection } from "./section.js";
import { showSignOff } from "./sign_off.js";
import { showToday } from "./today.js";

/** @type {Record<string, (section: RecordSection) => void>} */
const SHOWN = { today: showToday, mine: showMyRecord, sheet: showSignOff, crew: showCrew };

/** @param {(section: HTMLElement) => import("../calculator_client.js").CalculatorClient} clientFor */
export function mountRecordPages(clientFor) {
  for (const found of document.querySelectorAll("section.record:not([data-mounted])")) {
    const section = /** @type {HTMLElement} */ (found);
    section.dataset.mounted = "";
    SHOWN[String(section.dataset.record)](new RecordSection(section, clientFor(section)));
  }
}
