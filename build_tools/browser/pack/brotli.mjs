// Writes a file's content, compressed with brotli as small as it goes, to standard output.
import { readFileSync } from "node:fs";
import { brotliCompressSync, constants } from "node:zlib";

const content = readFileSync(process.argv[2]);
const compressed = brotliCompressSync(content, {
  params: {
    [constants.BROTLI_PARAM_QUALITY]: constants.BROTLI_MAX_QUALITY,
    [constants.BROTLI_PARAM_LGWIN]: constants.BROTLI_MAX_WINDOW_BITS,
    [constants.BROTLI_PARAM_SIZE_HINT]: content.length,
  },
});
process.stdout.write(compressed);
