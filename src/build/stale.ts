// build: whether dist/ has to be built again, and doing so.

import { execFile, execFileSync } from "node:child_process";
import { existsSync, readdirSync, statSync } from "node:fs";
import { join } from "node:path";
import { promisify } from "node:util";
import { writeOneFile } from "./one-file.ts";
import {
  buildFile,
  distFolder,
  fillThreadFile,
  functionsFolder,
  manifestFolder,
  projectFolder,
  sourceFolder,
} from "./paths.ts";

/** What dist/ is made from. */
const sources = [
  functionsFolder,
  sourceFolder,
  manifestFolder,
  ...["package.json", "package-lock.json", "webpack.config.ts"].map((name) => join(projectFolder, name)),
];

function newest(path: string): number {
  const stats = statSync(path);
  if (!stats.isDirectory()) return stats.mtimeMs;
  const names = readdirSync(path).filter((name) => name !== "screenshot.png");
  return Math.max(0, ...names.map((name) => newest(join(path, name))));
}

/** True if dist/ is missing or older than what it is made from. The build writes functions.json last. */
function isStale(): boolean {
  const built = join(distFolder, "functions.json");
  return (
    ![built, fillThreadFile].every((file) => existsSync(file)) ||
    statSync(built).mtimeMs < Math.max(...sources.map(newest))
  );
}

function writtenBuild(): string {
  writeOneFile("build/build.ts", buildFile, "external");
  return buildFile;
}

export function buildIfStale(): void {
  if (isStale()) runBuild();
}

/** The same beside other work. Rejects with what the build printed if it fails. */
export async function buildIfStaleAside(): Promise<void> {
  if (isStale()) await promisify(execFile)(process.execPath, [writtenBuild()], { cwd: projectFolder });
}

/** Builds; what is said about it goes to the error stream, so that a command's own output stays clean. */
export function runBuild(): void {
  console.error("Building dist/, which takes some seconds.");
  execFileSync(process.execPath, [writtenBuild()], {
    cwd: projectFolder,
    stdio: ["ignore", process.stderr, process.stderr],
  });
}
