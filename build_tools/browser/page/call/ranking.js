/**
 * Where a call stands: asks Python what is likely and what to read next, and shows what it says, in
 * the part for that, beside the checks and in the bar.
 */
import { Consultation } from "../consultation.js";
import { elements, part } from "../element.js";
import { leadTo, reasonOf } from "../telling.js";
import { CallBar } from "./bar.js";
import { following, showNotes, titleOf } from "./guidance.js";
import { askedOf } from "./memory.js";
import { showStanding } from "./standing.js";
import { say } from "../words.js";

export class Ranking {
  #section;
  #client;
  #consultation;
  #bar;
  /** The last answer of Python. @type {any} */
  #picture = null;
  #turn = 0;
  /** What leads, in words; "" before anything does. */
  leader = "";

  /** @param {HTMLElement} section @param {import("../calculator_client.js").CalculatorClient} client */
  constructor(section, client) {
    this.#section = section;
    this.#client = client;
    this.#consultation = new Consultation(section, client);
    this.#bar = new CallBar(section);
  }

  /** The page has its other units now, and so other words for causes and checks. */
  changeUnits() {
    this.#consultation.forget();
  }

  /**
   * Asks Python where the call stands, and shows it, unless something was asked since.
   *
   * @param {import("./memory.js").CallState} state
   * @param {{control?: string, link?: string}} unit  what is known of the unit that was chosen
   */
  async follow(state, unit) {
    const turn = ++this.#turn;
    const show = (/** @type {any} */ picture) => this.#show(picture, state, unit.link ?? "");
    await this.ask({ work: "diagnose", call: askedOf(state, unit.control) }, show, () => turn === this.#turn);
  }

  /**
   * Asks Python, and uses what it answers; where that fails, the bar says so.
   *
   * @param {object} asked  see calculators/as_text.py
   * @param {(answer: any) => void} use
   * @param {() => boolean} isWanted  whether anybody still waits for this answer
   */
  async ask(asked, use, isWanted) {
    try {
      const answer = await this.#consultation.ask(asked);
      this.#bar.tellStart(this.#client.word);
      if (isWanted()) {
        use(answer);
      }
    } catch (problem) {
      if (isWanted()) {
        this.#sayOff(problem);
      }
    }
  }

  /** @param {any} picture @param {import("./memory.js").CallState} state @param {string} unitLink */
  #show(picture, { answers, excluded }, unitLink) {
    this.#picture = picture;
    const causes = JSON.parse(String(this.#section.dataset.causes));
    const [leader] = picture.causes;
    this.leader = leader ? `${causes[leader.fault].title}, ${leader.words}` : "";
    showStanding(part(this.#section, "standing"), picture, causes, { excluded, unitLink });
    showNotes(this.#section, picture);
    this.#showNext(Boolean(answers.complaint));
  }

  /** @param {boolean} isStarted  whether a complaint is chosen */
  #showNext(isStarted) {
    const { check, word } = following(this.#picture);
    this.#bar.offerToTryAgain(false);
    if (this.#picture.stop?.why === "danger") {
      this.#bar.say(say("Stop here: make the place safe."));
      this.#bar.offerNext(say("Why"));
    } else if (!isStarted) {
      this.#bar.say(say("Choose what the customer says."));
      this.#bar.offerNext(say("Begin"));
    } else {
      this.#bar.say(this.leader);
      this.#bar.offerNext(check ? `${word}: ${titleOf(this.#section, check)}` : say("What to do"));
    }
  }

  /** Opens the check that is next, or leads to what to do where there is none. */
  goOn() {
    const { check } = following(this.#picture);
    if (!check) {
      leadTo(part(this.#section, "standing"));
      return;
    }
    const block = /** @type {HTMLDetailsElement} */ (this.#section.querySelector(`details[data-check="${check}"]`));
    for (const open of elements(this.#section, "details.call__check[open]")) {
      /** @type {HTMLDetailsElement} */ (open).open = open === block;
    }
    block.open = true;
    leadTo(/** @type {HTMLElement} */ (block.querySelector("summary")));
  }

  /** @param {unknown} problem */
  #sayOff(problem) {
    this.#bar.say(say("The ranking is off, because Python could not work in this page: {reason}. What you enter is kept; the table below works without it.", { reason: reasonOf(problem) }));
    this.#bar.offerNext("");
    this.#bar.offerToTryAgain(true);
  }
}
