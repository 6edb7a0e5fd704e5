/**
 * The page "Due today": what comes back, in an order, each with a link.
 */
import { element } from "../element.js";
import { recordText, today } from "./record.js";
import { counted } from "./section.js";
import { say } from "../words.js";

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
  const why = one.unsafe ? say("first: the last answer would have hurt somebody") : one.new ? say("new") : one.over ? say("due for {days}", { days: counted(one.over, "day", "days") }) : say("due today");
  return element("li", {}, element("a", { href: item.link }, item.title), element("small", {}, ` ${item.about}; ${why}`));
}

/** @param {any} session @param {number} all */
function afterwards(session, all) {
  if (!all) {
    return say("This handbook has no exercises yet, so nothing can be due.");
  }
  const done = session.done ? say("{items} done today.", { items: counted(session.done, "item is", "items are") }) : "";
  const waiting = session.waiting ? say("{items} for another day.", { items: counted(session.waiting, "more item waits", "more items wait") }) : "";
  const begins = session.items.every((/** @type {any} */ one) => one.new) && session.next === null;
  if (session.items.length && begins && !session.done) {
    return say("Nothing can come back yet: begin with these.");
  }
  if (session.items.length) {
    return [done, waiting].filter(Boolean).join(" ");
  }
  const next = session.next === null ? "" : say("The next item comes back in {days}.", { days: counted(session.next, "day", "days") });
  return [done, say("Nothing more is due today."), next, waiting].filter(Boolean).join(" ");
}
