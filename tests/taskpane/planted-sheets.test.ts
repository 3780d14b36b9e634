// tests: sheets as estimators build them, each with mistakes planted: what the check of a sheet finds is what was planted,
// and no more.

import { beforeAll, describe, expect, test } from "vitest";
import { registered } from "../../functions/register.ts";
import { paneHelp } from "../../src/build/pane-help.ts";
import { checkSheet } from "../../src/taskpane/actions/check-sheet.ts";
import { quotingSheet } from "../../src/taskpane/actions/quoting-sheet.ts";
import { shopTable } from "../../src/taskpane/actions/shop-table.ts";
import { cellAddress } from "../../src/workbook/workbook.ts";
import { typeParts } from "../support/example-parts.ts";
import { functionGrid, gridOf } from "../support/function-grid.ts";
import { declarations } from "../support/sheet.ts";

const help = paneHelp(declarations);
beforeAll(() => {
  Object.assign(globalThis, { reamwrightFunctions: registered });
});

type Line = readonly (string | number)[];
/** A formula for each of some rows, `{row}` for its number. */
const down = (first: number, last: number, line: Line): Line[] =>
  Array.from({ length: last - first + 1 }, (_, at) =>
    line.map((cell) => (typeof cell === "string" ? cell.replaceAll("{row}", String(first + at)) : cell)),
  );

async function found(lines: readonly Line[], changed: Readonly<Record<string, string | number>> = {}) {
  const grid = functionGrid();
  grid.model.dispatch("ADD_COLUMNS_ROWS", {
    sheetId: "first",
    sheetName: "First",
    dimension: "ROW",
    base: 4,
    quantity: 40,
    position: "after",
  } as never);
  grid.model.dispatch("ADD_COLUMNS_ROWS", {
    sheetId: "first",
    sheetName: "First",
    dimension: "COL",
    base: 4,
    quantity: 20,
    position: "after",
  } as never);
  lines.forEach((line, row) => {
    line.forEach((content, column) => {
      if (content !== "") grid.type(cellAddress(row, column), content);
    });
  });
  for (const [address, content] of Object.entries(changed)) grid.type(address, content);
  return (await checkSheet(grid.workbook, help)).map(({ address, what }) => `${address}: ${what}`);
}

const speeds: Line[] = [
  ["Part", "Diameter (mm)", "Speed (m/min)", "rpm", "Feed (mm/rev)", "Feed rate (mm/min)"],
  ...down(2, 9, ["P-{row}", 10, 15, "=REAM.RPM(C{row},B{row})", 0.3, "=REAM.FEEDRATE(E{row},D{row})"]),
];

describe("a column of speeds", () => {
  test("without a mistake", async () => {
    expect(await found(speeds)).toEqual([]);
  });
  test("with two numbers typed over, and one at the end", async () => {
    expect(await found(speeds, { D4: 480, D5: 480, F9: 140 })).toEqual([
      "D4:D5: 480 is typed where the column has a formula.",
      "F9: 140 is typed where the column has a formula.",
    ]);
  });
  test("with two rows that drift, and one at the end with a factor of its own", async () => {
    expect(
      await found(speeds, {
        D4: "=REAM.RPM(C3,B4)",
        D5: "=REAM.RPM(C4,B5)",
        F9: "=REAM.FEEDRATE(E8,D9)",
      }),
    ).toEqual([
      "D4:D5: The formula differs from those above and below it.",
      "F9: The formula differs from those above and below it.",
    ]);
  });
  test("with a speed and a figure that are texts", async () => {
    expect(await found(speeds, { C3: "'15", E6: "'0,3" })).toEqual([
      'C3: "15" is a text that looks like a number.',
      'E6: "0,3" is a text that looks like a number.',
    ]);
  });
  test("with inches under headers of mm", async () => {
    expect(
      await found([
        ["Diameter (in)", "Speed (ft/min)", "rpm"],
        ...down(2, 5, [0.5, 50, "=REAM.RPM(B{row},A{row})"]),
      ]),
    ).toEqual([
      'C2:C5: diameter is taken in mm, but A1 says "Diameter (in)".',
      'C2:C5: surfaceSpeed is taken in m/min, but B1 says "Speed (ft/min)".',
    ]);
  });
  test("with a units cell at the top that is changed", async () => {
    const sheet = [
      ["Units", "in"],
      ["Diameter (in)", "Speed (sfm)", "rpm"],
      ...down(3, 6, [0.5, 50, "=REAM.RPM(B{row},A{row},,$B$1)"]),
    ];
    expect(await found(sheet)).toEqual([]);
    expect(await found(sheet, { B1: "mm" })).toEqual([
      'C3:C6: diameter is taken in mm, but A2 says "Diameter (in)".',
      'C3:C6: surfaceSpeed is taken in m/min, but B2 says "Speed (sfm)".',
    ]);
  });
});

