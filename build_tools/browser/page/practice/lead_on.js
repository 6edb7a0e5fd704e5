/**
 * Where the keyboard goes on when the button that was pressed is gone, or waits for something.
 */

/** @param {HTMLButtonElement} button  that had the focus when it was pressed */
export function leadOn(button) {
  const isLost = button.hidden || button.disabled;
  if (!isLost || ![button, document.body].includes(/** @type {HTMLElement} */ (document.activeElement))) {
    return;
  }
  const beside = [...(button.parentElement?.querySelectorAll("button") ?? [])].find((one) => !one.hidden && !one.disabled);
  const place = button.closest("[data-check]")?.querySelector("summary") ?? beside ?? button.closest(".practice-call")?.querySelector("[data-action=next]");
  /** @type {HTMLElement | null | undefined} */ (place)?.focus({ preventScroll: true });
}
