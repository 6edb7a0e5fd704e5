// Reads examples (calculator -> inputs as JSON text) from standard input, answers each again and
// again in Pyodide, loaded from the runtime folder given as argument, and writes the times in
// milliseconds. The work of one answer is that of page/worker.js.
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

function milliseconds(name, inputs) {
  const start = performance.now();
  const given = loads(inputs);
  const result = run(name, given, "us");
  dumps.callKwargs(result, { allow_nan: false });
  given.destroy();
  result.destroy();
  return performance.now() - start;
}

const { examples, rounds, warmUp } = JSON.parse(await text(process.stdin));
const times = {};
for (const [name, inputs] of Object.entries(examples)) {
  const all = Array.from({ length: warmUp + rounds }, () => milliseconds(name, inputs));
  times[name] = all.slice(warmUp);
}
process.stdout.write(JSON.stringify(times));
