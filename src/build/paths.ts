// build: where things lie, from the root of the project.

import { join } from "node:path";
import { fileURLToPath } from "node:url";

export const projectFolder = fileURLToPath(new URL("../..", import.meta.url));
export const functionsFolder = join(projectFolder, "functions");
export const sourceFolder = join(projectFolder, "src");
export const manifestFolder = join(projectFolder, "manifest");
export const distFolder = join(projectFolder, "dist");
export const packageFolder = join(projectFolder, "package");
/** For what the build makes for itself and for `npm run fill`. */
export const cacheFolder = join(projectFolder, "node_modules", ".cache", "reamwright");
/** The program of a thread that fills workbooks, in one file: a thread has no TypeScript of its own. */
export const fillThreadFile = join(cacheFolder, "fill-thread.mjs");
/** The build itself in one file, where a command finds that dist/ has to be built. */
export const buildFile = join(cacheFolder, "build.mjs");
