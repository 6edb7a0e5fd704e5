// Reads cases as JSON from standard input, runs each through the calculators in Pyodide, loaded
// from the runtime folder given as argument, and writes what they returned as JSON.
import { readFile } from "node:fs/promises";
import { text } from "node:stream/consumers";
import { pathToFileURL } from "node:url";

const runtime = `${process.argv[2]}/`;
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

const answers = JSON.parse(await text(process.stdin)).map(({ calculator, inputs, units }) => {
  const given = loads(JSON.stringify(inputs));
  const result = run(calculator, given, units);
  const answer = dumps.callKwargs(result, { allow_nan: false });
  given.destroy();
  result.destroy();
  return answer;
});
process.stdout.write(`[${answers.join(",")}]`);
