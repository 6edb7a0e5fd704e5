/**
 * A call on the page "Find the cause": takes what was said and read, asks Python what is likely and
 * what to read next, and writes the visit record. The order is the person's; anything can be
 * changed later.
 */
import { Consultation } from "../consultation.js";
import { savesData } from "../data_saving.js";
import { forgetMarks } from "../step_marks.js";
import { hiddenAttribute, isOwnSystem, onUnits, shownSystem, withUnit } from "../units/typed.js";
import { keepUnit, recalledUnit } from "../unit_choice.js";
import { following, showNotes, titleOf } from "./guidance.js";
import { forgetCall, keepCall, newCall, recallCall } from "./memory.js";
import { isEmpty, NOTHING_READ, showRead } from "./numbers.js";
import { answerIn, copyText, recordText, saveText } from "./record.js";
import { showStanding } from "./standing.js";
import { WAY_BACK } from "./way_back.js";
import { showComplaints } from "./words.js";
import { say } from "../words.js";

const MILLISECONDS_AFTER_TYPING = 250;

/** @typedef {import("../calculator_client.js").CalculatorClient} CalculatorClient */
/** @typedef {HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement} Field */

/** @param {(section: HTMLElement) => CalculatorClient} clientFor */
export function mountCalls(clientFor) {
  for (const section of document.querySelectorAll("section.call:not(.practice-call, [data-mounted])")) {
    new Call(/** @type {HTMLElement} */ (section), clientFor(/** @type {HTMLElement} */ (section))).mount();
  }
}

class Call {
  #section;
  #client;
  #consultation;
  #state = recallCall();
  /** The last answer of Python. @type {any} */
  #picture = null;
  #leader = "";
  #turn = 0;
  /** By what is typed: words, or the numbers of a check. @type {Map<string, number>} */
  #timers = new Map();

  /** @param {HTMLElement} section @param {CalculatorClient} client */
  constructor(section, client) {
    this.#section = section;
    this.#client = client;
    this.#consultation = new Consultation(section, client);
    this.#state.kept.unit = recalledUnit() || (this.#state.kept.unit ?? "");
  }

  mount() {
    this.#section.dataset.mounted = "";
    this.#section.hidden = false;
    this.#fillIn();
    this.#section.addEventListener("input", (event) => this.#typed(/** @type {Field} */ (event.target)));
    this.#section.addEventListener("click", (event) => this.#clicked(event));
    onUnits(() => this.#changeUnits());
    if (savesData()) {
      this.#section.addEventListener("focusin", () => this.#ask(), { once: true });
    } else {
      this.#ask();
    }
    if (location.hash === WAY_BACK) {
      this.#show(this.#part("standing"));
    }
  }

  /** The page has its other units now: what was typed keeps its meaning. */
  #changeUnits() {
    this.#consultation.forget();
    if (this.#section.isConnected) {
      this.#fillIn();
      this.#keep();
      this.#ask();
    }
  }

