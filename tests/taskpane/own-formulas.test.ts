// tests: a copy that computes without our functions, in the grid.

import { describe, expect, test } from "vitest";
import { freezeSheet } from "../../src/taskpane/actions/freeze-sheet.ts";
import { ownFormula } from "../../src/workbook/own-formulas/own-formula.ts";
import { rewritten, rewrittenColumn } from "../../src/workbook/own-formulas/rewrite.ts";
import { gridOf } from "../support/function-grid.ts";

const RPM =
  '=IF(AND(OR(A2="",A2=0),OR(B2="",B2=0)),"",IF(OR(NOT(ISNUMBER(A2)),A2<=0,NOT(ISNUMBER(B2)),B2<=0,B2>3150),NA(),1000*A2/(PI()*B2)))';

describe("our functions in the spreadsheet's own", () => {
  test("are the formula that STEPS shows, with blanks and refusals", () => {
    expect(rewritten("=REAM.RPM(A2,B2)")).toBe(RPM);
    expect(ownFormula("RPM", ["20", "10"])).toBe("1000*20/(PI()*10)");
    expect(ownFormula("RPM", ["20", "0.5", "", '"in"'])).toBe("12*20/(PI()*0.5)");
    expect(ownFormula("RPM", ["20", "10", "600"])).toBe("MIN(1000*20/(PI()*10),600)");
    expect(ownFormula("EDGECOST", ["120", "", "3", "25"])).toBe("(120+3*25)/(1*(3+1))");
  });

  test("are not written where they rest on a table, a unit in a cell, or another call", () => {
    for (const formula of [
      "=REAM.LIMITS(A2)",
      "=REAM.RPM(A2,B2,,C2)",
      "=REAM.RPM(REAM.STARTSPEED(A2),B2)",
      '=REAM.RPM(A2,B2,,"furlong")',
      "=REAM.RPM(A2)",
      "=SUM(A2:A3)",
      '="REAM.RPM(A2,B2)"&REAM.STOCK(A2)',
    ])
      expect(rewritten(formula), formula).toBeUndefined();
  });

  test("stand within other formulas, and row by row in place of a column", () => {
    expect(rewritten('=IF(C2="","",REAM.SAVING(A2,B2))')).toMatch(/^=IF\(C2="","",\(IF\(AND\(/);
    expect(rewrittenColumn("=REAM.FEEDRATE(A2:A4,B2:B4)")?.length).toBe(3);
    expect(rewrittenColumn("=REAM.FEEDRATE(A2:A4,B2:B3)")).toBeUndefined();
  });
});

test("a copy goes on computing, and says which functions are values", async () => {
  const grid = await gridOf({
    name: "Job",
    top: [
      ["Speed", "Size", "rpm", "drill"],
      [20, 10, "=REAM.RPM(A2,B2)", "=REAM.STOCK(B2)"],
      [25, 12, "=REAM.RPM(A3:A4,B3:B4)", "=REAM.STOCK(B3)"],
      [30, "", "", ""],
    ],
    columns: [10, 10, 10, 10].map((width) => ({ header: "", width })),
    rows: 0,
  });
  const before = ["C2", "C3", "D2", "D3"].map((address) => grid.value(address));
  const { name, own, asValues, replaced } = await freezeSheet(grid.workbook, true);
  expect([name, own, asValues, replaced]).toEqual(["Job (values)", 3, ["STOCK"], 5]);
  const after = ["C2", "C3", "D2", "D3"].map((address) => grid.value(address));
  for (const [at, value] of before.entries()) expect(after[at]).toBeCloseTo(value as number, 9);
  expect(grid.shown("C4")).toMatch(/^#/);
  grid.type("A2", 40);
  expect(grid.value("C2")).toBeCloseTo((1000 * 40) / (Math.PI * 10), 6);
  expect(grid.value("D2")).toBe(before[2]);
});
