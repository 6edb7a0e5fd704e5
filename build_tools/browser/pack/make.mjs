// Makes what starts Python fast in a page: node make.mjs PYODIDE_FOLDER FOLDER KNOWN_REQUEST
//
// FOLDER has the calculators' wheel; this adds compiled.zip, image.bin, and pack.json with what a
// page checks before it trusts them. The same inputs give the same bytes in every Node.
import { createHash } from "node:crypto";
import { readFileSync, writeFileSync } from "node:fs";
import { pathToFileURL } from "node:url";
import { memoryImage, answersFrom } from "./image.mjs";

// Node would print the line of Pyodide that threw, which is a megabyte long.
process.on("uncaughtException", ({ message }) => {
  console.error(message);
  process.exit(1);
});

const [pyodideFolder, folder, request] = process.argv.slice(2);
const lock = JSON.parse(readFileSync(`${folder}/pyodide-lock.json`, "utf8"));
const wheel = readFileSync(`${folder}/${lock.packages.calculators.file_name}`);
const wasm = readFileSync(`${pyodideFolder}/pyodide.asm.wasm`);

const { loadPyodide, version } = await import(pathToFileURL(`${pyodideFolder}/pyodide.mjs`).href);
const empty = { ...lock, packages: {} };

/** Plain Python with the calculators as they were written. */
async function plainPython() {
  const pyodide = await loadPyodide({ lockFileContents: empty, packageBaseUrl: folder });
  pyodide.FS.writeFile("/calculators.whl", wheel);
  return pyodide;
}

const pyodide = await plainPython();
pyodide.runPython(readFileSync(new URL("compile_archive.py", import.meta.url), "utf8"));
const archive = pyodide.runPython("archive('/calculators.whl')").toJs();
const known = { request, answer: pyodide.pyimport("calculators.as_text").answer(request) };

const { image, machineSha256 } = await memoryImage(pyodideFolder, wasm, archive);
const again = await memoryImage(pyodideFolder, wasm, archive);
if (!image.equals(again.image)) {
  throw new Error("Two memory images of the same calculators differ.");
}
const answers = await answersFrom(pyodideFolder, wasm, image);
if (answers(request) !== known.answer) {
  throw new Error("The memory image answers otherwise than Python that was started plainly.");
}

const made = { "compiled.zip": archive, "image.bin": image };
for (const [name, content] of Object.entries(made)) {
  writeFileSync(`${folder}/${name}`, content);
}
const pack = {
  pyodide: version,
  python: pyodide.runPython("import sys; sys.version"),
  lock: empty,
  machineSha256,
  sha256: Object.fromEntries(Object.entries(made).map(([name, content]) => [name, sha256(content)])),
  known,
};
writeFileSync(`${folder}/pack.json`, `${JSON.stringify(pack)}\n`);
process.exit(); // Python keeps waiting for something to do.

/** @param {Uint8Array} content */
function sha256(content) {
  return createHash("sha256").update(content).digest("hex");
}
