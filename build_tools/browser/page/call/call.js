/**
 * A call on the page "Find the cause": takes what was said and read, has it ranked, and writes the
 * visit record. The order is the person's; anything can be changed later.
 */
import { savesData } from "../data_saving.js";
import { elements, part } from "../element.js";
import { forgetMarks } from "../step_marks.js";
import { leadTo, tellBeside } from "../telling.js";
import { onUnits } from "../units/typed.js";
import { keepUnit, recalledUnit } from "../unit_choice.js";
import { blockOf, checkOf, choose, fillIn, showAnswer, takeEntry, withOrWithout } from "./entries.js";
import { forgetCall, isBegun, keepCall, newCall, recallCall } from "./memory.js";
import { isEmpty, NOTHING_READ, showRead } from "./numbers.js";
import { Ranking } from "./ranking.js";
import { copyRecord, recordText, saveRecord } from "./record.js";
import { WAY_BACK } from "./way_back.js";
import { showComplaints } from "./words.js";
import { say } from "../words.js";

const MILLISECONDS_AFTER_TYPING = 250;

/** @typedef {import("../calculator_client.js").CalculatorClient} CalculatorClient */

/** @param {(section: HTMLElement) => CalculatorClient} clientFor */
export function mountCalls(clientFor) {
  for (const section of elements(document.body, "section.call:not(.practice-call, [data-mounted])")) {
    new Call(section, clientFor(section)).mount();
  }
}

class Call {
  #section;
  #ranking;
  #state = recallCall();
  /** By what is typed: words, or the numbers of a check. @type {Map<string, number>} */
  #timers = new Map();

  /** @param {HTMLElement} section @param {CalculatorClient} client */
  constructor(section, client) {
    this.#section = section;
    this.#ranking = new Ranking(section, client);
    this.#state.kept.unit = recalledUnit() || (this.#state.kept.unit ?? "");
  }

