// build: a program for Node of many modules, in one file. Loaded from its sources it would take seconds to start.

import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { buildSync } from "esbuild";
import { projectFolder, sourceFolder } from "./paths.ts";

/** @param program its first module, by its path in src @param external packages stay what is loaded from node_modules */
export function writeOneFile(program: string, file: string, packages: "bundle" | "external"): void {
  buildSync({
    entryPoints: [join(sourceFolder, program)],
    outfile: file,
    bundle: true,
    packages,
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
