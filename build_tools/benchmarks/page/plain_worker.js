/**
 * What the handbook is measured against: a worker that runs the calculators as Pyodide's own
 * documentation tells, with the official files, the calculators' wheel and its lock file.
 */
let answer;

self.addEventListener("message", async ({ data }) => {
  try {
    if (data.type === "start") {
      const indexURL = new URL("../", data.runtime).href;
      const { loadPyodide } = await import(`${indexURL}pyodide.mjs`);
      const pyodide = await loadPyodide({
        indexURL,
        lockFileURL: `${data.runtime}pyodide-lock.json`,
        packageBaseUrl: data.runtime,
        packages: ["calculators"],
      });
      answer = pyodide.pyimport("calculators.as_text").answer;
      self.postMessage({ type: "ready", id: data.id });
    } else {
      self.postMessage({ type: "answer", id: data.id, answer: answer(data.request) });
    }
  } catch (problem) {
    self.postMessage({ type: "failed", id: data.id, reason: String(problem) });
  }
});
