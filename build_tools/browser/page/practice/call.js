/**
 * The page of a practice call: takes moves, asks Python what the call shows after them, and hands
 * the finished call to the learner's record. A call is its code and its moves: both are kept in
 * this browser after every move, so that nothing is lost.
 */
import { CallBar } from "../call/bar.js";
import { elements, part } from "../element.js";
import { leadTo, tellBeside } from "../telling.js";
import { onUnits } from "../units/typed.js";
import { CallAsking } from "./call_asking.js";
import { debriefParts, replayParts } from "./call_debrief.js";
import { fillIn, takeEntry } from "./call_entries.js";
import { keep, nothingKept, recall } from "./call_memory.js";
import { lookUpOf, moveOf, NEXT, PROBLEMS } from "./call_moves.js";
import { clockInWords, showPicture } from "./call_shown.js";
import { leadOn } from "./lead_on.js";
import { addAttempt, callAttempt } from "./record.js";
import { say } from "../words.js";

/** @typedef {import("../calculator_client.js").CalculatorClient} CalculatorClient */

/** @param {(section: HTMLElement) => CalculatorClient} clientFor */
export function mountPracticeCalls(clientFor) {
  for (const section of elements(document.body, "section.practice-call:not([data-mounted])")) {
    new PracticePage(section, clientFor(section)).mount();
  }
}

class PracticePage {
  #section;
  #bar;
  #asking;
  #kept = recall();
  /** The last answer of Python. @type {any} */
  #picture = null;
  /** One move after the other, however fast they are asked for. @type {Promise<unknown>} */
  #queue = Promise.resolve();

  /** @param {HTMLElement} section @param {CalculatorClient} client */
  constructor(section, client) {
    this.#section = section;
    this.#bar = new CallBar(section);
    this.#asking = new CallAsking(section, client, this.#bar);
  }

