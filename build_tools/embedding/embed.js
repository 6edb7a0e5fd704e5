/**
 * Puts calculators of the handbook into a page of another site:
 *
 *   <script src="https://…/embed.js" async></script>
 *   <handbook-calculator calculator="hardness-setting" input-hardness="25 gpg" units="metric">
 *     <a href="https://…/work-out/hardness-setting/">Hardness setting</a>
 *   </handbook-calculator>
 *
 * The element shows a frame in the place of its link, as high as what is in it. It tells of each
 * result by an event `handbook-result`, and takes texts for its inputs by `setInputs({…})`. The
 * messages behind that are described in docs/embedding.md.
 *
 * This is a classic script, because a browser fetches a module from another host only where that
 * host allows it by a header, which many static hosts do not send.
 */
(() => {
  if (customElements.get("handbook-calculator")) {
    return; // the page has this script twice
  }

  /** The calculators' titles by their names; the build puts them here. @type {Record<string, string>} */
  const TITLES = { "calculator-name": "Its title" };

  const HANDBOOK = new URL(".", /** @type {HTMLScriptElement} */ (document.currentScript).src);
  const NAMESPACE = "handbook-calculator/";
  const VERSION = 1;
  const INPUT = "input-";
  const FIRST_HEIGHT = "40rem";
  const HIGHEST = 20_000;

  class HandbookCalculator extends HTMLElement {
    #shadow = this.attachShadow({ mode: "open" });
    /** @type {HTMLIFrameElement | null} */
    #frame = null;
    /** Whether the page in the frame listens. */
    #isReady = false;
    /** What is to be set once it does. @type {Record<string, string>} */
    #waiting = {};

    connectedCallback() {
      this.style.display ||= "block";
      window.addEventListener("message", this);
      const name = this.getAttribute("calculator") ?? "";
      if (Object.hasOwn(TITLES, name)) {
        this.#isReady = false;
        this.#frame = this.#frameFor(name);
        this.#shadow.replaceChildren(this.#frame);
      } else {
        this.#shadow.replaceChildren(sentenceAbout(name), document.createElement("slot"));
      }
    }

    disconnectedCallback() {
      window.removeEventListener("message", this);
    }

    /**
     * Puts texts into inputs, as if they were typed; an event tells the result.
     *
     * @param {Record<string, string>} inputs
     */
    setInputs(inputs) {
      this.#waiting = { ...this.#waiting, ...inputs };
      if (this.#isReady) {
        this.#send();
      }
    }

    /** @param {MessageEvent} event */
    handleEvent({ source, origin, data }) {
      if (!this.#frame || source !== this.#frame.contentWindow || origin !== HANDBOOK.origin) {
        return;
      }
      if (data?.version !== VERSION || typeof data.type !== "string" || !data.type.startsWith(NAMESPACE)) {
        return;
      }
      const kind = data.type.slice(NAMESPACE.length);
      if (kind === "size") {
        if (Number.isFinite(data.height) && data.height > 0) {
          this.#frame.style.height = `${Math.min(Math.ceil(data.height), HIGHEST)}px`;
        }
      } else if (["ready", "result", "problem"].includes(kind)) {
        if (kind === "ready") {
          this.#isReady = true;
          if (Object.keys(this.#waiting).length) {
            this.#send();
          }
        }
        this.dispatchEvent(new CustomEvent(`handbook-${kind}`, { bubbles: true, detail: data }));
      }
    }

    #send() {
      const message = { type: `${NAMESPACE}set-inputs`, version: VERSION, inputs: this.#waiting };
      this.#frame?.contentWindow?.postMessage(message, HANDBOOK.origin);
      this.#waiting = {};
    }

    /** @param {string} name */
    #frameFor(name) {
      const address = new URL(`embed/${name}/`, HANDBOOK);
      const units = this.getAttribute("units");
      if (units) {
        address.searchParams.set("units", units);
      }
      for (const attribute of this.attributes) {
        if (attribute.name.startsWith(INPUT)) {
          address.searchParams.set(`${name}.${attribute.name.slice(INPUT.length)}`, attribute.value);
        }
      }
      const frame = document.createElement("iframe");
      frame.title = TITLES[name];
      frame.loading = "lazy";
      frame.src = address.href;
      Object.assign(frame.style, { display: "block", width: "100%", height: FIRST_HEIGHT, border: "0" });
      return frame;
    }
  }

  /** @param {string} name  of no calculator */
  function sentenceAbout(name) {
    const paragraph = document.createElement("p");
    const near = Object.keys(TITLES)
      .map((known) => ({ known, likeness: likeness(known, name) }))
      .filter(({ likeness }) => likeness > 0.4)
      .sort((one, other) => other.likeness - one.likeness)
      .slice(0, 3);
    const nearest = near.map(({ known }) => `“${known}”`).join(", ");
    paragraph.textContent =
      `The handbook has no calculator “${name.slice(0, 60)}”.` + (nearest && ` The nearest: ${nearest}.`);
    return paragraph;
  }

  /**
   * @param {string} one
   * @param {string} other
   * @returns {number}  the share of pairs of letters that two words have in common
   */
  function likeness(one, other) {
    const [pairs, others] = [one, other].map(
      (word) => new Set(Array.from(word.slice(0, 60)).map((letter, at, all) => letter + (all[at + 1] ?? ""))),
    );
    const common = [...pairs].filter((pair) => others.has(pair)).length;
    return (2 * common) / (pairs.size + others.size);
  }

  customElements.define("handbook-calculator", HandbookCalculator);
})();
