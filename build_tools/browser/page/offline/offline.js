/**
 * Registers the offline worker, and tells on each page when its text may be old.
 */
import { Editions, inWords } from "./editions.js";
import { mountKeep } from "./keep.js";
import { say } from "../words.js";

/** Where a browser keeps nothing (no secure address, a private window), pages just do without. */
export async function registerOfflineWorker() {
  const site = siteOf(document);
  if (!site || !("serviceWorker" in navigator)) {
    return;
  }
  if (document.readyState !== "complete") {
    await new Promise((resolve) => addEventListener("load", resolve, { once: true }));
  }
  const wasWithout = !navigator.serviceWorker.controller;
  try {
    const address = new URL("service-worker.js", site);
    await navigator.serviceWorker.register(address, { scope: site, updateViaCache: "none" });
    await navigator.serviceWorker.ready;
    if (wasWithout) {
      // This page came before the worker: it would be missing from what was visited.
      await (await caches.open("pages")).add(location.href.replace(/[?#].*/, ""));
    }
  } catch {
    // Refused, or the network has gone already: the next visit tries again.
  }
}

/** Called for each page, also where the theme changes pages without loading them. */
export async function tellAge() {
  const site = siteOf(document);
  const [line] = document.getElementsByClassName("edition");
  const time = line?.querySelector("time");
  if (!site || !time) {
    return;
  }
  const editions = new Editions(site);
  mountKeep(site, editions);
  editions.removeOlder(time.dateTime).catch(() => {}); // nothing is kept where storage is refused
  const [out, kept] = await Promise.all([editions.out(), editions.kept()]);
  if (!time.isConnected) {
    return; // another page has taken this one's place
  }
  if (!out) {
    note(say("There is no network. This is the edition of {date}.", { date: inWords(time.dateTime) }));
  } else if (time.dateTime < out.date) {
    note(say("This is a copy from the edition of {date}; that of {date2} is out. Load the page again when the network is better.", { date: inWords(time.dateTime), date2: inWords(out.date) }));
  } else if (kept && kept.id !== out.id) {
    note(say("This phone keeps the edition of {date}, and a newer one is out. ", { date: inWords(kept.date) }), {
      words: say("Fetch it"),
      address: new URL("reference/on-this-phone/", site),
    });
  }
}

/** @param {Document} page @returns {string | null}  the address of the site */
function siteOf(page) {
  const [line] = page.getElementsByClassName("edition");
  return line instanceof HTMLElement ? new URL(String(line.dataset.site), page.baseURI).href : null;
}

/**
 * @param {string} sentence
 * @param {{words: string, address: URL}} [link]
 */
function note(sentence, link) {
  const made = Object.assign(document.createElement("p"), { className: "edition-note" });
  made.setAttribute("role", "status");
  document.querySelector("article")?.prepend(made);
  made.append(sentence);
  if (link) {
    made.append(Object.assign(document.createElement("a"), { textContent: link.words, href: link.address.href }));
  }
}
