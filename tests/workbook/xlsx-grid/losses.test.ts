// tests: what a workbook loses when it is written anew is told before; what is not told is not lost.

import ExcelJS from "exceljs";
import { describe, expect, test } from "vitest";
import { storedNames } from "../../../src/workbook/xlsx/stored-names.ts";
import { openWorkbook } from "../../../src/workbook/xlsx-grid/open-file.ts";
import { saveWorkbook } from "../../../src/workbook/xlsx-grid/save-file.ts";
import { partsOf, textsIn, zipped } from "../../support/package.ts";
import { share } from "../../support/share.ts";
import { functionNames, gridLibrary } from "./grid-library.ts";

const names = storedNames(functionNames);

const lossesOf = (file: Uint8Array) => openWorkbook(file, gridLibrary, names).losses.join("\n");

async function writtenAnew(file: Uint8Array) {
  const opened = openWorkbook(file, gridLibrary, names);
  const { model } = opened;
  const { bytes } = await saveWorkbook(model, gridLibrary, names, { opened });
  const book = new ExcelJS.Workbook();
  await book.xlsx.load(bytes as never);
  return { sheet: book.worksheets[0], book, texts: textsIn(bytes) };
}

async function made(
  make: (sheet: ExcelJS.Worksheet, book: ExcelJS.Workbook) => unknown,
): Promise<Uint8Array> {
  const book = new ExcelJS.Workbook();
  const sheet = book.addWorksheet("S");
  book.addWorksheet("Other").getCell("A1").value = "q";
  for (const [address, value] of Object.entries({ A1: 1, A2: 2, A3: 3, B1: "x" }))
    sheet.getCell(address).value = value;
  await make(sheet, book);
  return new Uint8Array(await book.xlsx.writeBuffer());
}

type Out = Awaited<ReturnType<typeof writtenAnew>>;
const rule = (more: object) => ({ type: "expression", formulae: ["A1>2"], priority: 1, ...more }) as never;

const everyThird = <T>(all: readonly T[]): readonly T[] => all.filter((_, at) => at % 3 === 0);

describe("what is kept", () => {
  const kept: readonly [string, Parameters<typeof made>[0], (out: Out) => unknown, unknown][] = [
    ["merged cells", (s) => s.mergeCells("C1:D2"), ({ sheet }) => sheet.getCell("D2").master.address, "C1"],
    [
      "a hidden row",
      (s) => Object.assign(s.getRow(3), { hidden: true }),
      ({ sheet }) => sheet.getRow(3).hidden,
      true,
    ],
    [
      "a hidden column",
      (s) => Object.assign(s.getColumn(3), { hidden: true }),
      ({ sheet }) => sheet.getColumn(3).hidden,
      true,
    ],
    [
      "grouped rows",
      (s) => Object.assign(s.getRow(3), { outlineLevel: 1 }),
      ({ sheet }) => sheet.getRow(3).outlineLevel,
      1,
    ],
    [
      "a link",
      (s) => Object.assign(s.getCell("B2"), { value: { text: "page", hyperlink: "https://example.com/" } }),
      ({ sheet }) => sheet.getCell("B2").hyperlink,
      "https://example.com/",
    ],
    [
      "frozen rows",
      (s) => Object.assign(s, { views: [{ state: "frozen", ySplit: 2, xSplit: 0 }] }),
      ({ sheet }) => sheet.views[0],
      expect.objectContaining({ state: "frozen", ySplit: 2 }),
    ],
    [
      "protection",
      (s) => s.protect("", {}),
      ({ texts }) => texts["xl/worksheets/sheet0.xml"],
      expect.stringContaining("<sheetProtection "),
    ],
    [
      "a number format",
      (s) => Object.assign(s.getCell("A1"), { numFmt: "0.000" }),
      ({ sheet }) => sheet.getCell("A1").numFmt,
      "0.000",
    ],
    [
      "a width",
      (s) => Object.assign(s.getColumn(2), { width: 40 }),
      ({ sheet }) => Math.round(sheet.getColumn(2).width!),
      40,
    ],
    [
      "a defined name",
      (_, b) => b.definedNames.add("'S'!$A$1:$A$2", "Sizes"),
      ({ book }) => book.definedNames.model,
      [{ name: "Sizes", ranges: ["S!$A$1:$A$2"] }],
    ],
    [
      "validation by a list",
      (s) => Object.assign(s.getCell("A1"), { dataValidation: { type: "list", formulae: ['"a,b"'] } }),
      ({ sheet }) => sheet.getCell("A1").dataValidation.formulae,
      ['"a,b"'],
    ],
    [
      "a conditional format",
      (s) => s.addConditionalFormatting({ ref: "A1:A3", rules: [rule({ style: { font: { bold: true } } })] }),
      ({ texts }) => texts["xl/worksheets/sheet0.xml"],
      expect.stringContaining("<formula>A1&gt;2</formula>"),
    ],
    [
      "what fills several cells",
      (s) => (s as any).fillFormula("C1:C2", "A1:A2*2", [[2], [4]], "array"),
      ({ sheet }) => [1, 2].map((row) => sheet.getCell(row, 3).result ?? sheet.getCell(row, 3).value),
      [2, 4],
    ],
  ];

  test.each(share(everyThird(kept), kept))("%s", async (_, make, of, wanted) => {
    expect(of(await writtenAnew(await made(make)))).toEqual(wanted);
  });
});

