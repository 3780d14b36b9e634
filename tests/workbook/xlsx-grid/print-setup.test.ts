// tests: how sheets are printed, in the file that is saved, in the eyes of a second reader, and opened again.

import ExcelJS from "exceljs";
import { describe, expect, test } from "vitest";
import { printSetupNow, printSetupsOf } from "../../../src/workbook/grid-print.ts";
import { registerSteps } from "../../../src/workbook/grid-steps.ts";
import { GridWorkbook } from "../../../src/workbook/grid-workbook.ts";
import type { NewSheet, PrintSetup } from "../../../src/workbook/workbook.ts";
import { putSheets } from "../../../src/workbook/xlsx/add-sheets.ts";
import type { PackageParts } from "../../../src/workbook/xlsx/package.ts";
import {
  pageSetupXml,
  printNamesXml,
  readPageSetup,
  readPrintName,
} from "../../../src/workbook/xlsx/page-setup.ts";
import { storedNames } from "../../../src/workbook/xlsx/stored-names.ts";
import { openWorkbook } from "../../../src/workbook/xlsx-grid/open-file.ts";
import { saveWorkbook } from "../../../src/workbook/xlsx-grid/save-file.ts";
import { functionNames, gridLibrary } from "./grid-library.ts";

registerSteps(gridLibrary as never);
const names = storedNames(functionNames);
const modelOf = (data: object) => new gridLibrary.Model(data as never);

const wide: PrintSetup = {
  paper: "Letter",
  landscape: true,
  repeated: [0, 1],
  repeatedColumns: 2,
  pagesWide: 4,
  header: { left: "Bolt & nut's" },
};
const upright: PrintSetup = {
  paper: "A4",
  area: "A1:C3",
  header: { left: "Set-up card", right: "<PB-12>" },
  footer: "rev A & B",
};
const sheetOf = (name: string, print: PrintSetup): NewSheet => ({
  name,
  top: [["one", "two", "three", "", "beside"], ["1"], ["last"]],
  columns: Array.from({ length: 5 }, () => ({ header: "", width: 10 })),
  rows: 0,
  print,
});

async function saved() {
  const model = modelOf({ sheets: [{ id: "first", name: "First", colNumber: 3, rowNumber: 3 }] });
  const workbook = new GridWorkbook(model);
  await workbook.addSheet(sheetOf("Wide & long", wide));
  await workbook.addSheet(sheetOf("Card", upright));
  return { model, workbook, bytes: (await saveWorkbook(model, gridLibrary, names)).bytes };
}

describe("how a sheet is printed", () => {
  test("is in the saved file, as a second reader reads it", async () => {
    const { bytes } = await saved();
    const book = new ExcelJS.Workbook();
    await book.xlsx.load(bytes as never);
    const card = book.getWorksheet("Card")!;
    expect(card.pageSetup).toMatchObject({
      paperSize: 9,
      orientation: "portrait",
      fitToPage: true,
      fitToWidth: 1,
      fitToHeight: 0,
      printArea: "A1:C3",
    });
    expect(card.headerFooter.oddHeader).toBe("&LSet-up card&R<PB-12>");
    expect(card.headerFooter.oddFooter).toBe("&Lrev A && B&RPage &P of &N");
    const long = book.getWorksheet("Wide & long")!;
    expect(long.pageSetup).toMatchObject({ orientation: "landscape", fitToWidth: 4, printTitlesRow: "1:2" });
    expect(long.pageSetup.printTitlesColumn).toBe("A:B");
  });

  test("is the same after the file is opened again, and saved once more", async () => {
    const { bytes } = await saved();
    const opened = openWorkbook(bytes, gridLibrary, names);
    expect(opened.prints.map(([, setup]) => setup)).toEqual([wide, upright]);
    expect(opened.losses.join()).not.toMatch(/Page set-up|print/);
    const { model } = opened;
    expect(opened.prints.map(([id]) => model.getters.getSheetName(id))).toEqual(["Wide & long", "Card"]);
  });

  test("takes in rows that are added below, and no cells beside the page", async () => {
    const { model, workbook } = await saved();
    const id = model.getters.getSheetIdByName("Card")!;
    await workbook.write([{ sheet: "Card", row: 8, column: 1, formulas: [["more"]] }]);
    await workbook.write([{ sheet: "Card", row: 20, column: 4, formulas: [["beside"]] }]);
    expect(printSetupNow(model, id)!.area).toBe("A1:C9");
    expect(printSetupsOf(model).length).toBe(2);
  });

  test("goes with a copy that holds values", async () => {
    const { model, workbook } = await saved();
    const { name } = await workbook.copyAsValues("Card", () => true);
    expect(printSetupNow(model, model.getters.getSheetIdByName(name)!)).toEqual(upright);
  });
});

