/**
 * The page's side of the worker: starts it, asks it, and lets no promise wait for ever.
 */
import { messageToPage } from "./messages.js";

const SECONDS_TO_START = 120;
const SECONDS_TO_ANSWER = 10;

/** The worker is of no use any more; a fresh one may be. */
export class WorkerLost extends Error {}

/** One worker from its birth to its end; each of its requests is settled exactly once. */
class Connection {
  #worker;
  #lastId = 0;
  /** @type {Map<number, {settle: (message: any) => void, fail: (problem: Error) => void}>} */
  #waiting = new Map();
  #onEnd;
  /** @type {WorkerLost | null} */
  #lost = null;

  /**
   * @param {(stage: string) => void} onProgress
   * @param {() => void} onEnd
   */
  constructor(onProgress, onEnd) {
    this.#onEnd = onEnd;
    this.#worker = new Worker(new URL("worker.js", import.meta.url), { type: "module" });
    this.#worker.addEventListener("message", ({ data }) => this.#receive(data, onProgress));
    this.#worker.addEventListener("messageerror", () => this.end("it sent something unreadable"));
    this.#worker.addEventListener("error", (event) => {
      this.end(event.message || "the script that runs it could not be loaded");
    });
  }

  /**
   * @param {object} request  a message of messages.js, without its id
   * @param {number} seconds  time limit, after which the worker is ended
   * @returns {Promise<any>}  the answering message
   */
  ask(request, seconds) {
    if (this.#lost) {
      return Promise.reject(this.#lost);
    }
    const id = ++this.#lastId;
    const answered = new Promise((resolve, reject) => {
      this.#waiting.set(id, { settle: resolve, fail: reject });
    });
    const timer = setTimeout(() => this.end(`it took longer than ${seconds} seconds`), seconds * 1000);
    this.#worker.postMessage({ ...request, id });
    return answered.finally(() => clearTimeout(timer));
  }

  /**
   * Ends the worker and fails what it has not answered.
   *
   * @param {string} reason
   */
  end(reason) {
    const lost = (this.#lost ??= new WorkerLost(reason));
    this.#worker.terminate();
    this.#onEnd();
    this.#waiting.forEach(({ fail }) => fail(lost));
    this.#waiting.clear();
    return lost;
  }

  /**
   * @param {unknown} data
   * @param {(stage: string) => void} onProgress
   */
  #receive(data, onProgress) {
    let message;
    try {
      message = messageToPage(data);
    } catch (problem) {
      this.end("it sent an unknown message");
      throw problem;
    }
    if (message.type === "progress") {
      onProgress(message.stage);
      return;
    }
    const waiting = this.#waiting.get(message.id);
    this.#waiting.delete(message.id);
    if (message.type === "failed") {
      waiting?.fail(new Error(message.reason));
    } else {
      waiting?.settle(message);
    }
  }
}

/** Calculates for all forms of a page through one worker, replaced once when it is lost. */
export class CalculatorClient {
  #runtime;
  /** @type {Promise<Connection> | null} */
  #opening = null;
  /** @type {Set<(stage: string) => void>} */
  #watchers = new Set();

  /** @param {string} runtime  address of the runtime folder, ending in a slash */
  constructor(runtime) {
    this.#runtime = runtime;
  }

  /**
   * Resolves when Python is ready to calculate.
   *
   * @param {(stage: string) => void} onProgress  told each stage in words
   */
  async start(onProgress) {
    this.#watchers.add(onProgress);
    try {
      await this.#withConnection(async () => {});
    } finally {
      this.#watchers.delete(onProgress);
    }
  }

  /**
   * @param {string} calculator
   * @param {Record<string, string>} inputs
   * @param {string} units
   * @returns {Promise<any>}  what `calculators.run` returned
   */
  async calculate(calculator, inputs, units) {
    const { result } = await this.#ask({ type: "calculate", calculator, inputs, units });
    return JSON.parse(result);
  }

  /**
   * @param {string} calculator
   * @param {Record<string, string>} inputs
   * @param {string} units
   * @returns {Promise<string>}  the curve of the calculator as SVG, or nothing where there is none
   */
  async draw(calculator, inputs, units) {
    return (await this.#ask({ type: "draw", calculator, inputs, units })).picture;
  }

  /** @param {object} request */
  #ask(request) {
    return this.#withConnection((connection) => connection.ask(request, SECONDS_TO_ANSWER));
  }

  /**
   * A calculation changes nothing, so what a lost worker was doing can be asked of a fresh one.
   *
   * @template T
   * @param {(connection: Connection) => Promise<T>} work
   */
  async #withConnection(work) {
    try {
      return await work(await this.#connection());
    } catch (problem) {
      if (!(problem instanceof WorkerLost)) {
        throw problem;
      }
      return await work(await this.#connection());
    }
  }

  #connection() {
    if (!this.#opening) {
      const forget = () => {
        if (this.#opening === opening) {
          this.#opening = null;
        }
      };
      const opening = this.#open(forget);
      opening.catch(forget);
      this.#opening = opening;
    }
    return this.#opening;
  }

  /** @param {() => void} onEnd  called as soon as the worker is of no use any more */
  async #open(onEnd) {
    const tellAll = (/** @type {string} */ stage) => this.#watchers.forEach((tell) => tell(stage));
    const connection = new Connection(tellAll, onEnd);
    try {
      await connection.ask({ type: "start", runtime: this.#runtime }, SECONDS_TO_START);
    } catch (problem) {
      throw connection.end(/** @type {Error} */ (problem).message);
    }
    return connection;
  }
}