  mount() {
    this.#section.dataset.mounted = "";
    this.#section.hidden = false;
    for (const off of elements(document.body, ".practice-off")) {
      off.hidden = true;
    }
    for (const link of this.#section.querySelectorAll("a[href]")) {
      Object.assign(link, { target: "_blank", rel: "noopener" });
    }
    this.#section.addEventListener("input", (event) => this.#typed(/** @type {HTMLInputElement} */ (event.target)));
    this.#section.addEventListener("click", (event) => this.#clicked(event));
    onUnits(() => this.#changeUnits());
    fillIn(this.#section, this.#kept);
    const { family, fault, code } = asked();
    if (code && code !== this.#kept.code) {
      this.#field("code").value = this.#kept.typed.code = code;
    }
    if (family) {
      this.#field("family").value = family;
    }
    const goesOn = this.#kept.code && !this.#kept.recorded;
    if (fault && !goesOn) {
      this.#enqueue(() => this.#begin(fault));
    } else if (this.#kept.code) {
      this.#enqueue(() => this.#show(this.#kept.code, this.#kept.moves));
    }
  }

  /** Shows the same call in the other units. */
  #changeUnits() {
    this.#asking.changeUnits();
    if (this.#section.isConnected && this.#picture) {
      this.#enqueue(() => this.#show(this.#kept.code, this.#kept.moves));
    }
  }

  /** @param {HTMLInputElement} field */
  #typed(field) {
    takeEntry(this.#section, this.#kept, field);
    this.#keep();
  }

  /** @param {Event} event */
  #clicked(event) {
    const target = event.target instanceof Element ? event.target : null;
    const link = target?.closest("a[href]");
    const pressed = target?.closest("button[data-action]");
    if (link && this.#picture && !this.#picture.over) {
      this.#enqueue(() => this.#move(lookUpOf(link)));
    } else if (pressed instanceof HTMLButtonElement) {
      this.#enqueue(async () => {
        const hadFocus = document.activeElement === pressed;
        await this.#act(pressed);
        if (hadFocus) {
          leadOn(pressed);
        }
      });
    }
  }

  /** @param {() => Promise<unknown>} work */
  #enqueue(work) {
    this.#queue = this.#queue.then(work).catch(reportError); // the next move can still be made
  }

  /** @param {HTMLButtonElement} pressed */
  async #act(pressed) {
    switch (pressed.dataset.action) {
      case "new":
        if (this.#mayLeave()) {
          await this.#begin("");
        }
        break;
      case "open":
        if (this.#mayLeave()) {
          await this.#show(this.#kept.typed.code ?? "", [], { place: "code-problem", isNew: true });
        }
        break;
      case "give-up":
        if (confirm(say("Give this call up? Its debrief tells what it was, and it counts as it stands."))) {
          await this.#move(moveOf(pressed, this.#kept));
        }
        break;
      case "next":
        this.#goTo(NEXT[this.#picture.next][1]);
        break;
      case "try-again":
        await this.#asking.tryAgain();
        break;
      default:
        await this.#move(moveOf(pressed, this.#kept));
    }
  }

  /** Whether a call that goes on may be left. */
  #mayLeave() {
    const goesOn = this.#picture && !this.#picture.over && this.#kept.moves.length;
    return !goesOn || confirm(say("Leave the call that goes on? Its moves are removed from this browser."));
  }

  /** Begins a new call. @param {string} fault  that shall be hidden, or "" */
  async #begin(fault) {
    const seed = [...crypto.getRandomValues(new Uint32Array(4))].join(" ");
    const family = this.#field("family").value;
    const answer = await this.#asking.ask({ work: "new call", family, fault, seed }, () => this.#begin(fault));
    if (answer?.problem) {
      this.#bar.say(answer.problem);
    } else if (answer) {
      await this.#show(answer.code, [], { isNew: true });
    }
  }

  /** Adds a move, if Python takes it. @param {import("./call_moves.js").Asked} asked */
  #move({ move, place }) {
    return this.#show(this.#kept.code, [...this.#kept.moves, move], { place });
  }

  /**
   * Shows a call after its moves, and keeps them. A move that cannot be made is not kept, and the
   * sentence on it is told.
   *
   * @param {string} code
   * @param {object[]} moves
   * @param {{place?: string, isNew?: boolean}} how  place: where a problem is told, "" for the bar
   */
  async #show(code, moves, how = {}) {
    const picture = await this.#asking.ask({ work: "practice call", code, moves }, () => this.#show(code, moves, how));
    if (!picture) {
      return;
    }
    const { place = "", isNew = false } = how;
    this.#clearProblems();
    if (picture.problem) {
      this.#tell("code-problem", picture.problem);
      if (!isNew) {
        this.#leaveOld();
      }
      return;
    }
    const isMade = moves.length > this.#kept.moves.length;
    if (!isNew && isMade && picture.problems.length > (this.#picture?.problems.length ?? 0)) {
      this.#tell(place, picture.problems.at(-1));
      return;
    }
    if (isNew) {
      this.#kept = { ...nothingKept(), typed: { family: this.#field("family").value } };
      part(this.#section, "debrief").replaceChildren();
      part(this.#section, "debrief").hidden = true;
    } else if (isMade && /** @type {any} */ (moves.at(-1)).do === "remedy") {
      this.#kept.parts = [];
    }
    Object.assign(this.#kept, { code: picture.code, moves });
    fillIn(this.#section, this.#kept);
    this.#keep();
    this.#picture = picture;
    this.#showPicture(isNew);
    if (picture.over) {
      await this.#showDebrief();
    }
  }

  /** A call of another edition cannot be shown any more: its code stays to be read. */
  #leaveOld() {
    const { typed, code } = this.#kept;
    this.#kept = { ...nothingKept(), typed: { ...typed, code } };
    fillIn(this.#section, this.#kept);
    this.#keep();
  }

  /** @param {boolean} isNew */
  #showPicture(isNew) {
    showPicture(this.#section, this.#picture, this.#causes());
    this.#bar.offerNext(say(NEXT[this.#picture.next][0]));
    this.#section.toggleAttribute("data-begun", true);
    this.#bar.say(clockInWords(this.#picture, this.#kept.moves.at(-1)));
    if (isNew) {
      this.#goTo("[data-part=customer]");
    }
  }

  async #showDebrief() {
    const { code, moves } = this.#kept;
    const jargon = JSON.parse(String(this.#section.dataset.jargon));
    this.#bar.say(say("The call is over. Its debrief is being worked out, which may take a minute."));
    const told = await this.#asking.ask({ work: "score", code, moves, jargon }, () => this.#showDebrief());
    if (!told) {
      return;
    }
    const place = part(this.#section, "debrief");
    place.replaceChildren(...debriefParts(told, this.#causes()));
    place.hidden = false;
    if (!this.#kept.recorded) {
      this.#goTo("[data-part=debrief]");
      await this.#record(told);
    }
    const replay = await this.#asking.ask({ work: "replay", code, moves }, () => this.#showDebrief());
    if (replay) {
      place.append(...replayParts(replay));
      this.#bar.say(say("The call is over: {score} of 100 points.", { score: told.score }));
    }
  }

  /** Hands the finished call to the learner's record, once. @param {any} told */
  async #record(told) {
    this.#kept.recorded = true;
    this.#keep();
    const { sentence } = await addAttempt(callAttempt(told));
    if (sentence) {
      this.#tell("storage", sentence);
    }
  }

  #keep() {
    const isKept = keep(this.#kept);
    this.#tell("storage", isKept ? "" : say("This browser keeps nothing: when this page is closed, the call is lost."));
  }

  #clearProblems() {
    for (const name of PROBLEMS) {
      this.#tell(name, "");
    }
  }

  /** @param {string} place  a part, or "" for the bar @param {string} sentence */
  #tell(place, sentence) {
    if (place) {
      tellBeside(part(this.#section, place), sentence);
    }
    if (!place || (sentence && place !== "storage")) {
      this.#bar.say(sentence);
    }
  }

  /** @param {string} selector */
  #goTo(selector) {
    leadTo(/** @type {HTMLElement} */ (this.#section.querySelector(selector)));
  }

  /** @returns {Record<string, import("./call_debrief.js").Cause>} */
  #causes() {
    return JSON.parse(String(this.#section.dataset.causes));
  }

  /** @param {string} name */
  #field(name) {
    return /** @type {HTMLInputElement} */ (this.#section.querySelector(`[data-keep=${name}]`));
  }
}

/** What the address asks for; hostile text is no family, fault or code, and is told so. */
function asked() {
  const query = new URLSearchParams(location.search);
  return { family: query.get("family") ?? "", fault: query.get("fault") ?? "", code: query.get("code") ?? "" };
}
