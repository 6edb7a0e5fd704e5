// Reads cases as JSON from standard input, runs each through the calculators in Pyodide, loaded
// from the runtime folder given as argument, and writes what they returned as JSON.
import { text } from "node:stream/consumers";
import { calculatorsIn } from "../../build_tools/browser/under_node.mjs";

const answer = await calculatorsIn(process.argv[2]);
const cases = JSON.parse(await text(process.stdin));
const answers = cases.map(({ calculator, inputs, units }) =>
  answer(calculator, JSON.stringify(inputs), units),
);
process.stdout.write(`[${answers.join(",")}]`);
