// tests: workbooks by two Python writers, which leave no values or zeros beside formulas and ask for a calculation of
// all: they are computed whole, and come back from the browser workbook.

import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import * as reader from "@e965/xlsx";
import { describe, expect, test } from "vitest";
import { saveIntoFile } from "../../src/browser/save-into-file.ts";
import { fillWorkbook } from "../../src/fill/fill-workbook.ts";
import { readCell } from "../../src/workbook/xlsx/addresses.ts";
import { storedNames } from "../../src/workbook/xlsx/stored-names.ts";
import { changesSince } from "../../src/workbook/xlsx-grid/changes.ts";
import { openWorkbook } from "../../src/workbook/xlsx-grid/open-file.ts";
import { snapshotOf } from "../../src/workbook/xlsx-grid/snapshot.ts";
import { TypedCells } from "../../src/workbook/xlsx-grid/typed-cells.ts";
import { joined } from "../support/package.ts";
import { functions, metadata } from "../support/small-functions.ts";
import { gridLibrary } from "../workbook/xlsx-grid/grid-library.ts";

const python = process.env.PYTHON ?? "/usr/bin/python3";

/** What a program gives for a file whose path it is given; the file may not be there yet. */
function withFile(module: string, program: string, file?: Uint8Array): Uint8Array {
  const folder = mkdtempSync(join(tmpdir(), "python-"));
  const path = join(folder, "book.xlsx");
  try {
    if (file) writeFileSync(path, file);
    const printed = execFileSync(python, ["-c", program, path], { stdio: ["ignore", "pipe", "pipe"] });
    return file ? printed : new Uint8Array(readFileSync(path));
  } catch (error) {
    throw new Error(
      `${module} is not there: install python3-${module}, or set PYTHON to a Python that has it (${error})`,
    );
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const written = (program: string, module: string) => withFile(module, program);

/** Constants that readers like to change: leading zeros, a date, a text that is a formula's, one of several lines. */
const openpyxl = `
import sys, datetime, openpyxl
from openpyxl.comments import Comment
book = openpyxl.Workbook(); sheet = book.active
sheet["A1"] = 3; sheet["A2"] = 4; sheet["B1"] = "=_xldudf_REAM_TWICE(A1)"; sheet["B2"] = "=B1+A2"; sheet["C1"] = "=SUM(A1:A2)"
sheet["D1"] = "007"; sheet["D2"] = datetime.date(2026, 11, 26); sheet["D3"] = "two\\nlines"; sheet["D4"] = True
sheet["D5"].number_format = "@"; sheet["D5"] = "12"; sheet["A1"].comment = Comment("measured twice", "shop")
book.create_sheet("More")["A1"] = "=" + sheet.title + "!B2*10"
book.save(sys.argv[1])`;
const xlsxwriter = `
import sys, datetime, xlsxwriter
book = xlsxwriter.Workbook(sys.argv[1]); sheet = book.add_worksheet()
sheet.write("A1", 3); sheet.write("A2", 4)
sheet.write_formula("B1", "=_xldudf_REAM_TWICE(A1)"); sheet.write_formula("B2", "=B1+A2"); sheet.write_formula("C1", "=SUM(A1:A2)")
sheet.write_string("D1", "007"); sheet.write_datetime("D2", datetime.date(2026, 11, 26), book.add_format({"num_format": "yyyy-mm-dd"}))
sheet.write_string("D3", "two\\nlines"); sheet.write_boolean("D4", True); sheet.write_string("D5", "12", book.add_format({"num_format": "@"}))
sheet.write_comment("A1", "measured twice")
book.add_worksheet("More").write_formula("A1", "=" + sheet.get_name() + "!B2*10")
book.close()`;

/** What openpyxl reads in every cell of a file: formulas, or the values beside them. */
const reading = `
import sys, json, openpyxl
def read(values):
  book = openpyxl.load_workbook(sys.argv[1], data_only=values)
  return {sheet.title + "!" + cell.coordinate: str(cell.value) for sheet in book for row in sheet for cell in row if cell.value is not None}
sheet = openpyxl.load_workbook(sys.argv[1]).worksheets[0]
print(json.dumps({"formulas": read(False), "values": read(True), "comment": sheet["A1"].comment.text.strip()}))`;

interface Read {
  readonly formulas: Readonly<Record<string, string>>;
  readonly values: Readonly<Record<string, string>>;
  readonly comment: string;
}
const readByPython = (file: Uint8Array): Read => JSON.parse(String(withFile("openpyxl", reading, file)));

const writers = [
  ["openpyxl", openpyxl],
  ["xlsxwriter", xlsxwriter],
] as const;

test.each(writers)("a workbook by %s is computed whole", (module, program) => {
  const { pieces, report } = fillWorkbook(written(program, module), functions);
  expect(report.sheets[0]).toMatchObject({ computed: 3, errors: 0, kept: 0 });
  const book = reader.read(joined(pieces!), { type: "array" });
  const sheet = book.Sheets[book.SheetNames[0]];
  expect(["B1", "B2", "C1"].map((cell) => (sheet[cell] as reader.CellObject).v)).toEqual([6, 10, 7]);
});

describe.each(writers)("a workbook by %s in the browser workbook", (module, program) => {
  const file = written(program, module);
  const names = storedNames(metadata.functions.map(({ name }) => name));
  const before = readByPython(file);

  /** The file after these were typed into its first sheet and it was saved. */
  function saved(typed: Readonly<Record<string, string>>): Read {
    const opened = openWorkbook(file, gridLibrary, names);
    const { model } = opened;
    const start = snapshotOf(model);
    const [sheetId] = model.getters.getSheetIds();
    for (const [address, content] of Object.entries(typed)) {
      const { row, column } = readCell(address)!;
      model.dispatch("UPDATE_CELL" as never, { sheetId, row, col: column, content } as never);
    }
    const changes = changesSince(start, snapshotOf(model))!;
    expect(changes.rewritten).toEqual([]);
    const cells = new TypedCells(model, gridLibrary, names, opened.parts.from1904);
    return readByPython(saveIntoFile(opened, changes, cells, functions, false)!.bytes);
  }

  const first = Object.keys(before.formulas)[0].split("!")[0];
  const computed = (values: Read["values"]) =>
    [`${first}!B1`, `${first}!B2`, `${first}!C1`, "More!A1"].map((cell) => Number(values[cell]));

  test("opened and saved is the same, with its values", () => {
    const after = saved({});
    expect(after.formulas).toEqual(before.formulas);
    expect(after.comment).toBe(before.comment);
    expect(computed(after.values)).toEqual([6, 10, 7, 100]);
  });

  test("comes back with what was typed, and what depends on it", () => {
    const after = saved({ A1: "5", E1: "=B2*2" });
    expect(after.formulas).toEqual({ ...before.formulas, [`${first}!A1`]: "5", [`${first}!E1`]: "=B2*2" });
    expect(computed(after.values)).toEqual([10, 14, 9, 140]);
    expect(after.values[`${first}!E1`]).toBe("28");
    expect(after.comment).toBe(before.comment);
  });
});
