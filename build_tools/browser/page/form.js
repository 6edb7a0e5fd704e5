/**
 * A live form: what is typed goes to Python, and the answer, or what is wrong with an input,
 * comes back into the page. Until an answer comes, the shown one stays and says whose it is.
 */
import { addressWith, textsInAddress } from "./address.js";
import { inOneLine, markAnswer, markEnglish, showAnswer, showPicture } from "./answer.js";
import { savesData } from "./data_saving.js";
import { addSlider } from "./slider.js";
import { hiddenAttribute, isOwnSystem, onUnits, withUnit } from "./units/typed.js";
import { marked, say } from "./words.js";

const MILLISECONDS_AFTER_TYPING = 150;
const NEAR_THE_SCREEN = "300px";

/** @type {Record<string, string>} */
const WORDS_FOR = {
  fetching: marked("Fetching Python; the first time this takes a moment."),
  starting: marked("Python is here; loading the calculators."),
};

/** A start that is over sooner is not told: it would only be noise. */
const MILLISECONDS_BEFORE_TELLING = 400;

/** @typedef {HTMLInputElement | HTMLSelectElement} Control */

export class LiveForm {
  #section;
  #client;
  /** @type {Map<string, {field: HTMLElement, control: Control, problem: HTMLElement}>} */
  #fields = new Map();
  /** Put the sliders where the fields' texts are. @type {(() => void)[]} */
  #sliders = [];
  #status;
  #start;
  #answer;
  #tryAgain;
  #exampleAnswer;
  #timer = 0;
  /** Counts what was asked; an answer to anything but the last question is dropped. */
  #turn = 0;
  /** What the example has in each field, in the units that are shown. @type {Map<string, string>} */
  #examples = new Map();

