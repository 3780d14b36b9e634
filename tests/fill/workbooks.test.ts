// tests: workbooks filled, written by hand and by two programs, read again by both, every untouched part compared.

import * as sheetReader from "@e965/xlsx";
import ExcelJS from "exceljs";
import { describe, expect, test } from "vitest";
import { fillWorkbook } from "../../src/fill/fill-workbook.ts";
import type { SheetReport } from "../../src/fill/report.ts";
import { hostileWorkbooks } from "../support/hostile.ts";
import { joined, packedEntries, type SmallWorkbook, smallWorkbook, textsIn } from "../support/package.ts";
import { longTest, manyRows } from "../support/share.ts";
import { functions } from "../support/small-functions.ts";

interface Result {
  readonly file: Uint8Array;
  /** The cells of the first sheet. */
  readonly cells: string;
  readonly reports: readonly SheetReport[];
  readonly report: SheetReport;
}

function fill(before: Uint8Array): Result {
  const { pieces, report } = fillWorkbook(before, functions);
  const file = pieces ? joined(pieces) : before;
  const cells =
    /<sheetData>([\s\S]*)<\/sheetData>/.exec(textsIn(file)["xl/worksheets/sheet1.xml"])?.[1] ?? "";
  return { file, cells, reports: report.sheets, report: report.sheets[0] };
}
const fillRows = (rows: string, more: Partial<SmallWorkbook> = {}) =>
  fill(smallWorkbook({ sheets: { Sheet1: rows }, ...more }));

const formula = (cell: string, text: string, value = "<v>0</v>", more = "") =>
  `<c r="${cell}"${more}><f>${text}</f>${value}</c>`;
const number = (cell: string, value: number) => `<c r="${cell}"><v>${value}</v></c>`;
const row = (at: number, ...cells: string[]) => `<row r="${at}">${cells.join("")}</row>`;

