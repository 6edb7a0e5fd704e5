/**
 * The text to copy for other pages names the site. Where the build did not know its address, the
 * page does.
 */
import { SITE } from "../place.js";

/** Puts the site's address into the texts of this page. */
export function completeSnippets() {
  for (const details of document.querySelectorAll("[data-snippet-site]")) {
    const code = /** @type {HTMLElement} */ (details.querySelector("code"));
    const unknown = String(/** @type {HTMLElement} */ (details).dataset.snippetSite);
    code.textContent = String(code.textContent).replaceAll(unknown, SITE.href);
  }
}
