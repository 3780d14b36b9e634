// tests: files in and out again: written by exceljs, opened and saved here, read by exceljs and by @e965/xlsx.

import { readFileSync } from "node:fs";
import { join } from "node:path";
import * as XLSX from "@e965/xlsx";
import ExcelJS from "exceljs";
import { beforeAll, describe, expect, test } from "vitest";
import { manifestFolder } from "../../../src/build/paths.ts";
import { storedNames } from "../../../src/workbook/xlsx/stored-names.ts";
import { type OpenedWorkbook, openWorkbook } from "../../../src/workbook/xlsx-grid/open-file.ts";
import { type SavedFile, type SaveOptions, saveWorkbook } from "../../../src/workbook/xlsx-grid/save-file.ts";
import { textsIn } from "../../support/package.ts";
import { functionNames, gridLibrary } from "./grid-library.ts";

const names = storedNames(functionNames);
const modelOf = (data: object) => new gridLibrary.Model(data as never);

/** A pixel or so is lost between widths in characters and in pixels. */
const NEAR = 0;

async function quote(): Promise<Uint8Array> {
  const book = new ExcelJS.Workbook();
  const job = book.addWorksheet("Job 7", { views: [{ state: "frozen", xSplit: 1, ySplit: 2 }] });
  job.getColumn(2).width = 31;
  job.getRow(3).height = 40;
  job.getCell("A1").value = 10;
  job.getCell("A1").font = { bold: true, italic: true, color: { argb: "FFAA0000" }, name: "Arial", size: 14 };
  job.getCell("A1").fill = { type: "pattern", pattern: "solid", fgColor: { argb: "FFDCEBF2" } };
  job.getCell("A1").alignment = { horizontal: "center", wrapText: true };
  job.getCell("A1").border = { bottom: { style: "thick", color: { argb: "FF0000FF" } } };
  job.getCell("A2").value = 20.5;
  job.getCell("A2").numFmt = "0.000";
  job.getCell("A3").value = "1/4";
  job.getCell("A4").value = " two\nlines <&> ";
  job.getCell("A5").value = true;
  job.getCell("A6").value = { error: "#N/A" } as ExcelJS.CellErrorValue;
  job.getCell("A7").value = new Date(Date.UTC(2026, 0, 2));
  job.getCell("A8").value = "=A1";
  const formulas: Record<string, [string, unknown?]> = {
    B1: ["_xldudf_REAM_DOUBLE(A1)", 0],
    B2: ["[2]!_xldudf_REAM_DOUBLE(A2)", 0],
    B3: ['_xldudf_REAM_SAY_TEXT("1/4")', ""],
    B4: ["_xldudf_REAM_DOUBLE(A3)", 0],
    B5: ["_xlfn.LET(_xlpm.x,A1,_xlpm.x*3)", 30],
    B6: ["SUM(A1:A2)*2", 0],
    B7: ["SUM(Sizes)", 0],
    B8: ["A2>A1", false],
    B9: ["_xlfn.IFS(A1>1,7)", 0],
    B10: ["A99", 0],
  };
  for (const [address, [formula, result]] of Object.entries(formulas))
    job.getCell(address).value = { formula, result } as ExcelJS.CellFormulaValue;
  (job as any).fillFormula("D1:D2", "_xldudf_REAM_DOUBLE(A1:A2)", [[0], [0]], "array");
  job.getCell("E1").dataValidation = { type: "list", allowBlank: true, formulae: ['"in,mm"'] };
  job.getCell("E2").dataValidation = { type: "decimal", operator: "between", formulae: [1, 5] };
  job.addConditionalFormatting({
    ref: "A1:A9",
    rules: [
      {
        type: "cellIs",
        operator: "greaterThan",
        formulae: [15],
        priority: 1,
        style: { fill: { type: "pattern", pattern: "solid", bgColor: { argb: "FFFF0000" } } },
      },
    ],
  });
  job.mergeCells("F1:G2");
  const second = book.addWorksheet("Two & three", { state: "hidden" });
  second.getCell("A1").value = { formula: "'Job 7'!B1+1", result: 0 } as ExcelJS.CellFormulaValue;
  second.getCell("A2").value = { text: "a page", hyperlink: "https://example.com/page" };
  book.definedNames.add("'Job 7'!$A$1:$A$2", "Sizes");
  return new Uint8Array(await book.xlsx.writeBuffer());
}

interface Trip {
  opened: OpenedWorkbook;
  saved: SavedFile;
  book: ExcelJS.Workbook;
  texts: Record<string, string>;
}

async function trip(bytes: Uint8Array, options: SaveOptions = {}): Promise<Trip> {
  const opened = openWorkbook(bytes, gridLibrary, names);
  const saved = await saveWorkbook(opened.model, gridLibrary, names, { ...options, opened });
  const book = new ExcelJS.Workbook();
  await book.xlsx.load(saved.bytes as never);
  return { opened, saved, book, texts: textsIn(saved.bytes) };
}

