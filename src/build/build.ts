// build: `npm run build`. Makes dist/ whole beside the present one, checks it, then puts it in its place.

import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { logErrorMessage } from "office-addin-cli";
import webpack from "webpack";
import packageJson from "../../package.json" with { type: "json" };
import configuration from "../../webpack.config.ts";
import { runFunctionsScript } from "./built-functions.ts";
import { readDeclarations } from "./declarations.ts";
import { writeEntry } from "./entry.ts";
import { licenseFaults, licensesFile, lockedPackages, shippedPackages } from "./licenses.ts";
import { brokenLinks, helpWithoutPage } from "./links.ts";
import { withLocalGlobals } from "./local-globals.ts";
import { addressSetting, manifestFaults } from "./manifest.ts";
import { buildMetadata, type Metadata } from "./metadata.ts";
import { lackingInOldEngines, lookBehinds } from "./old-engines.ts";
import { writeOneFile } from "./one-file.ts";
import { paneHelp } from "./pane-help.ts";
import { cacheFolder, distFolder, fillThreadFile, manifestFolder } from "./paths.ts";
import { writeReference } from "./reference/pages.ts";
import { fillUnifiedManifest, unifiedManifestFaults } from "./unified-manifest.ts";

/**
 * Little over what it is. Packed by themselves its texts take 49 kB (names of metals 13, remedies 8, words of drawings 4, the
 * rest messages and steps) and the code without them 47; a shorter form for names, another order of modules, and other
 * minifiers were tried and gave less than 1 kB together.
 */
const largestScript = 95_000;

async function build(): Promise<void> {
  const address = addressSetting();
  const metadata = await buildMetadata();
  writeEntry(readDeclarations());

  const folder = join(cacheFolder, `dist-${process.pid}`);
  try {
    const files = await bundle(folder, address);
    const shipped = shippedPackages(files);
    writeFileSync(join(folder, "licenses.txt"), licensesFile(shipped));
    const scriptFile = join(folder, "functions.js");
    const script = inAscii(withLocalGlobals(readFileSync(scriptFile, "utf8")));
    writeFileSync(scriptFile, script);
    checkScript(script, metadata);
    await writeReference(join(folder, "reference"));
    writeFileSync(join(folder, "help.json"), JSON.stringify(paneHelp(readDeclarations())));
    writeFileSync(join(folder, "functions.json"), `${JSON.stringify(metadata, null, 2)}\n`);
    const xml = readFileSync(join(folder, "manifest.xml"), "utf8");
    const template = readFileSync(join(manifestFolder, "manifest.json"), "utf8");
    const unified = fillUnifiedManifest(template, xml, address, packageJson.version);
    writeFileSync(join(folder, "manifest.json"), unified);
    const faults = [
      ...engineFaults(folder),
      ...licenseFaults(lockedPackages(), shipped),
      ...brokenLinks(folder).map((link) => `broken link: ${link}`),
      ...helpWithoutPage(metadata.functions, address, folder),
      ...manifestFaults(xml, address, folder),
      ...(await unifiedManifestFaults(unified, address, folder)),
    ];
    if (faults.length > 0) throw new Error(faults.join("\n"));
    writeOneFile("fill/workbook-worker.ts", fillThreadFile, "bundle");
    rmSync(distFolder, { recursive: true, force: true });
    renameSync(folder, distFolder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Bundles and copies into `folder`; gives the files that went into it. */
async function bundle(folder: string, address: string): Promise<string[]> {
  mkdirSync(folder, { recursive: true });
  const compiler = webpack(configuration(folder, address));
  if (!compiler) throw new Error("webpack made no compiler");
  const stats = await new Promise<webpack.Stats>((resolve, reject) => {
    compiler.run((error, result) => (error || !result ? reject(error) : resolve(result)));
  });
  await new Promise<void>((resolve) => compiler.close(() => resolve()));
  if (stats.hasErrors() || stats.hasWarnings()) throw new Error(stats.toString("errors-warnings"));
  return [...stats.compilation.fileDependencies];
}

/** A script that is the same in every encoding: a host may read it in another than ours. */
function inAscii(script: string): string {
  return script.replace(/[^\0-\x7f]/g, (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, "0")}`);
}

/** What the scripts that Excel loads ask of an engine that may be old, and patterns in all others. */
function engineFaults(folder: string): string[] {
  return readdirSync(folder)
    .filter((name) => name.endsWith(".js"))
    .flatMap((name) => {
      // The browser workbook needs a browser of today anyway; a pattern may still come from code that both share.
      const faultsOf = name === "workbook.js" ? lookBehinds : lackingInOldEngines;
      return faultsOf(readFileSync(join(folder, name), "utf8")).map((fault) => `${name}: ${fault}`);
    });
}

/** functions.js must run in a bare engine, register what functions.json tells Excel of, and stay small. */
function checkScript(script: string, metadata: Metadata): void {
  const registered = [...runFunctionsScript(script).keys()].sort();
  const described = metadata.functions.map(({ id }) => id).sort();
  if (registered.join() !== described.join()) {
    throw new Error(
      `functions.js registers ${registered.join()} but functions.json describes ${described.join()}`,
    );
  }
  const size = gzipSync(script, { level: 9 }).length;
  const share = `${(size / 1000).toFixed(1)} kB gzip of at most ${largestScript / 1000}`;
  if (size > largestScript) throw new Error(`functions.js is too large: ${share}`);
  console.log(`functions.js: ${registered.length} functions, ${share}`);
}

try {
  await build();
  console.log("dist/ is built");
} catch (error) {
  logErrorMessage(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
