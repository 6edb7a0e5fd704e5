/**
 * Starts a worker, asks it one thing as soon as it is ready, and tells how long all of it took.
 * Every worker measured here takes the messages of the handbook's own (messages.js). It lives on,
 * as it may still put away what it fetched, until `endWorker()`.
 *
 * @param {{script: string, runtime: string, way: string, request: string}} given
 *   script: the worker's address; runtime, way: of its start
 * @returns {Promise<{milliseconds: number, answer: string}>}
 */
globalThis.firstAnswer = ({ script, runtime, way, request }) =>
  new Promise((resolve, reject) => {
    const start = { type: "start", id: 1, runtime: new URL(runtime, location.href).href, way };
    const began = performance.now();
    const worker = new Worker(script, { type: "module" });
    globalThis.endWorker = () => worker.terminate();
    worker.addEventListener("error", (event) => reject(new Error(event.message)));
    worker.addEventListener("message", ({ data }) => {
      if (data.type === "ready") {
        worker.postMessage({ type: "ask", id: 2, request });
      } else if (data.type === "answer") {
        resolve({ milliseconds: performance.now() - began, answer: data.answer });
      } else if (data.type === "failed") {
        reject(new Error(data.reason));
      }
    });
    worker.postMessage(start);
  });

/** Lets a service worker serve this page and all that follows. */
globalThis.takeServiceWorker = async () => {
  const taken = new Promise((resolve) => {
    navigator.serviceWorker.addEventListener("controllerchange", resolve, { once: true });
  });
  await navigator.serviceWorker.register("service_worker.js");
  await (navigator.serviceWorker.controller ?? taken);
};
