/**
 * The page "Due today": what comes back, in an order, each with a link.
 */
import { element } from "../element.js";
import { recordText, today } from "./record.js";
import { counted } from "./section.js";

/** @param {import("./section.js").RecordSection} section */
export function showToday(section) {
  /** @type {any[]} */
  const items = JSON.parse(section.element.dataset.items ?? "[]");
  const named = new Map(items.map((item) => [item.id, item]));
  const asked = items.map(({ id, family, share }) => ({ id, family, share }));

  const work = async () => {
    const day = today();
    const session = await section.ask({ work: "remember", text: recordText(), items: asked, today: day, seed: day });
    if (!session) {
      return;
    }
    section.tellProblem(session.problem);
    const due = session.problem ? [] : session.items;
    section.part("due").replaceChildren(...due.map((/** @type {any} */ one) => entry(named.get(one.id), one)));
    section.part("after").textContent = session.problem ? "" : afterwards(session, items.length);
  };
  // A page that was left open over night shows the new day.
  document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && section.element.isConnected && section.part("due").firstChild && work());
  section.show(work);
}

/** @param {any} item @param {any} one */
function entry(item, one) {
  const why = one.unsafe ? "first: the last answer would have hurt somebody" : one.new ? "new" : one.over ? `due for ${counted(one.over, "day", "days")}` : "due today";
  return element("li", {}, element("a", { href: item.link }, item.title), element("small", {}, ` ${item.about}; ${why}`));
}

/** @param {any} session @param {number} all */
function afterwards(session, all) {
  if (!all) {
    return "This handbook has no exercises yet, so nothing can be due.";
  }
  const done = session.done ? `${counted(session.done, "item is", "items are")} done today.` : "";
  const waiting = session.waiting ? `${counted(session.waiting, "more item waits", "more items wait")} for another day.` : "";
  const begins = session.items.every((/** @type {any} */ one) => one.new) && session.next === null;
  if (session.items.length && begins && !session.done) {
    return "Nothing can come back yet: begin with these.";
  }
  if (session.items.length) {
    return [done, waiting].filter(Boolean).join(" ");
  }
  const next = session.next === null ? "" : `The next item comes back in ${counted(session.next, "day", "days")}.`;
  return [done, "Nothing more is due today.", next, waiting].filter(Boolean).join(" ");
}
