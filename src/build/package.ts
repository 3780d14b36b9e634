// build: `npm run package`. Writes package/: the site for any static https host, both manifests, a zip of the unified
// one for upload, and a page that says how to add it in each kind of Excel.

import { cpSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { strToU8, zipSync } from "fflate";
import { logErrorMessage } from "office-addin-cli";
import { howToAdd } from "./how-to-add.ts";
import { addressSetting, defaultAddress } from "./manifest.ts";
import { distFolder, packageFolder } from "./paths.ts";
import { runBuild } from "./stale.ts";

/** A zip with the same bytes every time: fixed dates, fixed order. */
function zipped(files: Readonly<Record<string, Uint8Array>>): Uint8Array {
  return zipSync(files, { level: 9, mtime: new Date(1980, 0, 1) });
}

function makePackage(): void {
  const address = addressSetting();
  runBuild();
  rmSync(packageFolder, { recursive: true, force: true });
  mkdirSync(packageFolder, { recursive: true });
  cpSync(distFolder, join(packageFolder, "site"), { recursive: true });
  for (const name of ["manifest.xml", "manifest.json"])
    cpSync(join(distFolder, name), join(packageFolder, name));
  const icon = (name: string) => readFileSync(join(distFolder, "icons", name));
  const unified = {
    "manifest.json": strToU8(readFileSync(join(distFolder, "manifest.json"), "utf8")),
    "outline.png": icon("outline.png"),
    "color.png": icon("color.png"),
  };
  writeFileSync(join(packageFolder, "reamwright.zip"), zipped(unified));
  writeFileSync(join(packageFolder, "how-to-add.html"), howToAdd(address));
  console.log(`package/ is ready for ${address}: put site/ there, and open how-to-add.html.`);
  if (address === defaultAddress)
    console.log(
      "That is this machine. For another host: REAMWRIGHT_ADDRESS=https://that.address npm run package",
    );
}

try {
  makePackage();
} catch (error) {
  logErrorMessage(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
