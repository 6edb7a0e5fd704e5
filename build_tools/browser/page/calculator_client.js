/**
 * The page's side of the worker: starts it in the fastest way that works, asks it, and lets no
 * promise wait for ever.
 */
import { messageToPage } from "./messages.js";
import { calculatorWords, marked } from "./words.js";

/**
 * The ways to start Python (see start.js), the fastest first. Each that fails, by an error or by
 * taking too long, gives way to the next one, in a fresh worker.
 */
const WAYS = [
  { name: "image", word: "" },
  { name: "compiled", word: marked("slow start") },
  { name: "plain", word: marked("slowest start") },
];

/** What a worker may take for each stage of its start. The network decides over the first. */
const SECONDS_FOR = { fetching: 120, starting: 20 };
const SECONDS_TO_ANSWER = 10;

/** The worker is of no use any more; a fresh one may be. */
class WorkerLost extends Error {}

/** One worker from its birth to its end; each of its requests is settled exactly once. */
class Connection {
  #worker;
  #lastId = 0;
  /** @type {Map<number, {settle: (message: any) => void, fail: (problem: Error) => void}>} */
  #waiting = new Map();
  #timer = 0;
  #onStage;
  /** @type {WorkerLost | null} */
  #lost = null;

  /** @param {(stage: string) => void} onStage */
  constructor(onStage) {
    this.#onStage = onStage;
    this.#worker = new Worker(new URL("worker.js", import.meta.url), { type: "module" });
    this.#worker.addEventListener("message", ({ data }) => this.#receive(data));
    this.#worker.addEventListener("messageerror", () => this.end("it sent something unreadable"));
    this.#worker.addEventListener("error", (event) => {
      this.end(event.message || "the script that runs it could not be loaded");
    });
  }

  /**
   * @param {object} request  a message of messages.js, without its id
   * @param {number} seconds  after which the worker is ended
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
    this.#allow(seconds);
    this.#worker.postMessage({ ...request, id });
    return answered;
  }

  /**
   * Ends the worker and fails what it has not answered.
   *
   * @param {string} reason
   */
  end(reason) {
    const lost = (this.#lost ??= new WorkerLost(reason));
    clearTimeout(this.#timer);
    this.#worker.terminate();
    this.#waiting.forEach(({ fail }) => fail(lost));
    this.#waiting.clear();
  }

  /** @param {number} seconds  from now on, for whatever is being waited for */
  #allow(seconds) {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.end(`it took longer than ${seconds} seconds`), seconds * 1000);
  }

  /** @param {unknown} data */
  #receive(data) {
    let message;
    try {
      message = messageToPage(data);
    } catch (problem) {
      this.end("it sent an unknown message");
      throw problem;
    }
    if (message.type === "progress") {
      this.#allow(SECONDS_FOR[/** @type {keyof typeof SECONDS_FOR} */ (message.stage)]);
      this.#onStage(message.stage);
      return;
    }
    if (message.type === "failed") {
      this.end(message.reason);
      return;
    }
    this.#waiting.get(message.id)?.settle(message);
    this.#waiting.delete(message.id);
    if (this.#waiting.size === 0) {
      clearTimeout(this.#timer);
    }
  }
}

/** Answers all forms of a page, and of the pages after it, through one worker at a time. */
export class CalculatorClient {
  #runtime;
  /** Which of the ways is in use. */
  #way;
  /** @type {Promise<Connection> | null} */
  #opening = null;
  /** @type {Set<(stage: string) => void>} */
  #watchers = new Set();
  /** What each worker has learned. @type {WeakMap<Connection, string>} */
  #learned = new WeakMap();

  /** @param {string} runtime  address of the calculators' runtime folder, ending in a slash */
  constructor(runtime) {
    this.#runtime = runtime;
    this.#way = rememberedWay(runtime);
  }

