// Answers the theme's messages about the search: first the texts, then each question.
import { Search } from "./search.js";

const [TEXTS, READY, QUESTION, ANSWER] = [0, 1, 2, 3];
let texts;
/** Made for the first question: on most pages nobody asks one. */
let search;

/** @param {{type: number, data: any}} message */
export async function answer(message) {
  if (message.type === TEXTS) {
    texts = message.data.docs;
    return { type: READY };
  }
  if (message.type === QUESTION) {
    search ??= prepared();
    return { type: ANSWER, data: { items: (await search).find(message.data) } };
  }
  throw new TypeError(`The search knows no message of type ${message.type}.`);
}

async function prepared() {
  const { language = "en" } = self; // set by the worker that the page named
  if (language !== "en") {
    return new Search(texts, {}, language);
  }
  const meant = await fetch(new URL("../../../search/search-words.json", import.meta.url));
  return new Search(texts, await meant.json());
}
