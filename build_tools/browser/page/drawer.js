/**
 * The theme's list of pages, which a narrow screen keeps beside its edge, is opened with a label.
 * Here the label becomes a button for keys and for those who hear the page. `handbook.css` keeps
 * the closed list out of the way of the Tab key.
 */
import { say } from "./words.js";

/** Makes the label of a page a button. A page that comes in the place of another is called again. */
export function mountDrawer() {
  const label = document.querySelector("label.md-header__button[for=__drawer]");
  const open = document.getElementById("__drawer");
  if (!(label instanceof HTMLElement && open instanceof HTMLInputElement) || label.hasAttribute("role")) {
    return;
  }
  label.setAttribute("role", "button");
  label.setAttribute("aria-label", say("List of pages"));
  label.tabIndex = 0;
  const tell = () => label.setAttribute("aria-expanded", String(open.checked));
  tell();
  open.addEventListener("change", tell);
  label.addEventListener("keydown", (event) => {
    if (event.key === "Enter" || event.key === " ") {
      event.preventDefault();
      event.stopPropagation(); // the theme would press it a second time
      open.click();
      if (open.checked) {
        const [first] = document.querySelectorAll(".md-sidebar--primary a[href]");
        first instanceof HTMLElement && first.focus();
      }
    }
  });
  document.addEventListener("keydown", (event) => {
    if (event.key === "Escape" && open.checked) {
      open.click();
      label.focus();
    }
  });
}
