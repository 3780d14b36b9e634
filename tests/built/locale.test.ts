// tests: the built functions give the same in every language and time zone of the machine.

import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { expect, test } from "vitest";
import { readDeclarations } from "../../src/build/declarations.ts";
import { projectFolder } from "../../src/build/paths.ts";
import { literalArguments } from "../../src/build/reference/load.ts";

const loader = pathToFileURL(join(projectFolder, "node_modules", "tsx", "dist", "loader.mjs")).href;
const script = join(projectFolder, "tests", "built", "print-examples.ts");

const calls = readDeclarations().flatMap(({ id, examples, parameters }) => {
  const at = parameters.findIndex(({ repeating }) => repeating);
  return examples.map(({ formula }) => {
    const { inputs } = literalArguments(formula);
    const args = at < 0 ? inputs : [...inputs.slice(0, at), inputs.slice(at)];
    return JSON.stringify({ id, args });
  });
});

function printed(language: string, zone: string): string {
  const { stdout, stderr, status } = spawnSync(process.execPath, ["--import", loader, script], {
    cwd: projectFolder,
    encoding: "utf8",
    input: calls.join("\n"),
    env: { ...process.env, LANG: language, LC_ALL: language, TZ: zone },
  });
  expect(stderr).toBe("");
  expect(status).toBe(0);
  return stdout;
}

test("under three languages and zones", () => {
  const english = printed("en_US.UTF-8", "America/New_York");
  expect(english.split("\n").length).toBeGreaterThan(100);
  expect(printed("de_DE.UTF-8", "Europe/Berlin")).toBe(english);
  expect(printed("tr_TR.UTF-8", "Pacific/Apia")).toBe(english);
});
