// build: the part of `npm run check` that neither the compiler nor the style checker knows: declarations, functions.json,
// functions.js in a bare engine, the manifest. Building does it all; what is built already is checked for being that.

import { readFileSync } from "node:fs";
import { join } from "node:path";
import { logErrorMessage } from "office-addin-cli";
import { licenseFaults, lockedPackages } from "./licenses.ts";
import { buildMetadata } from "./metadata.ts";
import { distFolder } from "./paths.ts";
import { checkReadme } from "./readme.ts";
import { buildIfStale } from "./stale.ts";

try {
  const metadata = await buildMetadata();
  buildIfStale();
  const built = readFileSync(join(distFolder, "functions.json"), "utf8");
  if (built !== `${JSON.stringify(metadata, null, 2)}\n`)
    throw new Error("dist/functions.json differs: run npm run build");
  checkReadme();
  const packages = lockedPackages();
  const faults = licenseFaults(packages, new Set());
  if (faults.length > 0) throw new Error(faults.join("\n"));
  console.log(
    `${metadata.functions.length} functions, the manifest and the licenses of ${packages.length} packages are in order`,
  );
} catch (error) {
  logErrorMessage(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
