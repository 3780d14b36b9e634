// tests: makes the calls that come in, a line of JSON each, with the built functions.js, and prints what comes of each.

import { readFileSync } from "node:fs";
import { join } from "node:path";
import { runFunctionsScript } from "../../src/build/built-functions.ts";
import { distFolder } from "../../src/build/paths.ts";

const functions = runFunctionsScript(readFileSync(join(distFolder, "functions.js"), "utf8"));
for (const line of readFileSync(0, "utf8").trim().split("\n")) {
  const { id, args } = JSON.parse(line);
  console.log(id, JSON.stringify(functions.get(id)!(...args)));
}