  mount() {
    this.#section.dataset.mounted = "";
    this.#section.hidden = false;
    fillIn(this.#section, this.#state);
    this.#section.addEventListener("input", (event) => this.#typed(/** @type {HTMLInputElement} */ (event.target)));
    this.#section.addEventListener("click", (event) => this.#clicked(event));
    onUnits(() => this.#changeUnits());
    if (savesData()) {
      this.#section.addEventListener("focusin", () => this.#ask(), { once: true });
    } else {
      this.#ask();
    }
    if (location.hash === WAY_BACK) {
      leadTo(this.#part("standing"));
    }
  }

  /** The page has its other units now: what was typed keeps its meaning. */
  #changeUnits() {
    this.#ranking.changeUnits();
    if (this.#section.isConnected) {
      fillIn(this.#section, this.#state);
      this.#keep();
      this.#ask();
    }
  }

  /** @param {HTMLInputElement} field */
  #typed(field) {
    const block = /** @type {HTMLElement} */ (blockOf(field));
    switch (takeEntry(this.#state, field)) {
      case "words":
        this.#later("words", () => this.#hear(field.value));
        break;
      case "number":
        this.#later(checkOf(field), () => this.#read(block));
        break;
      case "answer":
        this.#answer(block, field.value);
        break;
      case "unit":
        keepUnit(this.#unit()?.dataset.link ? field.value : "");
        this.#ask();
        break;
      case "water":
      case "danger":
      case "doubt":
        this.#ask();
        break;
    }
    this.#keep();
  }

  /** @param {HTMLElement} block @param {string} answer  "" takes it back */
  #answer(block, answer) {
    const { answers } = this.#state;
    if (answer) {
      answers[checkOf(block)] = answer;
    } else {
      delete answers[checkOf(block)];
    }
    choose(block, answer);
    showAnswer(this.#section, this.#state, block);
    this.#ask();
  }

  /** @param {Event} event */
  #clicked(event) {
    const pressed = event.target instanceof Element && event.target.closest("button");
    if (!pressed) {
      return;
    }
    const { action, fault, complaint } = pressed.dataset;
    switch (action) {
      case "next":
        this.#goOn();
        break;
      case "try-again":
        this.#ask();
        break;
      case "clear":
        this.#answer(/** @type {HTMLElement} */ (blockOf(pressed)), "");
        break;
      case "complaint":
        this.#answer(this.#found("[data-check=complaint]"), String(complaint));
        break;
      case "exclude":
      case "include":
        this.#state.excluded = withOrWithout(this.#state.excluded, String(fault), action === "exclude");
        this.#ask();
        this.#part("standing").focus();
        break;
      case "print":
        window.print();
        break;
      case "copy":
        copyRecord(this.#recordText()).then((sentence) => this.#tell(sentence));
        break;
      case "save":
        this.#tell(saveRecord(this.#recordText(), this.#state.begun));
        break;
      case "end":
        this.#end();
        break;
    }
    this.#keep();
  }

  #goOn() {
    if (!this.#state.answers.complaint && !this.#state.dangers.length) {
      leadTo(this.#found("#call-words"));
    } else {
      this.#ranking.goOn();
    }
  }

  /** Asks where the call stands now. */
  async #ask() {
    this.#writeRecord();
    await this.#ranking.follow(this.#state, { ...this.#unit()?.dataset });
    this.#writeRecord();
  }

  /** Finds the complaints that the customer's words may mean. @param {string} words */
  #hear(words) {
    const show = (/** @type {any[]} */ found) => showComplaints(this.#section, words, found);
    if (words.trim()) {
      this.#ranking.ask({ work: "complaints", words }, show, () => words === this.#state.kept.words);
    } else {
      show([]);
    }
  }

  /** Reads a check's numbers, and takes the result that they show. @param {HTMLElement} block */
  #read(block) {
    const check = checkOf(block);
    const numbers = this.#state.numbers[check] ?? {}; // none any more, where a new call has begun
    const take = (/** @type {import("./numbers.js").Read} */ read) => {
      if (showRead(block, read)) {
        this.#answer(block, String(read.result));
        this.#keep();
      }
    };
    if (isEmpty(numbers)) {
      take(NOTHING_READ);
    } else {
      const { units } = this.#section.dataset;
      this.#ranking.ask({ work: "read", check, numbers, units }, take, () => numbers === this.#state.numbers[check]);
    }
  }

  #end() {
    if (confirm(say("Begin a new call? The readings and the record of this one are removed from this browser."))) {
      forgetCall();
      keepUnit("");
      forgetMarks();
      this.#state = newCall();
      fillIn(this.#section, this.#state);
      this.#part("heard").replaceChildren();
      this.#ask();
      leadTo(this.#found("#call-words"));
    }
  }

  #keep() {
    const isKept = keepCall(this.#state);
    tellBeside(this.#part("storage"), isKept ? "" : say("This browser keeps nothing: when this page is closed, the call is lost."));
    this.#writeRecord();
  }

  #writeRecord() {
    this.#section.toggleAttribute("data-begun", isBegun(this.#state)); // until then the tables go on paper
    this.#part("paper").textContent = this.#recordText();
  }

  #recordText() {
    return recordText(this.#section, this.#state, this.#state.answers.complaint ? this.#ranking.leader : "");
  }

  /** @param {string} typed  what is waited for @param {() => void} work */
  #later(typed, work) {
    clearTimeout(this.#timers.get(typed));
    this.#timers.set(typed, setTimeout(work, MILLISECONDS_AFTER_TYPING));
  }

  /** @param {string} sentence */
  #tell(sentence) {
    this.#part("told").textContent = sentence;
  }

  #unit() {
    const [option] = /** @type {HTMLSelectElement} */ (this.#found("#call-control")).selectedOptions;
    return option?.value ? option : null;
  }

  /** @param {string} name */
  #part(name) {
    return part(this.#section, name);
  }

  /** @param {string} selector  of what the page always has */
  #found(selector) {
    return /** @type {HTMLElement} */ (this.#section.querySelector(selector));
  }
}