  /**
   * @param {HTMLElement} section
   * @param {import("./calculator_client.js").CalculatorClient} client
   */
  constructor(section, client) {
    this.#section = section;
    this.#client = client;
    for (const field of elements(section, "[data-input]")) {
      const control = /** @type {Control} */ (field.querySelector("input, select"));
      const problem = elements(field, ".live-form__problem")[0];
      this.#fields.set(String(field.dataset.input), { field, control, problem });
    }
    [this.#status] = elements(section, ".live-form__status");
    [this.#start] = elements(section, ".live-form__start");
    [this.#answer] = elements(section, ".live-form__answer");
    [this.#tryAgain] = elements(section, "[data-action=try-again]");
    this.#exampleAnswer = [...this.#answer.childNodes].map((node) => node.cloneNode(true));
  }

  /** Brings the form to life. Python starts when the form is needed: near the screen or touched. */
  mount() {
    for (const { field, control } of this.#fields.values()) {
      control.disabled = false;
      control.removeAttribute("readonly");
      this.#sliders.push(addSlider(field, control));
    }
    for (const shown of elements(this.#section, ".live-form__buttons, .live-form__unit-choice")) {
      shown.hidden = false;
    }
    this.#section.dataset.mounted = "";
    this.#say(say("Change a number, and the answer follows."));
    this.#section.addEventListener("input", (event) => this.#typed(event));
    this.#section.addEventListener("click", (event) => this.#clicked(event));
    this.#section.addEventListener("focusin", () => this.#wake(), { once: true });
    this.#noteExamples();
    onUnits(() => this.#changeUnits());
    if (!savesData()) {
      this.#wakeNearTheScreen();
    }
    this.#restore();
  }

  #noteExamples() {
    for (const [name, { control }] of this.#fields) {
      this.#examples.set(name, exampleOf(control));
    }
  }

  /** The page has its other units now: what was typed keeps its meaning, and is answered anew. */
  #changeUnits() {
    if (!this.#section.isConnected) {
      return;
    }
    for (const [name, { field, control }] of this.#fields) {
      if (control.value === this.#examples.get(name)) {
        control.value = exampleOf(control);
      } else {
        control.value = withUnit(control.value, hiddenAttribute(field, "data-unit"));
      }
    }
    this.#noteExamples();
    this.#placeSliders();
    if (this.#turn) {
      this.#ask();
    }
  }

  #wakeNearTheScreen() {
    const observer = new IntersectionObserver(
      (entries) => {
        if (entries.some((entry) => entry.isIntersecting)) {
          observer.disconnect();
          this.#wake();
        }
      },
      { rootMargin: NEAR_THE_SCREEN },
    );
    observer.observe(this.#section);
  }

  /** The inputs' names. */
  get names() {
    return [...this.#fields.keys()];
  }

  /** Takes the inputs that the address carries. */
  #restore() {
    const texts = textsInAddress(this.#section.id, this.names);
    if (texts.size) {
      this.take(texts);
    }
  }

  /**
   * Puts texts into fields and asks about all of them; they are a stranger's and stay text.
   *
   * @param {Map<string, string>} texts  by the names of inputs that there are
   */
  take(texts) {
    clearTimeout(this.#timer);
    for (const [name, given] of texts) {
      const { field, control } = /** @type {{field: HTMLElement, control: Control}} */ (this.#fields.get(name));
      // Who wrote a number alone meant the shop's own unit.
      const text = isOwnSystem() ? given : withUnit(given, hiddenAttribute(field, "data-unit"));
      control.value = text;
      if (control instanceof HTMLSelectElement && control.value !== text) {
        control.add(new Option(text, text, false, true));
      }
    }
    this.#showFieldsThatCount();
    this.#placeSliders();
    this.#ask();
  }

  #placeSliders() {
    for (const place of this.#sliders) {
      place();
    }
  }

  /** Starts Python ahead of the first question. */
  async #wake() {
    if (this.#turn) {
      return;
    }
    try {
      await this.#ready(() => !this.#turn);
      this.#start.textContent = say(this.#client.word);
      this.#tryAgain.hidden = true;
      if (!this.#turn) {
        this.#say(say("Change a number, and the answer follows."));
      }
    } catch (problem) {
      this.#sayOff(problem);
    }
  }

  /** @param {Event} event */
  #typed({ target }) {
    if (target instanceof HTMLSelectElement && target.dataset.action === "unit") {
      this.#fillIn(JSON.parse(target.value || "{}"));
    }
    this.#showFieldsThatCount();
    this.#placeSliders();
    markAnswer(this.#answer, false);
    this.#turn += 1;
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.#ask(), MILLISECONDS_AFTER_TYPING);
  }

  /** @param {Record<string, string>} figures  of a unit of equipment, by the input they are for */
  #fillIn(figures) {
    for (const [name, text] of Object.entries(figures)) {
      /** @type {{control: Control}} */ (this.#fields.get(name)).control.value = text;
    }
  }

  /** Asks Python about the texts in the fields and shows what it says. */
  async #ask() {
    const turn = ++this.#turn;
    const isLatest = () => turn === this.#turn;
    const texts = this.#texts();
    this.#writeAddress(texts);
    markAnswer(this.#answer, false);
    const { calculator, units } = this.#section.dataset;
    try {
      await this.#ready(isLatest);
      if (!isLatest()) {
        return;
      }
      const result = await this.#client.calculate(String(calculator), texts, String(units));
      if (!isLatest()) {
        return;
      }
      this.#show(result);
      this.#tell("handbook-answer", { inputs: texts, result });
      const isAnswered = Object.keys(result.problems).length === 0;
      if (isAnswered && this.#answer.querySelector("[data-part=picture]")) {
        const picture = await this.#client.draw(String(calculator), texts, String(units));
        if (isLatest()) {
          showPicture(this.#answer, picture ?? "");
        }
      }
    } catch (problem) {
      if (isLatest()) {
        this.#sayOff(problem);
      }
    }
  }

  /**
   * Resolves when Python can be asked; tells what it waits for, once that has taken a while.
   *
   * @param {() => boolean} isWanted
   */
  async #ready(isWanted) {
    let stage = "fetching";
    let isSlow = false;
    const tell = () => isSlow && isWanted() && this.#say(say(WORDS_FOR[stage]));
    const timer = setTimeout(() => {
      isSlow = true;
      tell();
    }, MILLISECONDS_BEFORE_TELLING);
    try {
      await this.#client.start((reached) => {
        stage = reached;
        tell();
      });
    } finally {
      clearTimeout(timer);
    }
  }

  /** @param {any} result */
  #show(result) {
    this.#start.textContent = say(this.#client.word);
    this.#tryAgain.hidden = true;
    this.#showProblems(result.problems);
    markEnglish(this.#section, Object.values(result.problems).filter((one) => result.english?.includes(one)));
    const sentences = Object.values(result.problems);
    if (sentences.length) {
      this.#say(say("No answer to these numbers. {sentences}", { sentences: sentences.join(" ") }));
      return;
    }
    showAnswer(this.#answer, result);
    markAnswer(this.#answer, true);
    this.#say(say("Answer. {values}", { values: inOneLine(result.values) }));
  }

  /** @param {Record<string, string>} problems */
  #showProblems(problems) {
    for (const [name, { control, problem }] of this.#fields) {
      const sentence = problems[name] ?? "";
      problem.textContent = sentence;
      problem.hidden = !sentence;
      if (sentence) {
        control.setAttribute("aria-invalid", "true");
      } else {
        control.removeAttribute("aria-invalid");
      }
    }
  }

  /** Shows each field whose input counts, given the choices made before it, and hides the others. */
  #showFieldsThatCount() {
    for (const { field } of this.#fields.values()) {
      if (field.dataset.onlyWhen) {
        const { input, choices } = JSON.parse(field.dataset.onlyWhen);
        const other = this.#fields.get(input);
        field.hidden = !other || other.field.hidden || !choices.includes(other.control.value);
      }
    }
  }

  /** @returns {Record<string, string>}  the text of each input that counts */
  #texts() {
    const counting = [...this.#fields].filter(([, { field }]) => !field.hidden);
    return Object.fromEntries(counting.map(([name, { field, control }]) => [name, meantBy(field, control)]));
  }

  /** @param {Record<string, string>} texts */
  #writeAddress(texts) {
    const isExample = [...this.#fields.values()].every(({ control }) => control.value === exampleOf(control));
    const url = addressWith(this.#section.id, isExample ? {} : texts);
    history.replaceState(history.state, "", url);
  }

  /** @param {Event} event */
  #clicked(event) {
    const button = event.target instanceof Element && event.target.closest("[data-action]");
    switch (button instanceof HTMLElement && button.dataset.action) {
      case "try-again":
        this.#ask();
        break;
      case "copy-link":
        this.#copyLink();
        break;
      case "example":
        this.#backToExample();
        break;
    }
  }

  async #copyLink() {
    const url = addressWith(this.#section.id, this.#texts());
    url.hash = this.#section.id;
    try {
      await navigator.clipboard.writeText(url.href);
      this.#say(say("The link is copied."));
    } catch {
      this.#say(say("This browser does not let the page copy. The link is: {href}", { href: url.href }));
    }
  }

  #backToExample() {
    clearTimeout(this.#timer);
    this.#turn += 1;
    for (const { control } of this.#fields.values()) {
      control.value = exampleOf(control);
    }
    for (const choice of this.#section.querySelectorAll("select[data-action=unit]")) {
      /** @type {HTMLSelectElement} */ (choice).value = "";
    }
    this.#showFieldsThatCount();
    this.#placeSliders();
    this.#showProblems({});
    this.#writeAddress({});
    this.#answer.replaceChildren(...this.#exampleAnswer.map((node) => node.cloneNode(true)));
    markAnswer(this.#answer, true);
    this.#say(say("This is the example again."));
  }

  /** @param {unknown} problem */
  #sayOff(problem) {
    const reason = problem instanceof Error ? problem.message : String(problem);
    const sentence = say("The form is off, because Python could not work in this page: {reason}.", { reason });
    this.#say(say("{sentence} The answer below stays right for the numbers named with it.", { sentence }));
    this.#tryAgain.hidden = false;
    this.#tell("handbook-off", sentence);
  }

  /**
   * Tells the page's other scripts by an event of the form's section.
   *
   * @param {string} name
   * @param {unknown} detail
   */
  #tell(name, detail) {
    this.#section.dispatchEvent(new CustomEvent(name, { bubbles: true, detail }));
  }

  /** @param {string} sentence */
  #say(sentence) {
    if (this.#status.textContent !== sentence) {
      this.#status.textContent = sentence;
    }
  }
}

/**
 * @param {Control} control
 * @returns {string}  what the built page has in the field
 */
function exampleOf(control) {
  if (control instanceof HTMLSelectElement) {
    return [...control.options].find((option) => option.defaultSelected)?.value ?? "";
  }
  return control.defaultValue;
}

/**
 * @param {HTMLElement} field
 * @param {Control} control
 * @returns {string}  the text in a field; the example's, where it was rounded, as it was before
 */
function meantBy(field, control) {
  const exact = field.dataset.exact;
  if (exact && control.value === exampleOf(control)) {
    return exact;
  }
  return isOwnSystem() ? control.value : withUnit(control.value, field.dataset.unit);
}

/**
 * @param {HTMLElement} within
 * @param {string} selector
 * @returns {HTMLElement[]}
 */
function elements(within, selector) {
  return [...within.querySelectorAll(selector)].map((found) => /** @type {HTMLElement} */ (found));
}
