/**
 * "Keep this handbook on this phone": fetches a whole edition into a cache of its own, and only
 * then notes it as the one to open without a network. Cut off, it goes on where it stopped.
 */
import { button, part } from "../element.js";
import { runtimePart } from "../parts.js";
import { inWords } from "./editions.js";
import { say } from "../words.js";

const AT_A_TIME = 6;

/** @typedef {[address: string, size: number, sha256: string, isPart: boolean]} KeptFile */

/** A reason in words for the person. */
class Stopped extends Error {}

/**
 * @param {string} site
 * @param {import("./editions.js").Editions} editions
 */
export function mountKeep(site, editions) {
  for (const block of document.querySelectorAll(".keep:not([data-mounted])")) {
    new Keep(/** @type {HTMLElement} */ (block), site, editions).mount();
  }
}

class Keep {
  #block;
  #site;
  #editions;
  #isStopped = false;

  /**
   * @param {HTMLElement} block
   * @param {string} site
   * @param {import("./editions.js").Editions} editions
   */
  constructor(block, site, editions) {
    this.#block = block;
    this.#site = site;
    this.#editions = editions;
  }

  async mount() {
    this.#block.dataset.mounted = "";
    if (!("serviceWorker" in navigator && "caches" in globalThis)) {
      this.#say(say("This browser keeps no pages here: the address is not secure (https), or the window is a private one."));
      return;
    }
    this.#block.addEventListener("click", ({ target }) => {
      const action = target instanceof HTMLElement && target.dataset.action;
      if (action === "keep") {
        this.#keep();
      } else if (action === "stop") {
        this.#isStopped = true;
      } else if (action === "remove") {
        this.#remove();
      }
    });
    try {
      await this.#show();
    } catch {
      this.#say(say("This browser refuses to keep pages: storage is switched off, or the window is a private one."));
    }
  }

  /** Says how things stand, and offers what can be done. */
  async #show(before = "") {
    const [out, kept] = await Promise.all([this.#editions.out(), this.#editions.kept()]);
    const isNewest = kept && (!out || kept.id === out.id);
    const isBegun = Boolean(out && !isNewest && (await caches.has(this.#editions.cacheOf(out))));
    const sentences = [before];
    if (kept) {
      sentences.push(say("This phone keeps the edition of {date}; it opens without a network.", { date: inWords(kept.date) }));
    }
    if (out && !isNewest) {
      sentences.push(
        kept ? say("The edition of {date} is out.", { date: inWords(out.date) }) : "",
        isBegun ? say("A part of it is fetched already.") : say("It takes {size} of this phone’s storage; less than half of that travels.", { size: megabytes(out.size) }),
      );
    } else if (!kept) {
      sentences.push(say("There is no network to fetch it from."));
    }
    this.#say(sentences.filter(Boolean).join(" "));
    this.#offer({ keep: Boolean(out && !isNewest), stop: false, remove: Boolean(kept || isBegun) });
    button(this.#block, "keep").textContent = isBegun ? say("Go on") : kept ? say("Fetch the new edition") : say("Keep this handbook on this phone");
  }

  async #keep() {
    this.#isStopped = false;
    this.#offer({ keep: false, stop: true, remove: false });
    this.#say(say("Fetching the handbook …"));
    let sentence = "";
    try {
      // Some browsers know no such wish, and some ask the person, whose answer need not come.
      navigator.storage?.persist?.().catch(() => {});
      await this.#fetchEdition();
      sentence = say("Done.");
    } catch (problem) {
      sentence = reasonFrom(problem);
    }
    this.#progress.hidden = true;
    await this.#show(sentence);
  }

  async #fetchEdition() {
    const edition = await this.#editions.out();
    if (!edition) {
      throw new Stopped(say("There is no network."));
    }
    const response = await fetch(new URL(`edition-${edition.id}.json`, this.#site), { cache: "no-cache" });
    /** @type {KeptFile[]} */
    const files = await response.json();
    const cache = await caches.open(this.#editions.cacheOf(edition));
    let bytes = 0;
    const queue = [...files];
    const fetchSome = async () => {
      for (let file = queue.shift(); file; file = queue.shift()) {
        if (this.#isStopped) {
          throw new Stopped(say("Stopped; what is fetched stays for the next time."));
        }
        await this.#fetchFile(cache, file);
        bytes += file[1];
        this.#showProgress(bytes, edition.size);
      }
    };
    await Promise.all(Array.from({ length: AT_A_TIME }, fetchSome)).catch((problem) => {
      queue.length = 0;
      throw problem;
    });
    await this.#editions.noteKept(edition);
  }

  /**
   * @param {Cache} cache
   * @param {KeptFile} file
   */
  async #fetchFile(cache, [address, , sha256, isPart]) {
    const url = new URL(address, this.#site).href;
    if (await cache.match(url)) {
      return;
    }
    for (const source of [isPart ? () => runtimePart(url) : () => caches.match(url), () => fetch(url, { cache: "no-cache" })]) {
      const response = await source();
      if (response?.ok) {
        const content = await response.arrayBuffer();
        if ((await hex(content)) === sha256) {
          const headers = { "Content-Type": response.headers.get("Content-Type") ?? "" };
          await cache.put(url, new Response(content, { headers }));
          return;
        }
      }
    }
    throw new Stopped(say("The file {page} did not arrive as this edition has it; perhaps a newer one is being put up just now.", { page: address || "of the first page" }));
  }

  async #remove() {
    await this.#editions.remove();
    await this.#show(say("It is off this phone."));
  }

  /** @param {number} bytes @param {number} all */
  #showProgress(bytes, all) {
    this.#progress.hidden = false;
    this.#progress.max = all;
    this.#progress.value = bytes;
    part(this.#block, "fetched").textContent = say("{size} of {size2}", { size: megabytes(bytes), size2: megabytes(all) });
  }

  /** @param {Record<string, boolean>} offered */
  #offer(offered) {
    part(this.#block, "buttons").hidden = false;
    for (const [action, isOffered] of Object.entries(offered)) {
      button(this.#block, action).hidden = !isOffered;
    }
    part(this.#block, "fetched").textContent = "";
  }

  /** @param {string} sentence */
  #say(sentence) {
    part(this.#block, "status").textContent = sentence;
  }

  get #progress() {
    return /** @type {HTMLProgressElement} */ (part(this.#block, "progress"));
  }
}

/** @param {any} problem */
function reasonFrom(problem) {
  if (problem instanceof Stopped) {
    return problem.message;
  }
  if (problem?.name === "QuotaExceededError") {
    return say("This phone’s storage is full: free some, then go on. What is fetched stays for now.");
  }
  return say("The network was lost. What is fetched stays: go on when it is back.");
}

/** @param {ArrayBuffer} content */
async function hex(content) {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", content));
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** @param {number} bytes */
function megabytes(bytes) {
  return `${(bytes / 1e6).toFixed(1)} MB`;
}
