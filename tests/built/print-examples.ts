// tests: works out every example with the built functions.js and prints what comes, a line each.

import { readFileSync } from "node:fs";
import { join } from "node:path";
import { runFunctionsScript } from "../../src/build/built-functions.ts";
import { readDeclarations } from "../../src/build/declarations.ts";
import { distFolder } from "../../src/build/paths.ts";
import { literalArguments } from "../../src/build/reference/load.ts";

const functions = runFunctionsScript(readFileSync(join(distFolder, "functions.js"), "utf8"));
for (const { id, examples, parameters } of readDeclarations()) {
  for (const { formula } of examples) {
    const { inputs } = literalArguments(formula);
    const at = parameters.findIndex(({ repeating }) => repeating);
    const args = at < 0 ? inputs : [...inputs.slice(0, at), inputs.slice(at)];
    console.log(formula, JSON.stringify(functions.get(id)!(...args)));
  }
}
