/**
 * Asking Python about the handbook's causes, for one section of a page. What Python has to know for
 * that is a file which the section names; it is fetched with the first question.
 */
import { fetched } from "./parts.js";

/** @typedef {import("./calculator_client.js").CalculatorClient} CalculatorClient */

export class Consultation {
  #section;
  #client;
  /** @type {Promise<string> | null} */
  #knowledge = null;

  /** @param {HTMLElement} section @param {CalculatorClient} client */
  constructor(section, client) {
    this.#section = section;
    this.#client = client;
  }

  /** The section names another file now, or a failed one shall be fetched again. */
  forget() {
    this.#knowledge = null;
  }

  /**
   * @param {object} asked  see calculators/as_text.py
   * @returns {Promise<any>}
   */
  async ask(asked) {
    const { knowledge } = this.#section.dataset;
    if (!knowledge) {
      return this.#client.ask(asked);
    }
    this.#knowledge ??= textOf(new URL(knowledge, document.baseURI).href);
    try {
      return await this.#client.consult(await this.#knowledge, asked);
    } catch (problem) {
      this.forget();
      throw problem;
    }
  }
}

/** @param {string} url */
async function textOf(url) {
  return (await fetched(url)).text();
}
