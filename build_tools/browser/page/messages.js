/**
 * The closed list of messages between a page and its worker.
 *
 * Every message carries the id of the request it starts or answers. A request is answered by
 * exactly one `ready`, `answer`, `picture` or `failed`; `progress` may come before that.
 *
 * @typedef {{type: "start", id: number, runtime: string}} Start
 * @typedef {{type: "calculate", id: number, calculator: string, units: string,
 *   inputs: Record<string, string>}} Calculate
 * @typedef {{type: "draw", id: number, calculator: string, units: string,
 *   inputs: Record<string, string>}} Draw
 * @typedef {{type: "progress", id: number, stage: string}} Progress
 * @typedef {{type: "ready", id: number}} Ready
 * @typedef {{type: "answer", id: number, result: string}} Answer  result: JSON text
 * @typedef {{type: "picture", id: number, picture: string}} Picture  SVG, or nothing
 * @typedef {{type: "failed", id: number, reason: string}} Failed
 */

/** @type {Record<string, Record<string, string>>} */
const TO_WORKER = {
  start: { runtime: "string" },
  calculate: { calculator: "string", units: "string", inputs: "object" },
  draw: { calculator: "string", units: "string", inputs: "object" },
};

/** @type {Record<string, Record<string, string>>} */
const TO_PAGE = {
  progress: { stage: "string" },
  ready: {},
  answer: { result: "string" },
  picture: { picture: "string" },
  failed: { reason: "string" },
};

/**
 * @param {unknown} data
 * @returns {Start | Calculate | Draw}
 */
export function messageToWorker(data) {
  return /** @type {Start | Calculate | Draw} */ (checked(data, TO_WORKER));
}

/**
 * @param {unknown} data
 * @returns {Progress | Ready | Answer | Picture | Failed}
 */
export function messageToPage(data) {
  return /** @type {Progress | Ready | Answer | Picture | Failed} */ (checked(data, TO_PAGE));
}

/**
 * Throws a TypeError for anything that is not on the list.
 *
 * @param {any} data
 * @param {Record<string, Record<string, string>>} list
 */
function checked(data, list) {
  const type = String(data?.type);
  if (!Object.hasOwn(list, type)) {
    throw new TypeError(`There is no message “${type}”; there are ${Object.keys(list).join(", ")}.`);
  }
  for (const [name, kind] of Object.entries({ id: "number", ...list[type] })) {
    if (typeof data[name] !== kind || data[name] === null) {
      throw new TypeError(`The message “${type}” lacks its ${name}, of type ${kind}.`);
    }
  }
  return data;
}
