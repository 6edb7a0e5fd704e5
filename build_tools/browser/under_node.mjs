// The calculators under Node as a page's worker has them, started in any of its ways: for tests
// and measurements.
import { readFile } from "node:fs/promises";
import { pathToFileURL } from "node:url";
import { answerer, createMachine, writeImage } from "./page/memory_image.js";

/**
 * @param {string} folder  the calculators' runtime folder, inside Pyodide's
 * @param {"image" | "compiled" | "plain"} way
 * @returns {Promise<(request: string) => string>}  calculators.as_text.answer
 */
export async function calculatorsIn(folder, way) {
  const pyodideFolder = `${folder}/..`;
  if (way === "image") {
    return fromImage(folder, pyodideFolder);
  }
  const address = pathToFileURL(`${pyodideFolder}/pyodide.mjs`).href;
  const { loadPyodide } = await import(address);
  const lock = (name) => readFile(`${folder}/${name}`, "utf8").then(JSON.parse);
  const options =
    way === "plain"
      ? { lockFileContents: await lock("pyodide-lock.json"), packages: ["calculators"] }
      : { lockFileContents: (await lock("pack.json")).lock, stdLibURL: `${folder}/compiled.zip` };
  const pyodide = await loadPyodide({
    indexURL: `${pyodideFolder}/`,
    packageBaseUrl: `${folder}/`,
    stdout: (line) => console.error(line),
    ...options,
  });
  return pyodide.pyimport("calculators.as_text").answer;
}

/** @param {string} folder @param {string} pyodideFolder */
async function fromImage(folder, pyodideFolder) {
  const address = pathToFileURL(`${pyodideFolder}/pyodide.asm.mjs`).href;
  const { default: create } = await import(address);
  const wasm = await readFile(`${pyodideFolder}/pyodide.asm.wasm`);
  const instantiate = (imports) => WebAssembly.instantiate(wasm, imports);
  const machine = await createMachine(create, instantiate, () => {});
  writeImage(machine, new Uint8Array(await readFile(`${folder}/image.bin`)).buffer);
  return answerer(machine);
}
