/**
 * The closed list of messages between a page and its worker.
 *
 * Every message carries the id of the request it starts or answers. A request is answered by
 * exactly one `ready`, `answer` or `failed`; `progress` may come before that.
 *
 * @typedef {{type: "start", id: number, runtime: string, way: string}} Start  way: see start.js
 * @typedef {{type: "ask", id: number, request: string}} Ask  request: JSON for calculators.as_text
 * @typedef {{type: "progress", id: number, stage: string}} Progress  "fetching", then "starting"
 * @typedef {{type: "ready", id: number}} Ready
 * @typedef {{type: "answer", id: number, answer: string}} Answer  answer: JSON
 * @typedef {{type: "failed", id: number, reason: string}} Failed
 */

/** The texts that each message carries. @type {Record<string, string[]>} */
const TO_WORKER = { start: ["runtime", "way"], ask: ["request"] };

/** @type {Record<string, string[]>} */
const TO_PAGE = { progress: ["stage"], ready: [], answer: ["answer"], failed: ["reason"] };

/**
 * @param {unknown} data
 * @returns {Start | Ask}
 */
export function messageToWorker(data) {
  return /** @type {Start | Ask} */ (checked(data, TO_WORKER));
}

/**
 * @param {unknown} data
 * @returns {Progress | Ready | Answer | Failed}
 */
export function messageToPage(data) {
  return /** @type {Progress | Ready | Answer | Failed} */ (checked(data, TO_PAGE));
}

/**
 * Throws a TypeError for anything that is not on the list.
 *
 * @param {any} data
 * @param {Record<string, string[]>} list
 */
function checked(data, list) {
  const type = String(data?.type);
  if (!Object.hasOwn(list, type)) {
    throw new TypeError(`There is no message “${type}”; there are ${Object.keys(list).join(", ")}.`);
  }
  if (typeof data.id !== "number") {
    throw new TypeError(`The message “${type}” lacks its id.`);
  }
  for (const name of list[type]) {
    if (typeof data[name] !== "string") {
      throw new TypeError(`The message “${type}” lacks its ${name}.`);
    }
  }
  return data;
}
