/** On paper nothing is folded: what is folded on the screen opens while the page is printed. */
export function unfoldForPaper() {
  addEventListener("beforeprint", () => {
    for (const details of document.querySelectorAll("main details:not([open])")) {
      details.dataset.folded = "";
      details.open = true;
    }
  });
  addEventListener("afterprint", () => {
    for (const details of document.querySelectorAll("details[data-folded]")) {
      delete details.dataset.folded;
      details.open = false;
    }
  });
}
