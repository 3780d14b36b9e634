// tests: what a cell shows where the grid computes otherwise than the program that wrote the file.

import ExcelJS from "exceljs";
import { describe, expect, test } from "vitest";
import { fileValues, ShownFileValues, valuesIn } from "../../src/browser/file-values.ts";
import { saveIntoFile } from "../../src/browser/save-into-file.ts";
import { readCell } from "../../src/workbook/xlsx/addresses.ts";
import { openPackage } from "../../src/workbook/xlsx/package.ts";
import { storedNames } from "../../src/workbook/xlsx/stored-names.ts";
import { changesSince } from "../../src/workbook/xlsx-grid/changes.ts";
import { openWorkbook } from "../../src/workbook/xlsx-grid/open-file.ts";
import { snapshotOf } from "../../src/workbook/xlsx-grid/snapshot.ts";
import { watchStructure } from "../../src/workbook/xlsx-grid/structure.ts";
import { TypedCells } from "../../src/workbook/xlsx-grid/typed-cells.ts";
import { type SmallWorkbook, smallWorkbook } from "../support/package.ts";
import { functions } from "../support/small-functions.ts";
import { functionNames, gridLibrary } from "../workbook/xlsx-grid/grid-library.ts";

watchStructure(gridLibrary as any);
const names = storedNames(functionNames);
const shownValues = new ShownFileValues(gridLibrary, functions);

const number = (cell: string, value: number) => `<c r="${cell}"><v>${value}</v></c>`;
const formula = (cell: string, text: string, value: string, type = "") =>
  `<c r="${cell}"${type && ` t="${type}"`}><f>${text}</f><v>${value}</v></c>`;

/** A workbook of one sheet as the page shows it; `typed` are cells that were typed before it is shown, as in a draft. */
const shown = (
  row: string,
  more: Partial<SmallWorkbook> = {},
  typed: Readonly<Record<string, string>> = {},
) => shownFile(smallWorkbook({ sheets: { S: `<row r="1">${row}</row>` }, ...more }), typed);

function shownFile(file: Uint8Array, typed: Readonly<Record<string, string>> = {}) {
  let opened = openWorkbook(file, gridLibrary, names);
  const { model } = opened;
  let before = snapshotOf(model);
  const [sheetId] = model.getters.getSheetIds();
  const type = (address: string, content: string) => {
    const { row, column } = readCell(address)!;
    model.dispatch("UPDATE_CELL", { sheetId, row, col: column, content } as any);
  };
  for (const [address, content] of Object.entries(typed)) type(address, content);
  const isDraft = Object.keys(typed).length > 0;
  const pristine = isDraft ? openWorkbook(file, gridLibrary, names).model : undefined;
  const differing = shownValues.show(model, opened, before, fileValues(opened, functions), pristine);
  const cell = (address: string) => {
    const { row, column } = readCell(address)!;
    return model.getters.getEvaluatedCell({ sheetId, row, col: column }) as any;
  };
  const texts = (...addresses: string[]) => addresses.map((address) => cell(address).formattedValue);
  const save = () => {
    const cells = new TypedCells(model, gridLibrary, names, opened.parts.from1904);
    const { bytes, kept } = saveIntoFile(
      opened,
      changesSince(before, snapshotOf(model))!,
      cells,
      functions,
      false,
    )!;
    opened = { ...opened, file: openPackage(bytes), bytes };
    before = snapshotOf(model);
    shownValues.show(model, opened, before, valuesIn(opened, kept));
  };
  return { model, sheetId, differing, type, cell, texts, save };
}

test("the value of the file, until something before it changes", () => {
  const { differing, type, cell, texts, model } = shown(
    number("A1", 3) +
      formula("B1", "A1*2", "7") +
      formula("C1", 'A1&amp;"x"', "y", "str") +
      formula("D1", "A1*3", "9") +
      formula("E1", "A1", "#NUM!", "e") +
      formula("F1", "NOW()", "1"),
  );
  expect(differing).toEqual(["S!B1", "S!C1", "S!E1"]);
  expect(texts("B1", "C1", "D1", "E1")).toEqual(["7", "y", "9", "#NUM!"]);
  expect(cell("B1").note).toContain("The value of the file");
  type("A1", "4");
  expect(texts("B1", "C1", "D1", "E1")).toEqual(["#N/A", "#N/A", "12", "#N/A"]);
  expect(cell("B1").message).toContain("Saving computes it");
  model.dispatch("REQUEST_UNDO" as never);
  expect(texts("B1", "C1", "D1", "E1")).toEqual(["7", "y", "9", "#NUM!"]);
  // A formula that is typed anew is the grid's own.
  type("B1", "=A1+1");
  expect(cell("B1").value).toBe(4);
});

