// Answers the theme's messages about the search: first the texts, then each question.
import { Search } from "./search.js";

const [TEXTS, READY, QUESTION, ANSWER] = [0, 1, 2, 3];
let search;

/** @param {{type: number, data: any}} message */
export async function answer(message) {
  if (message.type === TEXTS) {
    const meant = await fetch(new URL("../../../search/search-words.json", import.meta.url));
    search = new Search(message.data.docs, await meant.json());
    return { type: READY };
  }
  if (message.type === QUESTION) {
    return { type: ANSWER, data: { items: search.find(message.data) } };
  }
  throw new TypeError(`The search knows no message of type ${message.type}.`);
}