  /** One quiet word about a start that was slower than it should be. */
  get word() {
    return WAYS[this.#way].word;
  }

  /**
   * Resolves when Python is ready to answer.
   *
   * @param {(stage: string) => void} onStage  told "fetching", then "starting"
   */
  async start(onStage) {
    this.#watchers.add(onStage);
    try {
      await this.#withConnection(async () => {});
    } finally {
      this.#watchers.delete(onStage);
    }
  }

  /**
   * @param {string} calculator
   * @param {Record<string, string>} inputs
   * @param {string} units
   * @returns {Promise<any>}  what `calculators.run` returned
   */
  calculate(calculator, inputs, units) {
    return this.#ask({ work: "calculate", calculator, inputs, units });
  }

  /**
   * @param {string} calculator
   * @param {Record<string, string>} inputs
   * @param {string} units
   * @returns {Promise<string | null>}  the picture of the calculator as SVG, where there is one
   */
  draw(calculator, inputs, units) {
    return this.#ask({ work: "draw", calculator, inputs, units });
  }

  /**
   * Asks the diagnosis; a worker that does not know the handbook's causes yet learns them first.
   *
   * @param {string} knowledge  JSON
   * @param {object} asked  see calculators/as_text.py
   * @returns {Promise<any>}
   */
  async consult(knowledge, asked) {
    return this.#withConnection(async (connection) => {
      if (this.#learned.get(connection) !== knowledge) {
        await this.#askIn(connection, { work: "learn", knowledge });
        this.#learned.set(connection, knowledge);
      }
      return this.#askIn(connection, asked);
    });
  }

  /**
   * @param {object} asked  see calculators/as_text.py
   * @returns {Promise<any>}
   */
  ask(asked) {
    return this.#ask(asked);
  }

  /** @param {object} asked */
  async #ask(asked) {
    return this.#withConnection((connection) => this.#askIn(connection, asked));
  }

  /** @param {Connection} connection @param {object} asked */
  async #askIn(connection, asked) {
    const request = JSON.stringify(asked);
    const { answer } = await connection.ask({ type: "ask", request }, SECONDS_TO_ANSWER);
    return JSON.parse(answer);
  }

  /**
   * A calculation changes nothing, so what a lost worker was doing can be asked of the next one,
   * started in the next way. When none works (the network may be gone), the next try begins anew.
   *
   * @template T
   * @param {(connection: Connection) => Promise<T>} work
   * @returns {Promise<T>}
   */
  async #withConnection(work) {
    let attempts = Math.max(WAYS.length - this.#way, 2);
    for (;;) {
      const opening = (this.#opening ??= this.#open());
      try {
        return await work(await opening);
      } catch (problem) {
        if (!(problem instanceof WorkerLost)) {
          throw problem;
        }
        attempts -= 1;
        if (this.#opening === opening) {
          this.#opening = null;
          this.#take(attempts ? Math.min(this.#way + 1, WAYS.length - 1) : 0);
        }
        if (!attempts) {
          throw problem;
        }
      }
    }
  }

  /** @param {number} way */
  #take(way) {
    this.#way = way;
    rememberWay(this.#runtime, way);
  }

  async #open() {
    const tellAll = (/** @type {string} */ stage) => this.#watchers.forEach((tell) => tell(stage));
    const connection = new Connection(tellAll);
    const way = WAYS[this.#way].name;
    await connection.ask({ type: "start", runtime: this.#runtime, way }, SECONDS_FOR.fetching);
    const words = calculatorWords();
    if (words) {
      await this.#askIn(connection, { work: "speak", words });
    }
    return connection;
  }
}

const keyOf = (/** @type {string} */ runtime) => `way to start ${runtime}`;

/**
 * A way that failed is not tried again on the next page, until the browser is closed.
 *
 * @param {string} runtime
 */
function rememberedWay(runtime) {
  try {
    const found = WAYS.findIndex(({ name }) => name === sessionStorage.getItem(keyOf(runtime)));
    return Math.max(found, 0);
  } catch {
    return 0; // storage is refused
  }
}

/**
 * @param {string} runtime
 * @param {number} way
 */
function rememberWay(runtime, way) {
  try {
    sessionStorage.setItem(keyOf(runtime), WAYS[way].name);
  } catch {
    // Storage is refused: the next page tries the fastest way again.
  }
}
