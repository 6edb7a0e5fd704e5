/**
 * A slider beside a field. What it writes at each of its places was worked out by the build, in the
 * reader's units, so that nothing is reckoned here.
 */

/**
 * Adds the slider of a field, where it has one.
 *
 * @param {HTMLElement} field
 * @param {HTMLInputElement | HTMLSelectElement} control  the field's text
 * @returns {() => void}  puts the slider where the field's text is one of its places
 */
export function addSlider(field, control) {
  if (!field.dataset.slider) {
    return () => {};
  }
  /** @type {string[]} */
  const texts = JSON.parse(field.dataset.slider);
  const slider = document.createElement("input");
  slider.type = "range";
  slider.className = "live-form__slider";
  slider.max = String(texts.length - 1);
  slider.autocomplete = "off";
  slider.setAttribute("aria-label", `Slider: ${field.querySelector("label")?.textContent ?? ""}`);
  const place = () => {
    const index = texts.indexOf(control.value.trim());
    if (index >= 0) {
      slider.value = String(index);
    }
    slider.setAttribute("aria-valuetext", control.value);
  };
  // The form hears of it as of anything typed, when the event has risen to it.
  slider.addEventListener("input", () => {
    control.value = texts[Number(slider.value)];
    place();
  });
  const together = document.createElement("div");
  together.className = "live-form__with-slider";
  control.replaceWith(together);
  together.append(control, slider);
  place();
  return place;
}
