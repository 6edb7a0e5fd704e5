/**
 * Making elements, and finding those that the build has made.
 */

/**
 * Makes an element; texts among its children stay text.
 *
 * @template {keyof HTMLElementTagNameMap} Tag
 * @param {Tag} tag
 * @param {object} properties
 * @param {...(Node | string)} children
 * @returns {HTMLElementTagNameMap[Tag]}
 */
export function element(tag, properties, ...children) {
  const made = Object.assign(document.createElement(tag), properties);
  made.append(...children);
  return made;
}

/**
 * @param {Element} within
 * @param {string} name
 * @returns {HTMLElement}  the part of a section that templates give this name
 */
export function part(within, name) {
  return /** @type {HTMLElement} */ (within.querySelector(`[data-part="${name}"]`));
}

/**
 * @param {Element} within
 * @param {string} action
 * @returns {HTMLButtonElement}  the button that does this
 */
export function button(within, action) {
  return /** @type {HTMLButtonElement} */ (within.querySelector(`button[data-action="${action}"]`));
}

/**
 * @param {Element} within
 * @param {string} selector
 * @returns {HTMLElement[]}
 */
export function elements(within, selector) {
  return [...within.querySelectorAll(selector)].map((found) => /** @type {HTMLElement} */ (found));
}

/**
 * @param {Element} within
 * @param {string} selector  of fields, each with a value
 * @returns {HTMLInputElement[]}
 */
export function fields(within, selector) {
  return /** @type {HTMLInputElement[]} */ (elements(within, selector));
}
