// tests: messages of the grid's library that say what to do, in its words, which may change with its version.

import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { messages, withAdvice } from "../../src/browser/grid-messages.ts";
import { projectFolder } from "../../src/build/paths.ts";

const folder = join(projectFolder, "node_modules", "@odoo", "o-spreadsheet", "dist");
const library = readFileSync(join(folder, "o_spreadsheet.min.iife.js"), "utf8");

test.each(messages)("%s", (message) => {
  expect(library).toContain(message);
  expect(withAdvice(message)).toMatch(/Select only .+ sort those/);
  // Two lines of the header, of some sixty characters each.
  expect(withAdvice(message).length).toBeLessThanOrEqual(120);
});

test("other messages stay", () => {
  expect(withAdvice("There is no room.")).toBe("There is no room.");
});
