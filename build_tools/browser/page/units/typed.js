/**
 * What a reader has typed keeps its meaning when the units change: a number alone was meant in the
 * unit beside its label and gets that unit. Nothing typed is converted.
 */

/** A number as `calculators.quantities` reads it: digits, fractions, no letters. */
const NUMBER_ALONE = /^[\s\d.,/½⅓⅔¼¾⅛⅜⅝⅞+−-]*[\d½⅓⅔¼¾⅛⅜⅝⅞][\s\d.,/½⅓⅔¼¾⅛⅜⅝⅞]*$/;

/** @returns {string}  the system that pages are shown in: "us" or "metric" */
export function shownSystem() {
  return String(document.documentElement.dataset.units);
}

/** Whether pages are shown in the system that the shop writes in. */
export function isOwnSystem() {
  return !document.documentElement.hasAttribute("data-other-units");
}

/**
 * @param {string} text
 * @param {string | undefined} unit  in which a number alone was meant
 * @returns {string}  the text, with its unit
 */
export function withUnit(text, unit) {
  return unit && NUMBER_ALONE.test(text) ? `${text.trim()} ${unit}` : text;
}

/**
 * @param {HTMLElement} element
 * @param {string} name  of an attribute
 * @returns {string | undefined}  what it is in the system that is not shown
 */
export function hiddenAttribute(element, name) {
  const waiting = JSON.parse(element.dataset.inOther ?? "{}");
  return waiting[name] ?? element.getAttribute(name) ?? undefined;
}

/** @param {() => void} listener  hears of each change of the system, after the page has changed */
export function onUnits(listener) {
  document.addEventListener("handbook-units", listener);
}
