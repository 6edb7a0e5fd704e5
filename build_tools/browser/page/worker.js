/**
 * The worker that holds Python. It is started in one of the ways of start.js and then answers
 * requests by calling `calculators.as_text.answer`; texts go in and come out as data, never as
 * Python source.
 */
import { messageToWorker } from "./messages.js";
import { STARTS } from "./start.js";

/** @type {import("./start.js").Answer | null} */
let answer = null;

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
      expectWebAssembly();
      const { runtime, way } = message;
      self.postMessage({ type: "progress", id, stage: "fetching" });
      answer = await STARTS[way](runtime, () => self.postMessage({ type: "progress", id, stage: "starting" }));
      self.postMessage({ type: "ready", id });
    } else if (answer) {
      self.postMessage({ type: "answer", id, answer: answer(message.request) });
    } else {
      throw new Error("Python has not been started");
    }
  } catch (problem) {
    self.postMessage({ type: "failed", id, reason: reasonFrom(problem) });
  }
}

/** Where a browser or a policy refuses WebAssembly, Pyodide would wait for ever. */
function expectWebAssembly() {
  try {
    new WebAssembly.Module(Uint8Array.of(0, 0x61, 0x73, 0x6d, 1, 0, 0, 0)); // the smallest there is
  } catch {
    throw new Error("WebAssembly is switched off here");
  }
}

/**
 * Of a Python error's text, only the line that names the error is of use to a reader.
 *
 * @param {any} problem
 */
function reasonFrom(problem) {
  const lines = String(problem?.message ?? problem).trim().split("\n");
  return lines.findLast((line) => /^\w+(Error|Exception)\b/.test(line)) ?? lines[0];
}
