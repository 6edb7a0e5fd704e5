/**
 * The messages between a bare page in a frame and the page around it, which anybody may have
 * written: version 1, described for its authors in docs/embedding.md.
 *
 * What comes in is on a closed list and is checked here. What goes out is told to whoever frames
 * the page: it holds only what stands in the form, which the reader typed into that page.
 */

export const VERSION = 1;
export const NAMESPACE = "handbook-calculator/";

const LONGEST_TEXT = 200;
const LONGEST_QUOTE = 40;

/**
 * @param {unknown} data
 * @returns {boolean}  whether it is meant for us at all; other tools send messages too
 */
export function isOurs(data) {
  const type = /** @type {any} */ (data)?.type;
  return typeof type === "string" && type.startsWith(NAMESPACE);
}

/**
 * Returns the texts that a message sets; throws a TypeError whose sentence says what is wrong with
 * it. Either all of a message is right or nothing of it counts.
 *
 * @param {any} data  a message of ours
 * @param {string[]} names  of the form's inputs
 * @returns {Map<string, string>}
 */
export function textsToSet(data, names) {
  const { type, version, inputs } = data;
  if (version !== VERSION) {
    throw new TypeError(`This page understands version ${VERSION} of the messages, not ${quoted(version)}.`);
  }
  if (type !== `${NAMESPACE}set-inputs`) {
    throw new TypeError(`There is no message ${quoted(type)}; there is “${NAMESPACE}set-inputs”.`);
  }
  if (typeof inputs !== "object" || inputs === null || Array.isArray(inputs)) {
    throw new TypeError("The message lacks its inputs: an object with a text for each input's name.");
  }
  const texts = new Map(Object.entries(inputs));
  for (const [name, text] of texts) {
    if (!names.includes(name)) {
      throw new TypeError(`There is no input ${quoted(name)}; there are ${names.join(", ")}.`);
    }
    if (typeof text !== "string") {
      throw new TypeError(`The input “${name}” takes a text, such as "18 gpg".`);
    }
    if (text.length > LONGEST_TEXT) {
      throw new TypeError(`The text for the input “${name}” has more than ${LONGEST_TEXT} characters.`);
    }
  }
  return texts;
}

/** @param {unknown} value */
function quoted(value) {
  const text = typeof value === "object" ? typeof value : String(value);
  return `“${text.length > LONGEST_QUOTE ? `${text.slice(0, LONGEST_QUOTE)}…` : text}”`;
}
