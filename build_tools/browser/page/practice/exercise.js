/**
 * An exercise: draws a question from a seed, takes the answers, has them marked by Python, which
 * works everything out again, and notes the first answer to each question in the learner's record.
 */
import { Consultation } from "../consultation.js";
import { copyLink } from "../copying.js";
import { savesData } from "../data_saving.js";
import { onUnits } from "../units/typed.js";
import { button, element, part } from "../element.js";
import { choiceField, orderField, textField } from "./fields.js";
import { addAttempt, readRecord } from "./record.js";
import { inAWord, rows, showResult } from "./result.js";
import { addressWithSeed, newSeed, seedInAddress } from "./seeds.js";
import { leadTo, reasonOf } from "../telling.js";
import { marked, say } from "../words.js";

/** @typedef {import("../calculator_client.js").CalculatorClient} CalculatorClient */

const LATER = marked("Only the first answer to a question counts in your record.");

/** @param {(section: HTMLElement) => CalculatorClient} clientFor */
export function mountExercises(clientFor) {
  for (const found of document.querySelectorAll("section.exercise:not([data-mounted])")) {
    const section = /** @type {HTMLElement} */ (found);
    new Exercise(section, clientFor(section)).mount();
  }
}

class Exercise {
  #section;
  #consultation;
  /** @type {any} */
  #exercise;
  #seed = "";
  /** By the name of what is asked. @type {Map<string, import("./fields.js").Field>} */
  #fields = new Map();
  #isCounted = false;
  #turn = 0;
  /** What to do again after a failure. @type {() => unknown} */
  #again = () => this.#pose();

  /** @param {HTMLElement} section @param {CalculatorClient} client */
  constructor(section, client) {
    this.#section = section;
    this.#consultation = new Consultation(section, client);
    this.#exercise = JSON.parse(String(section.dataset.exercise));
  }

