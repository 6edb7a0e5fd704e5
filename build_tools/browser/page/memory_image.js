/**
 * Python from a memory image: the machine's memory as it was with the calculators loaded, written
 * into a fresh machine in place of starting Python. The build makes images with the functions
 * below (see pack/make.mjs), so that what is written is read in the same way.
 *
 * The image holds only the blocks that differ from what the machine's own file puts into memory:
 * their count and numbers as 32-bit integers, then the blocks. No layer of Pyodide runs here; the
 * calculators are called through the C interface of Python, with text in and text out.
 */

export const BLOCK = 1024;

/**
 * Makes the machine that runs Python, without starting Python in it.
 *
 * @param {(settings: object) => Promise<any>} create  the default export of pyodide.asm.mjs
 * @param {(imports: any) => Promise<WebAssembly.WebAssemblyInstantiatedSource>} instantiate
 * @param {(exports: any) => void} onMemory  sees the memory before anything has written into it
 * @param {((machine: any) => void)[]} [preRun]
 * @returns {Promise<any>}
 */
export function createMachine(create, instantiate, onMemory, preRun = []) {
  return new Promise((resolve, reject) => {
    create({
      noInitialRun: true,
      thisProgram: "python",
      arguments: [],
      noImageDecoding: true,
      noAudioDecoding: true,
      API: { config: {}, runtimeEnv: {} },
      print: () => {},
      printErr: () => {},
      preRun,
      instantiateWasm(/** @type {any} */ imports, /** @type {any} */ done) {
        // Marks errors of JavaScript inside Python, of which there are none without Pyodide's layer.
        const mark = Symbol("error");
        imports.env.Jsv_GetError_import = () => mark;
        imports.env.JsvError_Check = (/** @type {unknown} */ value) => value === mark;
        instantiate(imports)
          .then(({ instance, module }) => {
            onMemory(instance.exports);
            done(instance, module);
          })
          .catch(reject);
        return {};
      },
    }).then(resolve, reject);
  });
}

/**
 * The address of the one word that each browser sets for itself: how Python calls C functions.
 *
 * @param {any} machine
 * @returns {number}
 */
export function ownWord(machine) {
  return machine.__PyRuntime + machine.HEAP32[machine.__PyEM_EMSCRIPTEN_TRAMPOLINE_OFFSET >>> 2];
}

/**
 * Writes an image into the memory of a fresh machine.
 *
 * @param {any} machine
 * @param {ArrayBuffer} image
 */
export function writeImage(machine, image) {
  const own = machine.HEAP32[ownWord(machine) >>> 2];
  const count = new Uint32Array(image, 0, 1)[0];
  const numbers = new Uint32Array(image, 4, count);
  const blocks = new Uint8Array(image, 4 + 4 * count);
  for (let at = 0; at < count; at += 1) {
    machine.HEAPU8.set(blocks.subarray(at * BLOCK, (at + 1) * BLOCK), numbers[at] * BLOCK);
  }
  machine.HEAP32[ownWord(machine) >>> 2] = own;
}

/**
 * @param {any} machine  with Python and the calculators in its memory
 * @returns {(request: string) => string}  calls calculators.as_text.answer
 */
export function answerer(machine) {
  const text = (/** @type {string} */ value) => machine.stringToNewUTF8(value);
  const [moduleName, functionName] = [text("calculators.as_text"), text("answer")];
  const module = found(machine, machine._PyImport_ImportModule(moduleName));
  const answer = found(machine, machine._PyObject_GetAttrString(module, functionName));
  for (const pointer of [moduleName, functionName]) {
    machine._free(pointer);
  }
  return (request) => {
    const bytes = text(request);
    const given = found(machine, machine._PyUnicode_FromString(bytes));
    machine._free(bytes);
    const result = machine._PyObject_CallOneArg(answer, given);
    machine._Py_DecRef(given);
    found(machine, result);
    const told = machine.UTF8ToString(machine._PyUnicode_AsUTF8(result));
    machine._Py_DecRef(result);
    return told;
  };
}

/**
 * Throws Python's error for a call that gave nothing.
 *
 * @param {any} machine
 * @param {number} object
 * @returns {number}
 */
function found(machine, object) {
  if (object) {
    return object;
  }
  const error = machine._PyErr_GetRaisedException();
  const told = machine._PyObject_Repr(error);
  const reason = machine.UTF8ToString(machine._PyUnicode_AsUTF8(told));
  machine._Py_DecRef(told);
  machine._Py_DecRef(error);
  throw new Error(reason);
}
