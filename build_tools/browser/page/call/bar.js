/**
 * The bar at the foot of a call, a real one or one for practice: where it stands, and what is next.
 */
import { button, part } from "../element.js";
import { announce } from "../telling.js";
import { say } from "../words.js";

export class CallBar {
  #status;
  #start;
  #next;
  #tryAgain;

  /** @param {HTMLElement} section  the call */
  constructor(section) {
    this.#status = part(section, "status");
    this.#start = part(section, "start");
    this.#next = button(section, "next");
    this.#tryAgain = button(section, "try-again");
  }

  /** @param {string} sentence */
  say(sentence) {
    announce(this.#status, sentence);
  }

  /** @param {string} word  about a start of Python that was slower than it should be */
  tellStart(word) {
    this.#start.textContent = say(word);
  }

  /** @param {string} words  what comes next, "" for nothing */
  offerNext(words) {
    this.#next.hidden = !words;
    if (words) {
      this.#next.textContent = words;
    }
  }

  /** @param {boolean} isOffered  whether Python could not answer, and may be asked again */
  offerToTryAgain(isOffered) {
    this.#tryAgain.hidden = !isOffered;
  }
}
