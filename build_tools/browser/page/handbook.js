/**
 * Brings the forms of a page to life. Loaded on every page as a module.
 */
import { CalculatorClient } from "./calculator_client.js";
import { completeSnippets } from "./embedding/snippet.js";
import { LiveForm } from "./form.js";
import { registerOfflineWorker, tellAge } from "./offline/offline.js";

/**
 * One client, and so one worker, for each runtime that pages name; in practice there is one.
 *
 * @type {Map<string, CalculatorClient>}
 */
const clients = new Map();

function mountForms() {
  /** @type {NodeListOf<HTMLElement>} */
  const sections = document.querySelectorAll("section.live-form:not([data-mounted])");
  for (const section of sections) {
    const runtime = new URL(String(section.dataset.runtime), document.baseURI).href;
    if (!clients.has(runtime)) {
      clients.set(runtime, new CalculatorClient(runtime));
    }
    new LiveForm(section, /** @type {CalculatorClient} */ (clients.get(runtime))).mount();
  }
}

function comeToLife() {
  mountForms();
  completeSnippets();
  tellAge();
}

/** Where the theme changes pages without loading them, it tells of each new one. */
const pages = /** @type {any} */ (window).document$;

// Python cannot be fetched from a file; the built page already says that the form is off then.
if (location.protocol !== "file:") {
  if (pages) {
    pages.subscribe(comeToLife);
  } else {
    // A module runs when the page is parsed.
    comeToLife();
  }
  registerOfflineWorker();
}
