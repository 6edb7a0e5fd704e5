/**
 * The bare page of a calculator: brings its form to life, and talks with the page around it.
 */
import { CalculatorClient } from "../calculator_client.js";
import { LiveForm } from "../form.js";
import { NAMESPACE, VERSION, isOurs, textsToSet } from "./messages.js";

const section = /** @type {HTMLElement} */ (document.querySelector("section.live-form"));
const main = /** @type {HTMLElement} */ (document.querySelector("main"));
const calculator = String(section.dataset.calculator);

/** @param {LiveForm} form */
function talkWithTheOuterPage(form) {
  window.addEventListener("message", ({ source, data }) => {
    if (source !== window.parent || !isOurs(data)) {
      return;
    }
    try {
      form.take(textsToSet(data, form.names));
    } catch (problem) {
      tell("problem", { sentence: /** @type {Error} */ (problem).message });
    }
  });
  section.addEventListener("handbook-answer", (event) => {
    const { inputs, result } = /** @type {CustomEvent} */ (event).detail;
    const { values, warnings, problems } = result;
    tell("result", { inputs, values: mapped(values), warnings, problems });
  });
  section.addEventListener("handbook-off", (event) => {
    tell("problem", { sentence: /** @type {CustomEvent} */ (event).detail });
  });
  new ResizeObserver(() => tell("size", { height: Math.ceil(main.getBoundingClientRect().height) })).observe(main);
  tell("ready", { inputs: form.names });
}

/**
 * Sends to whichever page frames this one: who may do so is not known, and nothing is secret.
 *
 * @param {string} kind
 * @param {object} content
 */
function tell(kind, content) {
  window.parent.postMessage({ type: `${NAMESPACE}${kind}`, version: VERSION, calculator, ...content }, "*");
}

/** @param {Record<string, any>} values  as the calculators give them; the message promises less */
function mapped(values) {
  return Object.fromEntries(
    Object.entries(values).map(([name, { label, number, unit, shown }]) => [name, { label, number, unit, shown }]),
  );
}

/** The link to the calculator's page takes along what is typed, which the address has. */
function keepLinkInStep() {
  const link = /** @type {HTMLAnchorElement} */ (document.querySelector(".embedded__more a"));
  section.addEventListener("handbook-answer", () => (link.search = location.search));
}

// Python cannot be fetched from a file; the built page already says that the form is off then.
if (location.protocol !== "file:") {
  const runtime = new URL(String(section.dataset.runtime), document.baseURI).href;
  const form = new LiveForm(section, new CalculatorClient(runtime));
  keepLinkInStep();
  if (window.parent !== window) {
    talkWithTheOuterPage(form);
  }
  form.mount();
}
