/**
 * The language that the reader chose on any page, kept in the browser's storage. Who chose another
 * language than that of a page which exists in both gets the page in that language.
 */

import { SITE } from "./place.js";

const KEY = `language in ${SITE.pathname}`;

export function rememberLanguage() {
  for (const link of document.querySelectorAll("a[data-language]:not([data-mounted])")) {
    const { dataset } = /** @type {HTMLElement} */ (link);
    dataset.mounted = "";
    link.addEventListener("click", () => keep(String(dataset.language)));
  }
  const chosen = recalled();
  const other = chosen && document.documentElement.lang !== chosen && document.querySelector(`a[data-language="${CSS.escape(chosen)}"]`);
  if (other instanceof HTMLAnchorElement) {
    const address = new URL(other.href);
    address.search = location.search;
    address.hash = location.hash;
    location.replace(address);
  }
}

/** @param {string} language */
function keep(language) {
  try {
    localStorage.setItem(KEY, language);
  } catch {
    // Refused: each page is in the language of its address.
  }
}

/** @returns {string}  "" where nothing was chosen */
function recalled() {
  try {
    return localStorage.getItem(KEY) ?? "";
  } catch {
    return "";
  }
}
