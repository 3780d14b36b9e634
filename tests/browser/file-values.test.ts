// tests: what a cell shows where the grid computes otherwise than the program that wrote the file.

import { expect, test } from "vitest";
import { fileValues, showFileValues } from "../../src/browser/file-values.ts";
import { storedNames } from "../../src/workbook/xlsx/stored-names.ts";
import { openWorkbook } from "../../src/workbook/xlsx-grid/open-file.ts";
import { smallWorkbook } from "../support/package.ts";
import { functions } from "../support/small-functions.ts";
import { functionNames, gridLibrary } from "../workbook/xlsx-grid/grid-library.ts";

test("the value of the file, until something before it changes", () => {
  const rows =
    '<row r="1"><c r="A1"><v>3</v></c><c r="B1"><f>A1*2</f><v>7</v></c><c r="C1" t="str"><f>A1&amp;"x"</f><v>y</v></c>' +
    '<c r="D1"><f>A1*3</f><v>9</v></c><c r="E1" t="e"><f>A1</f><v>#NUM!</v></c><c r="F1"><f>NOW()</f><v>1</v></c></row>';
  const opened = openWorkbook(
    smallWorkbook({ sheets: { S: rows } }),
    gridLibrary,
    storedNames(functionNames),
  );
  const model = new gridLibrary.Model(opened.data as never);
  const [sheetId] = model.getters.getSheetIds();
  const cell = (col: number) => model.getters.getEvaluatedCell({ sheetId, row: 0, col }) as any;
  expect(showFileValues(model, fileValues(opened, functions), gridLibrary)).toEqual(["S!B1", "S!C1", "S!E1"]);
  expect([1, 2, 3, 4].map((col) => cell(col).formattedValue)).toEqual(["7", "y", "9", "#NUM!"]);
  expect(cell(1).note).toContain("The value of the file");
  model.dispatch("UPDATE_CELL", { sheetId, row: 0, col: 0, content: "4" } as any);
  expect([1, 2, 3, 4].map((col) => cell(col).formattedValue)).toEqual(["#N/A", "#N/A", "12", "#N/A"]);
  expect(cell(1).message).toContain("Saving computes it");
  // A formula that is typed anew is the grid's own.
  model.dispatch("UPDATE_CELL", { sheetId, row: 0, col: 1, content: "=A1+1" } as any);
  expect(cell(1).value).toBe(5);
});
