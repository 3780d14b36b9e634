// build: `npm run sizes`. What functions.js is made of, packed: how much smaller it would be without each worksheet
// function, and without the text of each module.

import { readFileSync } from "node:fs";
import { gzipSync } from "node:zlib";
import { buildSync, transformSync } from "esbuild";
import { type Declaration, readDeclarations } from "./declarations.ts";
import { entryModule } from "./entry.ts";
import { projectFolder } from "./paths.ts";

const MODULES_SHOWN = 30;
const how = { minify: true, target: "es2020" } as const;
const packed = (script: string) => gzipSync(script, { level: 9 }).length;

/** A script with these functions alone, and the modules in it. */
function scriptOf(declarations: readonly Declaration[]): { script: string; modules: string[] } {
  const { outputFiles, metafile } = buildSync({
    ...how,
    stdin: { contents: entryModule(declarations), loader: "ts", resolveDir: projectFolder },
    absWorkingDir: projectFolder,
    bundle: true,
    write: false,
    format: "iife",
    metafile: true,
  });
  const modules = Object.keys(metafile.inputs).filter((file) => file.endsWith(".ts"));
  return { script: outputFiles[0].text, modules };
}

function show(costs: (readonly [name: string, bytes: number])[], most: number): void {
  for (const [name, bytes] of costs.sort(([, one], [, other]) => other - one).slice(0, most))
    console.log(`${String(bytes).padStart(6)} ${name}`);
}

const all = readDeclarations();
const { script, modules } = scriptOf(all);
const whole = packed(script);
console.log(
  `${whole} bytes gzip, ${all.length} functions. Fewer without a function, what several share left in:`,
);
const without = (id: string) => scriptOf(all.filter((one) => one.id !== id)).script;
show(
  all.map(({ id }) => [id, whole - packed(without(id))] as const),
  all.length,
);

console.log(`Fewer without the text of a module, of the ${MODULES_SHOWN} that cost most:`);
const texts = modules.map(
  (file) => [file, transformSync(readFileSync(file, "utf8"), { ...how, loader: "ts" }).code] as const,
);
const together = texts.map(([, text]) => text).join("");
show(
  texts.map(([file, text]) => [file, packed(together) - packed(together.replace(text, () => ""))] as const),
  MODULES_SHOWN,
);
