// Reads examples (calculator -> inputs as JSON text) from standard input, answers each again and
// again in Pyodide, loaded from the runtime folder given as argument, and writes the times in
// milliseconds.
import { text } from "node:stream/consumers";
import { calculatorsIn } from "../browser/under_node.mjs";

const answer = await calculatorsIn(process.argv[2]);
const { examples, rounds, warmUp } = JSON.parse(await text(process.stdin));

function milliseconds(name, inputs) {
  const start = performance.now();
  answer(name, inputs, "us");
  return performance.now() - start;
}

const times = {};
for (const [name, inputs] of Object.entries(examples)) {
  const all = Array.from({ length: warmUp + rounds }, () => milliseconds(name, inputs));
  times[name] = all.slice(warmUp);
}
process.stdout.write(JSON.stringify(times));
