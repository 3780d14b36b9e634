// tests: runs a worksheet function over the rows of a golden file. Its columns are the function's arguments, then
// `expected` (cells apart by "; "; "#N/A words" or "#VALUE! words" with words of the message) and the row's `source`.

import { describe, expect, test } from "vitest";
import { readTable } from "./csv.ts";
import { expectSentences } from "./refusal.ts";
import { declarations, isError, sheet } from "./sheet.ts";

/** A cell as a person would fill it: numbers as numbers, all else as text; entries of a list apart by " | ". */
function typed(text: string): unknown {
  if (text === "") return undefined;
  if (text.includes(" | ")) return text.split(" | ").map((entry) => [typed(entry)]);
  return /^-?\d+(?:\.\d+)?$/.test(text) ? Number(text) : text;
}

/** Holds cells to what is written: texts and booleans exactly, numbers to 1e-9, errors by code and words. */
function expectCells(cells: readonly unknown[], expected: string): void {
  const wanted = expected.split("; ");
  const error = /^(#N\/A|#VALUE!) ?(.*)$/.exec(wanted[0]);
  if (error) {
    for (const one of cells) {
      expect(isError(one) ? one.code : one).toBe(error[1]);
      if (!isError(one)) continue;
      expectSentences(one.message);
      expect(one.message).toContain(error[2]);
    }
    return;
  }
  expect(cells.length).toBe(wanted.length);
  wanted.forEach((want, index) => {
    const one = cells[index];
    if (typeof one === "number")
      expect(Math.abs(one - Number(want)), `${one} for ${want}`).toBeLessThanOrEqual(1e-9);
    else expect(String(one).toUpperCase() === want && typeof one === "boolean" ? want : one).toBe(want);
  });
}

export function goldenSheet(name: string, id: string): void {
  const rows = readTable(name);
  const parameters = declarations.find((declaration) => declaration.id === id)!.parameters;
  describe(`${id}, ${name}.csv`, () => {
    test("has a column for arguments of the function only, and a source for each row", () => {
      const names = new Set([
        ...parameters.map((parameter) => parameter.name.replace(/_$/, "")),
        "expected",
        "source",
      ]);
      for (const column of Object.keys(rows[0])) expect(names).toContain(column);
      for (const { source } of rows) expect(source).toMatch(/\w/);
    });
    test.each(rows.map((row) => [Object.values(row).slice(0, -1).join(" , "), row] as const))(
      "%s",
      (_, row) => {
        const args = parameters.map((parameter) => typed(row[parameter.name.replace(/_$/, "")] ?? ""));
        const cells = sheet(id, ...args);
        expectCells(cells.flat(), row.expected);
      },
    );
  });
}
