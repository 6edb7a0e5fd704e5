/**
 * The theme's list of pages, which a narrow screen keeps beside its edge, is opened with a label,
 * and so are the lists of its sections. Here these labels become buttons for keys and for those who
 * hear the page. `frame.css` keeps the Tab key away from what is closed or covered.
 */
import { say } from "./words.js";

/** They open the list of a section, or of a page's headings, and lead back. */
const LABELS = "label[for^=__nav_], label[for=__toc]";

/** Makes the labels of a page buttons. A page that comes in the place of another is called again. */
export function mountDrawer() {
  const label = document.querySelector("label.md-header__button[for=__drawer]");
  const open = document.getElementById("__drawer");
  const list = document.querySelector(".md-sidebar--primary");
  if (!(label instanceof HTMLLabelElement && open instanceof HTMLInputElement && list) || label.hasAttribute("role")) {
    return;
  }
  label.setAttribute("role", "button");
  label.setAttribute("aria-label", say("List of pages"));
  label.tabIndex = 0;
  const sections = /** @type {HTMLLabelElement[]} */ ([...list.querySelectorAll(LABELS)]);
  for (const section of sections.filter(({ textContent }) => !textContent?.trim())) {
    section.setAttribute("aria-label", section.parentElement?.textContent?.trim() ?? ""); // only a sign
  }
  const tell = () => {
    label.setAttribute("aria-expanded", String(open.checked));
    for (const section of sections) {
      section.setAttribute("role", "button");
      section.tabIndex = open.checked ? 0 : -1; // on a wide screen they are only headings
    }
  };
  tell();
  open.addEventListener("change", tell);
  onPress(label, () => {
    open.click();
    if (open.checked) {
      focusFirst(list, `a[href], ${LABELS}`);
    }
  });
  for (const section of sections) {
    onPress(section, () => {
      section.click();
      // The label that leads back, or in again, has taken its place.
      focusFirst(list, `label[for="${section.htmlFor}"]`);
    });
  }
  document.addEventListener("keydown", (event) => {
    if (event.key === "Escape" && open.checked) {
      open.click();
      label.focus();
    }
  });
}

/** @param {HTMLLabelElement} label @param {() => void} act */
function onPress(label, act) {
  label.addEventListener("keydown", (event) => {
    if (event.key === "Enter" || event.key === " ") {
      event.preventDefault();
      event.stopPropagation(); // the theme would press it a second time
      act();
    }
  });
}

/** @param {Element} list @param {string} what  the first of these that is to be seen is focused */
function focusFirst(list, what) {
  const seen = [...list.querySelectorAll(what)].find((one) => one.checkVisibility({ visibilityProperty: true }));
  /** @type {HTMLElement | undefined} */ (seen)?.focus();
}
