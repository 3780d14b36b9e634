// tests: which formulas of a workbook are computed, however what they read is written, and that none stays as it was
// without being counted.

import { expect, test } from "vitest";
import { fillWorkbook } from "../../src/fill/fill-workbook.ts";
import { joined, type SmallWorkbook, smallWorkbook, textsIn } from "../support/package.ts";
import { functions } from "../support/small-functions.ts";

const formula = (cell: string, text: string, value = "<v>0</v>", more = "") =>
  `<c r="${cell}"${more}><f>${text}</f>${value}</c>`;
const number = (cell: string, value: number) => `<c r="${cell}"><v>${value}</v></c>`;
const row = (at: number, ...cells: string[]) => `<row r="${at}">${cells.join("")}</row>`;
const defined = (name: string, text: string) => `<definedName name="${name}">${text}</definedName>`;

/** The values of the first sheet's cells that are filled, and what is kept there. */
function fill(workbook: SmallWorkbook) {
  const { pieces, report } = fillWorkbook(smallWorkbook(workbook), functions);
  const text = pieces ? textsIn(joined(pieces))["xl/worksheets/sheet1.xml"] : "";
  const values = Object.fromEntries(
    [...text.matchAll(/<c r="(\w+)"[^>]*>(?:<f.*?(?:<\/f>|\/>))?<v>(.*?)<\/v>/g)].map(([, cell, value]) => [
      cell,
      value,
    ]),
  );
  return { values, kept: report.sheets[0].firstKept, computed: report.sheets[0].computed };
}

test("references over several sheets", () => {
  const { values, kept } = fill({
    sheets: {
      Sum: row(
        1,
        formula("A1", "SUM(One:Three!A1)"),
        formula("B1", "SUM('One:Two'!A1:A2)"),
        formula("C1", "SUM(One:Three!A1,A1)"),
        formula("D1", "COUNTIF(One:Three!A1,1)", "<v>9</v>"),
      ),
      One: row(1, formula("A1", "REAM.TWICE(1)")),
      Two: row(1, formula("A1", "REAM.TWICE(2)")) + row(2, number("A2", 100)),
      Three: row(1, formula("A1", "REAM.TWICE(3)")),
    },
  });
  expect(values).toMatchObject({ A1: "12", B1: "106", C1: "24", D1: "9" });
  expect(kept).toEqual([{ cell: "D1", why: "a reference to several sheets" }]);
});

test("names: ranges that move with the cell, arrays, and functions of the workbook's own", () => {
  const { values, kept } = fill({
    sheets: {
      Sheet1:
        row(1, formula("A1", "REAM.TWICE(1)"), formula("B1", "SUM(before)"), formula("C1", "SUM(doubled)")) +
        row(
          2,
          formula("A2", "REAM.TWICE(2)"),
          formula("B2", "left"),
          formula("C2", "grow(1)", "<v>7</v>"),
          formula("D2", "C2+1", "<v>8</v>"),
        ),
    },
    definedNames: [
      // As they read in A1: the column before, round the edge of the sheet, and the cell before.
      defined("before", "Sheet1!XFD:XFD"),
      defined("left", "Sheet1!XFD1"),
      defined("doubled", "Sheet1!$A$1:$A$2*2"),
      defined("grow", "_xlfn.LAMBDA(_xlpm.x,_xlpm.x+Sheet1!$A$2)"),
    ].join(""),
  });
  expect(values).toMatchObject({ B1: "6", B2: "4", C1: "12", C2: "7", D2: "8" });
  expect(kept).toEqual([
    { cell: "C2", why: "the function GROW" },
    { cell: "D2", why: "a cell whose value is not known" },
  ]);
});

test("cells that cannot be told are counted", () => {
  const kept = (text: string) =>
    fill({ sheets: { Sheet1: row(1, formula("A1", "REAM.TWICE(1)"), formula("B1", text, "<v>5</v>")) } })
      .kept;
  for (const text of [
    "SUM(C1:INDEX(C:C,2))",
    "INDIRECT(CUBEVALUE(1))",
    "SUM(OFFSET(C1,0,0):C9)",
    "Other[Column]",
    "C1:Sheet1!C9",
    "CUBEVALUE(1) INDIRECT(C1)",
  ])
    expect(kept(text), text).toHaveLength(1);
  // They read no cell of this workbook.
  for (const text of ["CUBEVALUE(1)", "NOW()", "nothing"]) expect(kept(text), text).toEqual([]);
});

test("a what-if table depends on what it tries", () => {
  const table = '<c r="B2"><f t="dataTable" ref="B2:B3" dt2D="0" dtr="0" r1="D1"/><v>5</v></c>';
  const { kept } = fill({
    sheets: {
      Sheet1:
        row(1, formula("B1", "REAM.TWICE(D1)"), number("D1", 1)) +
        row(2, number("A2", 1), table, formula("C2", "SUM(B2:B3)", "<v>9</v>")) +
        row(3, number("A3", 2), number("B3", 4)),
    },
  });
  expect(kept.map(({ cell }) => cell)).toEqual(["B2", "C2"]);
});

test("subtotals where rows are hidden, in whatever quotes the file says so", () => {
  const rows = `<row r="1" hidden='1'>${number("A1", 5)}</row>${row(2, formula("A2", "REAM.TWICE(1)"), formula("B2", "SUBTOTAL(9,A1:A2)", "<v>3</v>"))}`;
  expect(fill({ sheets: { Sheet1: rows } }).kept).toEqual([{ cell: "B2", why: "SUBTOTAL over hidden rows" }]);
});

test("all of a workbook that asks for it, helpers too, and nothing on top of what is not known", () => {
  const rows = row(
    1,
    number("A1", 4),
    formula("B1", "A1*2"),
    formula("C1", "SUM(A1:B1)", ""),
    formula("D1", "NOW()", "<v>45000</v>"),
    formula("E1", "D1+1", "<v>1</v>"),
    formula("F1", 'IF(A1>3,"yes",D1)'),
  );
  const asked = fill({ sheets: { Sheet1: rows }, workbookPr: '<calcPr fullCalcOnLoad="1"/>' });
  expect(asked.values).toMatchObject({ B1: "8", C1: "12", D1: "45000", E1: "1", F1: "yes" });
  expect(asked.kept.map(({ cell }) => cell)).toEqual(["D1", "E1"]);
  expect(fill({ sheets: { Sheet1: rows } })).toMatchObject({ computed: 0, kept: [] });
});

test("nothing of a workbook that rounds to what its cells show", () => {
  const { kept } = fill({
    sheets: { Sheet1: row(1, formula("A1", "REAM.TWICE(1)")) },
    workbookPr: '<calcPr fullPrecision="0"/>',
  });
  expect(kept).toHaveLength(1);
});

test("no value that a cell cannot hold is written", () => {
  const broken = new Map(functions);
  const give = (value: unknown) => ({
    kind: "range" as const,
    fewestArguments: 0,
    mostArguments: 0,
    takes: "",
    call: () => value as number,
  });
  broken.set("REAM.YES", give(Number.NaN));
  broken.set("REAM.NONE", give("x".repeat(40_000)));
  const file = smallWorkbook({
    sheets: { Sheet1: row(1, formula("A1", "REAM.YES()"), formula("B1", "REAM.NONE()")) },
  });
  const { pieces, report } = fillWorkbook(file, broken);
  expect(pieces).toBeUndefined();
  expect(report.sheets[0]).toMatchObject({ computed: 0, kept: 2 });
});
