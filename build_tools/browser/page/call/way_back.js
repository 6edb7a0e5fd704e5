/**
 * A way back from the pages that a call leads to: where it began, and where it stands.
 */
import { element } from "../element.js";
import { SITE } from "../place.js";
import { recallCall } from "./memory.js";
import { say } from "../words.js";

/** Where on the page "Find the cause" a call stands. */
export const WAY_BACK = "#call-standing";

/** While a call is open, a page that tells where it stands leads back to the call. */
export function showWayBack() {
  const way = document.querySelector(".way:not([data-mounted])");
  if (!(way instanceof HTMLElement)) {
    return;
  }
  way.dataset.mounted = "";
  if (recallCall().answers.complaint) {
    way.append(element("a", { href: new URL(`faults/${WAY_BACK}`, SITE).href }, say("Back to the call")));
  }
}
