// build: `npm run sizes`. What each worksheet function costs: how much smaller functions.js would be without it.

import { gzipSync } from "node:zlib";
import { buildSync } from "esbuild";
import { type Declaration, readDeclarations } from "./declarations.ts";
import { entryModule } from "./entry.ts";
import { projectFolder } from "./paths.ts";

/** The packed size of a script with these functions alone, in bytes. */
function sizeOf(declarations: readonly Declaration[]): number {
  const { outputFiles } = buildSync({
    stdin: { contents: entryModule(declarations), loader: "ts", resolveDir: projectFolder },
    bundle: true,
    minify: true,
    write: false,
    format: "iife",
    target: "es2020",
  });
  return gzipSync(outputFiles[0].contents, { level: 9 }).length;
}

const all = readDeclarations();
const whole = sizeOf(all);
const costs = all.map(({ id }) => [id, whole - sizeOf(all.filter((one) => one.id !== id))] as const);
console.log(`${whole} bytes gzip, ${all.length} functions. Fewer without:`);
for (const [id, bytes] of costs.sort(([, one], [, other]) => other - one))
  console.log(`${String(bytes).padStart(6)} ${id}`);
console.log("What several functions share is counted for none of them.");
