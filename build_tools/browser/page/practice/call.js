/**
 * The page of a practice call: takes moves, asks Python what the call shows after them, and hands
 * the finished call to the learner's record. A call is its code and its moves: both are kept in
 * this browser after every move, so that nothing is lost.
 */
import { debriefParts, replayParts } from "./call_debrief.js";
import { keep, nothingKept, recall } from "./call_memory.js";
import { leadOn } from "./lead_on.js";
import { inWords, minutesIn, part, showChecks, showCustomer, showReadings } from "./call_shown.js";
import { onUnits } from "../units/typed.js";
import { addAttempt, callItem } from "./record.js";
import { marked, say } from "../words.js";

/** From here on a stated confidence counts as sure. */
const SURE_FROM = 80;

/** What comes next: the words of the bar's button, and where it leads. */
const NEXT = /** @type {Record<string, [string, string]>} */ ({
  search: [marked("Name the cause"), "#name-the-cause"],
  repair: [marked("Repair it"), "#repair"],
  prove: [marked("Prove it"), "#prove"],
  tell: [marked("Tell the customer"), "#tell-the-customer"],
  over: [marked("Read the debrief"), "[data-part=debrief]"],
});

/** @typedef {import("../calculator_client.js").CalculatorClient} CalculatorClient */

/** @param {(section: HTMLElement) => CalculatorClient} clientFor */
export function mountPracticeCalls(clientFor) {
  for (const section of document.querySelectorAll("section.practice-call:not([data-mounted])")) {
    new PracticePage(/** @type {HTMLElement} */ (section), clientFor(/** @type {HTMLElement} */ (section))).mount();
  }
}

class PracticePage {
  #section;
  #client;
  #kept = recall();
  /** @type {Promise<string> | null} */
  #knowledge = null;
  /** The last answer of Python. @type {any} */
  #picture = null;
  /** One move after the other, however fast they are asked for. @type {Promise<unknown>} */
  #queue = Promise.resolve();
  /** @type {() => unknown} */
  #again = () => {};

  /** @param {HTMLElement} section @param {CalculatorClient} client */
  constructor(section, client) {
    this.#section = section;
    this.#client = client;
  }

  mount() {
    this.#section.dataset.mounted = "";
    this.#section.hidden = false;
    for (const off of document.querySelectorAll(".practice-off")) {
      /** @type {HTMLElement} */ (off).hidden = true;
    }
    for (const link of this.#section.querySelectorAll("a[href]")) {
      Object.assign(link, { target: "_blank", rel: "noopener" });
    }
    this.#section.addEventListener("input", (event) => this.#typed(/** @type {HTMLInputElement} */ (event.target)));
    this.#section.addEventListener("click", (event) => this.#clicked(event));
    onUnits(() => this.#changeUnits());
    this.#fillIn();
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
    this.#knowledge = null;
    if (this.#section.isConnected && this.#picture) {
      this.#enqueue(() => this.#show(this.#kept.code, this.#kept.moves));
    }
  }

  /** Puts what was typed into the fields. */
  #fillIn() {
    for (const field of this.#section.querySelectorAll("[data-keep]")) {
      const input = /** @type {HTMLInputElement} */ (field);
      input.value = this.#kept.typed[String(input.dataset.keep)] ?? "";
    }
    for (const box of this.#section.querySelectorAll("[data-replaced]")) {
      const input = /** @type {HTMLInputElement} */ (box);
      input.checked = this.#kept.parts.includes(input.value);
    }
    this.#tellParts();
  }

  /** @param {HTMLInputElement} field */
  #typed(field) {
    if (field.dataset.keep) {
      this.#kept.typed[field.dataset.keep] = field.value;
    } else if (field.dataset.replaced !== undefined) {
      const boxes = [...this.#section.querySelectorAll("[data-replaced]:checked")];
      this.#kept.parts = boxes.map((box) => /** @type {HTMLInputElement} */ (box).value);
      this.#tellParts();
    }
    this.#keep();
  }

  #tellParts() {
    part(this.#section, "parts-chosen").textContent = this.#kept.parts.length ? String(this.#kept.parts.length) : "";
  }

