// The memory image: Python started in a bare machine, the calculators imported, the memory tidied
// and compared with what the machine's own file puts there.
import { createHash } from "node:crypto";
import { pathToFileURL } from "node:url";
import { BLOCK, answerer, createMachine, ownWord, writeImage } from "../page/memory_image.js";

// What a page may call, and the one module that an answer loads late. Then nothing is kept that
// only tells where modules came from.
const LOAD = `
import calculators.as_text, difflib
import gc, sys, zipimport
zipimport._zip_directory_cache.clear()
sys.path_importer_cache.clear()
gc.collect()
gc.collect()
`;

// Time stands still while images are made; files and random numbers begin with it.
Date.now = () => 0;
performance.now = () => 0;

const MEMORY = 30 * 1024 * 1024;

/**
 * @param {string} pyodideFolder
 * @param {Buffer} wasm
 * @param {Uint8Array} archive  the compiled modules
 * @returns {Promise<{image: Buffer, machineSha256: string}>}  the second is the hash of what the
 *   machine's file itself puts into memory, by which a page knows that it has the right machine
 */
export async function memoryImage(pyodideFolder, wasm, archive) {
  const { machine, start, exports } = await bareMachine(pyodideFolder, wasm, (made) => {
    made.FS.mkdirTree("/lib/python3.14/lib-dynload");
    made.FS.writeFile("/lib/python314.zip", archive);
  });
  const created = machine.HEAPU8.slice();
  machine._Py_Initialize();
  const source = machine.stringToNewUTF8(LOAD);
  const failed = machine._PyRun_SimpleString(source);
  machine._free(source);
  if (failed) {
    throw new Error("The calculators could not be loaded into the memory image; see above.");
  }
  if (machine.HEAPU8.length !== MEMORY) {
    throw new Error("Python's memory grew while the image was made, and such an image cannot be used.");
  }
  clearUnused(machine, exports);
  machine.HEAP32[ownWord(machine) >>> 2] = 0;
  const memory = machine.HEAPU8;
  const numbers = [];
  for (let at = 0; at < memory.length; at += BLOCK) {
    const isAsStarted = [memory, created].every((one) => sameBlock(one, start, at));
    if (!isAsStarted) {
      numbers.push(at / BLOCK);
    }
  }
  const blocks = numbers.map((number) => memory.subarray(number * BLOCK, (number + 1) * BLOCK));
  const head = Uint32Array.of(numbers.length, ...numbers);
  return {
    image: Buffer.concat([Buffer.from(head.buffer), ...blocks]),
    machineSha256: createHash("sha256").update(ownData(start, exports)).digest("hex"),
  };
}

/**
 * @param {string} pyodideFolder
 * @param {Buffer} wasm
 * @param {Buffer} image
 * @returns {Promise<(request: string) => string>}  the calculators as a page has them
 */
export async function answersFrom(pyodideFolder, wasm, image) {
  const { machine } = await bareMachine(pyodideFolder, wasm);
  writeImage(machine, new Uint8Array(image).buffer);
  return answerer(machine);
}

/**
 * A machine in surroundings that are always the same, and its memory as its file fills it.
 *
 * @param {string} pyodideFolder
 * @param {Buffer} wasm
 * @param {(machine: any) => void} [prepare]
 */
async function bareMachine(pyodideFolder, wasm, prepare = () => {}) {
  const address = pathToFileURL(`${pyodideFolder}/pyodide.asm.mjs`).href;
  const { default: create } = await import(address);
  let exports;
  let start;
  const instantiate = (imports) => {
    imports.wasi_snapshot_preview1.random_get = () => 0;
    imports.env._Py_emscripten_runtime = () => 0; // the name of this Node
    return WebAssembly.instantiate(wasm, imports);
  };
  const onMemory = (given) => {
    exports = given;
    start = new Uint8Array(given.memory.buffer).slice();
  };
  const environment = (made) => {
    const LANG = "C.UTF-8";
    Object.assign(made.ENV, { HOME: "/", LANG, _: "python", PYTHONHASHSEED: "0" });
  };
  const machine = await createMachine(create, instantiate, onMemory, [environment, prepare]);
  return { machine, exports, start };
}

/** The part of memory that the machine's file fills: all below the stack. */
function ownData(memory, exports) {
  return memory.subarray(0, exports.__stack_low.value);
}

/** Fills with zeros what holds nothing any more: freed memory, and the stack below its top. */
function clearUnused(machine, exports) {
  const { HEAPU8: bytes, HEAPU32: words } = machine;
  bytes.fill(0, exports.__stack_low.value, machine.stackSave());
  // The allocator (dlmalloc) keeps one row of chunks up to the break. Each begins with two words;
  // the second is its size, whose lowest bits tell whether it and the one before it are in use.
  const end = words[machine._emscripten_get_sbrk_ptr() >>> 2];
  let chunk = (exports.__heap_base.value + 15) & ~15;
  while (chunk < end) {
    const head = words[(chunk + 4) >>> 2];
    const size = head & ~7;
    if (size < 16 || chunk + size > end) {
      throw new Error("The allocator's chunks are not as expected: see clearUnused in image.mjs.");
    }
    if (!(head & 2)) {
      // A free chunk's links to others of its size: two words, or six from 256 bytes on.
      bytes.fill(0, chunk + (size < 256 ? 16 : 32), chunk + size);
    }
    chunk += size;
  }
}

/** @param {Uint8Array} one @param {Uint8Array} other @param {number} at */
function sameBlock(one, other, at) {
  return Buffer.compare(one.subarray(at, at + BLOCK), other.subarray(at, at + BLOCK)) === 0;
}
