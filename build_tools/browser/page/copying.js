/**
 * Copying for a person, where the browser lets a page do that.
 */
import { say } from "./words.js";

/** @param {string} text @returns {Promise<boolean>}  whether it is copied */
export async function copyText(text) {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    return false;
  }
}

/** @param {string} href @returns {Promise<string>}  what to tell; the link itself where it is not copied */
export async function copyLink(href) {
  return (await copyText(href)) ? say("The link is copied.") : say("This browser does not let the page copy. The link is: {href}", { href });
}
