/**
 * Waiting for Python to start, and for a section to come near the screen.
 */
import { marked, say } from "./words.js";

const NEAR_THE_SCREEN = "300px";

/** A start that is over sooner is not told: it would only be noise. */
const MILLISECONDS_BEFORE_TELLING = 400;

/** @type {Record<string, string>} */
const WORDS_FOR = {
  fetching: marked("Fetching Python; the first time this takes a moment."),
  starting: marked("Python is here; loading the calculators."),
};

/**
 * Resolves when Python can be asked; tells what it waits for, once that has taken a while.
 *
 * @param {import("./calculator_client.js").CalculatorClient} client
 * @param {(sentence: string) => void} tell
 */
export async function started(client, tell) {
  let stage = "fetching";
  let isSlow = false;
  const tellStage = () => isSlow && tell(say(WORDS_FOR[stage]));
  const timer = setTimeout(() => {
    isSlow = true;
    tellStage();
  }, MILLISECONDS_BEFORE_TELLING);
  try {
    await client.start((reached) => {
      stage = reached;
      tellStage();
    });
  } finally {
    clearTimeout(timer);
  }
}

/** @param {HTMLElement} section @param {() => void} work  is done once, when the section is near the screen */
export function whenNearTheScreen(section, work) {
  const observer = new IntersectionObserver(
    (entries) => {
      if (entries.some((entry) => entry.isIntersecting)) {
        observer.disconnect();
        work();
      }
    },
    { rootMargin: NEAR_THE_SCREEN },
  );
  observer.observe(section);
}
