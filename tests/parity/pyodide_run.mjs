// Reads cases as JSON from standard input, runs each through the calculators in Pyodide, loaded
// from the runtime folder and in the way given as arguments, and writes what they returned as JSON.
import { text } from "node:stream/consumers";
import { calculatorsIn } from "../../build_tools/browser/under_node.mjs";

const [folder, way] = process.argv.slice(2);
const answer = await calculatorsIn(folder, way);
const cases = JSON.parse(await text(process.stdin));
const answers = cases.map((asked) => answer(JSON.stringify({ work: "calculate", ...asked })));
process.stdout.write(`[${answers.join(",")}]`, () => process.exit());
