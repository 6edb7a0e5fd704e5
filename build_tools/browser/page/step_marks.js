/**
 * Marks the steps of a procedure that are done, so that a person who comes back finds the place.
 * The marks stay in the browser's storage for the day, and no paper shows them.
 */
import { element } from "./element.js";
import { SITE } from "./place.js";
import { forgetText, keepText, recalledText } from "./storage.js";
import { say } from "./words.js";

const KEY = `steps done in ${SITE.pathname}`;

/** @typedef {{day: string, pages: Record<string, number[]>}} Marks */

export function mountStepMarks() {
  const list = document.querySelector(".steps:not([data-mounted])");
  if (!(list instanceof HTMLElement)) {
    return;
  }
  list.dataset.mounted = "";
  const items = /** @type {HTMLElement[]} */ ([...list.querySelectorAll(":scope > ol > li")]);
  const page = location.pathname;
  const done = new Set(recall().pages[page]);
  const [told, next, clear] = [
    element("span", {}),
    element("a", {}),
    element("button", { type: "button" }, say("Clear the marks")),
  ];
  const bar = element("p", { className: "step-marks" }, told, next, clear);
  const buttons = items.map((item, place) => {
    const button = element("button", { type: "button", className: "step-mark" });
    button.setAttribute("aria-label", say("Step {place} done", { place: place + 1 }));
    button.addEventListener("click", () => {
      done.has(place) ? done.delete(place) : done.add(place);
      keep(page, done);
      show();
    });
    item.prepend(button);
    return button;
  });
  clear.addEventListener("click", () => {
    done.clear();
    keep(page, done);
    show();
    buttons[0]?.focus();
  });
  const show = () => {
    items.forEach((item, place) => {
      item.toggleAttribute("data-done", done.has(place));
      buttons[place].setAttribute("aria-pressed", String(done.has(place)));
    });
    const count = items.filter((_, place) => done.has(place)).length;
    told.textContent = count
      ? say("{count} of {length} steps done. ", { count, length: items.length })
      : say("Tap a number to mark its step done: the marks stay on this phone for the day.");
    const open = items.findIndex((_, place) => place > Math.max(...done) && !done.has(place));
    next.hidden = !count || open < 0;
    next.href = `#step-${open + 1}`;
    next.textContent = say("Go on at step {open}", { open: open + 1 });
    clear.hidden = !count;
  };
  show();
  list.before(bar);
}

/** Removes the marks of every procedure: another call begins. */
export function forgetMarks() {
  forgetText(KEY);
}

/** @returns {Marks}  those of today */
function recall() {
  try {
    const kept = JSON.parse(recalledText(KEY) || "{}");
    if (kept.day === today() && Object.values(kept.pages).every(Array.isArray)) {
      return kept;
    }
  } catch {
    // Damaged: begin anew.
  }
  return { day: today(), pages: {} };
}

/** @param {string} page @param {Set<number>} done */
function keep(page, done) {
  const marks = recall();
  marks.pages[page] = [...done];
  keepText(KEY, JSON.stringify(marks));
}

function today() {
  return new Date().toDateString();
}
