/**
 * The inputs of a form in the page's address, as `?<form id>.<input>=<text>`, so that a link
 * shares them. Whatever comes from an address is text that somebody else may have written.
 */

/**
 * @param {string} formId
 * @param {string[]} names  the form's inputs
 * @returns {Map<string, string>}  the text for each input that the address names
 */
export function textsInAddress(formId, names) {
  const query = new URL(location.href).searchParams;
  const texts = new Map();
  for (const name of names) {
    const text = query.get(`${formId}.${name}`);
    if (text !== null) {
      texts.set(name, text);
    }
  }
  return texts;
}

/**
 * @param {string} formId
 * @param {Record<string, string>} texts  what the address shall carry for this form
 * @returns {URL}  the page's address with these texts in place of the form's earlier ones
 */
export function addressWith(formId, texts) {
  const url = new URL(location.href);
  for (const key of [...url.searchParams.keys()]) {
    if (key.startsWith(`${formId}.`)) {
      url.searchParams.delete(key);
    }
  }
  for (const [name, text] of Object.entries(texts)) {
    url.searchParams.set(`${formId}.${name}`, text);
  }
  return url;
}