describe("sums and groups", () => {
  test("a sum below, between, and an average are no drift", async () => {
    expect(
      await found([
        ["Qty", "Price", "Amount"],
        ...down(2, 5, [10, 3.5, "=A{row}*B{row}"]),
        ["", "", "=SUM(C2:C5)"],
        ...down(7, 9, [10, 3.5, "=A{row}*B{row}"]),
        ["", "", "=SUM(C7:C9)"],
        ["", "", "=C6+C10"],
      ]),
    ).toEqual([]);
  });
  test("two groups with a factor each are meant", async () => {
    expect(
      await found([
        ["Steel", "Cost", "", 1.2],
        ...down(2, 5, ["S{row}", 12, "=B{row}*$D$1"]),
        ...down(6, 9, ["A{row}", 9, "=B{row}*$D$2"]),
      ]),
    ).toEqual([]);
  });
  test("a markup of its own in one row is not", async () => {
    expect(
      await found([["Part", "Cost", "Price"], ...down(2, 7, ["P{row}", 12, "=B{row}*1.25"])], {
        C5: "=B5*1.2",
      }),
    ).toEqual(["C5: The formula differs from those above and below it."]);
  });
  test("constants beside constants, ids with zeros and days are left alone", async () => {
    expect(
      await found([
        ["Part no.", "Revision", "Day", "Qty"],
        ["'00123", "'2", "'12.05.2024", 4],
        [4711, 1, "2024-05-12", 5],
        [4712, 2, "2024-05-13", 6],
      ]),
    ).toEqual(['B2: "2" is a text that looks like a number.']);
  });
});

describe("sheets that run to the right", () => {
  test("a number typed over, and a formula that drifts", async () => {
    const sheet = [
      ["Batch", 10, 50, 100, 250, 500],
      ["Cost", 4, 4, 4, 4, 4],
      ["Price", "=B2*1.2+45/B1", "=C2*1.2+45/C1", "=D2*1.2+45/D1", "=E2*1.2+45/E1", "=F2*1.2+45/F1"],
    ];
    expect(await found(sheet)).toEqual([]);
    expect(await found(sheet, { D3: 5.2 })).toEqual(["D3: 5.2 is typed where the row has a formula."]);
    expect(await found(sheet, { D3: "=D2*1.2+45/C1" })).toEqual([
      "D3: The formula differs from those beside it.",
    ]);
  });
});

test("inputs between the formulas of a row are no mistake", async () => {
  expect(
    await found([
      ["Batch 1", "Price", "Batch 2", "Price", "Batch 3", "Price"],
      ...down(2, 5, [10, "=A{row}*1.2", 50, "=C{row}*1.2", 100, "=E{row}*1.2"]),
    ]),
  ).toEqual([]);
});

describe("ranges of one call", () => {
  const columns: Line[] = [["Speed", "Diameter", "rpm"], ...down(2, 7, [15, 10])];
  test("of unequal length", async () => {
    expect(await found(columns, { C2: "=REAM.RPM(A2:A7,B2:B6)" })).toContain(
      "C2: surfaceSpeed has 6 cells and diameter has 5.",
    );
  });
  test("from other rows", async () => {
    expect(await found(columns, { C2: "=REAM.RPM(A2:A6,B3:B7)" })).toEqual([
      "C2: surfaceSpeed is A2:A6 and diameter is B3:B7: not the same rows.",
    ]);
    expect(await found(columns, { C2: "=REAM.RPM(A2:A7,B2:B7)" })).toEqual([]);
  });
});

describe("a form with labels at the left", () => {
  test("in the unit of its labels, and in the other", async () => {
    const form = [["Hole 1"], ["Diameter (mm)", 12], ["Speed, m/min", 15], ["rpm", "=REAM.RPM(B3,B2)"]];
    expect(await found(form)).toEqual([]);
    expect(await found(form, { A2: "Diameter (in)", B2: 0.5 })).toEqual([
      'B4: diameter is taken in mm, but A2 says "Diameter (in)".',
    ]);
  });
});

describe("errors", () => {
  test("begin in one cell, are listed once, and say why", async () => {
    const lines = await found([
      ["Callout", "Low", "High", "Middle", "Twice"],
      ["12 H7", "=REAM.MINSIZE(A2)", "=REAM.MAXSIZE(A2)", "=(B2+C2)/2", "=D2*2"],
      ["12", "=REAM.MINSIZE(A3)", "=REAM.MAXSIZE(A3)", "=(B3+C3)/2", "=D3*2"],
      ["10 H7", "=REAM.MINSIZE(A4)", "=REAM.MAXSIZE(A4)", "=(B4+C4)/2", "=D4*2"],
    ]);
    expect(lines).toHaveLength(1);
    expect(lines[0]).toMatch(/^B3: #VALUE!: callout .*"12".* The same in C3\.$/);
  });
  test("of other formulas are named; NA() is meant", async () => {
    expect(await found([[1, 0, "=A1/B1", "=NA()", "=C1+1"]])).toEqual(["C1: #DIV/0!."]);
  });
});

describe("our own sheets are without a finding", () => {
  test("the quoting sheet with the parts of the invented shop", async () => {
    const grid = gridOf(quotingSheet(6));
    typeParts(grid);
    expect((await checkSheet(grid.workbook, help)).map(({ address, what }) => `${address}: ${what}`)).toEqual(
      [],
    );
  });
  test.each(["mm", "in"] as const)("the shop's table in %s", async (units) => {
    const grid = gridOf(shopTable(units));
    expect((await checkSheet(grid.workbook, help)).map(({ address, what }) => `${address}: ${what}`)).toEqual(
      [],
    );
  });
});
