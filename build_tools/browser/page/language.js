/**
 * The language that the reader chose on any page, kept in the browser's storage. Who chose another
 * language than that of a page which exists in both gets the page in that language.
 */

import { SITE } from "./place.js";
import { keepText, recalledText } from "./storage.js";

const KEY = `language in ${SITE.pathname}`;

export function rememberLanguage() {
  for (const link of document.querySelectorAll("a[data-language]:not([data-mounted])")) {
    const { dataset } = /** @type {HTMLElement} */ (link);
    dataset.mounted = "";
    link.addEventListener("click", () => keepText(KEY, String(dataset.language)));
  }
  const chosen = recalledText(KEY);
  const other = chosen && document.documentElement.lang !== chosen && document.querySelector(`a[data-language="${CSS.escape(chosen)}"]`);
  if (other instanceof HTMLAnchorElement) {
    const address = new URL(other.href);
    address.search = location.search;
    address.hash = location.hash;
    location.replace(address);
  }
}
