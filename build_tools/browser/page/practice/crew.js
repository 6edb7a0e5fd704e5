/**
 * The page "The crew": several people's files as two tables and one file for a table program.
 * Nothing of them is kept.
 */
import { element } from "../element.js";
import { fileName, saveFile, textOf } from "../files.js";
import { today } from "./record.js";
import { counted } from "./section.js";
import { say } from "../words.js";

/** @param {import("./section.js").RecordSection} section */
export function showCrew(section) {
  /** @type {{name: string, text: string, problem: string}[]} */
  let files = [];
  let csv = "";

  const work = async () => {
    if (!files.length) {
      section.part("found").hidden = true;
      section.part("people").replaceChildren();
      section.part("refused").replaceChildren();
      section.say(say("No file is loaded yet."));
      return;
    }
    const readable = files.filter((file) => !file.problem).map(({ name, text }) => ({ name, text }));
    const answer = await section.ask({ work: "crew", files: readable, skills: section.skills, today: today() });
    if (!answer) {
      return;
    }
    csv = answer.csv;
    const refused = [...files.filter((file) => file.problem).map((file) => ({ file: file.name, sentence: file.problem })), ...answer.problems];
    section.part("refused").replaceChildren(...refused.map(({ file, sentence }) => element("li", {}, element("b", {}, file), `: ${sentence}`)), ...answer.notes.map((/** @type {string} */ note) => element("li", {}, note)));
    section.part("people").replaceChildren(...files.map((file, at) => fileEntry(file, at)));
    section.part("found").hidden = !answer.people.length;
    section.say(answer.people.length ? say("{count} in the tables.", { count: counted(answer.people.length, "person is", "people are") }) : say("None of the files is a record."));
    showTables(section, answer);
  };

  section.onFiles(async (chosen) => {
    files = [...files, ...(await Promise.all(chosen.map(textOf)))];
    await work();
  });
  section.onClick({
    csv: () => {
      // The mark at the beginning tells table programs that the letters are of all languages.
      saveFile(`\ufeff${csv}`, fileName("crew", "", today(), "csv"), "text/csv");
      section.tell(say("The table is saved as a file."));
    },
    print: () => window.print(),
    remove: (button) => {
      files = files.filter((_, at) => at !== Number(button.dataset.at));
      section.part("files").focus();
      work();
    },
    clear: () => {
      files = [];
      section.tell("");
      section.part("files").focus();
      work();
    },
    "try-again": work,
  });
  section.element.hidden = false;
  work();
}

/** @param {{name: string}} file @param {number} at */
function fileEntry(file, at) {
  const button = element("button", { type: "button", className: "record__button" }, say("Take away"), element("span", { className: "record__unseen" }, ` ${file.name}`));
  button.dataset.action = "remove";
  button.dataset.at = String(at);
  return element("li", {}, file.name, " ", button);
}

/** @param {import("./section.js").RecordSection} section @param {any} answer */
function showTables(section, answer) {
  const head = (/** @type {string[]} */ names) => names.map((name) => element("th", { scope: "col" }, name));
  section.part("stands-head").replaceChildren(...head([say("Skill"), ...answer.people, say("Signed off")]));
  section.part("heat-head").replaceChildren(...head([say("Skill"), ...answer.people, say("All")]));
  section.part("stands").replaceChildren(
    ...answer.rows.map((/** @type {any} */ row) =>
      element("tr", {}, element("th", { scope: "row" }, row.title), ...row.cells.map(standsCell), element("td", {}, say("{signed} of {length}", { signed: row.all.signed, length: answer.people.length }))),
    ),
  );
  section.part("heat").replaceChildren(
    ...answer.rows.map((/** @type {any} */ row) => element("tr", {}, element("th", { scope: "row" }, row.title), ...[...row.cells, row.all].map(heatCell))),
  );
}

/** @param {any} cell */
function standsCell(cell) {
  const made = element("td", {}, element("b", {}, say("Level {level}", { level: cell.level })), element("small", {}, cell.state === "signed off" ? say("signed off, check by {check_by}", { check_by: cell.check_by }) : cell.state));
  made.dataset.state = cell.state;
  made.title = cell.missing.join(" ");
  return made;
}

/** @param {any} cell */
function heatCell(cell) {
  const made = element("td", {}, cell.answers ? element("b", {}, `${Math.round(cell.share * 100)} %`) : "", element("small", {}, cell.answers ? say("{right} of {answers}", { right: cell.right, answers: cell.answers }) : "no answers"));
  if (cell.step !== null) {
    made.dataset.step = String(cell.step);
  }
  return made;
}
