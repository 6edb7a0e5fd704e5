/**
 * What a question is drawn from: a few letters and digits in the page's address, so that a link
 * brings the same question. Whatever comes from an address is text that somebody else may have
 * written.
 */

/** Without letters and digits that are taken for each other. */
const LETTERS = "ABCDEFGHJKMNPQRTUVWXY346789";
const LENGTH = 6;
const LONGEST = 40; // as in calculators/practice/exercises.py

/** @returns {string} */
export function newSeed() {
  const numbers = crypto.getRandomValues(new Uint32Array(LENGTH));
  return Array.from(numbers, (number) => LETTERS[number % LETTERS.length]).join("");
}

/** @returns {string}  "" where the address has none that could be one */
export function seedInAddress() {
  const seed = (new URL(location.href).searchParams.get("seed") ?? "").trim();
  return seed.length <= LONGEST ? seed : "";
}

/** @param {string} seed @returns {URL}  the page's address with this seed */
export function addressWithSeed(seed) {
  const url = new URL(location.href);
  url.searchParams.set("seed", seed);
  url.hash = "";
  return url;
}
