/**
 * A live form: what is typed goes to Python, and the answer, or what is wrong with an input,
 * comes back into the page. Until an answer comes, the shown one stays and says whose it is.
 */
import { addressWith, textsInAddress } from "./address.js";
import { inOneLine, markAnswer, markEnglish, showAnswer, showPicture } from "./answer.js";
import { copyLink } from "./copying.js";
import { savesData } from "./data_saving.js";
import { elements } from "./element.js";
import { FormFields } from "./form_fields.js";
import { started, whenNearTheScreen } from "./waiting.js";
import { announce, reasonOf } from "./telling.js";
import { onUnits } from "./units/typed.js";
import { say } from "./words.js";

const MILLISECONDS_AFTER_TYPING = 150;

export class LiveForm {
  #section;
  #client;
  #fields;
  #status;
  #start;
  #answer;
  #tryAgain;
  #exampleAnswer;
  #timer = 0;
  /** Counts what was asked; an answer to anything but the last question is dropped. */
  #turn = 0;

  /**
   * @param {HTMLElement} section
   * @param {import("./calculator_client.js").CalculatorClient} client
   */
  constructor(section, client) {
    this.#section = section;
    this.#client = client;
    this.#fields = new FormFields(section);
    [this.#status] = elements(section, ".live-form__status");
    [this.#start] = elements(section, ".live-form__start");
    [this.#answer] = elements(section, ".live-form__answer");
    [this.#tryAgain] = elements(section, "[data-action=try-again]");
    this.#exampleAnswer = [...this.#answer.childNodes].map((node) => node.cloneNode(true));
  }

  /** Brings the form to life. Python starts when the form is needed: near the screen or touched. */
  mount() {
    this.#fields.open();
    for (const shown of elements(this.#section, ".live-form__buttons, .live-form__unit-choice")) {
      shown.hidden = false;
    }
    this.#section.dataset.mounted = "";
    this.#say(say("Change a number, and the answer follows."));
    this.#section.addEventListener("input", (event) => this.#typed(event));
    this.#section.addEventListener("click", (event) => this.#clicked(event));
    this.#section.addEventListener("focusin", () => this.#wake(), { once: true });
    onUnits(() => this.#changeUnits());
    if (!savesData()) {
      whenNearTheScreen(this.#section, () => this.#wake());
    }
    this.#restore();
  }

  /** The page has its other units now: what was typed is answered anew. */
  #changeUnits() {
    if (!this.#section.isConnected) {
      return;
    }
    this.#fields.changeUnits();
    if (this.#turn) {
      this.#ask();
    }
  }

  /** The inputs' names. */
  get names() {
    return this.#fields.names;
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
    this.#fields.take(texts);
    this.#ask();
  }

  /** Starts Python ahead of the first question. */
  async #wake() {
    if (this.#turn) {
      return;
    }
    const sayAhead = (/** @type {string} */ sentence) => !this.#turn && this.#say(sentence);
    try {
      await started(this.#client, sayAhead);
      this.#start.textContent = say(this.#client.word);
      this.#tryAgain.hidden = true;
      sayAhead(say("Change a number, and the answer follows."));
    } catch (problem) {
      this.#sayOff(problem);
    }
  }

  /** @param {Event} event */
  #typed({ target }) {
    if (target instanceof HTMLSelectElement && target.dataset.action === "unit") {
      this.#fields.fillIn(JSON.parse(target.value || "{}"));
    }
    this.#fields.follow();
    markAnswer(this.#answer, false);
    this.#turn += 1;
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.#ask(), MILLISECONDS_AFTER_TYPING);
  }

  /** Asks Python about the texts in the fields and shows what it says. */
  async #ask() {
    const turn = ++this.#turn;
    const isLatest = () => turn === this.#turn;
    const texts = this.#fields.texts();
    this.#writeAddress(texts);
    markAnswer(this.#answer, false);
    const { calculator, units } = this.#section.dataset;
    try {
      await started(this.#client, (sentence) => isLatest() && this.#say(sentence));
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

  /** @param {any} result */
  #show(result) {
    this.#start.textContent = say(this.#client.word);
    this.#tryAgain.hidden = true;
    this.#fields.showProblems(result.problems);
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

  /** @param {Record<string, string>} texts */
  #writeAddress(texts) {
    const url = addressWith(this.#section.id, this.#fields.isExample ? {} : texts);
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
    const url = addressWith(this.#section.id, this.#fields.texts());
    url.hash = this.#section.id;
    this.#say(await copyLink(url.href));
  }

  #backToExample() {
    clearTimeout(this.#timer);
    this.#turn += 1;
    this.#fields.reset();
    for (const choice of this.#section.querySelectorAll("select[data-action=unit]")) {
      /** @type {HTMLSelectElement} */ (choice).value = "";
    }
    this.#writeAddress({});
    this.#answer.replaceChildren(...this.#exampleAnswer.map((node) => node.cloneNode(true)));
    markAnswer(this.#answer, true);
    this.#say(say("This is the example again."));
  }

  /** @param {unknown} problem */
  #sayOff(problem) {
    const sentence = say("The form is off, because Python could not work in this page: {reason}.", { reason: reasonOf(problem) });
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
    announce(this.#status, sentence);
  }
}