describe("what is computed", () => {
  test("our functions in every stored form, and nothing that does not depend on them", () => {
    const forms = [
      "_xldudf_REAM_TWICE(A1)",
      "[2]!_xldudf_REAM_TWICE(A1)",
      "REAM.TWICE(A1)",
      "_xldudf_ream_twice(A1)",
    ];
    const before = forms.map((form, i) => formula(`${"BCDE"[i]}1`, form)).join("");
    const native = formula("F1", "A1*5", "<v>4</v>");
    const { cells, report } = fillRows(row(1, number("A1", 3), before, native));
    expect(cells).toBe(row(1, number("A1", 3), before.replaceAll("<v>0</v>", "<v>6</v>"), native));
    expect(report).toMatchObject({ computed: 4, errors: 0, kept: 0 });
  });

  test("what depends on them, however far, on any sheet, in whatever order, with old values of the rest", () => {
    const { file, reports } = fill(
      smallWorkbook({
        sheets: {
          Sheet1:
            row(
              1,
              formula("A1", "B1+1"),
              formula("B1", "'My sheet'!A1*10"),
              formula("C1", "D1+1", "<v>8</v>"),
            ) + row(2, number("A2", 4), formula("B2", "TODAY()", "<v>45000</v>"), formula("D2", "B2+B1")),
          "My sheet": row(1, formula("A1", "REAM.TWICE(Sheet1!A2)")),
        },
      }),
    );
    const texts = textsIn(file);
    expect(texts["xl/worksheets/sheet1.xml"]).toContain(
      row(
        1,
        formula("A1", "B1+1", "<v>81</v>"),
        formula("B1", "'My sheet'!A1*10", "<v>80</v>"),
        formula("C1", "D1+1", "<v>8</v>"),
      ) +
        row(
          2,
          number("A2", 4),
          formula("B2", "TODAY()", "<v>45000</v>"),
          formula("D2", "B2+B1", "<v>45080</v>"),
        ),
    );
    expect(texts["xl/worksheets/sheet2.xml"]).toContain(
      row(1, formula("A1", "REAM.TWICE(Sheet1!A2)", "<v>8</v>")),
    );
    expect(reports.map(({ computed }) => computed)).toEqual([3, 1]);
  });

  test("text that only looks like us is none of it", () => {
    const rows = row(
      1,
      formula("A1", '"REAM.TWICE(1)"', "<v>old</v>", ' t="str"'),
      formula("B1", 'A1&amp;"REAM.TWICE(2)"', "<v>old</v>", ' t="str"'),
    );
    expect(fillRows(rows)).toMatchObject({ cells: rows, report: { computed: 0, kept: 0 } });
  });

  test("texts, truths and errors with their types, and what a text must escape", () => {
    const { cells, report } = fillRows(
      row(
        1,
        formula("A1", "REAM.TEXT()"),
        formula("B1", "REAM.YES()"),
        formula("C1", "REAM.NONE()"),
        formula("D1", "REAM.TWICE(Z9)"),
      ),
    );
    expect(cells).toBe(
      row(
        1,
        formula(
          "A1",
          "REAM.TEXT()",
          '<v xml:space="preserve"> &lt;a href="x"&gt;&amp;amp; "b", c_x0001_</v>',
          ' t="str"',
        ),
        formula("B1", "REAM.YES()", "<v>1</v>", ' t="b"'),
        formula("C1", "REAM.NONE()", "<v>#N/A</v>", ' t="e"'),
        formula("D1", "REAM.TWICE(Z9)", "<v></v>", ' t="str"'),
      ),
    );
    expect(report.errors).toBe(1);
    expect(report.firstErrors).toEqual([{ cell: "C1", error: "#N/A", message: "there is none" }]);
  });

  test("shared formulas, with the cells moved", () => {
    const { cells } = fillRows(
      row(
        1,
        number("A1", 1),
        '<c r="B1"><f t="shared" ref="B1:B3" si="0">REAM.TWICE(A1)+$A$1</f><v>0</v></c>',
      ) +
        row(2, number("A2", 2), '<c r="B2"><f t="shared" si="0"/><v>0</v></c>') +
        row(3, number("A3", 3), '<c r="B3"><f t="shared" si="0"></f></c>'),
    );
    expect([...cells.matchAll(/<c r="B\d".*?<v>(.*?)<\/v>/g)].map(([, value]) => value)).toEqual([
      "3",
      "5",
      "7",
    ]);
  });

  test("shared texts, inline texts, defined names and tables are read", () => {
    const table =
      '<table displayName="Holes" ref="A1:B3"><tableColumns><tableColumn name="Size"/><tableColumn name="Result"/></tableColumns></table>';
    const { cells } = fillRows(
      row(1, '<c r="A1" t="s"><v>0</v></c>') +
        row(2, number("A2", 5), formula("B2", "REAM.TWICE(Holes[[#This Row],[Size]])*rate")) +
        row(3, number("A3", 6), formula("B3", "REAM.TWICE(Holes[[#This Row],[Size]])*rate")) +
        row(
          4,
          formula("A4", "SUM(Holes[Result])"),
          formula("B4", "A1&amp;C4&amp;REAM.TWICE(1)"),
          '<c r="C4" t="inlineStr"><is><t>x</t></is></c>',
        ),
      {
        tables: [table],
        sharedStrings: ["Size &amp; more"],
        definedNames: '<definedName name="rate">0.5</definedName>',
      },
    );
    expect(cells).toContain(formula("B2", "REAM.TWICE(Holes[[#This Row],[Size]])*rate", "<v>5</v>"));
    expect(cells).toContain(formula("B3", "REAM.TWICE(Holes[[#This Row],[Size]])*rate", "<v>6</v>"));
    expect(cells).toContain(formula("A4", "SUM(Holes[Result])", "<v>11</v>"));
    expect(cells).toContain("<v>Size &amp; morex2</v>");
  });

  test("a chain as long as a sheet, upward, downward and through sums", () => {
    const size = manyRows / 25;
    const rows = Array.from({ length: size }, (_, i) =>
      row(
        i + 1,
        formula(`A${i + 1}`, i + 1 === size ? "REAM.TWICE(1)" : `A${i + 2}+1`),
        formula(`B${i + 1}`, `SUM(A$1:A${Math.min(i + 1, 50)})`),
      ),
    );
    const { cells, report } = fillRows(rows.join(""));
    expect(cells).toContain(formula("A1", "A2+1", `<v>${size + 1}</v>`));
    expect(cells).toContain(formula("B2", "SUM(A$1:A2)", `<v>${2 * size + 1}</v>`));
    expect(report).toMatchObject({ computed: 2 * size, errors: 0, kept: 0 });
  });

  test("cells found only while computing", () => {
    const { cells, report } = fillRows(
      row(
        1,
        formula("A1", 'INDIRECT("B"&amp;2)'),
        formula("B1", "OFFSET(A1,1,1)+1"),
        formula("C1", 'INDIRECT("D1")', "<v>7</v>"),
        number("D1", 3),
      ) + row(2, formula("B2", "REAM.TWICE(4)"), formula("C2", "A1+1")),
    );
    expect(cells).toContain(formula("A1", 'INDIRECT("B"&amp;2)', "<v>8</v>"));
    expect(cells).toContain(formula("B1", "OFFSET(A1,1,1)+1", "<v>9</v>"));
    expect(cells).toContain(formula("C2", "A1+1", "<v>9</v>"));
    // It depends on none of ours, so it keeps even a value that is out of date.
    expect(cells).toContain(formula("C1", 'INDIRECT("D1")', "<v>7</v>"));
    expect(report.computed).toBe(4);
  });

  test("a formula without a value is computed where ours need it, and not written", () => {
    const rows = (value: number) =>
      row(
        1,
        number("A1", 2),
        '<c r="B1"><f>A1*10</f></c>',
        formula("C1", "REAM.TWICE(B1)", `<v>${value}</v>`),
      );
    expect(fillRows(rows(0)).cells).toBe(rows(40));
  });
});

