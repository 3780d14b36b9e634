// build: `npm run package`. Writes package/: the site for any static https host, both manifests, a zip of the unified
// one for upload, a page for the person who hosts it, and one on the site for the person who adds it to Excel.

import { cpSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { strToU8, zipSync } from "fflate";
import { logErrorMessage } from "office-addin-cli";
import { hostPage, userPage } from "./how-to-add.ts";
import { addressSetting, defaultAddress } from "./manifest.ts";
import { distFolder, packageFolder } from "./paths.ts";
import { runBuild } from "./stale.ts";

/** A zip with the same bytes every time: fixed dates, fixed order. */
function zipped(files: Readonly<Record<string, Uint8Array>>): Uint8Array {
  return zipSync(files, { level: 9, mtime: new Date(1980, 0, 1) });
}

/** The folder for a host, from what was built for that address. */
export function writePackage(built: string, folder: string, address: string): void {
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  cpSync(built, join(folder, "site"), { recursive: true });
  for (const name of ["manifest.xml", "manifest.json"]) cpSync(join(built, name), join(folder, name));
  const icon = (name: string) => readFileSync(join(built, "icons", name));
  const unified = {
    "manifest.json": strToU8(readFileSync(join(built, "manifest.json"), "utf8")),
    "outline.png": icon("outline.png"),
    "color.png": icon("color.png"),
  };
  writeFileSync(join(folder, "reamwright.zip"), zipped(unified));
  writeFileSync(join(folder, "site", "add-to-excel.html"), userPage(address));
  writeFileSync(join(folder, "for-the-host.html"), hostPage(address));
}

function makePackage(): void {
  const address = addressSetting();
  runBuild();
  writePackage(distFolder, packageFolder, address);
  console.log(`package/ is ready for ${address}: open package/for-the-host.html.`);
  if (address === defaultAddress)
    console.log(
      "That is this machine. For another host: REAMWRIGHT_ADDRESS=https://that.address npm run package",
    );
}

if (process.argv[1] === fileURLToPath(import.meta.url))
  try {
    makePackage();
  } catch (error) {
    logErrorMessage(error instanceof Error ? error.message : error);
    process.exitCode = 1;
  }
