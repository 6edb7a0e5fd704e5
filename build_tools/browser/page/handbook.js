/**
 * Brings the forms of a page, and its choice of a unit, to life. Loaded on every page as a module.
 */
import { CalculatorClient } from "./calculator_client.js";
import { mountCalls } from "./call/call.js";
import { showWayBack } from "./call/way_back.js";
import { mountDrawer } from "./drawer.js";
import { completeSnippets } from "./embedding/snippet.js";
import { LiveForm } from "./form.js";
import { registerOfflineWorker, tellAge } from "./offline/offline.js";
import { mountExercises } from "./practice/exercise.js";
import { mountRecordPages } from "./practice/record_pages.js";
import { unfoldForPaper } from "./paper.js";
import { mountPracticeCalls } from "./practice/call.js";
import { mountStepMarks } from "./step_marks.js";
import { mountUnitChoice } from "./unit_choice.js";
import { rememberLanguage } from "./language.js";
import { whenWordsAreHere } from "./words.js";

/** Whoever writes into the record from this page (a test does) shares what this page knows of it. */
export { addAttempt } from "./practice/record.js";

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
    new LiveForm(section, clientFor(section)).mount();
  }
}

/** @param {HTMLElement} section  that names a runtime @returns {CalculatorClient} */
function clientFor(section) {
  const runtime = new URL(String(section.dataset.runtime), document.baseURI).href;
  const client = clients.get(runtime) ?? new CalculatorClient(runtime);
  clients.set(runtime, client);
  return client;
}

/** How many pages these scripts have served so far. */
let pagesSoFar = 0;

function comeToLife() {
  if (pagesSoFar > 0) {
    if (!isOfThisEdition()) {
      location.reload(); // scripts of one edition never serve a page of another
      return;
    }
    tellNewPage();
  }
  pagesSoFar += 1;
  rememberLanguage();
  mountForms();
  mountCalls(clientFor);
  mountPracticeCalls(clientFor);
  mountExercises(clientFor);
  mountRecordPages(clientFor);
  completeSnippets();
  mountUnitChoice();
  mountDrawer();
  mountStepMarks();
  showWayBack();
  tellAge();
}

/** Whether the present page was built together with these scripts. */
function isOfThisEdition() {
  const [line] = document.getElementsByClassName("edition");
  const assets = line instanceof HTMLElement && line.dataset.assets;
  return !assets || import.meta.url.includes(`/${assets}/`);
}

/** A browser tells a screen reader of a page that it loads, but not of one that is put in place. */
function tellNewPage() {
  const heading = document.querySelector("h1");
  if (heading && !location.hash) {
    heading.tabIndex = -1;
    heading.focus({ preventScroll: true });
  }
}

/** Where the theme changes pages without loading them, it tells of each new one. */
const pages = /** @type {any} */ (window).document$;

// Python cannot be fetched from a file; the built page already says that the form is off then.
if (location.protocol !== "file:") {
  whenWordsAreHere(() => {
    if (pages) {
      pages.subscribe(comeToLife);
    } else {
      // A module runs when the page is parsed.
      comeToLife();
    }
  });
  registerOfflineWorker();
  unfoldForPaper();
}
