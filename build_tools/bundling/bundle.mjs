// Joins modules and styles. From standard input: {root, folder, scripts: {name: file},
// styles: {name: [file, …]}}; into the folder go name.js or name.css, each with a map of its sources.
import { text } from "node:stream/consumers";
import { build, formatMessages } from "esbuild";

const { root, folder, scripts, styles } = JSON.parse(await text(process.stdin));

const common = {
  absWorkingDir: root,
  outdir: folder,
  bundle: true,
  minify: true,
  charset: "utf8",
  sourcemap: true,
  logLevel: "silent",
};

const imports = (files) => files.map((file) => `@import ${JSON.stringify(file)};`).join("\n");

const joined = [
  build({ ...common, entryPoints: scripts, format: "esm", target: "es2022" }),
  ...Object.entries(styles).map(([name, files]) =>
    build({
      ...common,
      stdin: { contents: imports(files), resolveDir: root, sourcefile: `${name}.css`, loader: "css" },
      outdir: undefined,
      outfile: `${folder}/${name}.css`,
    }),
  ),
];

const wrong = [];
for (const result of await Promise.allSettled(joined)) {
  const { errors, warnings } = result.value ?? result.reason;
  wrong.push(...(errors ?? [{ text: String(result.reason) }]), ...(warnings ?? []));
}
if (wrong.length) {
  process.stderr.write((await formatMessages(wrong, { kind: "error", color: false })).join(""));
  process.exitCode = 1;
}
