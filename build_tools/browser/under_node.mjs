// The calculators in Pyodide under Node, as a page's worker has them: for tests and measurements.
import { readFile } from "node:fs/promises";
import { pathToFileURL } from "node:url";

/**
 * @param {string} folder  the runtime folder
 * @returns {Promise<(calculator: string, inputs: string, units: string) => string>}  takes the
 *   inputs and gives the answer as JSON text
 */
export async function calculatorsIn(folder) {
  const runtime = `${folder}/`;
  const { loadPyodide } = await import(pathToFileURL(`${runtime}pyodide.mjs`).href);
  const pyodide = await loadPyodide({
    indexURL: runtime,
    lockFileContents: await readFile(`${runtime}pyodide-lock.json`, "utf8"),
    packageBaseUrl: runtime,
    packages: ["calculators"],
    stdout: (line) => console.error(line),
  });
  const { run } = pyodide.pyimport("calculators");
  const { loads, dumps } = pyodide.pyimport("json");
  return (calculator, inputs, units) => {
    const given = loads(inputs);
    const result = run(calculator, given, units);
    const answer = dumps.callKwargs(result, { allow_nan: false });
    given.destroy();
    result.destroy();
    return answer;
  };
}