  mount() {
    this.#section.dataset.mounted = "";
    this.#section.hidden = false;
    this.#section.addEventListener("click", (event) => this.#clicked(event));
    part(this.#section, "answers").addEventListener("submit", (event) => this.#submitted(/** @type {SubmitEvent} */ (event)));
    onUnits(() => this.#changeUnits());
    this.#seed = seedInAddress() || newSeed();
    if (savesData()) {
      this.#say(say("You save data, so nothing is fetched yet."));
      this.#retry.textContent = say("Ask me a question");
      this.#retry.hidden = false;
    } else {
      this.#pose();
    }
  }

  /** Shows the question of the seed. */
  async #pose() {
    this.#again = () => this.#pose();
    const question = await this.#ask({ work: "pose" });
    if (!question) {
      return;
    }
    part(this.#section, "after").hidden = false;
    part(this.#section, "result").replaceChildren();
    this.#fields.clear();
    this.#isCounted = this.#wasAnswered();
    if (question.problem) {
      part(this.#section, "question").replaceChildren();
      part(this.#section, "answers").replaceChildren();
      this.#say(question.problem);
      return;
    }
    history.replaceState(history.state, "", addressWithSeed(this.#seed));
    this.#say("");
    part(this.#section, "seed").textContent = say("Question {seed}", { seed: this.#seed });
    part(this.#section, "question").replaceChildren(element("p", {}, question.story), ...rows(question.given));
    const fields = question.asked.map((/** @type {any} */ asked) => this.#field(asked, question.items));
    part(this.#section, "answers").replaceChildren(...fields, sureButtons());
  }

  /** Whether the record has an answer to this question, as after a reload of the page. */
  #wasAnswered() {
    const { attempts } = readRecord().record;
    return attempts.some((/** @type {any} */ one) => one?.item === this.#exercise.id && one.seed === this.#seed);
  }

  /** The same question in the other units; what was answered stays, as it has its units with it. */
  async #changeUnits() {
    this.#exercise = JSON.parse(String(this.#section.dataset.exercise));
    this.#consultation.forget();
    if (!this.#section.isConnected || !this.#fields.size) {
      return;
    }
    const isCounted = this.#isCounted;
    const isMarked = part(this.#section, "result").hasChildNodes();
    const answers = [...this.#fields].map(([name, field]) => ({ name, answer: field.answer() }));
    await this.#pose();
    for (const { name, answer } of answers) {
      this.#fields.get(name)?.put(answer);
    }
    this.#isCounted = isCounted;
    if (isMarked) {
      await this.#mark(false);
    }
  }

  /** @param {any} asked @param {any} [items] @returns {HTMLElement} */
  #field(asked, items) {
    const id = `answer-${asked.name.replaceAll(" ", "-")}`;
    const field = items ? orderField(asked, id, items, (sentence) => this.#say(sentence)) : asked.choices.length ? choiceField(asked, id) : textField(asked, id);
    this.#fields.set(asked.name, field);
    return field.element;
  }

  /** @param {SubmitEvent} event */
  #submitted(event) {
    event.preventDefault();
    const button = /** @type {HTMLButtonElement | null} */ (event.submitter);
    this.#mark(button?.value === "sure");
  }

  /** @param {boolean} sure */
  async #mark(sure) {
    this.#again = () => this.#mark(sure);
    const seed = this.#seed;
    const answers = Object.fromEntries([...this.#fields].map(([name, field]) => [name, field.answer()]));
    const result = await this.#ask({ work: "mark", answers });
    if (!result) {
      return;
    }
    for (const [name, field] of this.#fields) {
      field.tellProblem(result.problems?.[name] ?? "");
      field.tell(result.fields?.[name] ?? null);
    }
    if (result.problem) {
      this.#say(result.problem);
      return;
    }
    const wrong = Object.keys(result.problems);
    if (wrong.length) {
      part(this.#section, "result").replaceChildren();
      this.#say(say("Nothing is marked yet. {problem}", { problem: Object.values(result.problems).join(" ") }));
      this.#fields.get(wrong[0])?.focus();
      return;
    }
    this.#askBesides(result.ask);
    const noted = await this.#note(result, sure, seed);
    if (seed !== this.#seed) {
      return;
    }
    part(this.#section, "result").replaceChildren(...showResult(result, noted));
    this.#say(inAWord(result));
    leadTo(part(this.#section, "result"));
  }

  /** @param {any[]} asked  further fields that would help to find the slip */
  #askBesides(asked) {
    for (const one of asked) {
      if (!this.#fields.has(one.name)) {
        const buttons = part(this.#section, "answers").lastElementChild;
        buttons?.before(this.#field({ ...one, label: say("First: {label}", { label: one.label.toLowerCase() }) }));
      }
    }
  }

  /** @param {any} result @param {boolean} sure @param {string} seed @returns {Promise<string>} */
  async #note(result, sure, seed) {
    if (this.#isCounted) {
      return say(LATER);
    }
    this.#isCounted = true;
    const { id, family, skill } = this.#exercise;
    const { right, score, critical } = result;
    const { kept, sentence } = await addAttempt({ item: id, family, skill, right, sure, score, critical, seed });
    return kept ? say("Noted in your record.") : sentence;
  }

  /** @param {object} asked @returns {Promise<any>}  null where a later request made it stale */
  async #ask(asked) {
    const turn = ++this.#turn;
    this.#retry.hidden = true;
    const request = { ...asked, exercise: this.#exercise, seed: this.#seed, units: this.#section.dataset.units };
    try {
      const answer = await this.#consultation.ask(request);
      return turn === this.#turn ? answer : null;
    } catch (problem) {
      if (turn === this.#turn) {
        this.#say(say("This cannot be worked out now ({problem}). What you wrote stays.", { problem: reasonOf(problem) }));
        this.#retry.textContent = say("Try again");
        this.#retry.hidden = false;
      }
      return null;
    }
  }

  /** @param {Event} event */
  #clicked(event) {
    const pressed = event.target instanceof Element && event.target.closest("button[data-action]");
    switch (pressed instanceof HTMLElement && pressed.dataset.action) {
      case "try-again":
        this.#again();
        break;
      case "another":
        this.#another();
        break;
      case "copy-link":
        this.#copyLink();
        break;
    }
  }

  async #another() {
    this.#seed = newSeed();
    await this.#pose();
    leadTo(part(this.#section, "heading"));
  }

  async #copyLink() {
    this.#say(await copyLink(addressWithSeed(this.#seed).href));
  }

  /** @returns {HTMLButtonElement} */
  get #retry() {
    return button(this.#section, "try-again");
  }

  /** @param {string} sentence */
  #say(sentence) {
    part(this.#section, "status").textContent = sentence;
  }
}

function sureButtons() {
  const made = [["sure", say("Mark it: I am sure")], ["unsure", say("Mark it: I am not sure")]].map(([value, words]) => element("button", { type: "submit", className: "exercise__button exercise__button--mark", value }, words));
  return element("div", { className: "exercise__row" }, ...made);
}
