// Reads requests (by calculator) from standard input, answers each again and again in the browser's
// Python, from the runtime folder given as argument, and writes the times in milliseconds.
import { text } from "node:stream/consumers";
import { calculatorsIn } from "../browser/under_node.mjs";

const answer = await calculatorsIn(process.argv[2], "image");
const { requests, rounds, warmUp } = JSON.parse(await text(process.stdin));

function milliseconds(request) {
  const start = performance.now();
  answer(request);
  return performance.now() - start;
}

const times = {};
for (const [name, request] of Object.entries(requests)) {
  const all = Array.from({ length: warmUp + rounds }, () => milliseconds(request));
  times[name] = all.slice(warmUp);
}
process.stdout.write(JSON.stringify(times), () => process.exit());