describe("what other programs write", () => {
  const sheet = (inside: string) => `<worksheet><sheetData/>${inside}</worksheet>`;
  test("is read as far as it can be printed here", () => {
    expect(readPageSetup(sheet(""), [])).toBeUndefined();
    expect(readPageSetup(sheet('<pageSetup paperSize="8"/>'), [])).toBeUndefined();
    expect(readPageSetup(sheet('<pageSetup paperSize="1" orientation="landscape"/>'), [])).toEqual({
      paper: "Letter",
      landscape: true,
    });
    const fields = "<headerFooter><oddHeader>&amp;L&amp;D&amp;CMiddle&amp;RJob 7</oddHeader></headerFooter>";
    expect(readPageSetup(sheet(`<pageSetup paperSize="9"/>${fields}`), [])!.header).toEqual({
      left: undefined,
      right: "Job 7",
    });
    expect(readPageSetup(sheet(pageSetupXml(upright)), [])).toEqual({ ...upright, area: undefined });
  });

  test.each([
    ["_xlnm.Print_Area", "'A, b'!$A$1:$C$9", { area: "A1:C9" }],
    ["_xlnm.Print_Area", "S!$A$1:$C$9,S!$E$1:$F$2", undefined],
    ["_xlnm.Print_Area", "OFFSET(S!$A$1,0,0,5,5)", undefined],
    ["_xlnm.Print_Titles", "'A''s'!$A:$B,'A''s'!$8:$8", { repeatedColumns: 2, repeated: [7, 7] }],
    ["_xlnm.Print_Titles", "S!$C:$D", undefined],
    ["Rate", "S!$A$1", undefined],
  ])("%s %s", (name, formula, expected) => {
    expect(readPrintName({ name, formula })).toEqual(expected);
  });
});

const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

describe("sheets put behind those of an opened file", () => {
  const file = (workbook: string): PackageParts => {
    const parts: Record<string, string> = {
      "[Content_Types].xml": "<Types></Types>",
      "xl/workbook.xml": workbook,
      "xl/_rels/workbook.xml.rels": `<Relationships><Relationship Id="s" Type="${OFFICE}/styles" Target="styles.xml"/><Relationship Id="rId1" Type="${OFFICE}/worksheet" Target="worksheets/sheet1.xml"/></Relationships>`,
      "xl/styles.xml":
        '<styleSheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><fonts count="1"><font/></fonts><fills count="1"><fill/></fills><borders count="1"><border/></borders><cellStyleXfs count="1"><xf/></cellStyleXfs><cellXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"/></cellXfs></styleSheet>',
    };
    parts["_rels/.rels"] =
      `<Relationships><Relationship Id="d" Type="${OFFICE}/officeDocument" Target="xl/workbook.xml"/></Relationships>`;
    parts["xl/worksheets/sheet1.xml"] = "<worksheet/>";
    return { names: Object.keys(parts), has: (name) => name in parts, read: (name) => parts[name] };
  };
  const root = `<workbook xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"><sheets><sheet name="A" sheetId="4" r:id="rId1"/></sheets>`;
  test.each([
    [`${root}<calcPr/></workbook>`, '</sheets><definedNames><definedName name="_xlnm.Print_Area"'],
    [
      `${root}<definedNames><definedName name="Rate">A!$A$1</definedName></definedNames><calcPr/></workbook>`,
      'A!$A$1</definedName><definedName name="_xlnm.Print_Area"',
    ],
    [`${root}<definedNames/><calcPr/></workbook>`, '</sheets><definedNames><definedName name="_xlnm'],
  ])("are printed as they were: %s", (workbook, expected) => {
    const styles = file(workbook).read("xl/styles.xml");
    const printNames = (place: number) => printNamesXml("Card", place, upright);
    const from = { ...file(workbook), picture: () => undefined };
    const sheets = [{ name: "Card", part: "xl/worksheets/sheet0.xml", text: "<worksheet/>", printNames }];
    const made = putSheets(file(workbook), { sheets, styles, from });
    const text = made!.parts.get("xl/workbook.xml")!;
    expect(text).toContain(expected);
    expect(text).toContain(`localSheetId="1">'Card'!$A$1:$C$3<`);
    expect(text.match(/<definedNames/g)!.length).toBe(1);
  });
});