describe("what is not known keeps its value and is counted", () => {
  test("functions, references and circles", () => {
    const rows = (value: string) =>
      row(
        1,
        formula("A1", "REAM.TWICE(1)", value),
        formula("B1", "CUBEVALUE(A1)", "<v>5</v>"),
        formula("C1", "REAM.TWICE(B1)", "<v>10</v>"),
      ) +
      row(
        2,
        formula("A2", "[1]Other!A1+A1", "<v>6</v>"),
        formula("B2", "C2+A1", "<v>7</v>"),
        formula("C2", "B2+1", "<v>8</v>"),
      ) +
      row(3, formula("A3", "REAM.NEVER(1)", "<v>9</v>"));
    const { cells, report } = fillRows(rows("<v>0</v>"));
    expect(cells).toBe(rows("<v>2</v>"));
    expect(report).toMatchObject({ computed: 1, kept: 6, errors: 0 });
    expect(report.firstKept).toEqual(
      expect.arrayContaining([
        { cell: "B1", why: "the function CUBEVALUE" },
        { cell: "C1", why: "a cell whose value is not known" },
        { cell: "A2", why: "a reference to another workbook" },
        { cell: "B2", why: "a reference that comes back to the cell itself" },
        { cell: "C2", why: "a reference that comes back to the cell itself" },
        { cell: "A3", why: "the function REAM.NEVER" },
      ]),
    );
  });

  test("a date that is written out is not taken for a number", () => {
    const rows = row(
      1,
      '<c r="A1" t="d"><v>2024-02-01</v></c>',
      formula("B1", "REAM.TWICE(A1)", "<v>5</v>"),
      formula("C1", "REAM.TWICE(2)", "<v>4</v>"),
    );
    expect(fillRows(rows)).toMatchObject({ cells: rows, report: { computed: 1, kept: 1 } });
  });

  test("a value that is not there is never taken for 0", () => {
    const rows = row(1, '<c r="A1"><f>CUBEVALUE(1)</f></c>', formula("B1", "REAM.TWICE(A1)", "<v>5</v>"));
    expect(fillRows(rows)).toMatchObject({
      cells: rows,
      report: { computed: 0, kept: 1, firstKept: [{ cell: "B1", why: "a cell whose value is not known" }] },
    });
  });
});

