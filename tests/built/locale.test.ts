// tests: the built functions give the same in every language and time zone of the machine.

import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { expect, test } from "vitest";
import { projectFolder } from "../../src/build/paths.ts";

const program = join(projectFolder, "node_modules", "tsx", "dist", "cli.mjs");
const script = join(projectFolder, "tests", "built", "print-examples.ts");

function printed(language: string, zone: string): string {
  const { stdout, stderr, status } = spawnSync(process.execPath, [program, script], {
    cwd: projectFolder,
    encoding: "utf8",
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
