/**
 * The words of these scripts in the language of the page. English is the key and the fallback: on a
 * page in English, and where the language lacks words, what is said is what stands in the call.
 * A page in another language names its file of words, made from the catalog by the build.
 */

/**
 * @typedef {object} Words
 * @property {Record<string, string | string[]>} words  by the English ones; several forms of a plural
 * @property {Record<string, number>} forms  which of them a number's plural category takes
 * @property {object} calculators  what `calculators.translating` takes
 */

/** @type {Words} */
const NONE = { words: {}, forms: {}, calculators: {} };
let spoken = NONE;

/**
 * Calls `go` when the page's words are here: at once on a page in English.
 *
 * @param {() => void} go
 */
export async function whenWordsAreHere(go) {
  const link = document.querySelector("link[data-words]");
  if (link instanceof HTMLLinkElement && spoken === NONE) {
    try {
      spoken = await (await fetch(link.href)).json();
    } catch {
      // Without a network and never kept: the scripts speak English.
    }
  }
  go();
}

/** What the calculators need to speak the page's language; null for English. */
export function calculatorWords() {
  return spoken === NONE ? null : spoken.calculators;
}

/**
 * @param {string} words  in English; {names} stand for values
 * @param {Record<string, any>} [names]
 * @returns {string}
 */
export function say(words, names = {}) {
  const said = spoken.words[words] ?? words;
  return filled(typeof said === "string" ? said : said[0], names);
}

/**
 * Says something about so many things; {count} is among the names.
 *
 * @param {number} count
 * @param {string} one
 * @param {string} more
 * @param {Record<string, any>} [names]
 * @returns {string}
 */
export function sayCount(count, one, more, names = {}) {
  const forms = spoken.words[one];
  const form = spoken.forms[new Intl.PluralRules(document.documentElement.lang).select(count)] ?? 0;
  const said = Array.isArray(forms) ? forms[form] : count === 1 ? one : more;
  return filled(said, { count, ...names });
}

/**
 * Marks words that are said elsewhere, so that the catalog gets them.
 *
 * @param {string} words
 */
export const marked = (words) => words;

/** @param {string} words @param {Record<string, any>} names */
function filled(words, names) {
  return words.replaceAll(/\{(\w+)\}/g, (place, name) => (name in names ? String(names[name]) : place));
}