describe("array formulas", () => {
  const array = (cell: string, ref: string, text: string, more = "") =>
    `<c r="${cell}"${more}><f t="array" ref="${ref}">${text}</f><v>0</v></c>`;
  const valuesOf = (cells: string) =>
    Object.fromEntries(
      [...cells.matchAll(/<c r="(\w+)"[^>]*?(?:\/>|>(?:<f.*?<\/f>)?(?:<v>(.*?)<\/v>)?<\/c>)/g)].map(
        ([, name, value]) => [name, value],
      ),
    );

  test("fill the cells that the file has for them, and those that read them", () => {
    const { cells, report } = fillRows(
      row(
        1,
        number("A1", 1),
        array("B1", "B1:C2", "REAM.PAIR(A1:A2)", ' cm="1"'),
        number("C1", 0),
        formula("D1", "SUM(B1:C2)"),
      ) +
        row(
          2,
          number("A2", 5),
          '<c r="B2" s="1"/>',
          number("C2", 0),
          formula("D2", "SUM(_xlfn.ANCHORARRAY(B1))"),
        ),
    );
    expect(valuesOf(cells)).toEqual({
      A1: "1",
      B1: "1",
      C1: "2",
      D1: "14",
      A2: "5",
      B2: "5",
      C2: "6",
      D2: "14",
    });
    expect(report).toMatchObject({ computed: 3, kept: 0, resized: [] });
  });

  test("of another size than before take the cells they need, and empty what they leave", () => {
    const down = (count: number, ref: string) => array("A1", ref, `REAM.DOWN(${count})`, ' cm="1"');
    const larger = fillRows(
      row(1, down(3, "A1:A2"), formula("B1", "SUM(A1:A9)")) + row(2, number("A2", 9), formula("B2", "A3*10")),
    );
    expect(valuesOf(larger.cells)).toEqual({ A1: "1", A2: "2", A3: "3", B1: "6", B2: "30" });
    expect(larger.cells).toContain('ref="A1:A3"');
    expect(larger.report).toMatchObject({
      computed: 3,
      kept: 0,
      resized: [{ cell: "A1", rows: 3, columns: 1 }],
    });
    const smaller = fillRows(row(1, down(2, "A1:A3")) + row(2, number("A2", 9)) + row(3, number("A3", 9)));
    expect(valuesOf(smaller.cells)).toEqual({ A1: "1", A2: "2", A3: undefined });
    expect(smaller.cells).toContain('ref="A1:A2"');
  });

  test("that need the cells of others keep their values, and so do those that read them", () => {
    const rows =
      row(1, array("A1", "A1:A2", "REAM.DOWN(3)", ' cm="1"'), formula("B1", "SUM(A1:A3)", "<v>8</v>")) +
      row(2, number("A2", 4)) +
      row(3, number("A3", 9));
    const { cells, report } = fillRows(rows);
    expect(cells).toBe(rows);
    expect(report).toMatchObject({ computed: 0, kept: 2 });
  });

  test("that grow one after the other are followed, and those that meet are not", () => {
    const spill = (cell: string, text: string) => array(cell, `${cell}:${cell}`, text, ' cm="1"');
    const chain = fillRows(row(1, spill("A1", "REAM.DOWN(2)"), spill("B1", "REAM.DOWN(SUM(A1:A9))")));
    expect(valuesOf(chain.cells)).toEqual({ A1: "1", A2: "2", B1: "1", B2: "2", B3: "3" });
    const meeting = fillRows(row(1, spill("A1", "REAM.DOWN(2)")) + row(2, spill("A2", "REAM.DOWN(2)")));
    expect(meeting.report).toMatchObject({ computed: 1, kept: 1 });
  });

  test("of a fixed size are cut, repeated and filled up with #N/A", () => {
    const { cells } = fillRows(
      row(1, array("A1", "A1:B3", "REAM.DOWN(2)"), number("B1", 9), array("C1", "C1:C2", "REAM.PAIR(5)")) +
        row(2, number("A2", 9), number("B2", 9), number("C2", 9)) +
        row(3, number("A3", 9), number("B3", 9)),
    );
    expect(valuesOf(cells)).toEqual({
      A1: "1",
      B1: "1",
      A2: "2",
      B2: "2",
      A3: "#N/A",
      B3: "#N/A",
      C1: "5",
      C2: "5",
    });
  });

  test("a plain cell has the first cell of a result", () => {
    const { cells } = fillRows(
      row(1, number("A1", 7), formula("B1", "REAM.PAIR(A1)"), formula("C1", "REAM.PAIR(A1)*2")),
    );
    expect(valuesOf(cells)).toEqual({ A1: "7", B1: "7", C1: "14" });
  });
});

