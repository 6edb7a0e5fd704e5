/**
 * Asking Python on behalf of a practice call. Where it cannot answer, the bar says so, and the same
 * can be tried again.
 */
import { Consultation } from "../consultation.js";
import { reasonOf } from "../telling.js";
import { say } from "../words.js";

export class CallAsking {
  #section;
  #client;
  #bar;
  #consultation;
  /** What was asked for and failed last. @type {() => any} */
  #again = () => {};

  /**
   * @param {HTMLElement} section
   * @param {import("../calculator_client.js").CalculatorClient} client
   * @param {import("../call/bar.js").CallBar} bar
   */
  constructor(section, client, bar) {
    this.#section = section;
    this.#client = client;
    this.#bar = bar;
    this.#consultation = new Consultation(section, client);
  }

  /** The page has its other units now, and so other words for causes and checks. */
  changeUnits() {
    this.#consultation.forget();
  }

  /** Does again what failed last. */
  async tryAgain() {
    await this.#again();
  }

  /**
   * @param {object} asked  see calculators/as_text.py; the page's units go with it
   * @param {() => unknown} again  what “Try again” does
   * @returns {Promise<any>}  undefined where Python could not answer
   */
  async ask(asked, again) {
    this.#section.ariaBusy = "true";
    try {
      const { units } = this.#section.dataset;
      const answer = await this.#consultation.ask({ ...asked, units });
      this.#bar.tellStart(this.#client.word);
      this.#bar.offerToTryAgain(false);
      return answer;
    } catch (problem) {
      this.#again = again;
      this.#bar.offerToTryAgain(true);
      this.#bar.say(say("The call stands still, because Python could not work in this page: {problem}. What you did is kept.", { problem: reasonOf(problem) }));
      return undefined;
    } finally {
      this.#section.ariaBusy = "false";
    }
  }
}
