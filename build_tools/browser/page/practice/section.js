/**
 * What the pages around a record share: their parts, their sentences, and asking Python.
 */
import { savesData } from "../data_saving.js";
import { onRecordChange } from "./record.js";
import { reasonOf, tellBeside } from "../telling.js";
import { say, sayCount } from "../words.js";

/** @typedef {import("../calculator_client.js").CalculatorClient} CalculatorClient */

export class RecordSection {
  #client;
  #turn = 0;

  /** @param {HTMLElement} section @param {CalculatorClient} client */
  constructor(section, client) {
    this.element = section;
    this.#client = client;
    /** As the build made them. @type {any[]} */
    this.skills = JSON.parse(section.dataset.skills ?? "[]");
  }

  /**
   * Shows the section, and whatever `work` shows: now, after each change of the record, and when it
   * is asked for again. Where the reader saves data it waits to be asked for, and only what `quick`
   * shows is there at once.
   *
   * @param {() => void} work  asks Python
   * @param {() => void} [quick]  does without
   */
  show(work, quick = () => {}) {
    let isWanted = !savesData();
    const all = () => {
      quick();
      if (isWanted) {
        work();
      }
    };
    this.element.hidden = false;
    this.onClick({
      "try-again": () => {
        isWanted = true;
        work();
      },
    });
    // The theme may have put another page in the place of this one.
    const stop = onRecordChange(() => (this.element.isConnected ? all() : stop()));
    all();
    if (!isWanted) {
      this.say(say("You save data, so what works it out is not fetched yet."));
      this.retry.hidden = false;
    }
  }

  /** @returns {HTMLButtonElement} */
  get retry() {
    return /** @type {HTMLButtonElement} */ (this.element.querySelector("[data-action=try-again]"));
  }

  /** @param {string} name @returns {any}  the part of the section that has this name */
  part(name) {
    return this.element.querySelector(`[data-part="${name}"]`);
  }

  /** @param {string} sentence */
  say(sentence) {
    this.part("status").textContent = sentence;
  }

  /** @param {string} sentence  on what was done last, "" for nothing */
  tell(sentence) {
    this.part("told").textContent = sentence;
  }

  /** @param {string} sentence  "" where there is no problem @param {string} [part] */
  tellProblem(sentence, part = "problem") {
    tellBeside(this.part(part), sentence);
  }

  /** @param {Record<string, (button: HTMLButtonElement) => void>} actions  by data-action */
  onClick(actions) {
    this.element.addEventListener("click", (event) => {
      const button = event.target instanceof Element && event.target.closest("button[data-action]");
      if (button instanceof HTMLButtonElement) {
        actions[String(button.dataset.action)]?.(button);
      }
    });
  }

  /** @param {(files: File[]) => Promise<void>} take  gets the files that a person chooses, each time */
  onFiles(take) {
    const field = /** @type {HTMLInputElement} */ (this.part("files"));
    field.addEventListener("change", async () => {
      const files = [...(field.files ?? [])];
      field.value = ""; // so that the same file can be chosen again
      if (files.length) {
        await take(files);
      }
    });
  }

  /**
   * Asks Python; only the last of several questions is answered.
   *
   * @param {object} asked  see calculators/practice/record_work.py
   * @returns {Promise<any>}  null where a later question made it stale, or Python does not start
   */
  async ask(asked) {
    const turn = ++this.#turn;
    this.retry.hidden = true;
    this.say(say("One moment …"));
    try {
      const answer = await this.#client.ask(asked);
      if (turn !== this.#turn) {
        return null;
      }
      this.say("");
      return answer;
    } catch (problem) {
      if (turn === this.#turn) {
        this.say(say("This cannot be worked out now ({problem}). Nothing is lost.", { problem: reasonOf(problem) }));
        this.retry.hidden = false;
      }
      return null;
    }
  }
}

/** @param {number} number @param {string} one @param {string} many @returns {string} */
export function counted(number, one, many) {
  return `${number.toLocaleString("en-US")} ${sayCount(number, one, many)}`;
}
