/**
 * Telling a person something: aloud, beside a field, or by leading to the place.
 */

/**
 * Says a sentence where a screen reader hears each change; the same one again is no news.
 *
 * @param {HTMLElement} status
 * @param {string} sentence
 */
export function announce(status, sentence) {
  if (status.textContent !== sentence) {
    status.textContent = sentence;
  }
}

/**
 * @param {HTMLElement} place  hidden while there is nothing to tell
 * @param {string} sentence  "" for nothing
 */
export function tellBeside(place, sentence) {
  place.textContent = sentence;
  place.hidden = !sentence;
}

/**
 * @param {Element} control
 * @param {boolean} isWrong  whether what is in it cannot be taken
 */
export function markWrong(control, isWrong) {
  if (isWrong) {
    control.setAttribute("aria-invalid", "true");
  } else {
    control.removeAttribute("aria-invalid");
  }
}

/** @param {HTMLElement} place  takes the focus, and comes to the top of the screen */
export function leadTo(place) {
  place.focus({ preventScroll: true });
  const behavior = matchMedia("(prefers-reduced-motion: reduce)").matches ? "auto" : "smooth";
  place.scrollIntoView({ block: "start", behavior });
}

/** @param {unknown} problem  that was thrown @returns {string} */
export function reasonOf(problem) {
  return problem instanceof Error ? problem.message : String(problem);
}