describe("a cell before it", () => {
  test("marks it even if the grid's own result stays the same", () => {
    const { type, texts } = shown(number("A1", 3) + number("B1", 5) + formula("C1", "MAX(A1:B1)*2", "11"));
    expect(texts("C1")).toEqual(["11"]);
    type("A1", "4");
    expect(texts("C1")).toEqual(["#N/A"]);
  });

  test("marks it through other formulas", () => {
    const { type, texts } = shown(
      number("A1", 3) + formula("B1", "A1&gt;2", "1", "b") + formula("C1", "IF(B1,1,2)", "8"),
    );
    expect(texts("C1")).toEqual(["8"]);
    type("A1", "4");
    expect(texts("C1")).toEqual(["#N/A"]);
  });

  test("elsewhere leaves it as it is", () => {
    const { type, texts } = shown(number("A1", 3) + number("B1", 5) + formula("C1", "A1*2", "7"));
    type("B1", "6");
    type("D1", "=B1+1");
    expect(texts("C1", "D1")).toEqual(["7", "7"]);
  });
});

test("what reads such a cell is computed from what it shows", () => {
  const { type, texts } = shown(
    number("A1", 3) + formula("B1", "A1*2", "7") + formula("C1", "_xldudf_REAM_DOUBLE(B1)", "14"),
  );
  expect(texts("B1", "C1")).toEqual(["7", "14"]);
  type("D1", "=B1+1");
  expect(texts("D1")).toEqual(["8"]);
  type("A1", "4");
  // An error, and no number that the file would not have.
  expect(texts("B1", "C1", "D1")).toEqual(["#N/A", "#N/A", "#N/A"]);
});

test("once saved, the cells have what was computed", () => {
  const { type, texts, save } = shown(number("A1", 3) + formula("B1", "A1^2", "10"));
  type("A1", "4");
  expect(texts("B1")).toEqual(["#N/A"]);
  save();
  expect(texts("B1")).toEqual(["16"]);
  type("A1", "5");
  expect(texts("B1")).toEqual(["25"]);
});

test("what saving does not compute stays unknown", () => {
  const { type, cell, texts, save } = shown(number("A1", 3) + formula("B1", "SLN(A1,1,2)", "5"));
  expect(cell("B1").value).toBe(5);
  type("A1", "4");
  save();
  expect(texts("B1")).toEqual(["#N/A"]);
  expect(cell("B1").message).toContain("Excel computes it");
});

test("zeros of a writer that leaves computing to Excel are not shown for values", () => {
  const { texts } = shown(number("A1", 3) + formula("B1", "SLN(A1,1,2)", "0"), {
    workbookPr: '<calcPr fullCalcOnLoad="1"/>',
  });
  expect(texts("B1")).toEqual(["#N/A"]);
});

test("a draft shows them as the workbook did", () => {
  const row = number("A1", 3) + number("B1", 5) + formula("C1", "A1*2", "7") + formula("D1", "B1*2", "11");
  const { texts } = shown(row, {}, { A1: "4" });
  expect(texts("C1", "D1")).toEqual(["#N/A", "11"]);
});

test("a formula that has moved with its rows is not shown as computed", () => {
  const { model, sheetId, texts } = shown(number("A1", 3) + formula("B1", "A1*2", "7"));
  const inserted = { sheetId, sheetName: "S", dimension: "ROW", base: 0, quantity: 1, position: "before" };
  model.dispatch("ADD_COLUMNS_ROWS" as never, inserted as never);
  expect(texts("B2")).toEqual(["#N/A"]);
});

test("dates that count from 1904 are no differences", async () => {
  const book = new ExcelJS.Workbook();
  book.properties.date1904 = true;
  const sheet = book.addWorksheet("S");
  sheet.getCell("A1").value = 40000;
  sheet.getCell("B1").value = { formula: "A1+1", result: 40001 };
  for (const cell of ["A1", "B1"]) sheet.getCell(cell).numFmt = "m/d/yyyy";
  const { differing, texts } = shownFile(new Uint8Array(await book.xlsx.writeBuffer()));
  expect(differing).toEqual([]);
  // 40,001 days after 1 January 1904.
  expect(texts("A1", "B1")).toEqual(["7/7/2013", "7/8/2013"]);
});