test("a window that is split has no frozen rows", async () => {
  const file = await made((s) =>
    Object.assign(s, { views: [{ state: "split", xSplit: 1000, ySplit: 2000 }] }),
  );
  expect((await writtenAnew(file)).texts["xl/worksheets/sheet0.xml"]).not.toContain("<pane");
});

describe("what is told", () => {
  const base = made(() => undefined).then(lossesOf);

  const told: readonly [string, Parameters<typeof made>[0]][] = [
    ["Comments", (s) => Object.assign(s.getCell("A1"), { note: "measured" })],
    [
      "Several formats within one cell",
      (s) =>
        Object.assign(s.getCell("B2"), {
          value: { richText: [{ text: "a", font: { bold: true } }, { text: "b" }] },
        }),
    ],
    ["Filters outside tables", (s) => Object.assign(s, { autoFilter: "A1:B3" })],
    ["Which cells stay open", (s) => Object.assign(s.getCell("A1"), { protection: { locked: false } })],
    ["right to left", (s) => Object.assign(s, { views: [{ rightToLeft: true }] })],
    ["split in two", (s) => Object.assign(s, { views: [{ state: "split", xSplit: 1000, ySplit: 2000 }] })],
    ["Alignments", (s) => Object.assign(s.getCell("A1"), { alignment: { indent: 2 } })],
    ["Alignments", (s) => Object.assign(s.getCell("A1"), { alignment: { shrinkToFit: true } })],
    ["Raised", (s) => Object.assign(s.getCell("A1"), { font: { vertAlign: "superscript" } })],
    ["Underlines", (s) => Object.assign(s.getCell("A1"), { font: { underline: "double" } })],
    [
      "only plain fills",
      (s) =>
        Object.assign(s.getCell("A1"), {
          fill: {
            type: "gradient",
            gradient: "angle",
            degree: 0,
            stops: [
              { position: 0, color: { argb: "FF0000FF" } },
              { position: 1, color: { argb: "FFFFFFFF" } },
            ],
          },
        }),
    ],
    ["hidden from the menu", (_, b) => Object.assign(b.getWorksheet("Other")!, { state: "veryHidden" })],
    [
      "Tips of links",
      (s) =>
        Object.assign(s.getCell("B2"), {
          value: { text: "page", hyperlink: "https://example.com/", tooltip: "tip" },
        }),
    ],
    [
      "Names of tables",
      (s) => s.addTable({ name: "Holes", ref: "E1", columns: [{ name: "a" }], rows: [["x"]] }),
    ],
    [
      "last rows of tables",
      (s) =>
        s.addTable({
          name: "T",
          ref: "E1",
          totalsRow: true,
          columns: [{ name: "a", totalsRowFunction: "sum" }],
          rows: [[1]],
        }),
    ],
    ["Array formulas", (s) => (s as any).fillFormula("C1:C2", "A1:A2*2", [[2], [4]], "array")],
    [
      "Validation for whole",
      (s) =>
        Object.assign(s.getCell("A1"), {
          dataValidation: { type: "whole", operator: "between", formulae: [1, 5] },
        }),
    ],
    [
      "Messages of validation",
      (s) =>
        Object.assign(s.getCell("A1"), {
          dataValidation: { type: "list", formulae: ['"a,b"'], prompt: "p", promptTitle: "t" },
        }),
    ],
    [
      "Conditional formats",
      (s) =>
        s.addConditionalFormatting({
          ref: "A1:A3",
          rules: [rule({ type: "containsText", operator: "containsText", text: "x" })],
        }),
    ],
    [
      "Conditional formats",
      (s) => s.addConditionalFormatting({ ref: "A1:A3", rules: [rule({ type: "aboveAverage" })] }),
    ],
    [
      "number formats in them",
      (s) =>
        s.addConditionalFormatting({
          ref: "A1:A3",
          rules: [rule({ style: { border: { top: { style: "thin" } } } })],
        }),
    ],
    ["print area", (s) => Object.assign(s.pageSetup, { printArea: "A1:B2" })],
  ];

  test.each(share(everyThird(told), told))("%s", async (told, make) => {
    expect(await base).not.toContain(told);
    expect(lossesOf(await made(make))).toContain(told);
  });

  const row = '<row r="1"><c r="A1"><v>1</v></c></row>';
  const sheetWith = (before: string, after: string, rows = row) => {
    const parts = partsOf({ sheets: { S: rows } });
    const name = "xl/worksheets/sheet1.xml";
    parts[name] = parts[name]
      .replace("<sheetData>", `${before}<sheetData>`)
      .replace("</sheetData>", `</sheetData>${after}`);
    return zipped(parts);
  };
  const workbookWith = (element: string) => {
    const parts = partsOf({ sheets: { S: row } });
    parts["xl/workbook.xml"] = parts["xl/workbook.xml"].replace("</workbook>", `${element}</workbook>`);
    return zipped(parts);
  };
  const plain = lossesOf(sheetWith("", ""));
  const partWith = (name: string) => zipped({ ...partsOf({ sheets: { S: row } }), [name]: "<x/>" });

  test.each<[string, Uint8Array]>([
    [
      "Formats of whole rows",
      sheetWith("", "", `<row r="1" s="3" customFormat="1"></row>${row.replaceAll('1"', '2"')}`),
    ],
    [
      "stops the others",
      sheetWith(
        "",
        '<conditionalFormatting sqref="A1"><cfRule type="expression" priority="1" stopIfTrue="1"><formula>A1</formula></cfRule></conditionalFormatting>',
      ),
    ],
    ["headers and footers", sheetWith("", "<headerFooter><oddHeader>x</oddHeader></headerFooter>")],
    [
      "does not know: ignoredErrors",
      sheetWith("", '<ignoredErrors><ignoredError sqref="A1" numberStoredAsText="1"/></ignoredErrors>'),
    ],
    ["does not know: customSheetViews", sheetWith("", "<customSheetViews/>")],
    ["Sparklines", sheetWith("", '<extLst><ext uri="x"><x14:sparklineGroup xmlns:x14="y"/></ext></extLst>')],
    [
      "Pictures and records in cells",
      sheetWith("", "", '<row r="1"><c r="A1" t="e" vm="1"><v>#VALUE!</v></c></row>'),
    ],
    ["Protection of the workbook", workbookWith('<workbookProtection lockStructure="1"/>')],
    ["Settings of calculation", workbookWith('<calcPr iterate="1"/>')],
    ["Macros", partWith("xl/vbaProject.bin")],
    ["Charts", partWith("xl/charts/chart1.xml")],
    ["Pivot tables", partWith("xl/pivotTables/pivotTable1.xml")],
    ["does not know: richValue.xml", partWith("xl/richData/richValue.xml")],
    [
      "Formulas that read other workbooks",
      sheetWith("", "", '<row r="1"><c r="A1"><f>[1]S!A1</f><v>1</v></c></row>'),
    ],
  ])("%s", (told, file) => {
    expect(lossesOf(file)).toContain(told);
    expect(plain).not.toContain(told);
  });
});
