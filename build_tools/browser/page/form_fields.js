/**
 * The fields of a live form: what is in them, what is meant by it, and what is wrong with it.
 */
import { elements } from "./element.js";
import { addSlider } from "./slider.js";
import { markWrong, tellBeside } from "./telling.js";
import { hiddenAttribute, isOwnSystem, withUnit } from "./units/typed.js";

/**
 * @typedef {HTMLInputElement | HTMLSelectElement} Control
 * @typedef {{field: HTMLElement, control: Control, problem: HTMLElement}} Field
 */

export class FormFields {
  /** By the name of the input. @type {Map<string, Field>} */
  #fields = new Map();
  /** Put the sliders where the fields' texts are. @type {(() => void)[]} */
  #sliders = [];
  /** What the example has in each field, in the units that are shown. @type {Map<string, string>} */
  #examples = new Map();

  /** @param {HTMLElement} section */
  constructor(section) {
    for (const field of elements(section, "[data-input]")) {
      const control = /** @type {Control} */ (field.querySelector("input, select"));
      const [problem] = elements(field, ".live-form__problem");
      this.#fields.set(String(field.dataset.input), { field, control, problem });
    }
  }

  /** Lets a person type into them. */
  open() {
    for (const { field, control } of this.#fields.values()) {
      control.disabled = false;
      control.removeAttribute("readonly");
      this.#sliders.push(addSlider(field, control));
    }
    this.#noteExamples();
  }

  #noteExamples() {
    for (const [name, { control }] of this.#fields) {
      this.#examples.set(name, exampleOf(control));
    }
  }

  /** The inputs' names. */
  get names() {
    return [...this.#fields.keys()];
  }

  /** The page has its other units now: what was typed keeps its meaning. */
  changeUnits() {
    for (const [name, { field, control }] of this.#fields) {
      if (control.value === this.#examples.get(name)) {
        control.value = exampleOf(control);
      } else {
        control.value = withUnit(control.value, hiddenAttribute(field, "data-unit"));
      }
    }
    this.#noteExamples();
    this.#placeSliders();
  }

  /** @param {Map<string, string>} texts  a stranger's, by the names of inputs that there are */
  take(texts) {
    for (const [name, given] of texts) {
      const { field, control } = this.#named(name);
      // Who wrote a number alone meant the shop's own unit.
      const text = isOwnSystem() ? given : withUnit(given, hiddenAttribute(field, "data-unit"));
      control.value = text;
      if (control instanceof HTMLSelectElement && control.value !== text) {
        control.add(new Option(text, text, false, true));
      }
    }
    this.follow();
  }

  /** @param {Record<string, string>} figures  of a unit of equipment, by the input they are for */
  fillIn(figures) {
    for (const [name, text] of Object.entries(figures)) {
      this.#named(name).control.value = text;
    }
  }

  /** Puts the example back. */
  reset() {
    for (const { control } of this.#fields.values()) {
      control.value = exampleOf(control);
    }
    this.follow();
    this.showProblems({});
  }

  /** After a change: shows the fields that count now, and puts the sliders where the texts are. */
  follow() {
    this.#showFieldsThatCount();
    this.#placeSliders();
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

  #placeSliders() {
    for (const place of this.#sliders) {
      place();
    }
  }

  /** @returns {Record<string, string>}  the text of each input that counts */
  texts() {
    const counting = [...this.#fields].filter(([, { field }]) => !field.hidden);
    return Object.fromEntries(counting.map(([name, { field, control }]) => [name, meantBy(field, control)]));
  }

  /** Whether all of them have what the built page has. */
  get isExample() {
    return [...this.#fields.values()].every(({ control }) => control.value === exampleOf(control));
  }

  /** @param {Record<string, string>} problems  by input */
  showProblems(problems) {
    for (const [name, { control, problem }] of this.#fields) {
      const sentence = problems[name] ?? "";
      tellBeside(problem, sentence);
      markWrong(control, Boolean(sentence));
    }
  }

  /** @param {string} name  of an input that there is */
  #named(name) {
    return /** @type {Field} */ (this.#fields.get(name));
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
