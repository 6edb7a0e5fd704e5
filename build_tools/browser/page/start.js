/**
 * The three ways to start Python in a worker, from the fastest to the one that always works. All
 * end in the same function of Python, calculators.as_text.answer, and so in the same answers.
 *
 * @typedef {(request: string) => string} Answer  JSON in, JSON out
 * @typedef {{
 *   python: string, lock: any, machineSha256: string, sha256: Record<string, string>,
 *   known: {request: string, answer: string},
 * }} Pack  what the build noted about the files of the runtime folder
 */
import { answerer, createMachine, writeImage } from "./memory_image.js";
import { fetched, forgetParts, partToStore, storeParts } from "./parts.js";

/** When the first answer is there and being read. */
const MILLISECONDS_BEFORE_STORING = 1000;

/** @type {Record<string, (runtime: string, onFetched: () => void) => Promise<Answer>>} */
export const STARTS = { image: fromImage, compiled: fromCompiled, plain: fromWheel };

/**
 * Writes the memory image into a fresh machine. What could make a number wrong is checked first:
 * the image by its hash, the machine by the hash of what its file puts into memory.
 *
 * @param {string} runtime  address of the calculators' runtime folder, ending in a slash
 * @param {() => void} onFetched  told when nothing more has to come from the network
 */
async function fromImage(runtime, onFetched) {
  const pyodide = pyodideOf(runtime);
  const [wasm, image] = [`${pyodide}pyodide.asm.wasm`, `${runtime}image.bin`];
  const machineScript = `${pyodide}pyodide.asm.mjs`;
  try {
    const fetching = [packOf(runtime), contentOf(image), script(machineScript)];
    const machineCode = partToStore(wasm);
    machineCode.catch(() => {});
    const [pack, content, { default: create }] = await Promise.all(fetching);
    let ownData = new ArrayBuffer(0);
    const machine = await createMachine(
      create,
      (imports) => WebAssembly.instantiateStreaming(machineCode, imports),
      ({ memory, __stack_low: end }) => (ownData = memory.buffer.slice(0, end.value)),
    );
    onFetched();
    await Promise.all([
      expectSha256(content, pack.sha256["image.bin"], "the memory image"),
      expectSha256(ownData, pack.machineSha256, "the machine for the memory image"),
    ]);
    writeImage(machine, content);
    const answer = proven(answerer(machine), pack);
    const files = [wasm, image, machineScript, `${runtime}pack.json`];
    setTimeout(() => storeParts(new URL("../", pyodide).href, files), MILLISECONDS_BEFORE_STORING);
    return answer;
  } catch (problem) {
    await forgetParts();
    throw problem;
  }
}

/**
 * Starts Pyodide with an archive of compiled modules, the calculators among them, in the place
 * of its standard library.
 *
 * @param {string} runtime
 * @param {() => void} onFetched
 */
async function fromCompiled(runtime, onFetched) {
  const fetching = [packOf(runtime), contentOf(`${runtime}compiled.zip`)];
  const [pack, archive] = await Promise.all(fetching);
  await expectSha256(archive, pack.sha256["compiled.zip"], "the archive of compiled modules");
  const stdLibURL = URL.createObjectURL(new Blob([archive]));
  return await pyodideFrom(runtime, pack, onFetched, { stdLibURL, lockFileContents: pack.lock });
}

/**
 * Starts Pyodide as its makers do, with the calculators' wheel, whose hash Pyodide checks itself.
 *
 * @param {string} runtime
 * @param {() => void} onFetched
 */
async function fromWheel(runtime, onFetched) {
  const [pack, lock] = await Promise.all([
    packOf(runtime),
    fetched(`${runtime}pyodide-lock.json`).then((response) => response.json()),
  ]);
  return await pyodideFrom(runtime, pack, onFetched, {
    lockFileContents: lock,
    packageBaseUrl: runtime,
    packages: ["calculators"],
  });
}

/**
 * @param {string} runtime
 * @param {Pack} pack
 * @param {() => void} onFetched
 * @param {object} options
 * @returns {Promise<Answer>}
 */
async function pyodideFrom(runtime, pack, onFetched, options) {
  const indexURL = pyodideOf(runtime);
  const machineScript = script(`${indexURL}pyodide.asm.mjs`);
  machineScript.catch(() => {}); // told below
  const { loadPyodide } = await script(`${indexURL}pyodide.mjs`);
  const [pyodide] = await Promise.all([
    loadPyodide({ indexURL, ...options }).catch(async (/** @type {unknown} */ problem) => {
      await machineScript;
      throw problem;
    }),
    // Pyodide would wait for ever for a machine that does not come, so ask whether it is there.
    fetched(`${indexURL}pyodide.asm.wasm`, { method: "HEAD" }),
  ]);
  onFetched();
  if (pyodide.runPython("import sys; sys.version") !== pack.python) {
    throw new Error("this Python is not the one that belongs to this page");
  }
  return proven(pyodide.pyimport("calculators.as_text").answer, pack);
}

/**
 * Imports a module; of one that does not come, the browser's own words would help nobody.
 *
 * @param {string} url
 */
async function script(url) {
  try {
    return await import(url);
  } catch (problem) {
    await fetched(url, { method: "HEAD" });
    throw problem;
  }
}

/** @param {string} runtime */
function pyodideOf(runtime) {
  return new URL("../", runtime).href;
}

/**
 * @param {string} runtime
 * @returns {Promise<Pack>}
 */
async function packOf(runtime) {
  return (await fetched(`${runtime}pack.json`)).json();
}

/** @param {string} url */
async function contentOf(url) {
  return (await partToStore(url)).arrayBuffer();
}

/**
 * @param {ArrayBuffer} content
 * @param {string} expected
 * @param {string} what
 */
async function expectSha256(content, expected, what) {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", content));
  const found = Array.from(digest, (byte) => byte.toString(16).padStart(2, "0")).join("");
  if (found !== expected) {
    throw new Error(`${what} is not the one that belongs to this page`);
  }
}

/**
 * Lets Python show that it works, on one calculation whose answer the build noted.
 *
 * @param {Answer} answer
 * @param {Pack} pack
 */
function proven(answer, { known }) {
  if (answer(known.request) !== known.answer) {
    throw new Error("a known calculation came out wrong");
  }
  return answer;
}