describe("the rest of the file", () => {
  async function withExcelJs(): Promise<Uint8Array> {
    const workbook = new ExcelJS.Workbook();
    const quote = workbook.addWorksheet("Quote", { views: [{ state: "frozen", ySplit: 1 }] });
    quote.columns = [{ header: "Size", width: 12 }, { header: "Twice" }, { header: "Sum" }];
    for (let i = 2; i <= 40; i++) {
      quote.getCell(`A${i}`).value = i === 5 ? "x" : i / 2;
      quote.getCell(`B${i}`).value = { formula: `_xldudf_REAM_TWICE(A${i})`, result: 0 };
      quote.getCell(`C${i}`).value = { formula: `ROUND(B${i}/3,2)`, result: 0 };
      quote.getCell(`B${i}`).numFmt = "0.000";
    }
    quote.getCell("E1").dataValidation = { type: "list", formulae: ['"mm,in"'] };
    quote.addConditionalFormatting({
      ref: "A2:A40",
      rules: [
        {
          type: "cellIs",
          operator: "greaterThan",
          formulae: [9],
          style: { font: { bold: true } },
          priority: 1,
        },
      ],
    });
    quote.mergeCells("G1:H2");
    const other = workbook.addWorksheet("Plain");
    other.getCell("A1").value = "REAM.TWICE(1)";
    other.getCell("A2").value = { formula: "1+1", result: 2 };
    workbook.definedNames.add("Quote!$A$2:$A$40", "sizes");
    return new Uint8Array(await workbook.xlsx.writeBuffer());
  }

  function withOther(): Uint8Array {
    const sheet = sheetReader.utils.aoa_to_sheet([["Size", "Twice", "Sum"]]);
    for (let i = 2; i <= 40; i++) {
      sheet[`A${i}`] = i === 5 ? { t: "s", v: "x" } : { t: "n", v: i / 2 };
      sheet[`B${i}`] = { t: "n", v: 0, f: `_xldudf_REAM_TWICE(A${i})` };
      sheet[`C${i}`] = { t: "n", v: 0, f: `ROUND(B${i}/3,2)` };
    }
    sheet["!ref"] = "A1:C40";
    const workbook = sheetReader.utils.book_new();
    sheetReader.utils.book_append_sheet(workbook, sheet, "Quote");
    sheetReader.utils.book_append_sheet(
      workbook,
      sheetReader.utils.aoa_to_sheet([["REAM.TWICE(1)"]]),
      "Plain",
    );
    return new Uint8Array(
      sheetReader.write(workbook, { type: "array", bookType: "xlsx", compression: true }),
    );
  }

  const round = (value: number) => Math.round(value * 100) / 100;

  test.each([
    ["exceljs", withExcelJs],
    ["xlsx", async () => withOther()],
  ])("of %s is the same bytes, and both read the new values", async (_, write) => {
    const before = await write();
    const { file, report } = fill(before);
    expect(report).toMatchObject({ computed: 78, errors: 2 });
    const packed = packedEntries(before);
    const after = packedEntries(file);
    expect(after.map(([name]) => name)).toEqual(packed.map(([name]) => name));
    const changed = packed.flatMap(([name, bytes], i) =>
      Buffer.compare(after[i][1], bytes) === 0 ? [] : [name],
    );
    expect(changed).toEqual(["xl/worksheets/sheet1.xml"]);
    // Of the changed part all but values and types is the same.
    const bare = (text: string) => text.replace(/<v>[^<]*<\/v>/g, "").replace(/ t="\w+"/g, "");
    expect(bare(textsIn(file)["xl/worksheets/sheet1.xml"])).toBe(
      bare(textsIn(before)["xl/worksheets/sheet1.xml"]),
    );

    const workbook = new ExcelJS.Workbook();
    await workbook.xlsx.load(file as never);
    const quote = workbook.getWorksheet("Quote")!;
    const other = sheetReader.read(file, { type: "array" }).Sheets.Quote;
    for (let i = 2; i <= 40; i++) {
      const wanted = i === 5 ? undefined : i;
      const twice = quote.getCell(`B${i}`).value as ExcelJS.CellFormulaValue;
      const sum = quote.getCell(`C${i}`).value as ExcelJS.CellFormulaValue;
      expect(twice.result).toEqual(wanted ?? { error: "#VALUE!" });
      expect(sum.result).toEqual(wanted === undefined ? { error: "#VALUE!" } : round(wanted / 3));
      expect(other[`B${i}`]).toMatchObject(
        wanted === undefined ? { t: "e", w: "#VALUE!" } : { t: "n", v: wanted },
      );
      expect(other[`C${i}`]).toMatchObject(
        wanted === undefined ? { t: "e" } : { t: "n", v: round(wanted / 3) },
      );
    }
  });

  test("is all of it where nothing is to be computed, or everything was", async () => {
    const plain = smallWorkbook({ sheets: { A: row(1, formula("A1", "1+1", "<v>2</v>")) } });
    expect(fillWorkbook(plain, functions).pieces).toBeUndefined();
    const { file } = fill(await withExcelJs());
    expect(fillWorkbook(file, functions).pieces).toBeUndefined();
  });

  test("under other prefixes too", () => {
    const text =
      '<x:worksheet xmlns:x="urn:x"><x:sheetData><x:row r="1"><x:c r="A1"><x:f>REAM.TWICE(2)</x:f></x:c></x:row></x:sheetData></x:worksheet>';
    const { file } = fill(smallWorkbook({ sheets: { A: "" }, more: { "xl/worksheets/sheet1.xml": text } }));
    expect(textsIn(file)["xl/worksheets/sheet1.xml"]).toBe(text.replace("</x:f>", "</x:f><x:v>4</x:v>"));
  });

  test("a signature that no longer holds is told", () => {
    const file = smallWorkbook({
      sheets: { A: row(1, formula("A1", "REAM.TWICE(2)")) },
      more: { "_xmlsignatures/sig1.xml": "<x/>" },
    });
    expect(fillWorkbook(file, functions).report.notes).toEqual([expect.stringContaining("signature")]);
  });
});

