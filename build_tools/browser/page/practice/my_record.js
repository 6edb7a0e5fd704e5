/**
 * The page "My record": how the skills stand, and saving, loading and deleting the record.
 */
import { element } from "../element.js";
import { fileName, saveFile, textOf } from "../files.js";
import { readRecord, recordText, replaceRecord, today, UNREADABLE, writeRecord } from "./record.js";
import { counted } from "./section.js";
import { say } from "../words.js";

/** @param {import("./section.js").RecordSection} section */
export function showMyRecord(section) {
  const name = /** @type {HTMLInputElement} */ (section.part("name"));

  const quick = () => {
    const { record, problem } = readRecord();
    if (document.activeElement !== name) {
      name.value = record.name;
    }
    section.tellProblem(problem);
    section.part("count").textContent = problem ? "" : contents(record);
  };
  const work = async () => {
    const answer = await section.ask({ work: "record", text: recordText(), skills: section.skills, today: today() });
    if (!answer) {
      return;
    }
    section.tellProblem(answer.problem ? `${answer.problem} ${say(UNREADABLE)}` : "");
    section.part("skills").replaceChildren(...answer.skills.map(skillEntry));
  };

  name.addEventListener("change", async () => {
    const written = await writeRecord((record) => {
      // Nothing that would make the record unreadable: see _NOT_SHOWN in record.py.
      record.name = name.value.replace(/\s+/g, " ").replace(/[\p{Cc}\p{Cs}\u202a-\u202e\u2066-\u2069]/gu, "").trim();
    });
    section.tell(written.sentence || say("The name is kept."));
  });
  section.onFiles(async ([file]) => section.tell(await loaded(section, file)));

  const question = /** @type {HTMLElement} */ (section.part("question"));
  const deleteButton = /** @type {HTMLElement} */ (section.element.querySelector("[data-action=delete]"));
  let asked = "";
  section.onClick({
    save: () => {
      saveFile(recordText() || JSON.stringify(readRecord().record), fileName("practice-record", readRecord().record.name, today(), "json"), "application/json");
      section.tell(say("The record is saved as a file."));
    },
    print: () => window.print(),
    delete: () => {
      asked = recordText();
      const { record, problem } = readRecord();
      section.part("question-text").textContent = problem
        ? say("Delete the record that cannot be read? Nothing brings it back, unless you saved it as a file.")
        : say("Delete {count} and {count2}? Nothing brings them back, unless you saved the record as a file.", { count: counted(record.attempts.length, "answer", "answers"), count2: counted(record.observed.length, "observation", "observations") });
      question.hidden = false;
      question.focus();
    },
    keep: () => {
      question.hidden = true;
      deleteButton.focus();
      section.tell(say("The record is kept."));
    },
    "really-delete": async () => {
      const { changed, kept, sentence } = await replaceRecord(asked, null);
      question.hidden = true;
      deleteButton.focus();
      section.tell(changed ? say("Another page has just added something, so nothing was deleted. Look again.") : kept ? say("The record is deleted.") : sentence);
    },
  });
  section.show(work, quick);
}

/**
 * Adds a file to the record; where another page changes the record meanwhile, it is added anew.
 *
 * @param {import("./section.js").RecordSection} section @param {File} file @returns {Promise<string>}
 */
async function loaded(section, file) {
  const { text: imported, problem } = await textOf(file);
  if (problem) {
    return say("{problem} Your record is as it was.", { problem });
  }
  for (;;) {
    const text = recordText();
    const answer = await section.ask({ work: "record", text, imported, skills: section.skills, today: today() });
    if (!answer) {
      return say("The file is not loaded. Your record is as it was.");
    }
    if (answer.problem) {
      return say("{problem} Your record is as it was.", { problem: answer.problem });
    }
    const { changed, sentence } = await replaceRecord(text, answer.record);
    if (!changed) {
      return sentence || (answer.new ? say("The file brought {entries} not here yet.", { entries: counted(answer.new, "entry that was", "entries that were") }) : say("All of the file was here already."));
    }
  }
}

/** @param {import("./record.js").PersonRecord} record @returns {string} */
function contents({ attempts, observed }) {
  if (!attempts.length && !observed.length) {
    return say("Nothing is in it yet. It fills by itself when you do exercises and practice calls.");
  }
  return say("It holds {count} and {count2}.", { count: counted(attempts.length, "answer", "answers"), count2: counted(observed.length, "observation", "observations") });
}

/** @param {any} one */
function skillEntry(one) {
  const state = one.state === "signed off" ? say("signed off on {signed_on}, to be checked again by {check_by}", { signed_on: one.signed_on, check_by: one.check_by }) : one.state === "check again" ? say("to be checked again") : one.state;
  const facts = [
    say("Level {level}{day}", { level: one.level, day: one.level_day && ` (${one.level_day})` }),
    one.answers ? say("{right} of the last {answers} right", { right: one.right, answers: counted(one.answers, "answer", "answers") }) : say("no answers yet"),
    say("{calls} passed", { calls: counted(one.calls, "practice call", "practice calls") }),
  ];
  const missing = one.missing.map((/** @type {string} */ sentence) => element("li", {}, sentence));
  return element(
    "li",
    { className: `record__skill record__skill--${one.state.replace(" ", "-")}` },
    element("b", {}, one.title),
    element("span", { className: "record__state" }, state),
    element("small", {}, facts.join("; ")),
    ...(missing.length ? [element("details", {}, element("summary", {}, say("What is missing")), element("ul", {}, ...missing))] : []),
  );
}
