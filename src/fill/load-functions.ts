// fill: the worksheet functions as built: functions.json tells of them, functions.js has them.

import { readFileSync } from "node:fs";
import { join } from "node:path";
import { runFunctionsScript } from "../build/built-functions.ts";
import type { Metadata } from "../build/metadata.ts";
import { distFolder } from "../build/paths.ts";
import type { Functions } from "./formula/evaluate.ts";
import { withWorksheetFunctions } from "./worksheet-functions.ts";

export function readMetadata(): Metadata {
  return JSON.parse(readFileSync(join(distFolder, "functions.json"), "utf8")) as Metadata;
}

/** The spreadsheet's own functions and ours; dist/ has to be there. */
export function loadFunctions(): Functions {
  const script = readFileSync(join(distFolder, "functions.js"), "utf8");
  return withWorksheetFunctions(readMetadata(), runFunctionsScript(script));
}
