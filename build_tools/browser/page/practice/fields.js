/**
 * The fields of a question: a text with its unit, words to choose from, or steps to put in order.
 * Each has a place for what is wrong with an answer and for what is said of it.
 *
 * @typedef {object} Field
 * @property {HTMLElement} element
 * @property {() => any} answer
 * @property {(answer: any) => void} put  an answer that was given before
 * @property {(sentence: string) => void} tellProblem  "" takes it away
 * @property {(feedback: {right: boolean, feedback: string, wrong?: string[]} | null) => void} tell
 * @property {() => void} focus
 */
import { element } from "../element.js";
import { markWrong, tellBeside } from "../telling.js";
import { say } from "../words.js";

/** @param {any} asked  see calculators/practice/exercises.py @param {string} id @returns {Field} */
export function textField(asked, id) {
  const input = element("input", { type: "text", id, name: asked.name, autocomplete: "off", autocapitalize: "off", spellcheck: false });
  const help = element("p", { className: "exercise__help", id: `${id}-help` }, upper(asked.help));
  const { problem, said, tellProblem, tell } = told(id, [input]);
  input.setAttribute("aria-describedby", `${help.id} ${problem.id} ${said.id}`);
  const label = element("label", { className: "exercise__label", htmlFor: id }, asked.label);
  const made = element("div", { className: "exercise__field" }, label, input, help, problem, said);
  const put = (/** @type {string} */ text) => {
    input.value = text;
  };
  return { element: made, answer: () => input.value, put, tellProblem, tell, focus: () => input.focus() };
}

/** @param {any} asked @param {string} id @returns {Field} */
export function choiceField(asked, id) {
  const inputs = asked.choices.map((/** @type {string} */ choice) => element("input", { type: "radio", name: id, value: choice, autocomplete: "off" }));
  const { problem, said, tellProblem, tell } = told(id, inputs);
  const choices = inputs.map((/** @type {HTMLInputElement} */ input) => element("label", { className: "exercise__choice" }, input, element("span", {}, input.value)));
  const legend = element("legend", { className: "exercise__label" }, asked.label);
  const made = element("fieldset", { className: "exercise__field" }, legend, ...choices, problem, said);
  made.setAttribute("aria-describedby", `${problem.id} ${said.id}`);
  const answer = () => inputs.find((/** @type {HTMLInputElement} */ input) => input.checked)?.value ?? "";
  const put = (/** @type {string} */ choice) => {
    for (const input of inputs) {
      input.checked = input.value === choice;
    }
  };
  return { element: made, answer, put, tellProblem, tell, focus: () => (inputs.find((/** @type {HTMLInputElement} */ input) => input.checked) ?? inputs[0]).focus() };
}

/**
 * @param {any} asked
 * @param {string} id
 * @param {{name: string, text: string}[]} items
 * @param {(sentence: string) => void} announce  tells who does not see what was moved
 * @returns {Field}
 */
export function orderField(asked, id, items, announce) {
  const list = element("ol", { className: "exercise__items", id });
  const { problem, said, tellProblem, tell } = told(id, [list]);
  const place = (/** @type {Element} */ row) => [...list.children].indexOf(row);

  /** @param {HTMLElement} row @param {number} by */
  const move = (row, by) => {
    const other = list.children[place(row) + by];
    if (!other) {
      return;
    }
    list.insertBefore(by < 0 ? row : other, by < 0 ? other : row);
    list.querySelectorAll("[data-wrong]").forEach((one) => one.removeAttribute("data-wrong"));
    announce(say("Step {place} of {count}: {text}", { place: place(row) + 1, count: items.length, text: row.dataset.text }));
  };

  for (const { name, text } of items) {
    const row = element("li", {}, element("span", {}, text));
    row.dataset.name = name;
    row.dataset.text = text;
    const buttons = [[say("Up"), "↑", -1], [say("Down"), "↓", 1]].map(([word, arrow, by]) => {
      const button = element("button", { type: "button", className: "exercise__button" }, String(arrow));
      button.setAttribute("aria-label", `${word}: ${text}`);
      button.addEventListener("click", () => {
        move(row, Number(by));
        button.focus();
      });
      return button;
    });
    row.append(element("span", { className: "exercise__moves" }, ...buttons));
    list.append(row);
  }
  const label = element("p", { className: "exercise__label", id: `${id}-label` }, asked.label);
  list.setAttribute("aria-labelledby", label.id);
  const answer = () => [...list.children].map((row) => /** @type {HTMLElement} */ (row).dataset.name);
  const put = (/** @type {string[]} */ names) => {
    const rows = new Map([...list.children].map((row) => [/** @type {HTMLElement} */ (row).dataset.name, row]));
    list.append(...names.flatMap((name) => rows.get(name) ?? []));
  };
  const tellAll = (/** @type {any} */ feedback) => {
    tell(feedback && { ...feedback, feedback: feedback.right ? feedback.feedback : "" });
    for (const row of list.children) {
      const wrong = feedback?.wrong?.includes(/** @type {HTMLElement} */ (row).dataset.name);
      row.toggleAttribute("data-wrong", Boolean(wrong));
    }
  };
  const focus = () => list.querySelector("button")?.focus();
  return { element: element("div", { className: "exercise__field" }, label, list, problem, said), answer, put, tellProblem, tell: tellAll, focus };
}

/** @param {string} id @param {HTMLElement[]} controls */
function told(id, controls) {
  const problem = element("p", { className: "exercise__problem", id: `${id}-problem`, hidden: true });
  const said = element("p", { className: "exercise__said", id: `${id}-said`, hidden: true });
  const tellProblem = (/** @type {string} */ sentence) => {
    tellBeside(problem, sentence);
    for (const control of controls) {
      if (control instanceof HTMLInputElement) {
        markWrong(control, Boolean(sentence));
      }
    }
  };
  const tell = (/** @type {{right: boolean, feedback: string} | null} */ feedback) => {
    tellBeside(said, feedback?.feedback ?? "");
    said.dataset.right = String(Boolean(feedback?.right));
  };
  return { problem, said, tellProblem, tell };
}

/** @param {string} text */
function upper(text) {
  return text && `${text[0].toUpperCase()}${text.slice(1)}.`;
}
