// Finds pages by a person's words: whole pages are ranked, and their best parts shown.
//
// Every word of the question counts by itself, with its other endings, small slips of the keyboard
// and the words of the trade that it may stand for; a page that answers more of the words comes
// first. The last word may be unfinished. On the page of a fault each saying of a customer counts
// also by itself: the words of one complaint stand in one sentence.
import MiniSearch from "minisearch";
import { languageOf, TONGUES } from "./tongues.js";

const WORD = /[\p{L}\p{N}]+(?:['’][\p{L}]+)*/gu;
// What a match in each field counts, and a match that is not of the word itself.
const FIELDS = { title: 4, said: 2, text: 1 };
const [UNFINISHED, SLIP, MEANT] = [0.5, 0.3, 0.7];
const SAYINGS = "#customer-says";
const AS_IT_STANDS = { tokenize: (text) => [text], processTerm: (text) => text };
const RESULTS = 30;
const PARTS = 3;
const EXCERPT = 180;
// A quantity in both unit systems, as build_tools/content/unit_marks.py marks it. What is longer
// than a quantity is the text of a picture.
const PAIR = /\uE000([^\uE001]*)\uE001([^\uE002]*)\uE002/g;
const KEPT = /[\uE003\uE004]/g;
const QUANTITY = 60;

export class Search {
  /**
   * @param {{location: string, title: string, text: string, boost?: number}[]} sections  of pages,
   *   each page's own first; texts are HTML
   * @param {Record<string, string[]>} meant  for what people say, the words that the handbook uses
   * @param {string} language  whose pages are looked through
   */
  constructor(sections, meant, language = "en") {
    const { stem, common } = TONGUES[language];
    this.stem = stem;
    this.common = common;
    this.pages = new Map();
    for (const section of sections.filter(({ location }) => languageOf(location) === language)) {
      const [address] = section.location.split("#");
      const page = this.pages.get(address) ?? { boost: section.boost ?? 1, sections: [] };
      const words = plain(section.text);
      page.sections.push({ ...section, all: inBoth(words), words: withoutPictures(words) });
      this.pages.set(address, page);
    }
    this.meant = new Map();
    for (const [said, words] of Object.entries(meant)) {
      this.meant.set(stem(said), words.map((word) => stem(word)));
    }
    this.nearly = new MiniSearch({ idField: "stem", fields: ["stem"] });
    this.nearly.addAll([...this.meant.keys()].map((stem) => ({ stem })));
    this.index = new MiniSearch({
      idField: "key",
      fields: Object.keys(FIELDS),
      tokenize: (text) => text.toLowerCase().match(WORD) ?? [],
      processTerm: (word) => stem(word),
    });
    for (const [address, { sections }] of this.pages) {
      this.index.addAll(documentsOf(address, sections));
    }
  }

  /**
   * @param {string} question
   * @returns the pages found, the best first, each a list of the page itself and its best parts
   */
  find(question) {
    const said = question.toLowerCase().match(WORD) ?? [];
    const telling = said.filter((word) => !this.common.has(word));
    const words = [...new Set(telling.length ? telling : said)];
    const pages = new Map();
    for (const [key, { score, answered }] of this.scored(words)) {
      const [address, saying] = key.split("#");
      const page = pages.get(address) ?? { whole: 0, saying: 0, answered: new Set() };
      const part = saying ? "saying" : "whole";
      page[part] = Math.max(page[part], score * (answered.size / words.length) ** 2);
      answered.forEach((word) => page.answered.add(word));
      pages.set(address, page);
    }
    const score = ([address, { whole, saying }]) =>
      (whole + saying) * this.pages.get(address).boost;
    return [...pages]
      .map((found) => ({ address: found[0], score: score(found), answered: found[1].answered }))
      .sort((one, other) => other.score - one.score || (one.address < other.address ? -1 : 1))
      .slice(0, RESULTS)
      .map((found) => this.shown(found, words));
  }

  /** What each page and saying scores for all words together, and which of them it answers. */
  scored(words) {
    const found = new Map();
    words.forEach((word, place) => {
      for (const [key, score] of this.scores(word, place === words.length - 1)) {
        const one = found.get(key) ?? { score: 0, answered: new Set() };
        one.score += score;
        one.answered.add(word);
        found.set(key, one);
      }
    });
    return found;
  }

  /** What each page and saying scores for one word, or for what the word may stand for. */
  scores(word, unfinished) {
    const best = new Map();
    for (const [place, term] of this.terms(word).entries()) {
      const itself = place === 0;
      const found = this.index.search(term, {
        ...AS_IT_STANDS,
        boost: FIELDS,
        prefix: itself && unfinished && term.length > 2,
        fuzzy: itself && this.mayBeASlip(term) ? 1 : false,
        weights: { prefix: UNFINISHED, fuzzy: SLIP },
      });
      for (const { id, score } of found) {
        best.set(id, Math.max(best.get(id) ?? 0, itself ? score : MEANT * score));
      }
    }
    return best;
  }

  /** A page as the theme shows it: the page itself, then the parts that hold most of the words. */
  shown({ address, score, answered }, words) {
    const stems = new Set(words.flatMap((word) => this.terms(word)));
    const { sections } = this.pages.get(address);
    const terms = Object.fromEntries(words.map((word) => [word, answered.has(word)]));
    const parts = sections
      .map((section) => ({ section, hits: hits(`${section.title} ${section.words}`, stems, this.stem) }))
      .filter(({ section, hits }) => hits > 0 && section.location.includes("#"))
      .sort((one, other) => other.hits - one.hits)
      .slice(0, PARTS)
      .map(({ section }, place) => ({
        ...this.excerpt(section, stems),
        score: place === 0 ? score : 0, // what scores less, the theme folds away
        terms,
      }));
    const page = { ...this.excerpt(sections[0], stems), score, terms };
    return [page, ...parts];
  }

  /** A short word is taken for another one only where no page has it. */
  mayBeASlip(term) {
    return term.length > 4 || (term.length === 4 && !this.index.search(term, AS_IT_STANDS).length);
  }

  /** The stem of a word, then those of the words that it may stand for, small slips allowed. */
  terms(word) {
    const stem = this.stem(word);
    const isKnown = this.meant.has(stem) || this.index.search(stem, AS_IT_STANDS).length > 0;
    const [near] = isKnown || stem.length < 5 ? [] : this.nearly.search(stem, { fuzzy: 1 });
    return [stem, ...(this.meant.get(near?.id ?? stem) ?? [])];
  }

  excerpt({ location, title, words }, stems) {
    const first = [...words.matchAll(WORD)].find((match) => matches(match[0], stems, this.stem))?.index ?? 0;
    const begin = first > EXCERPT / 2 ? words.indexOf(" ", first - EXCERPT / 2) + 1 : 0;
    const long = words.length > begin + EXCERPT;
    const last = long ? words.lastIndexOf(" ", begin + EXCERPT) : words.length;
    const [start, end] = aroundPairs(words, begin, Math.max(last, begin));
    const cut = words.slice(start, end);
    const text = `${start > 0 ? "… " : ""}${marked(cut, stems, this.stem)}${long ? " …" : ""}`;
    return { location, title: marked(plain(title), stems, this.stem), text };
  }
}

/** What is looked through: the page as a whole, and each saying of a customer by itself. */
function documentsOf(address, sections) {
  const heard = sections.find(({ location }) => location.endsWith(SAYINGS));
  const others = sections.filter((section) => section !== heard);
  const listed = heard ? heard.text.split("<li>").map(plain).filter(Boolean) : [];
  const sayings = listed.map(inBoth);
  return [
    {
      key: address,
      title: inBoth(plain(sections[0].title)),
      said: sayings.join(" "),
      text: others.map(({ title, all }) => `${inBoth(title)} ${all}`).join(" "),
    },
    ...sayings.map((said, place) => ({ key: `${address}#${place}`, said })),
  ];
}

/** The text of HTML that this site's build wrote; its entities stay, so it may stand in a page. */
function plain(html) {
  return html.replaceAll(KEPT, "").replaceAll(/<[^>]*>/g, " ").replaceAll(/\s+/g, " ").trim();
}

/** A text with its quantities in both unit systems, to be looked through. */
function inBoth(words) {
  return words.replaceAll(PAIR, " $1 $2 ");
}

function withoutPictures(words) {
  return words.replaceAll(PAIR, (pair, own) => (own.length > QUANTITY ? " " : pair));
}

/** The ends of a cut, moved so that no quantity is cut through. */
function aroundPairs(words, start, end) {
  for (const { 0: pair, index } of words.matchAll(PAIR)) {
    const behind = index + pair.length;
    start = index < start && start < behind ? index : start;
    end = index < end && end < behind ? behind : end;
  }
  return [start, end];
}

function matches(word, stems, stemOf) {
  const stem = stemOf(word.toLowerCase());
  return [...stems].some((one) => stem === one || (one.length > 2 && stem.startsWith(one)));
}

function hits(text, stems, stemOf) {
  const found = new Set((text.match(WORD) ?? []).map((word) => stemOf(word.toLowerCase())));
  return [...stems].filter((stem) => found.has(stem)).length;
}

/** A text in which the words that answer stand out; the page shows its quantities as it does all. */
function marked(text, stems, stemOf) {
  const parts = text.split(PAIR);
  return parts
    .map((part, place) => {
      if (place % 3 === 2) {
        return "";
      }
      const shown = withMarks(part, stems, stemOf);
      const other = place % 3 ? parts[place + 1].replaceAll('"', "&quot;") : "";
      return place % 3 ? `<span data-other="${other}">${shown}</span>` : shown;
    })
    .join("");
}

function withMarks(text, stems, stemOf) {
  return text.replaceAll(/&#?\w+;|[\p{L}\p{N}]+(?:['’][\p{L}]+)*/gu, (part) =>
    !part.startsWith("&") && matches(part, stems, stemOf) ? `<mark>${part}</mark>` : part,
  );
}
