// tests: a copy that computes without our functions, in the grid.

import { describe, expect, test } from "vitest";
import { freezeSheet } from "../../src/taskpane/actions/freeze-sheet.ts";
import { ownFormula } from "../../src/workbook/own-formulas/own-formula.ts";
import { ownCells } from "../../src/workbook/own-formulas/rewrite.ts";
import { Refusal } from "../../src/workbook/workbook.ts";
import { gridOf } from "../support/function-grid.ts";
import { refusal } from "../support/memory-workbook.ts";

const RPM =
  '=IF(AND(OR(A2="",A2=0),OR(B2="",B2=0)),"",IF(OR(NOT(ISNUMBER(A2)),A2<=0,NOT(ISNUMBER(B2)),B2<=0,B2>3150),NA(),1000*A2/(PI()*B2)))';

const rewritten = (formula: string) => {
  const own = ownCells(formula);
  return "why" in own ? own.why : own.cells[0][0];
};

describe("our functions in the spreadsheet's own", () => {
  test("are the formula that STEPS shows, with blanks and refusals", () => {
    expect(rewritten("=REAM.RPM(A2,B2)")).toBe(RPM);
    expect(ownFormula("RPM", ["20", "10"])).toBe("1000*20/(PI()*10)");
    expect(ownFormula("RPM", ["20", "0.5", "", '"in"'])).toBe("12*20/(PI()*0.5)");
    expect(ownFormula("RPM", ["20", "10", "600"])).toBe("MIN(1000*20/(PI()*10),600)");
    expect(ownFormula("EDGECOST", ["120", "", "3", "25"])).toBe("(120+3*25)/(1*(3+1))");
  });

  test.each([
    ["=REAM.LIMITS(A2)", "LIMITS reads a callout"],
    ["=REAM.RPM(REAM.STARTSPEED(A2),B2)", "STARTSPEED looks up a table"],
    ["=REAM.RPM(A2*2,B2)", "surfaceSpeed of RPM is neither a cell nor a number"],
    ['=REAM.RPM(A2,B2,,"furlong")', "units of RPM is neither a cell nor a number"],
    ["=REAM.RPM(A2)", "RPM lacks diameter"],
    ["=REAM.RPM(A2:B3,C2)", "the ranges of RPM are no columns of one height"],
    ["=REAM.FEEDRATE(A2:A4,B2:B3)", "the ranges of FEEDRATE are no columns of one height"],
    ["=SUM(A2:A3)", "an argument is a calculation of its own"],
    ["=1+REAM.RUNOUT(A2,B2,C2,D2)", "RUNOUT gives 3 cells, and the formula takes another number of them"],
    ['="REAM.RPM(A2,B2)"&REAM.SAVING(A2,B2)', "a text in the formula names a function"],
  ])("%s is not written, and says why", (formula, why) => {
    expect(ownCells(formula)).toEqual({ why });
  });

  test("stand within other formulas, and row by row in place of a column", () => {
    expect(rewritten('=IF(C2="","",REAM.SAVING(A2,B2))')).toMatch(/^=IF\(C2="","",\(IF\(AND\(/);
    expect(ownCells("=REAM.FEEDRATE(A2:A4,B2:B4)")).toMatchObject({
      cells: [[/A2/], [/A3/], [/A4/]].map((row) => row.map((one) => expect.stringMatching(one))),
    });
    const { cells } = ownCells("=REAM.RUNOUT(A2:A3,B2:B3,C2:C3,D2:D3)") as { cells: string[][] };
    expect(cells.map((row) => row.length)).toEqual([3, 3]);
    expect(rewritten("=INDEX(REAM.CLEANUP(0.25,0.05),1,2)")).toBe("=(ROUND(0.25/2+0.05,7))");
  });

  test("take the columns of a table in the same row", () => {
    for (const [speed, size] of [
      ["Holes[[#This Row],[Cutting speed]]", "Holes[[#This Row],[Size]]"],
      ["[@[Cutting speed]]", "[@Size]"],
    ])
      expect(rewritten(`=REAM.RPM(${speed},${size})`)).toContain(`1000*${speed}/(PI()*${size})`);
    expect(ownCells("=REAM.RPM(Holes[Speed],10)")).toEqual({
      why: "surfaceSpeed of RPM is neither a cell nor a number",
    });
  });

  test("take the unit from a cell", () => {
    expect(rewritten("=REAM.RPM(20,10,,C2)")).toBe(
      '=IF(OR(TRIM(C2)="",C2=0,LOWER(TRIM(C2))="mm",LOWER(TRIM(C2))="metric"),1000*20/(PI()*10),IF(OR(LOWER(TRIM(C2))="in",LOWER(TRIM(C2))="inch",LOWER(TRIM(C2))="inches"),12*20/(PI()*10),NA()))',
    );
  });
});

test("a copy goes on computing, and says which functions are values", async () => {
  const grid = gridOf({
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

test("a copy whose results could not be compared is said to be none to use", async () => {
  const { workbook } = await gridOf({
    name: "Job",
    top: [
      ["Speed", "Size", "rpm"],
      [20, 10, "=REAM.RPM(A2,B2)"],
    ],
    columns: [10, 10, 10].map((width) => ({ header: "", width })),
    rows: 0,
  });
  const read = workbook.read.bind(workbook);
  workbook.read = (area) =>
    area.sheet === "Job" ? read(area) : Promise.reject(new Refusal("Excel is busy."));
  expect(await refusal(freezeSheet(workbook, true))).toBe(
    'Excel is busy. The sheet "Job (values)" may show other results than "Job". Delete it, then try again.',
  );
});
