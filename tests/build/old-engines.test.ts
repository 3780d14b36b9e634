// tests: the check for what an old engine lacks finds it, and nothing else.

import { expect, test } from "vitest";
import { lackingInOldEngines } from "../../src/build/old-engines.ts";
import { modules, textOf } from "../support/modules.ts";

test.each([
  ["x.replace(/(?<=a)b/, c);", "look-behind"],
  ["x.replace(/(?<!a)b/, c);", "look-behind"],
  ["new RegExp('(?<=' + a + ')b');", "look-behind"],
  ["x.match(/a/dg);", "flag d or v"],
  ["[1].at(-1);", "at()"],
  ["[1].findLast(f);", "findLast()"],
  ["Object.hasOwn(a, b);", "Object.hasOwn"],
  ["structuredClone(a);", "structuredClone"],
])("%s", (script, words) => {
  expect(lackingInOldEngines(script)).toEqual([expect.stringContaining(words)]);
});

test.each([
  "x.match(/(?<name>a)/giu);",
  "x.match(/a(?=b)(?!c)/);",
  "const at = x.at;",
  "shared.at(1, 2);",
  "x.replaceAll(a, b);",
])("nothing in %s", (script) => expect(lackingInOldEngines(script)).toEqual([]));

test("what Excel loads asks for nothing that they lack", () => {
  const loaded = modules.filter((file) =>
    /^(?:functions|src\/(?:calc|data|taskpane|fill\/(?:formula|builtins)))\//.test(file),
  );
  expect(loaded.length).toBeGreaterThan(100);
  expect(
    loaded.flatMap((file) => lackingInOldEngines(textOf(file)).map((fault) => `${file}: ${fault}`)),
  ).toEqual([]);
});
