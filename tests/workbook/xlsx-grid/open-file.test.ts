// tests: files in: formulas in every stored form, values as what they are, what is refused and what is told.

import type { Model } from "@odoo/o-spreadsheet";
import { zipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { Refusal } from "../../../src/workbook/workbook.ts";
import { storedNames } from "../../../src/workbook/xlsx/stored-names.ts";
import { LARGEST_FILE, openWorkbook } from "../../../src/workbook/xlsx-grid/open-file.ts";
import { uncomputedFormulas } from "../../../src/workbook/xlsx-grid/uncomputed.ts";
import { cutRange } from "../../../src/workbook/xlsx-grid/within-sheet.ts";
import { hostileWorkbooks } from "../../support/hostile.ts";
import { partsOf, type SmallWorkbook, smallWorkbook, zipped } from "../../support/package.ts";
import { manyRows } from "../../support/share.ts";
import { functionNames, gridLibrary } from "./grid-library.ts";

const names = storedNames(functionNames);
const open = (bytes: Uint8Array) => openWorkbook(bytes, gridLibrary, names);
const opened = (workbook: SmallWorkbook) => open(smallWorkbook(workbook));
/** The first sheet as the grid would write it. */
const firstSheet = ({ model }: { readonly model: Model }): any => model.exportData().sheets[0];

/** What the first sheet shows, by address. */
function shown(workbook: SmallWorkbook, ...addresses: string[]) {
  const { getters } = opened(workbook).model;
  const [sheetId] = getters.getSheetIds();
  return addresses.map((address) => {
    const { left: col, top: row } = getters.getRangeFromSheetXC(sheetId, address).zone;
    return getters.getEvaluatedCell({ sheetId: sheetId, col, row }).value;
  });
}
const f = (address: string, formula: string, value = "0", attributes = "") =>
  `<c r="${address}"${attributes}><f>${formula}</f><v>${value}</v></c>`;
const row = (number: number, cells: string) => `<row r="${number}">${cells}</row>`;

describe("formulas of ours", () => {
  test.each([
    "_xldudf_REAM_DOUBLE(A1)",
    "[2]!_xldudf_REAM_DOUBLE(A1)",
    "REAM.DOUBLE(A1)",
    "_xludf._xldudf_REAM_DOUBLE(A1)",
  ])("are read as %s", (formula) => {
    const sheets = { S: row(1, `<c r="A1"><v>21</v></c>${f("B1", formula)}`) };
    expect(shown({ sheets }, "B1")).toEqual([42]);
  });

  test("are read beside a running total", () => {
    const rows = [1, 2, 3, 4].map((number) =>
      row(number, `<c r="A${number}"><v>${number}</v></c>${f(`B${number}`, `SUM(A$1:A${number})`)}`),
    );
    expect(shown({ sheets: { S: rows.join("") } }, "B1", "B2", "B4")).toEqual([1, 3, 10]);
  });

  test("are read where they are shared, each with its own cells", () => {
    const shared = (address: string, text: string) =>
      `<c r="${address}"><f t="shared" si="0"${text ? ' ref="B1:B3"' : ""}>${text}</f><v>0</v></c>`;
    const sheets = {
      S:
        row(1, `<c r="A1"><v>1</v></c>${shared("B1", "_xldudf_REAM_DOUBLE(A1)&amp;&quot;A1&quot;")}`) +
        row(2, `<c r="A2"><v>2</v></c>${shared("B2", "")}`) +
        row(3, `<c r="A3"><v>3</v></c>${shared("B3", "")}`),
    };
    expect(shown({ sheets }, "B1", "B2", "B3")).toEqual(["2A1", "4A1", "6A1"]);
  });

  test("fill their cells anew, where the file has their last values", () => {
    const sheets = {
      S:
        row(
          1,
          `<c r="A1"><v>1</v></c><c r="B1" cm="1"><f t="array" ref="B1:B3">_xldudf_REAM_DOUBLE(A1:A3)</f><v>0</v></c>`,
        ) +
        row(2, '<c r="A2"><v>2</v></c><c r="B2"><v>99</v></c>') +
        row(3, '<c r="A3"><v>3</v></c><c r="B3"><v>99</v></c><c r="C3"><v>7</v></c>') +
        row(4, '<c r="B4"><v>8</v></c>'),
    };
    expect(shown({ sheets }, "B1", "B2", "B3", "C3", "B4")).toEqual([2, 4, 6, 7, 8]);
  });

  test("are counted apart from the others", () => {
    const { formulas, ours, sheets } = opened({
      sheets: { S: row(1, f("A1", "REAM.DOUBLE(2)") + f("B1", "A1+1")), T: row(1, f("A1", "S!A1")) },
    });
    expect({ formulas, ours, sheets }).toEqual({ formulas: 3, ours: 1, sheets: 2 });
  });
});

test("values stay what they are: texts no dates or numbers or formulas, numbers no texts", () => {
  const sharedStrings = ["1/4", "007", "=A1", "TRUE", "12 H7", "5%", "-", "'x", "$5", "#6"];
  const cells = sharedStrings.map((_, i) => row(i + 1, `<c r="A${i + 1}" t="s"><v>${i}</v></c>`)).join("");
  const others = row(
    20,
    '<c r="A20" t="b"><v>1</v></c><c r="B20"><v>1.5E-9</v></c><c r="C20" t="inlineStr"><is><r><t>a</t></r><r><t>b</t></r></is></c><c r="D20" t="e"><v>#N/A</v></c><c r="E20" t="str"><v>3/8</v></c>',
  );
  const addresses = [...sharedStrings.map((_, i) => `A${i + 1}`), "A20", "B20", "C20", "D20", "E20"];
  expect(shown({ sheets: { S: cells + others }, sharedStrings }, ...addresses)).toEqual([
    ...sharedStrings,
    true,
    1.5e-9,
    "ab",
    "#N/A",
    "3/8",
  ]);
});

test("sheets come in the order of the workbook, not of its parts", () => {
  const parts = partsOf({
    sheets: { One: row(1, f("A1", "Two!A1")), Two: row(1, '<c r="A1"><v>5</v></c>') },
  });
  const turned = parts["xl/workbook.xml"].replace(/(<sheet [^>]*>)(<sheet [^>]*>)/, "$2$1");
  const { getters } = open(zipped({ ...parts, "xl/workbook.xml": turned })).model;
  expect(getters.getSheetIds().map((id) => getters.getSheetName(id))).toEqual(["Two", "One"]);
  expect(getters.getEvaluatedCell({ sheetId: getters.getSheetIds()[1], col: 0, row: 0 }).value).toBe(5);
});

test("names of ranges are taken over, others are told", () => {
  const workbook = {
    sheets: { "Job 7": row(1, `<c r="A1"><v>4</v></c>${f("B1", "REAM.DOUBLE(Rate)")}`) },
    definedNames: `<definedName name="Rate">'Job 7'!$A$1</definedName><definedName name="Speed">15</definedName><definedName name="_xlnm.Print_Area" localSheetId="0">'Job 7'!$A$1:$B$2</definedName>`,
  };
  expect(shown(workbook, "B1")).toEqual([8]);
  expect(opened(workbook).losses.join("\n")).toMatch(/Defined names.*: Speed, print area \(on Job 7\)$/m);
});

test("names of table columns become the cells that they mean", () => {
  const parts = partsOf({
    sheets: {
      S:
        row(
          1,
          '<c r="A1" t="inlineStr"><is><t>size</t></is></c><c r="B1" t="inlineStr"><is><t>twice</t></is></c>',
        ) +
        row(2, `<c r="A2"><v>3</v></c>${f("B2", "_xldudf_REAM_DOUBLE(Holes[[#This Row],[size]])")}`) +
        row(3, `<c r="A3"><v>4</v></c>${f("B3", "SUM(Holes[size])")}`),
    },
    tables: [
      '<table xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" id="1" name="Holes" displayName="Holes" ref="A1:B3"><autoFilter ref="A1:B3"/><tableColumns count="2"><tableColumn id="1" name="size"/><tableColumn id="2" name="twice"/></tableColumns></table>',
    ],
  });
  const type =
    '<Override PartName="/xl/tables/table1.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.table+xml"/>';
  const sheet = parts["xl/worksheets/sheet1.xml"];
  const { model, losses } = open(
    zipped({
      ...parts,
      "[Content_Types].xml": parts["[Content_Types].xml"].replace("</Types>", `${type}</Types>`),
      "xl/worksheets/sheet1.xml": sheet.replace(
        "</worksheet>",
        '<tableParts count="1"><tablePart r:id="rId1"/></tableParts></worksheet>',
      ),
    }),
  );
  const { getters } = model;
  const value = (col: number, line: number) =>
    getters.getEvaluatedCell({ sheetId: getters.getSheetIds()[0], col, row: line }).value;
  expect([value(1, 1), value(1, 2)]).toEqual([6, 7]);
  expect(losses).toContain("Names of table columns in formulas: 2 cells name the cells instead");
});

describe("what the browser workbook cannot carry is told", () => {
  const one = { S: row(1, f("A1", "[1]Other!B2*2", "99")) };
  test("formulas that read other workbooks keep their values", () => {
    expect(shown({ sheets: one }, "A1")).toEqual([99]);
    expect(opened({ sheets: one }).losses).toContain(
      "Formulas that read other workbooks: 1 cell keep their values",
    );
  });

  test.each([
    ["xl/vbaProject.bin", "Macros"],
    ["xl/comments1.xml", "Comments and notes"],
    ["xl/pivotTables/pivotTable1.xml", "Pivot tables: their cells stay as plain values"],
    ["xl/media/image1.emf", "Pictures in vector and other rare formats"],
    ["docProps/core.xml", "Author, title and other properties of the file"],
    ["xl/ctrlProps/ctrlProp1.xml", "Buttons and other form controls"],
  ])("%s", (part, loss) => {
    const bare = { sheets: { S: "" } };
    expect(opened(bare).losses).toEqual([]);
    expect(opened({ ...bare, more: { [part]: "<x/>" } }).losses).toEqual([loss]);
  });

  test.each([
    [
      "<headerFooter><oddHeader>&amp;A</oddHeader></headerFooter>",
      "Page set-up for printing, headers and footers",
    ],
    ['<sheetProtection sheet="1" hashValue="abc="/>', "Passwords of protected sheets"],
    ['<autoFilter ref="A1:B3"/>', "Filters outside tables"],
    [
      '<dataValidations count="1"><dataValidation type="whole" operator="between" sqref="A1"><formula1>1</formula1><formula2>5</formula2></dataValidation></dataValidations>',
      "Validation for whole numbers",
    ],
  ])("%s", (element, loss) => {
    const parts = partsOf({ sheets: { S: "" } });
    const sheet = parts["xl/worksheets/sheet1.xml"].replace("</worksheet>", `${element}</worksheet>`);
    expect(open(zipped({ ...parts, "xl/worksheets/sheet1.xml": sheet })).losses).toEqual([loss]);
  });
});

test("formulas with functions that the grid lacks stay, counted and named, and their values are held", () => {
  const cells = f("A1", "_xlfn.LET(_xlpm.x,2,_xlpm.x)", "2") + f("B1", "1+1", "3");
  const { model, valuesInFile } = opened({ sheets: { S: row(1, cells) } });
  expect(uncomputedFormulas(model)).toEqual({ cells: 1, functions: ["LET"] });
  expect([...valuesInFile.values()]).toEqual([2, 3]);
});

test("formulas that make no sense to the grid become their values, which is told", () => {
  const sheets = { S: row(1, f("A1", "_xlfn.CONCAT(D1)", "4") + f("C1", "1+", "5")) };
  expect(shown({ sheets }, "A1", "C1")).toEqual([4, 5]);
  expect(opened({ sheets }).losses).toContain(
    "Formulas that the browser workbook cannot read: 2 cells keep their values",
  );
});

describe("a hostile or broken file is refused with a sentence", () => {
  const refusal = (bytes: Uint8Array): string => {
    try {
      open(bytes);
    } catch (error) {
      if (error instanceof Refusal) return error.message;
      throw error;
    }
    return "opened";
  };

  test.each(Object.entries(hostileWorkbooks()))("%s", (_, { bytes, says }) => {
    expect(refusal(bytes)).toContain(says);
  });

  test("a file that is too large for a browser", () => {
    expect(refusal(new Uint8Array(LARGEST_FILE + 1))).toContain("too large for a browser");
  });

  test("a sheet that is too large for the grid", () => {
    expect(
      refusal(smallWorkbook({ sheets: { S: row(1_048_576, '<c r="A1048576"><v>1</v></c>') } })),
    ).toContain('the sheet "S" is larger than the browser workbook opens');
  });

  test("a part that is no XML", () => {
    const parts = partsOf({ sheets: { S: "" } });
    const sheet = parts["xl/worksheets/sheet1.xml"].replace("</worksheet>", "<a></b></worksheet>");
    expect(refusal(zipped({ ...parts, "xl/worksheets/sheet1.xml": sheet }))).toContain("is no XML");
  });
});

test("empty rows without number cost nothing, and cells with nothing but a style far away", () => {
  const empty = Array.from({ length: manyRows }, (_, i) => `<row r="${i + 2}" spans="1:1"/>`).join("");
  const far = row(1_048_000, '<c r="XFD1048000" s="0"/>');
  const sheet = firstSheet(opened({ sheets: { S: row(1, '<c r="A1"><v>1</v></c>') + empty + far } }));
  expect(sheet.rowNumber).toBeLessThan(200);
  expect(sheet.colNumber).toBeLessThan(60);
});

test("ranges that go to the edge of Excel's sheet are cut to the grid's", () => {
  const parts = partsOf({
    sheets: { S: row(1, `<c r="A1"><v>1</v></c>${f("B1", "SUM(A1:A1048576)")}${f("C1", "SUM(A:A)")}`) },
  });
  const after =
    '<mergeCells><mergeCell ref="A3:XFD3"/><mergeCell ref="A300:C310"/></mergeCells><conditionalFormatting sqref="A1:XFD1048576"><cfRule type="colorScale" priority="1"><colorScale><cfvo type="min"/><cfvo type="max"/><color rgb="FFFF0000"/><color rgb="FF00FF00"/></colorScale></cfRule></conditionalFormatting><dataValidations count="1"><dataValidation type="list" sqref="A1:A1048576 D5000"><formula1>"a,b"</formula1></dataValidation></dataValidations>';
  const sheet = parts["xl/worksheets/sheet1.xml"].replace("</worksheet>", `${after}</worksheet>`);
  const { model } = open(zipped({ ...parts, "xl/worksheets/sheet1.xml": sheet }));
  const made = firstSheet({ model });
  const last = `${gridLibrary.helpers.numberToLetters(made.colNumber - 1)}`;
  expect(made.merges).toEqual([`A3:${last}3`]);
  expect(made.conditionalFormats[0].ranges).toEqual([`A1:${last}${made.rowNumber}`]);
  expect(made.dataValidationRules[0].ranges).toEqual([`A1:A${made.rowNumber}`]);
  const { getters } = model;
  const value = (col: number) => getters.getEvaluatedCell({ sheetId: made.id, col, row: 0 }).value;
  expect([value(1), value(2)]).toEqual([1, 1]);
});

test.each([
  ["A1:XFD1048576", "A1:C9"],
  ["$B$2:$C$4", "B2:C4"],
  ["B:B", "B1:B9"],
  ["2:3", "A2:C3"],
  ["C9", "C9"],
  ["C9:D12", "C9"],
  ["D1", undefined],
  ["A10:B12", undefined],
  ["nothing", undefined],
])("%s in a sheet of 9 rows and 3 columns is %s", (range, expected) => {
  expect(cutRange(range, { rowNumber: 9, colNumber: 3 })).toBe(expected);
});

test("element names with a prefix are read", () => {
  const parts = partsOf({ sheets: { S: row(1, f("A1", "REAM.DOUBLE(4)")) } });
  const sheet = parts["xl/worksheets/sheet1.xml"]
    .replace(/<(\/?)(?=[a-z])/g, "<$1x:")
    .replace("xmlns=", "xmlns:x=");
  const { getters } = open(zipped({ ...parts, "xl/worksheets/sheet1.xml": sheet })).model;
  expect(getters.getEvaluatedCell({ sheetId: getters.getSheetIds()[0], col: 0, row: 0 }).value).toBe(8);
});

test("an archive of nothing is refused", () => {
  expect(() => open(zipSync({}))).toThrow(Refusal);
});

describe("what the grid cannot show does not stand in the way of the rest", () => {
  const chartSheet = `<?xml version="1.0"?><chartsheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetViews/></chartsheet>`;

  test("a sheet with a chart alone", () => {
    const parts = partsOf({ sheets: { Chart: "", S: row(1, '<c r="A1"><v>7</v></c>') } });
    const { model, places, sheets } = open(zipped({ ...parts, "xl/worksheets/sheet1.xml": chartSheet }));
    const { getters } = model;
    expect(getters.getSheetIds().map((id) => getters.getSheetName(id))).toEqual(["S"]);
    expect(places).toEqual([1]);
    expect(sheets).toBe(1);
  });

  test("a workbook with nothing else is refused", () => {
    const parts = partsOf({ sheets: { Chart: "" } });
    expect(() => open(zipped({ ...parts, "xl/worksheets/sheet1.xml": chartSheet }))).toThrow(
      "no sheet of cells",
    );
  });

  test("parts that are named from the root, and with backslashes", () => {
    const parts = partsOf({ sheets: { S: row(1, '<c r="A1"><v>7</v></c>') }, sharedStrings: ["x"] });
    const fromRoot = Object.fromEntries(
      Object.entries(parts).map(([name, text]) => [
        name.replaceAll("/", name.startsWith("xl/w") ? "\\" : "/"),
        name.endsWith(".rels") ? text.replace(/Target="(xl\/)?/g, 'Target="/xl/') : text,
      ]),
    );
    expect(firstSheet(open(zipped(fromRoot))).cells.A1).toBe("7");
  });

  test.each([
    "<mergeCells><mergeCell/></mergeCells>",
    '<conditionalFormatting><cfRule type="iconSet"/></conditionalFormatting>',
    '<dataValidations><dataValidation type="list"/></dataValidations>',
    '<hyperlinks><hyperlink r:id="rId9"/></hyperlinks>',
    '<tableParts><tablePart r:id="rId9"/></tableParts>',
    '<drawing r:id="rId9"/>',
  ])("%s", (odd) => {
    const parts = partsOf({ sheets: { S: row(1, '<c r="A1"><v>7</v></c>') } });
    const sheet = parts["xl/worksheets/sheet1.xml"].replace("</worksheet>", `${odd}</worksheet>`);
    const made = firstSheet(open(zipped({ ...parts, "xl/worksheets/sheet1.xml": sheet })));
    expect(made.cells.A1).toBe("7");
  });

  test("a formula over the whole sheet", () => {
    const whole = '<c r="A1"><f t="array" ref="A1:XFD1048576">B1:B2*2</f><v>7</v></c><c r="B1"><v>3</v></c>';
    const { model, losses } = opened({ sheets: { S: row(1, whole) } });
    expect(firstSheet({ model }).cells).toEqual({ A1: "7", B1: "3" });
    expect(losses.join()).toContain("cannot read");
  });
});
