/**
 * Shows every quantity in the unit system that the reader has chosen, before it is painted: so a
 * classic script in the head. The page is written in the shop's own system and carries the other
 * one beside each quantity; whatever comes into the page is exchanged as it comes. Other scripts
 * read `data-units` of the document's element and hear of a change by the event "handbook-units".
 */
(() => {
  const script = /** @type {HTMLScriptElement} */ (document.currentScript);
  const root = document.documentElement;
  const own = String(script.dataset.own);
  const SYSTEMS = ["us", "metric"];
  const KEY = `unit system in ${new URL("../../../", script.src).pathname}`;
  const PAIRS = "[data-other], [data-in-other], template[data-other-block]";

  /** What came in while it was not known whether its end had come, too. @type {Set<Element>} */
  const unfinished = new Set();

  /** @returns {string}  what the address asks for, or the reader chose on any page */
  function chosen() {
    const asked = new URLSearchParams(location.search).get("units") ?? "";
    return [asked, recalled()].find((one) => SYSTEMS.includes(one)) ?? own;
  }

  function recalled() {
    try {
      return localStorage.getItem(KEY) ?? "";
    } catch {
      return ""; // Refused: the choice lives as long as its page.
    }
  }

  /** @param {string} system */
  function keep(system) {
    try {
      localStorage.setItem(KEY, system);
    } catch {
      // Refused: the choice lives as long as its page.
    }
  }

  /** Brings one element into the chosen system. @param {Element} element */
  function bring(element) {
    const isOther = root.dataset.units !== own;
    if (element.hasAttribute("data-exchanged") === isOther) {
      return;
    }
    element.toggleAttribute("data-exchanged", isOther);
    if (element instanceof HTMLTemplateElement) {
      exchangeBlock(element);
    }
    const text = element.getAttribute("data-other");
    if (text !== null) {
      element.setAttribute("data-other", element.textContent ?? "");
      element.textContent = text;
    }
    const attributes = element.getAttribute("data-in-other");
    if (attributes !== null) {
      exchangeAttributes(element, JSON.parse(attributes));
    }
  }

  /** @param {HTMLTemplateElement} template  what stands before it and what waits in it change places */
  function exchangeBlock(template) {
    const shown = template.previousElementSibling;
    const waiting = template.content.firstElementChild;
    if (shown && waiting) {
      shown.replaceWith(waiting);
      template.content.append(shown);
    }
  }

  /** @param {Element} element @param {Record<string, string | null>} waiting */
  function exchangeAttributes(element, waiting) {
    /** @type {Record<string, string | null>} */
    const shown = {};
    for (const [name, text] of Object.entries(waiting)) {
      shown[name] = element.getAttribute(name);
      if (text === null) {
        element.removeAttribute(name);
      } else {
        element.setAttribute(name, text);
      }
    }
    element.setAttribute("data-in-other", JSON.stringify(shown));
  }

  /** Whether the parser is done with an element. @param {Element} element */
  function isFinished(element) {
    for (let node = /** @type {Node | null} */ (element); node; node = node.parentNode) {
      if (node.nextSibling) {
        return true;
      }
    }
    return document.readyState !== "loading";
  }

  /** @param {Iterable<Element>} elements */
  function bringAll(elements) {
    for (const element of elements) {
      if (isFinished(element)) {
        unfinished.delete(element);
        bring(element);
      } else {
        unfinished.add(element);
      }
    }
  }

  const observer = new MutationObserver((records) => {
    const came = new Set(unfinished);
    for (const { addedNodes } of records) {
      for (const node of addedNodes) {
        if (node instanceof Element) {
          for (const element of [node, ...node.querySelectorAll(PAIRS)]) {
            if (element.matches(PAIRS)) {
              came.add(element);
            }
          }
        }
      }
    }
    bringAll(came);
  });
  let isWatching = false;

  /** @param {string} system */
  function show(system) {
    const before = root.dataset.units;
    if (system === before) {
      return;
    }
    root.dataset.units = system;
    root.toggleAttribute("data-other-units", system !== own);
    if (system !== own && !isWatching) {
      isWatching = true;
      observer.observe(document, { childList: true, subtree: true });
      document.addEventListener("readystatechange", () => bringAll([...unfinished]));
    }
    bringAll(document.querySelectorAll(PAIRS));
    if (before) {
      document.dispatchEvent(new CustomEvent("handbook-units", { detail: { before, system } }));
    }
  }

  document.addEventListener("click", ({ target }) => {
    const place = target instanceof Element && target.closest(".units-switch");
    if (!place || !(target instanceof Element) || !target.closest("button")) {
      return;
    }
    const system = SYSTEMS[1 - SYSTEMS.indexOf(String(root.dataset.units))];
    keep(system);
    show(system);
    const told = /** @type {HTMLElement} */ (place.querySelector("[role=status]"));
    told.textContent = String(told.dataset.told);
  });
  window.addEventListener("storage", ({ key }) => key === KEY && show(recalled() || own));
  window.addEventListener("pageshow", ({ persisted }) => persisted && show(chosen()));
  show(chosen());
})();
