// build: what a thread of `npm run fill` runs, in one file. Loading it from the sources would take a thread longer than
// most workbooks do.

import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { build } from "esbuild";
import { fillThreadFile, projectFolder, sourceFolder } from "./paths.ts";

export async function writeFillThread(): Promise<void> {
  await build({
    entryPoints: [join(sourceFolder, "fill", "workbook-worker.ts")],
    outfile: fillThreadFile,
    bundle: true,
    platform: "node",
    format: "esm",
    target: "node20",
    logLevel: "warning",
    // Places are reckoned from where src/build/paths.ts lies.
    define: {
      "import.meta.url": JSON.stringify(pathToFileURL(join(projectFolder, "src", "build", "paths.ts")).href),
    },
  });
}
