// What the search knows of a language: the stems of its words, and those that say nothing.
import { stemmer as stemmerOfSpanish } from "@orama/stemmers/spanish";
import { stemmer } from "stemmer";

const words = (text) => new Set(text.split(" "));
/** A word as it is compared: people leave accents out. */
const folded = (word) => word.normalize("NFD").replaceAll(/\p{M}/gu, "");

/** @type {Record<string, {stem: (word: string) => string, common: Set<string>}>} */
export const TONGUES = {
  en: {
    stem: stemmer,
    common: words(
      "a about all am an and any are as at be been but by can could did do does for from get gets " +
        "got had has have he her his how i if in is it its just me my of off on or our out she so " +
        "some still than that the their them then there they this to us very was we were what when " +
        "which while who will with would you your can't cant doesn't doesnt don't dont isn't isnt " +
        "won't wont",
    ),
  },
  es: {
    stem: (word) => folded(stemmerOfSpanish(word)),
    common: words(
      "a al algo ante antes aquí así aun aunque cada como cómo con cual cuál cuando cuándo de del " +
        "desde donde dónde e el ella en entre era es esa ese eso esta está este esto estos fue ha " +
        "hace hacen hacia hasta hay la las le les lo los más me mi mis muy nada ni no nos o para " +
        "pero por porque que qué se ser si sí sin sobre son su sus también tan te tengo ti tiene " +
        "todo tu tus u un una uno unos y ya yo",
    ),
  },
};

/** The language of a page, from its address in the site. */
export const languageOf = (address) =>
  Object.keys(TONGUES).find((language) => address.startsWith(`${language}/`)) ?? "en";
