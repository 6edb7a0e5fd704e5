/**
 * The worker that holds Python. It loads Pyodide from the runtime folder, answers calculations by
 * calling `calculators.run` and draws by calling `calculators.figures.curve_picture`; texts go in
 * and come out as data, never as Python source.
 */
import { messageToWorker } from "./messages.js";

const PYODIDE_FILES = ["pyodide.mjs", "pyodide.asm.mjs", "pyodide.asm.wasm", "python_stdlib.zip"];

/** @typedef {(calculator: string, inputs: object, units: string) => string} Work */

/** @type {{calculate: Work, draw: Work} | null} */
let python = null;

self.addEventListener("message", ({ data }) => {
  // Thrown here, an unknown message reaches the page as the worker's error event.
  const message = messageToWorker(data);
  answerTo(message);
});

/** @param {ReturnType<typeof messageToWorker>} message */
async function answerTo(message) {
  const { id } = message;
  try {
    if (message.type === "start") {
      python = await startPython(message.runtime, (stage) => send({ type: "progress", id, stage }));
      send({ type: "ready", id });
      return;
    }
    if (!python) {
      throw new Error("Python has not been started");
    }
    const { calculator, inputs, units } = message;
    if (message.type === "draw") {
      send({ type: "picture", id, picture: python.draw(calculator, inputs, units) });
    } else {
      send({ type: "answer", id, result: python.calculate(calculator, inputs, units) });
    }
  } catch (problem) {
    send({ type: "failed", id, reason: reasonFrom(problem) });
  }
}

/** @param {object} message */
function send(message) {
  self.postMessage(message);
}

/**
 * @param {string} runtime  address of the runtime folder, ending in a slash
 * @param {(stage: string) => void} onProgress
 */
async function startPython(runtime, onProgress) {
  onProgress("Fetching Python; the first time this takes a moment.");
  const lock = await (await fetched(`${runtime}pyodide-lock.json`)).json();
  // Pyodide waits for ever for some files that do not come, so ask whether all are there.
  const names = [...PYODIDE_FILES, lock.packages.calculators.file_name];
  await Promise.all(names.map((name) => fetched(`${runtime}${name}`, { method: "HEAD" })));
  const { loadPyodide } = await import(`${runtime}pyodide.mjs`);
  const pyodide = await loadPyodide({
    indexURL: runtime,
    lockFileContents: lock,
    packageBaseUrl: runtime,
    packages: ["calculators"],
  });
  onProgress("Python is here; loading the calculators.");
  const { run } = pyodide.pyimport("calculators");
  const { curve_picture: curvePicture } = pyodide.pyimport("calculators.figures");
  const { loads, dumps } = pyodide.pyimport("json");

  /**
   * @param {any} work  a function of Python
   * @param {(result: any) => string} textOf
   * @returns {Work}
   */
  const asked = (work, textOf) => (calculator, inputs, units) => {
    const given = loads(JSON.stringify(inputs));
    let result;
    try {
      result = work(calculator, given, units);
      return textOf(result);
    } finally {
      given.destroy();
      result?.destroy?.();
    }
  };
  return {
    calculate: asked(run, (result) => dumps.callKwargs(result, { allow_nan: false })),
    draw: asked(curvePicture, (picture) => picture ?? ""),
  };
}

/**
 * @param {string} url
 * @param {RequestInit} [options]
 */
async function fetched(url, options) {
  const response = await fetch(url, options);
  if (!response.ok) {
    throw new Error(`the file ${url.split("/").at(-1)} is not there (${response.status})`);
  }
  return response;
}

/**
 * Of a Python error's text, only the line that names the error is of use to a reader.
 *
 * @param {any} problem
 */
function reasonFrom(problem) {
  const lines = String(problem?.message ?? problem).trim().split("\n");
  return lines.findLast((line) => /^\w+(Error|Exception): /.test(line)) ?? lines[0];
}
