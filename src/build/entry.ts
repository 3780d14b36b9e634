// build: the module that functions.js is bundled from. It imports every declared function and registers it.

import { mkdirSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import type { Declaration } from "./declarations.ts";
import { cacheFolder, projectFolder } from "./paths.ts";

export const entryFile = join(cacheFolder, "functions-entry.ts");

export function entryModule(declarations: readonly Declaration[]): string {
  const pathOf = (file: string) => JSON.stringify(join(projectFolder, file));
  const imports = declarations.map(
    ({ exportName, file }, index) => `import { ${exportName} as call${index} } from ${pathOf(file)};`,
  );
  const calls = declarations.map(
    ({ id, sources, cells }, index) =>
      `register(${JSON.stringify(id)}, call${index}, ${JSON.stringify(sources)}, ${JSON.stringify(cells)});`,
  );
  return [
    `import { register, registered } from ${pathOf("functions/register.ts")};`,
    ...imports,
    ...calls,
    // The pane lives in the same page and explains cells with them.
    "Object.assign(globalThis, { reamwrightFunctions: registered });",
    "",
  ].join("\n");
}

export function writeEntry(declarations: readonly Declaration[]): void {
  mkdirSync(dirname(entryFile), { recursive: true });
  writeFileSync(entryFile, entryModule(declarations));
}
