/**
 * A slider beside a field. What it writes at each of its places was worked out by the build, in the
 * reader's units, so that nothing is reckoned here. A text between two places puts it at the nearer.
 */
import { say } from "./words.js";

const HALF_A_DAY = 12 * 60;

/**
 * @param {string} text  such as "1,300 gal", "50 %" or "3:40 pm"
 * @returns {[number, string]}  the number in it, NaN without one, and what follows
 */
function measured(text) {
  const clock = /^(\d+):(\d+)\s([ap])m$/.exec(text);
  if (clock) {
    const minutes = (Number(clock[1]) % 12) * 60 + Number(clock[2]);
    return [minutes + (clock[3] === "p" ? HALF_A_DAY : 0), "on the clock"];
  }
  const [number] = /^[-\d.,]*/.exec(text) ?? [""];
  return [Number.parseFloat(number.replaceAll(",", "")), text.slice(number.length).trim()];
}

/**
 * @param {string[]} texts
 * @param {string} text
 * @returns {number}  the place of the text, or the place nearest to it, or -1
 */
function placeOf(texts, text) {
  const [number, unit] = measured(text);
  let nearest = texts.indexOf(text);
  let least = nearest < 0 ? Number.POSITIVE_INFINITY : 0;
  for (const [index, one] of texts.entries()) {
    const [its, itsUnit] = measured(one);
    if ((itsUnit === unit || !unit) && Math.abs(its - number) < least) {
      nearest = index;
      least = Math.abs(its - number);
    }
  }
  return nearest;
}

/**
 * Adds the slider of a field, where it has one.
 *
 * @param {HTMLElement} field
 * @param {HTMLInputElement | HTMLSelectElement} control  the field's text
 * @returns {() => void}  puts the slider at the place of the field's text, or nearest to it
 */
export function addSlider(field, control) {
  if (!field.dataset.slider) {
    return () => {};
  }
  /** @returns {string[]}  in the units that are shown */
  const texts = () => JSON.parse(field.dataset.slider ?? "[]");
  const slider = document.createElement("input");
  slider.type = "range";
  slider.className = "live-form__slider";
  slider.max = String(texts().length - 1);
  slider.autocomplete = "off";
  const place = () => {
    const index = placeOf(texts(), control.value.trim());
    if (index >= 0) {
      slider.value = String(index);
    }
    slider.setAttribute("aria-label", say("Slider: {label}", { label: field.querySelector("label")?.textContent ?? "" }));
    slider.setAttribute("aria-valuetext", control.value);
  };
  // The form hears of it as of anything typed, when the event has risen to it.
  slider.addEventListener("input", () => {
    control.value = texts()[Number(slider.value)];
    place();
  });
  const together = document.createElement("div");
  together.className = "live-form__with-slider";
  control.replaceWith(together);
  together.append(control, slider);
  place();
  return place;
}
