// build: the license of every package in package-lock.json, and which licenses may be there. Read offline, from what is
// installed; packages for other systems, which are not, are judged by what the lock file says of them.

import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import satisfies from "spdx-satisfies";
import { projectFolder } from "./paths.ts";
import { embedded, licensesHere } from "./vendored.ts";

/** Licenses of what may be in dist/: permissive ones, the LGPL of a library used unmodified, the font's. */
const allowed = [
  "0BSD",
  "Apache-2.0",
  "BlueOak-1.0.0",
  "BSD-2-Clause",
  "BSD-3-Clause",
  "CC0-1.0",
  "ISC",
  "LGPL-3.0-only",
  "LGPL-3.0-or-later",
  "MIT",
  "MIT-0",
  "OFL-1.1",
  "Unlicense",
  "Zlib",
];
/** Besides, those of tools and tables that developing takes and dist/ does not hold. */
const allowedInDevelopment = [...allowed, "CC-BY-3.0", "CC-BY-4.0", "MPL-2.0"];

/** Names that are older than the list of SPDX. */
const olderNames: Readonly<Record<string, string>> = { "MIT/X11": "MIT" };

/** Packages outside the list that are used all the same, each with the reason. Never in dist/. */
export const exceptions: Readonly<Record<string, string>> = {
  "@microsoft/office-js": "under Microsoft's own license; types and tests only",
  buffers: "names no license; comes with exceljs, which reads files in tests only",
};

export interface LicensedPackage {
  readonly name: string;
  readonly version: string;
  /** An SPDX expression, or whatever the package says; empty if it says nothing. */
  readonly license: string;
  /** Where it is installed; undefined if it is for another system. */
  readonly folder?: string;
}

export function lockedPackages(): LicensedPackage[] {
  const lock = JSON.parse(readFileSync(join(projectFolder, "package-lock.json"), "utf8"));
  return Object.entries<any>(lock.packages)
    .filter(([path]) => path !== "")
    .map(([path, locked]) => {
      const file = join(projectFolder, path, "package.json");
      const name = path.slice(path.lastIndexOf("node_modules/") + "node_modules/".length);
      if (!existsSync(file)) {
        if (!locked.optional) throw new Error(`${path} is not installed: run npm ci`);
        return { name, version: locked.version, license: locked.license ?? "" };
      }
      const { version, license, licenses } = JSON.parse(readFileSync(file, "utf8"));
      return { name, version, license: licenseText(license ?? licenses), folder: join(projectFolder, path) };
    });
}

/** One expression from the forms that package.json has had: a text, an object, a list of them to choose from. */
export function licenseText(field: any): string {
  if (Array.isArray(field)) return field.map(licenseText).join(" OR ");
  return typeof field === "object" && field !== null ? (field.type ?? "") : (field ?? "");
}

function isAmong(license: string, list: readonly string[]): boolean {
  try {
    return satisfies(olderNames[license] ?? license, list);
  } catch {
    return false;
  }
}

/** What is wrong with the licenses of packages, of which those in `shipped` are in dist/. Empty when all is well. */
export function licenseFaults(
  packages: readonly LicensedPackage[],
  shipped: ReadonlySet<string>,
  excepted: Readonly<Record<string, string>> = exceptions,
): string[] {
  const faults = packages.flatMap(({ name, version, license }) => {
    const ships = shipped.has(name);
    if (isAmong(license, ships ? allowed : allowedInDevelopment)) return [];
    if (!ships && Object.hasOwn(excepted, name)) return [];
    const place = ships ? "in dist/" : "in development";
    return [`${name} ${version} is under "${license}", which is not allowed ${place}`];
  });
  const names = new Set(packages.map(({ name }) => name));
  const gone = [...Object.keys(excepted), ...shipped].filter((name) => !names.has(name));
  return [...faults, ...gone.map((name) => `${name} is named but not in package-lock.json`)];
}

/** The name of the package that an installed file belongs to. */
export function packageOf(file: string): string | undefined {
  const [, inside] = /.*[\\/]node_modules[\\/]([^.].*)$/.exec(file) ?? [];
  return inside?.replaceAll("\\", "/").match(/^(?:@[^/]+\/)?[^/]+/)?.[0];
}

/** What the bundler reads, but puts nothing of into dist/. */
const leavesNothing = new Set(["esbuild-loader"]);

/** The packages that something in dist/ is of, from the files that it is made from. */
export function shippedPackages(files: readonly string[]): Set<string> {
  const names = files
    .filter((file) => !file.endsWith("package.json"))
    .flatMap((file) => packageOf(file) ?? [])
    .filter((name) => !leavesNothing.has(name))
    .flatMap((name) => [name, ...(embedded[name] ?? [])]);
  return new Set(names);
}

/** dist/licenses.txt: our own license, then the license of each package that has something in dist/. */
export function licensesFile(shipped: ReadonlySet<string>): string {
  const parts = lockedPackages()
    .filter(({ name, folder }) => shipped.has(name) && folder)
    .sort((one, other) => (one.name < other.name ? -1 : 1))
    .map((one) => `${one.name} ${one.version}, ${one.license}\n${sourceOf(one)}\n${textOf(one)}`);
  const own = readFileSync(join(projectFolder, "LICENSE"), "utf8").trim();
  return `${[`Reamwright, MIT\n\n${own}`, ...parts].join(`\n\n${"=".repeat(72)}\n\n`)}\n`;
}

function sourceOf({ folder }: LicensedPackage): string {
  const { repository, homepage } = JSON.parse(readFileSync(join(folder!, "package.json"), "utf8"));
  const named: string = repository?.url ?? repository ?? homepage ?? "";
  const address = named.replace(/^git\+|^git:\/\/|\.git$/g, "");
  if (address === "") return "";
  return `Source: ${address.includes("//") ? address : `https://${address}`}\n`;
}

function textOf({ name, folder }: LicensedPackage): string {
  const file = readdirSync(folder!).find((entry) => /^licen[sc]e(\.(md|txt))?$/i.test(entry));
  const text = file ? join(folder!, file) : licensesHere[name];
  if (!text) throw new Error(`${name} has no text of its license`);
  return readFileSync(text, "utf8").trim();
}

/** How many packages there are under each license, and the exceptions with their reasons. */
function summary(packages: readonly LicensedPackage[]): string {
  const counts = new Map<string, number>();
  for (const { license } of packages) counts.set(license, (counts.get(license) ?? 0) + 1);
  const lines = [...counts].sort(([, one], [, other]) => other - one);
  return [
    ...lines.map(([license, count]) => `${String(count).padStart(5)}  ${license || "(none named)"}`),
    ...Object.entries(exceptions).map(([name, reason]) => `excepted: ${name}, ${reason}`),
  ].join("\n");
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) {
  const packages = lockedPackages();
  console.log(summary(packages));
  for (const fault of licenseFaults(packages, new Set())) {
    console.error(fault);
    process.exitCode = 1;
  }
}