describe("a quote through the browser workbook", () => {
  let out: Trip;
  let job: ExcelJS.Worksheet;
  beforeAll(async () => {
    out = await trip(await quote());
    job = out.book.getWorksheet("Job 7")!;
  });
  const formula = (address: string) => job.getCell(address).formula;
  const result = (address: string) => job.getCell(address).result;

  test("has its formulas in the form that a spreadsheet program stores", () => {
    expect(["B1", "B2", "B3", "B5", "B6", "B7", "B9"].map(formula)).toEqual([
      "_xldudf_REAM_DOUBLE(A1)",
      "_xldudf_REAM_DOUBLE(A2)",
      '_xldudf_REAM_SAY_TEXT("1/4")',
      "_xlfn.LET(_xlpm.x,A1,_xlpm.x*3)",
      "SUM(A1:A2)*2",
      "SUM(Sizes)",
      "_xlfn.IFS(A1>1,7)",
    ]);
  });

  test("has the values of its formulas: numbers, texts, errors, truths; the old one where none could be computed", () => {
    expect(["B1", "B2", "B3", "B4", "B5", "B6", "B7", "B8", "B9", "B10"].map(result)).toEqual([
      20,
      41,
      "[1/4]",
      { error: "#VALUE!" },
      30,
      61,
      30.5,
      true,
      7,
      0,
    ]);
  });

  test("fills cells with one formula, as a dynamic array", () => {
    const sheet = out.texts["xl/worksheets/sheet0.xml"];
    expect(sheet).toContain(
      '<c r="D1" cm="1"><f t="array" ref="D1:D2">_xldudf_REAM_DOUBLE(A1:A2)</f><v>20</v></c>',
    );
    expect(job.getCell("D2").value).toBe(41);
    expect(out.texts["xl/metadata.xml"]).toContain("XLDAPR");
    expect(out.texts["[Content_Types].xml"]).toMatch(/sheetMetadata\+xml"[^>]*PartName="\/xl\/metadata.xml"/);
    expect(out.texts["xl/_rels/workbook.xml.rels"]).toMatch(/Target="metadata.xml"[^>]*\/sheetMetadata"/);
  });

  test("has ordinary formulas as such", () => {
    const sheet = out.texts["xl/worksheets/sheet0.xml"];
    expect(sheet).toContain('<c r="B6"><f>SUM(A1:A2)*2</f><v>61</v></c>');
  });

  test("has the values that were typed", () => {
    const values = ["A1", "A2", "A3", "A4", "A5", "A6", "A7", "A8"].map((one) => job.getCell(one).value);
    expect(values).toEqual([
      10,
      20.5,
      "1/4",
      " two\nlines <&> ",
      true,
      { error: "#N/A" },
      new Date(Date.UTC(2026, 0, 2)),
      "=A1",
    ]);
  });

  test("has its styles, formats, widths, heights, merged cells and frozen rows", () => {
    const cell = job.getCell("A1");
    expect(cell.font).toMatchObject({ bold: true, italic: true, size: 14, color: { argb: "FFAA0000" } });
    expect(cell.fill).toMatchObject({ pattern: "solid", fgColor: { argb: "FFDCEBF2" } });
    expect(cell.alignment).toMatchObject({ horizontal: "center", wrapText: true });
    expect(cell.border.bottom).toMatchObject({ style: "thick", color: { argb: "FF0000FF" } });
    expect(job.getCell("A2").numFmt).toBe("0.000");
    expect(job.getColumn(2).width).toBeCloseTo(31, NEAR);
    expect(job.getRow(3).height).toBeCloseTo(40, NEAR);
    expect(job.getCell("G2").master.address).toBe("F1");
    expect(job.views[0]).toMatchObject({ state: "frozen", xSplit: 1, ySplit: 2 });
  });

  test("has its validation and conditional formats", () => {
    expect(job.getCell("E1").dataValidation).toMatchObject({ type: "list", formulae: ['"in,mm"'] });
    expect(job.getCell("E2").dataValidation).toMatchObject({
      type: "decimal",
      operator: "between",
      formulae: [1, 5],
    });
    expect(out.texts["xl/worksheets/sheet0.xml"]).not.toContain('errorStyle=""');
    const [format] = (job as any).conditionalFormattings;
    expect(format.ref).toBe("A1:A9");
    expect(format.rules[0]).toMatchObject({ type: "cellIs", operator: "greaterThan", formulae: ["15"] });
  });

  test("has its sheets, a hidden one too, links and names", () => {
    expect(out.book.worksheets.map(({ name, state }) => [name, state])).toEqual([
      ["Job 7", "visible"],
      ["Two & three", "hidden"],
    ]);
    const second = out.book.getWorksheet("Two & three")!;
    expect(second.getCell("A1").formula).toBe("'Job 7'!B1+1");
    expect(second.getCell("A1").result).toBe(21);
    expect(second.getCell("A2").value).toMatchObject({
      text: "a page",
      hyperlink: "https://example.com/page",
    });
    expect(out.book.definedNames.model).toEqual([{ name: "Sizes", ranges: ["'Job 7'!$A$1:$A$2"] }]);
  });

  test("asks whoever opens it to compute it anew", () => {
    expect(out.texts["xl/workbook.xml"]).toMatch(/<\/definedNames><calcPr [^>]*fullCalcOnLoad="1"/);
  });

  test("reads the same in another reader", () => {
    const book = XLSX.read(out.saved.bytes, { cellFormula: true, xlfn: true });
    const sheet = book.Sheets["Job 7"];
    expect([sheet.B1.f, sheet.B1.v, sheet.B1.t]).toEqual(["_xldudf_REAM_DOUBLE(A1)", 20, "n"]);
    expect([sheet.B3.v, sheet.B4.t, sheet.B8.v, sheet.D2.v]).toEqual(["[1/4]", "e", true, 41]);
    expect(sheet.D1.F).toBe("D1:D2");
  });

  test("comes through a second time without a change", async () => {
    const again = await trip(out.saved.bytes);
    const { "xl/worksheets/sheet0.xml": sheet } = again.texts;
    const cells = (text: string) => text.slice(text.indexOf("<sheetData>"), text.indexOf("</sheetData>"));
    const contents = (text: string) =>
      [...cells(text).matchAll(/<c r[\s\S]*?<\/c>/g)].map(([cell]) => cell.replace(/ s="\d+"/, ""));
    expect(contents(sheet)).toEqual(contents(out.texts["xl/worksheets/sheet0.xml"]));
  });
});

test("values only: ours become values with what they fill, others stay formulas", async () => {
  const { book, saved, texts } = await trip(await quote(), { valuesOnly: true });
  const job = book.getWorksheet("Job 7")!;
  expect(["B1", "B2", "B3", "B4", "D1", "D2"].map((one) => job.getCell(one).value)).toEqual([
    20,
    41,
    "[1/4]",
    { error: "#VALUE!" },
    20,
    41,
  ]);
  expect(job.getCell("B6").formula).toBe("SUM(A1:A2)*2");
  expect(Object.values(texts).join()).not.toContain("REAM");
  expect(saved.formulas).toBe(7);
});

test("a workbook without arrays has no part that tells of them", async () => {
  const book = new ExcelJS.Workbook();
  book.addWorksheet("S").getCell("A1").value = { formula: "1+1", result: 2 } as ExcelJS.CellFormulaValue;
  const { texts } = await trip(new Uint8Array(await book.xlsx.writeBuffer()));
  expect(Object.keys(texts)).not.toContain("xl/metadata.xml");
  expect(texts["[Content_Types].xml"]).not.toContain("metadata");
  expect(texts["xl/_rels/workbook.xml.rels"]).not.toContain("metadata");
});

test("a picture and a table come through", async () => {
  const book = new ExcelJS.Workbook();
  const sheet = book.addWorksheet("S");
  const buffer = readFileSync(join(manifestFolder, "icons", "icon-32.png"));
  const picture = book.addImage({ buffer: buffer as unknown as ExcelJS.Buffer, extension: "png" });
  sheet.addImage(picture, { tl: { col: 1, row: 1 }, ext: { width: 32, height: 32 } });
  const columns = [{ name: "size" }, { name: "1/4" }];
  sheet.addTable({ name: "Holes", ref: "F5", headerRow: true, columns, rows: [[1, 2]] });
  const out = await trip(new Uint8Array(await book.xlsx.writeBuffer()));
  const saved = out.book.getWorksheet("S")!;
  expect(saved.getImages()).toHaveLength(1);
  expect(Buffer.from(out.book.model.media[0].buffer as ArrayBuffer)).toEqual(buffer);
  const [table] = saved.getTables() as unknown as { table: { tableRef: string } }[];
  expect(table.table.tableRef).toBe("F5:G6");
  expect([saved.getCell("F5").value, saved.getCell("G5").value]).toEqual(["size", "1/4"]);
});

test("what was changed since is saved: a moved formula that cannot be computed has no old value", async () => {
  const opened = openWorkbook(await quote(), gridLibrary, names);
  const { model } = opened;
  const [sheetId] = model.getters.getSheetIds();
  model.dispatch("ADD_COLUMNS_ROWS", {
    sheetId: sheetId,
    sheetName: "Job 7",
    dimension: "ROW",
    base: 0,
    position: "before",
    quantity: 1,
  });
  model.dispatch("UPDATE_CELL", { sheetId: sheetId, col: 0, row: 1, content: "50" });
  const { bytes } = await saveWorkbook(model, gridLibrary, names, { opened });
  const book = new ExcelJS.Workbook();
  await book.xlsx.load(bytes as never);
  const job = book.getWorksheet("Job 7")!;
  expect([job.getCell("B2").formula, job.getCell("B2").result]).toEqual(["_xldudf_REAM_DOUBLE(A2)", 100]);
  expect([job.getCell("B6").formula, job.getCell("B6").result]).toEqual([
    "_xlfn.LET(_xlpm.x,A2,_xlpm.x*3)",
    undefined,
  ]);
  expect(book.definedNames.model).toEqual([{ name: "Sizes", ranges: ["'Job 7'!$A$2:$A$3"] }]);
});

test("functions that only the grid has are saved as values and counted", async () => {
  const model = modelOf({
    sheets: [
      { id: "s", name: "S", cells: { A1: "=MULTIPLY(3,4)", A2: "=A1+1" }, isLocked: true, merges: ["C1:D1"] },
    ],
  });
  const saved = await saveWorkbook(model, gridLibrary, names);
  expect([saved.formulas, saved.asValues]).toEqual([1, 1]);
  const sheet = textsIn(saved.bytes)["xl/worksheets/sheet0.xml"];
  expect(sheet).toContain('<c r="A1"><v>12</v></c>');
  // ECMA-376 part 1, 18.3.1.99: protection of a sheet stands before its merged cells.
  expect(sheet).toMatch(/<\/sheetData>\s*<sheetProtection [^>]*\/>[\s\S]*<mergeCells /);
});

test("a half-finished quote keeps its spills, its mistyped names and its page", async () => {
  const model = modelOf({
    sheets: [
      {
        id: "s",
        name: "S",
        colNumber: 9,
        rowNumber: 20,
        cells: {
          A1: "x",
          A2: "2",
          A3: "",
          A4: "4",
          B1: "=REAM.DOUBLE(A1:A4)",
          D1: "=REAM.DUBLE(A2)",
          D2: "=REAM.DOUBLE()",
          D3: "=SUM(A2",
        },
      },
    ],
  });
  const { bytes } = await saveWorkbook(model, gridLibrary, names);
  const sheet = textsIn(bytes)["xl/worksheets/sheet0.xml"];
  expect(sheet).toContain('<f t="array" ref="B1:B4">_xldudf_REAM_DOUBLE(A1:A4)</f><v>#VALUE!</v>');
  expect(sheet).toMatch(/<c r="B4"[^>]*><v>8<\/v>/);
  expect(sheet).toMatch(/<c r="D1"[^>]*><f[^>]*>REAM\.DUBLE\(A2\)<\/f><v>#NAME\?<\/v>/);
  expect(sheet).toMatch(/<c r="D2"[^>]*><f[^>]*>_xldudf_REAM_DOUBLE\(\)<\/f>/);
  // What is no formula would keep the file from opening.
  expect(sheet).not.toContain("SUM(A2<");
  expect(sheet).toContain('<pageSetup orientation="landscape" fitToWidth="1" fitToHeight="0"/>');
  const again = openWorkbook(bytes, gridLibrary, names).model;
  const [sheetId] = again.getters.getSheetIds();
  expect(again.getters.getCellText({ sheetId, row: 0, col: 3 }, { showFormula: true })).toBe(
    "=REAM.DUBLE(A2)",
  );
  expect(again.getters.getEvaluatedCell({ sheetId, row: 3, col: 1 }).value).toBe(8);
});

test("cells with the format of texts keep their texts and their numbers, and formulas read them as they are", async () => {
  const book = new ExcelJS.Workbook();
  const sheet = book.addWorksheet("S");
  const values = ["12.5", "01", "'x", "=A1", "#N/A", "TRUE", 7, "12 H7"];
  values.forEach((value, i) => {
    sheet.getCell(i + 1, 1).numFmt = "@";
    sheet.getCell(i + 1, 1).value = value;
    sheet.getCell(i + 1, 2).value = {
      formula: `A${i + 1}&"|"`,
      result: `${value}|`,
    } as ExcelJS.CellFormulaValue;
  });
  const { book: again, opened } = await trip(new Uint8Array(await book.xlsx.writeBuffer()));
  expect(values.map((_, i) => again.getWorksheet("S")!.getCell(i + 1, 1).value)).toEqual(values);
  const { getters } = opened.model;
  const [sheetId] = getters.getSheetIds();
  for (const row of [0, 1, 2, 5, 6, 7])
    expect(getters.getEvaluatedCell({ sheetId, row, col: 1 }).value).toBe(`${values[row]}|`);
});
