// tests: the stand-in for vitest that mutation testing runs the tests with has all that those tests take from vitest.

import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { filesOf } from "../../src/build/mutation/pieces.ts";
import { projectFolder } from "../../src/build/paths.ts";

const textOf = (file: string) => readFileSync(join(projectFolder, file), "utf8");
const standIn = textOf("src/build/mutation/tests.ts");
const run = filesOf([
  ...["calc", "data", "functions", "fill"].map((folder) => `tests/${folder}/**/*.test.ts`),
  "tests/calc/golden-file.ts",
  "tests/support/golden-sheet.ts",
  "tests/support/refusal.ts",
  "tests/support/share.ts",
]);

test.each(run)("%s", (file) => {
  const text = textOf(file);
  const imported = /import \{([^}]*)\} from "vitest"/.exec(text)?.[1].match(/\w+/g) ?? [];
  const members = [...text.matchAll(/\b(test|it|describe)\.(\w+)/g)];
  for (const name of imported) expect(standIn).toMatch(new RegExp(`export const ${name}\\b`));
  for (const [, name, member] of members)
    expect(standIn).toMatch(new RegExp(`export const ${name} = Object\\.assign\\([^;]*\\b${member}\\b`));
});