  /** Gives what was typed in the system that is not shown its units, and dangers their words. */
  #bringIntoUnits() {
    const { kept, numbers } = this.#state;
    const wasOther = kept.units ? kept.units !== shownSystem() : !isOwnSystem();
    for (const block of wasOther ? this.#checks() : []) {
      const typed = numbers[String(block.dataset.check)] ?? {};
      for (const field of block.querySelectorAll("[data-numbers] input")) {
        const input = /** @type {HTMLInputElement} */ (field);
        if (typed[input.name]) {
          typed[input.name] = withUnit(typed[input.name], hiddenAttribute(input, "data-unit"));
        }
      }
    }
    kept.units = shownSystem();
    const boxes = /** @type {HTMLElement[]} */ (this.#fields("[data-danger]"));
    this.#state.dangers = this.#state.dangers.map((danger) => {
      const box = boxes.find((one) => hiddenAttribute(one, "data-danger") === danger);
      return box?.dataset.danger ?? danger;
    });
  }

  /** Puts what was kept into the fields. */
  #fillIn() {
    this.#bringIntoUnits();
    const { kept, answers, unsure, numbers, dangers, record } = this.#state;
    for (const field of this.#fields("[data-keep]")) {
      field.value = kept[String(field.dataset.keep)] ?? "";
    }
    for (const field of this.#fields("[data-record]")) {
      field.value = record[String(field.dataset.record)] ?? "";
    }
    const boxes = this.#fields("[data-danger]");
    for (const box of boxes) {
      /** @type {HTMLInputElement} */ (box).checked = dangers.includes(String(box.dataset.danger));
    }
    // A danger of an older edition, which has no box here any more, could never be taken back.
    this.#state.dangers = dangers.filter((danger) => boxes.some((box) => box.dataset.danger === danger));
    for (const block of this.#checks()) {
      const check = String(block.dataset.check);
      for (const radio of block.querySelectorAll("input[type=radio]")) {
        const input = /** @type {HTMLInputElement} */ (radio);
        input.checked = input.value === answers[check];
      }
      const doubt = block.querySelector("[data-part=unsure]");
      if (doubt instanceof HTMLInputElement) {
        doubt.checked = unsure.includes(check);
      }
      for (const field of block.querySelectorAll("[data-numbers] input")) {
        const input = /** @type {HTMLInputElement} */ (field);
        input.value = numbers[check]?.[input.name] ?? "";
      }
      this.#showAnswer(block);
    }
  }

  /** @param {Field} field */
  #typed(field) {
    const block = /** @type {HTMLElement | null} */ (field.closest("[data-check]"));
    const check = block?.dataset.check ?? "";
    const state = this.#state;
    if (field.dataset.keep) {
      state.kept[field.dataset.keep] = field.value;
      if (field.dataset.keep === "words") {
        this.#later("words", () => this.#hear(field.value));
      } else {
        if (field.dataset.keep === "unit") {
          keepUnit(this.#unit()?.dataset.link ? field.value : "");
        }
        this.#ask();
      }
    } else if (field.dataset.record) {
      state.record[field.dataset.record] = field.value;
    } else if (field.dataset.danger && field instanceof HTMLInputElement) {
      state.dangers = withOrWithout(state.dangers, field.dataset.danger, field.checked);
      this.#ask();
    } else if (field.closest("[data-numbers]") && block) {
      state.numbers[check] = { ...state.numbers[check], [field.name]: field.value };
      this.#later(check, () => this.#read(block));
    } else if (field.dataset.part === "unsure" && field instanceof HTMLInputElement) {
      state.unsure = withOrWithout(state.unsure, check, field.checked);
      this.#ask();
    } else if (field.type === "radio" && block) {
      this.#answer(block, field.value);
    }
    this.#keep();
  }

  /** @param {HTMLElement} block @param {string | null} answer  null takes it back */
  #answer(block, answer) {
    const check = String(block.dataset.check);
    if (answer === null) {
      delete this.#state.answers[check];
      for (const radio of block.querySelectorAll("input[type=radio]")) {
        /** @type {HTMLInputElement} */ (radio).checked = false;
      }
    } else {
      this.#state.answers[check] = answer;
    }
    this.#showAnswer(block);
    this.#ask();
  }

  /** @param {HTMLElement} block */
  #showAnswer(block) {
    const answer = this.#state.answers[String(block.dataset.check)];
    const shown = block.matches("details") ? block.querySelector("summary [data-part=answer]") : this.#section.querySelector(`[data-for="${block.dataset.check}"]`);
    if (shown) {
      shown.textContent = answer ? answerIn(block, answer) : block.matches("details") ? "" : say("not chosen");
    }
  }

  /** @param {Event} event */
  #clicked(event) {
    const button = event.target instanceof Element && event.target.closest("button");
    if (!button) {
      return;
    }
    const { action, fault, complaint } = button.dataset;
    const block = /** @type {HTMLElement | null} */ (button.closest("[data-check]"));
    switch (action) {
      case "next":
        this.#goOn();
        break;
      case "try-again":
        this.#ask();
        break;
      case "clear":
        if (block) {
          this.#answer(block, null);
        }
        break;
      case "complaint": {
        const radio = this.#section.querySelector(`[data-check=complaint] input[value="${complaint}"]`);
        if (radio instanceof HTMLInputElement) {
          radio.checked = true;
          this.#answer(/** @type {HTMLElement} */ (radio.closest("[data-check]")), String(complaint));
        }
        break;
      }
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
        copyText(this.#recordText()).then((sentence) => this.#tell(sentence));
        break;
      case "save":
        saveText(this.#recordText(), `visit-record-${this.#state.begun.slice(0, 10)}.txt`);
        this.#tell(say("The record is saved as a file."));
        break;
      case "end":
        this.#end();
        break;
    }
    this.#keep();
  }

  /** Opens the next check, or leads to the record where there is none. */
  #goOn() {
    const { check } = following(this.#picture);
    if (!this.#state.answers.complaint && !this.#state.dangers.length) {
      this.#show(/** @type {HTMLElement} */ (this.#section.querySelector("#call-words")));
    } else if (!check) {
      this.#show(this.#part("standing"));
    } else {
      const block = /** @type {HTMLDetailsElement} */ (this.#section.querySelector(`details[data-check="${check}"]`));
      for (const open of this.#section.querySelectorAll("details.call__check[open]")) {
        /** @type {HTMLDetailsElement} */ (open).open = open === block;
      }
      block.open = true;
      this.#show(/** @type {HTMLElement} */ (block.querySelector("summary")));
    }
  }

  /** @param {HTMLElement} place */
  #show(place) {
    place.focus({ preventScroll: true });
    place.scrollIntoView({ block: "start", behavior: matchMedia("(prefers-reduced-motion: reduce)").matches ? "auto" : "smooth" });
  }

  /** Asks Python where the call stands, and shows it. */
  async #ask() {
    const turn = ++this.#turn;
    this.#writeRecord();
    try {
      const picture = await this.#consult({ work: "diagnose", call: this.#call() });
      if (turn !== this.#turn) {
        return;
      }
      this.#picture = picture;
      this.#showPicture();
    } catch (problem) {
      if (turn === this.#turn) {
        this.#sayOff(problem);
      }
    }
  }

  /** @param {object} asked */
  async #consult(asked) {
    const answer = await this.#consultation.ask(asked);
    this.#part("start").textContent = say(this.#client.word);
    return answer;
  }

  /** The call as calculators/diagnosis/call.py takes it. */
  #call() {
    const { answers, unsure, kept, excluded, dangers } = this.#state;
    const readings = Object.entries(answers).filter(([check]) => check !== "complaint");
    return {
      complaint: answers.complaint ?? null,
      home: { control: this.#unit()?.dataset.control ?? null, water: kept.water || null },
      readings: Object.fromEntries(readings.map(([check, result]) => [check, { result, sure: !unsure.includes(check) }])),
      excluded,
      dangers,
    };
  }

  #showPicture() {
    const picture = this.#picture;
    const causes = JSON.parse(String(this.#section.dataset.causes));
    const unitLink = this.#unit()?.dataset.link ?? "";
    showStanding(this.#part("standing"), picture, causes, { excluded: this.#state.excluded, unitLink });
    const [leader] = picture.causes;
    this.#leader = leader ? `${causes[leader.fault].title}, ${leader.words}` : "";
    showNotes(this.#section, picture);
    this.#showNext();
    this.#writeRecord();
  }

  #showNext() {
    const { stop } = this.#picture;
    const { check, word } = following(this.#picture);
    const isStarted = Boolean(this.#state.answers.complaint);
    const button = /** @type {HTMLElement} */ (this.#section.querySelector("[data-action=next]"));
    const tryAgain = /** @type {HTMLElement} */ (this.#section.querySelector("[data-action=try-again]"));
    tryAgain.hidden = true;
    button.hidden = false;
    if (stop?.why === "danger") {
      this.#say(say("Stop here: make the place safe."));
      button.textContent = say("Why");
    } else if (!isStarted) {
      this.#say(say("Choose what the customer says."));
      button.textContent = say("Begin");
    } else {
      this.#say(this.#leader);
      button.textContent = check ? `${word}: ${titleOf(this.#section, check)}` : say("What to do");
    }
  }

  /** Finds the complaints that the customer's words may mean. @param {string} words */
  async #hear(words) {
    try {
      const found = words.trim() ? await this.#consult({ work: "complaints", words }) : [];
      if (words === this.#state.kept.words) {
        showComplaints(this.#section, words, found);
      }
    } catch (problem) {
      this.#sayOff(problem);
    }
  }

  /** Reads a check's numbers, and takes the result that they show. @param {HTMLElement} block */
  async #read(block) {
    const check = String(block.dataset.check);
    const numbers = this.#state.numbers[check];
    const units = String(this.#section.dataset.units);
    try {
      const read = isEmpty(numbers) ? NOTHING_READ : await this.#consult({ work: "read", check, numbers, units });
      if (numbers === this.#state.numbers[check] && showRead(block, read)) {
        this.#answer(block, read.result);
        this.#keep();
      }
    } catch (problem) {
      this.#sayOff(problem);
    }
  }

  #end() {
    if (confirm(say("Begin a new call? The readings and the record of this one are removed from this browser."))) {
      forgetCall();
      keepUnit("");
      forgetMarks();
      this.#state = newCall();
      this.#fillIn();
      this.#part("heard").replaceChildren();
      this.#ask();
      this.#show(/** @type {HTMLElement} */ (this.#section.querySelector("#call-words")));
    }
  }

  #keep() {
    const isKept = keepCall(this.#state);
    const told = this.#part("storage");
    told.textContent = isKept ? "" : say("This browser keeps nothing: when this page is closed, the call is lost.");
    told.hidden = isKept;
    this.#writeRecord();
  }

  #writeRecord() {
    const { answers, record } = this.#state;
    const isBegun = [...Object.values(answers), ...Object.values(record)].some(Boolean);
    this.#section.toggleAttribute("data-begun", isBegun); // until then the tables go on paper
    this.#part("paper").textContent = this.#recordText();
  }

  #recordText() {
    return recordText(this.#section, this.#state, this.#state.answers.complaint ? this.#leader : "");
  }

  /** @param {unknown} problem */
  #sayOff(problem) {
    const reason = problem instanceof Error ? problem.message : String(problem);
    this.#say(say("The ranking is off, because Python could not work in this page: {reason}. What you enter is kept; the table below works without it.", { reason }));
    /** @type {HTMLElement} */ (this.#section.querySelector("[data-action=next]")).hidden = true;
    /** @type {HTMLElement} */ (this.#section.querySelector("[data-action=try-again]")).hidden = false;
  }

  /** @param {string} typed  what is waited for @param {() => void} work */
  #later(typed, work) {
    clearTimeout(this.#timers.get(typed));
    this.#timers.set(typed, setTimeout(work, MILLISECONDS_AFTER_TYPING));
  }

  /** @param {string} sentence */
  #say(sentence) {
    const status = this.#part("status");
    if (status.textContent !== sentence) {
      status.textContent = sentence;
    }
  }

  /** @param {string} sentence */
  #tell(sentence) {
    this.#part("told").textContent = sentence;
  }

  #unit() {
    const [option] = /** @type {HTMLSelectElement} */ (this.#section.querySelector("#call-control")).selectedOptions;
    return option?.value ? option : null;
  }

  /** @returns {HTMLElement[]} */
  #checks() {
    return [...this.#section.querySelectorAll("[data-check]")].map((block) => /** @type {HTMLElement} */ (block));
  }

  /** @param {string} selector */
  #fields(selector) {
    return [...this.#section.querySelectorAll(selector)].map((field) => /** @type {Field} */ (field));
  }

  /** @param {string} name */
  #part(name) {
    return /** @type {HTMLElement} */ (this.#section.querySelector(`[data-part=${name}]`));
  }
}

/** @param {string[]} list @param {string} one @param {boolean} isIn */
function withOrWithout(list, one, isIn) {
  const others = list.filter((other) => other !== one);
  return isIn ? [...others, one] : others;
}
