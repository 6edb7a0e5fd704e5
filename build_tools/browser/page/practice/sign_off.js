/**
 * The sign-off sheet: filled from the record on this device or from a file, with what an observer
 * saw added. A file's record stays on the page, and is saved as a file again.
 */
import { fileName, saveFile, textOf } from "../files.js";
import { readRecord, recordText, replaceRecord, today } from "./record.js";
import { say } from "../words.js";

/** @param {import("./section.js").RecordSection} section */
export function showSignOff(section) {
  /** Whose record fills the sheet. @type {"none" | "own" | "file"} */
  let source = "none";
  /** The record of a file, as text. */
  let fileText = "";
  const form = /** @type {HTMLFormElement} */ (section.part("observation"));
  const day = /** @type {HTMLInputElement} */ (form.elements.namedItem("day"));

  /** @param {string} text @param {"own" | "file"} from */
  const fill = async (text, from) => {
    const texts = from === "own" ? { text } : { text: "", imported: text };
    const answer = await section.ask({ work: "record", ...texts, skills: section.skills, today: today() });
    if (!answer) {
      return;
    }
    if (answer.problem) {
      section.tell(say("{problem} The sheet is as it was.", { problem: answer.problem }));
      return;
    }
    source = from;
    fileText = from === "file" ? JSON.stringify(answer.record) : "";
    section.tell("");
    showAnswer(answer);
  };

  /** @param {any} answer */
  const showAnswer = (answer) => {
    const who = answer.record.name || say("somebody who has not written a name yet");
    section.part("whose").textContent = source === "file" ? say("The sheet shows the file of {who}.", { who }) : say("The sheet shows the record on this device, of {who}.", { who });
    cell("name").textContent = answer.record.name;
    answer.skills.forEach(fillRow);
    form.hidden = false;
    day.value ||= today();
    day.max = today();
  };

  const blank = () => {
    source = "none";
    fileText = "";
    form.hidden = true;
    section.part("whose").textContent = say("The sheet is blank: fill it below, or print it and write by hand.");
    for (const one of document.querySelectorAll("[data-sheet]")) {
      const { blank: empty } = /** @type {HTMLElement} */ (one).dataset;
      one.textContent = empty ?? "";
    }
    section.tell("");
  };

  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    const fields = new FormData(form);
    const observation = { ...Object.fromEntries(fields), level: Number(fields.get("level")) };
    for (;;) {
      const text = source === "own" ? recordText() : fileText;
      const answer = await section.ask({ work: "observe", text, observation, skills: section.skills, today: today() });
      if (!answer) {
        return;
      }
      section.tellProblem(answer.problem, "wrong");
      if (answer.problem) {
        return;
      }
      if (source === "own") {
        const { changed, sentence } = await replaceRecord(text, answer.record);
        if (changed) {
          continue;
        }
        section.tell(sentence || say("It is added to the record on this device."));
      } else {
        fileText = JSON.stringify(answer.record);
        section.tell(say("It is added. Save the record as a file now: nothing of it is kept here."));
      }
      showAnswer(answer);
      /** @type {HTMLInputElement} */ (form.elements.namedItem("system")).value = "";
      return;
    }
  });

  section.onFiles(async ([file]) => {
    const { text, problem } = await textOf(file);
    if (problem) {
      section.tell(say("{problem} The sheet is as it was.", { problem }));
    } else {
      await fill(text, "file");
    }
  });

  const own = () => fill(recordText(), "own");
  section.onClick({
    own,
    blank,
    print: () => window.print(),
    save: () => {
      const text = source === "own" ? recordText() || JSON.stringify(readRecord().record) : fileText;
      const { name } = JSON.parse(text);
      saveFile(text, fileName("practice-record", name, today(), "json"), "application/json");
      section.tell(say("The record is saved as a file."));
    },
  });
  section.element.hidden = false;
  section.element.addEventListener("click", (event) => event.target === section.retry && own());
  for (const one of document.querySelectorAll("[data-sheet]")) {
    /** @type {HTMLElement} */ (one).dataset.blank = one.textContent ?? "";
  }
  blank();
}

/** @param {string} name @returns {HTMLElement} */
function cell(name) {
  return /** @type {HTMLElement} */ (document.querySelector(`[data-sheet="${name}"]`));
}

/** @param {any} one  where a person stands in a skill */
function fillRow(one) {
  // The highest levels first: they are what counts.
  const seen = [...one.observed].sort((a, b) => b.level - a.level || a.day.localeCompare(b.day));
  const written = (/** @type {any} */ what) => (what ? `${what.day}, ${what.system}, ${what.observer} (${what.level})` : "");
  cell(`${one.skill} level`).textContent = one.level ? `${one.level}` : "";
  cell(`${one.skill} first`).textContent = written(seen[0]);
  const second = cell(`${one.skill} second`);
  second.textContent = written(seen.slice(1).find((what) => what.system.toLowerCase() !== seen[0].system.toLowerCase())) || (second.dataset.blank ?? "");
  cell(`${one.skill} calls`).textContent = one.calls ? `${one.calls}` : "";
  const until = one.check_by && `, check by ${one.check_by}`;
  cell(`${one.skill} state`).textContent = one.state === "not yet" ? "" : one.state === "signed off" ? `${one.signed_on}${until}` : `${one.state}${until}`;
}