describe("hostile files", () => {
  test.each(Object.entries(hostileWorkbooks()))("%s", (_, { bytes, says }) => {
    expect(() => fillWorkbook(bytes, functions)).toThrow(says);
  });

  longTest("empty rows without number are passed over", () => {
    const rows = Array.from({ length: manyRows }, (_, i) => `<row r="${i + 1}"/>`).join("");
    const { report } = fillRows(rows + row(1_048_576, formula("A1048576", "REAM.TOTAL(B:B)", "<v>9</v>")));
    expect(report).toMatchObject({ computed: 1, errors: 0 });
  });

  test("arrays over all of a sheet, and ranges of all of it, are not made", () => {
    const { report } = fillRows(
      row(1, '<c r="A1"><f t="array" ref="A1:XFD1048576">REAM.DOWN(3)</f><v>1</v></c>') +
        row(2, formula("B2", "REAM.TOTAL(C3:XFC1000000)")),
    );
    expect(report).toMatchObject({ computed: 0, kept: 2 });
  });

  longTest("names that nest until they are too long are not followed", () => {
    const names = Array.from(
      { length: 15 },
      (_, i) => `<definedName name="n_${i}x">n_${i + 1}x+n_${i + 1}x+n_${i + 1}x</definedName>`,
    );
    const { report } = fillRows(row(1, formula("A1", "REAM.TWICE(1)+n_0x")), {
      definedNames: names.join(""),
    });
    expect(report).toMatchObject({ computed: 0, kept: 1 });
  });
});
