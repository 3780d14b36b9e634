// tests: workbooks by two Python writers, which leave no values or zeros beside formulas and ask for a calculation of
// all: they are computed whole.

import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import * as reader from "@e965/xlsx";
import { expect, test } from "vitest";
import { fillWorkbook } from "../../src/fill/fill-workbook.ts";
import { joined } from "../support/package.ts";
import { functions } from "../support/small-functions.ts";

const python = process.env.PYTHON ?? "/usr/bin/python3";

/** The file that a program writes to the path that it is given. */
function written(program: string, module: string): Uint8Array {
  const folder = mkdtempSync(join(tmpdir(), "python-"));
  const path = join(folder, "book.xlsx");
  try {
    execFileSync(python, ["-c", program, path], { stdio: ["ignore", "ignore", "pipe"] });
    return new Uint8Array(readFileSync(path));
  } catch (error) {
    throw new Error(
      `${module} is not there: install python3-${module}, or set PYTHON to a Python that has it (${error})`,
    );
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const openpyxl = `
import sys, openpyxl
book = openpyxl.Workbook(); sheet = book.active
sheet["A1"] = 3; sheet["A2"] = 4; sheet["B1"] = "=_xldudf_REAM_TWICE(A1)"; sheet["B2"] = "=B1+A2"; sheet["C1"] = "=SUM(A1:A2)"
book.save(sys.argv[1])`;
const xlsxwriter = `
import sys, xlsxwriter
book = xlsxwriter.Workbook(sys.argv[1]); sheet = book.add_worksheet()
sheet.write("A1", 3); sheet.write("A2", 4)
sheet.write_formula("B1", "=_xldudf_REAM_TWICE(A1)"); sheet.write_formula("B2", "=B1+A2"); sheet.write_formula("C1", "=SUM(A1:A2)")
book.close()`;

test.each([
  ["openpyxl", openpyxl],
  ["xlsxwriter", xlsxwriter],
])("a workbook by %s is computed whole", (module, program) => {
  const { pieces, report } = fillWorkbook(written(program, module), functions);
  expect(report.sheets[0]).toMatchObject({ computed: 3, errors: 0, kept: 0 });
  const book = reader.read(joined(pieces!), { type: "array" });
  const sheet = book.Sheets[book.SheetNames[0]];
  expect(["B1", "B2", "C1"].map((cell) => (sheet[cell] as reader.CellObject).v)).toEqual([6, 10, 7]);
});