  /** @param {Event} event */
  #clicked(event) {
    const target = event.target instanceof Element ? event.target : null;
    const link = target?.closest("a[href]");
    const button = target?.closest("button[data-action]");
    if (link && this.#picture && !this.#picture.over) {
      this.#enqueue(() => this.#move({ do: "look-up", page: String(link.getAttribute("href")) }, ""));
    } else if (button instanceof HTMLButtonElement) {
      this.#enqueue(async () => {
        const hadFocus = document.activeElement === button;
        await this.#act(button);
        if (hadFocus) {
          leadOn(button);
        }
      });
    }
  }

  /** @param {() => Promise<unknown>} work */
  #enqueue(work) {
    this.#queue = this.#queue.then(work).catch(reportError); // the next move can still be made
  }

  /** @param {HTMLButtonElement} button */
  async #act(button) {
    const { typed, parts } = this.#kept;
    switch (button.dataset.action) {
      case "new":
        if (this.#mayLeave()) {
          await this.#begin("");
        }
        break;
      case "open":
        if (this.#mayLeave()) {
          await this.#show(typed.code ?? "", [], { place: "code-problem", isNew: true });
        }
        break;
      case "check":
        await this.#move({ do: "check", check: /** @type {HTMLElement} */ (button.closest("[data-check]")).dataset.check }, "");
        break;
      case "name":
        await this.#move({ do: "name", cause: typed.cause, second: typed.second || null, confidence: percent(typed.confidence) }, "name-problem");
        break;
      case "remedy":
        await this.#move({ do: "remedy", remedy: typed.remedy, parts }, "remedy-problem");
        break;
      case "prove":
        await this.#move({ do: "prove", check: typed.proof }, "proof-problem");
        break;
      case "tell":
        await this.#move({ do: "tell", text: typed.text ?? "" }, "text-problem");
        break;
      case "give-up":
        if (confirm(say("Give this call up? Its debrief tells what it was, and it counts as it stands."))) {
          await this.#move({ do: "give-up" }, "");
        }
        break;
      case "next":
        this.#goTo(NEXT[this.#picture.next][1]);
        break;
      case "try-again":
        await this.#again();
        break;
      default:
        await this.#move({ do: button.dataset.action }, "");
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
    const answer = await this.#ask({ work: "new call", family, fault, seed }, () => this.#begin(fault));
    if (answer?.problem) {
      this.#say(answer.problem);
    } else if (answer) {
      await this.#show(answer.code, [], { isNew: true });
    }
  }

  /** Adds a move, if Python takes it. @param {any} move @param {string} place  of a problem */
  #move(move, place) {
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
    const units = String(this.#section.dataset.units);
    const picture = await this.#ask({ work: "practice call", code, moves, units }, () => this.#show(code, moves, how));
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
    this.#fillIn();
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
    this.#fillIn();
    this.#keep();
  }

  /** @param {boolean} isNew */
  #showPicture(isNew) {
    const picture = this.#picture;
    const section = this.#section;
    for (const name of ["customer", "work", "finish"]) {
      part(section, name).hidden = false;
    }
    part(section, "finish").hidden = picture.over;
    showCustomer(section, picture);
    showReadings(section, picture);
    showChecks(section, picture);
    const causes = this.#causes();
    const named = picture.named.map((/** @type {any} */ one) => say("{causes}, {confidence} % sure", { causes: one.causes.map((/** @type {string} */ name) => causes[name].title).join(" and "), confidence: one.confidence }));
    listTexts(part(section, "named"), named);
    listTexts(part(section, "remedies"), picture.remedies.map((/** @type {any} */ one) => say("Repaired at {minutes}: {parts}", { minutes: minutesIn(one.at), parts: [causes[one.remedy].title, ...one.parts].join("; ") })));
    part(section, "repair").hidden = !picture.named.length;
    part(section, "prove").hidden = !picture.remedies.length;
    part(section, "tell").hidden = !picture.remedies.length;
    for (const action of ["consent", "make-safe", "wait", "stop"]) {
      const button = this.#button(action);
      button.disabled = picture.over || (action === "consent" && picture.consent) || (action === "make-safe" && picture.safe);
      button.hidden = action === "wait" && !picture.waiting;
    }
    const next = this.#button("next");
    next.hidden = false;
    next.textContent = say(NEXT[picture.next][0]);
    this.#section.toggleAttribute("data-begun", true);
    const made = { check: picture.readings.at(-1), prove: picture.proofs.at(-1) };
    const last = made[/** @type {"check" | "prove"} */ (this.#lastMove())];
    this.#say(say("{minutes} on the clock.{last}", { minutes: minutesIn(picture.minutes), last: last ? ` ${inWords(last)}` : "" }));
    if (isNew) {
      this.#goTo("[data-part=customer]");
    }
  }

  async #showDebrief() {
    const { code, moves } = this.#kept;
    const units = String(this.#section.dataset.units);
    const jargon = JSON.parse(String(this.#section.dataset.jargon));
    this.#say(say("The call is over. Its debrief is being worked out, which may take a minute."));
    const told = await this.#ask({ work: "score", code, moves, units, jargon }, () => this.#showDebrief());
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
    const replay = await this.#ask({ work: "replay", code, moves, units }, () => this.#showDebrief());
    if (replay) {
      place.append(...replayParts(replay));
      this.#say(say("The call is over: {score} of 100 points.", { score: told.score }));
    }
  }

  /** Hands the finished call to the learner's record, once. @param {any} told */
  async #record(told) {
    const { family, right, sure, score, critical, code } = told;
    this.#kept.recorded = true;
    this.#keep();
    const { sentence } = await addAttempt({ item: callItem(family), family, skill: "", right, sure: sure >= SURE_FROM, score: score / 100, critical: critical.length > 0, code });
    if (sentence) {
      this.#tell("storage", sentence);
    }
  }

  /**
   * @param {object} asked
   * @param {() => unknown} again  what “Try again” does
   * @returns {Promise<any>}  undefined where Python could not answer
   */
  async #ask(asked, again) {
    this.#section.ariaBusy = "true";
    try {
      this.#knowledge ??= fetchText(new URL(String(this.#section.dataset.knowledge), document.baseURI));
      const answer = await this.#client.consult(await this.#knowledge, asked);
      part(this.#section, "start").textContent = say(this.#client.word);
      this.#button("try-again").hidden = true;
      return answer;
    } catch (problem) {
      this.#knowledge = null;
      this.#again = again;
      this.#button("try-again").hidden = false;
      this.#say(say("The call stands still, because Python could not work in this page: {problem}. What you did is kept.", { problem: problem instanceof Error ? problem.message : problem }));
      return undefined;
    } finally {
      this.#section.ariaBusy = "false";
    }
  }

  #lastMove() {
    return /** @type {any} */ (this.#kept.moves.at(-1))?.do;
  }

  #keep() {
    const isKept = keep(this.#kept);
    this.#tell("storage", isKept ? "" : say("This browser keeps nothing: when this page is closed, the call is lost."));
  }

  #clearProblems() {
    for (const name of ["code-problem", "name-problem", "confidence-problem", "remedy-problem", "proof-problem", "text-problem"]) {
      this.#tell(name, "");
    }
  }

  /** @param {string} place  a part, or "" for the bar @param {string} sentence */
  #tell(place, sentence) {
    if (!place) {
      this.#say(sentence);
      return;
    }
    const told = part(this.#section, place);
    told.textContent = sentence;
    told.hidden = !sentence;
    if (sentence && place !== "storage") {
      this.#say(sentence);
    }
  }

  /** @param {string} sentence */
  #say(sentence) {
    const status = part(this.#section, "status");
    if (status.textContent !== sentence) {
      status.textContent = sentence;
    }
  }

  /** @param {string} selector */
  #goTo(selector) {
    const place = /** @type {HTMLElement} */ (this.#section.querySelector(selector));
    place.focus({ preventScroll: true });
    place.scrollIntoView({ block: "start", behavior: matchMedia("(prefers-reduced-motion: reduce)").matches ? "auto" : "smooth" });
  }

  /** @returns {Record<string, import("./call_debrief.js").Cause>} */
  #causes() {
    return JSON.parse(String(this.#section.dataset.causes));
  }

  /** @param {string} name */
  #field(name) {
    return /** @type {HTMLInputElement} */ (this.#section.querySelector(`[data-keep=${name}]`));
  }

  /** @param {string} action */
  #button(action) {
    return /** @type {HTMLButtonElement} */ (this.#section.querySelector(`button[data-action=${action}]`));
  }
}

/** What the address asks for; hostile text is no family, fault or code, and is told so. */
function asked() {
  const query = new URLSearchParams(location.search);
  return { family: query.get("family") ?? "", fault: query.get("fault") ?? "", code: query.get("code") ?? "" };
}

/** @param {string | undefined} text  such as "80", "80 %" or "80,5" @returns {number | string}  the text itself where it is no number */
function percent(text) {
  const plain = (text ?? "").replace("%", "").replace(",", ".").trim();
  return plain && Number.isFinite(Number(plain)) ? Number(plain) : plain;
}

/** @param {HTMLElement} list @param {string[]} texts */
function listTexts(list, texts) {
  list.replaceChildren(...texts.map((text) => Object.assign(document.createElement("li"), { textContent: text })));
}

/** @param {URL} url */
async function fetchText(url) {
  const response = await fetch(url);
  if (!response.ok) {
    throw new Error(`the host answered ${response.status} for ${url.pathname}`);
  }
  return response.text();
}
