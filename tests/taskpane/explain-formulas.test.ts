// tests: every way in which a formula of Excel gives an argument, explained through Microsoft's own office.js. Speeds are
// 1000·v/(π·d), limits of H7 by ISO 286-1:2010 Table 1: 12 +0.018/0, 20 +0.021/0.

import { afterEach, beforeAll, describe, expect, test } from "vitest";
import { registered } from "../../functions/register.ts";
import { paneHelp } from "../../src/build/pane-help.ts";
import { type Explanation, explainCell } from "../../src/taskpane/actions/explain-cell.ts";
import { ExcelWorkbook } from "../../src/workbook/excel-workbook.ts";
import {
  type Box,
  type GivenExcel,
  giveExcel,
  type SheetDouble,
  takeExcelAway,
} from "../support/excel-host.ts";
import { declarations } from "../support/sheet.ts";

const help = paneHelp(declarations);
const workbook = new ExcelWorkbook();
beforeAll(() => {
  Object.assign(globalThis, { reamwrightFunctions: registered });
});
afterEach(takeExcelAway);

const rpm = (speed: number, diameter: number) => (1000 * speed) / (Math.PI * diameter);
const close = (value: number) => expect.closeTo(value, 6);
/** The cell with the formula, E3. */
const HOME: Box = [2, 4, 1, 1];

interface Given {
  readonly value?: string | number;
  readonly more?: Partial<SheetDouble>;
  readonly names?: Readonly<Record<string, string>>;
  readonly at?: Box;
}

function excelWith(formula: string, { value = 0, more = {}, names = {}, at = HOME }: Given = {}): GivenExcel {
  const cells = [
    ["Callout", "Speed", "Dia", "Units", "Result"],
    ["12 H7", 15, 10, "mm", ""],
    ["20 H7", 30, 12, "mm", formula],
    ["H7", 45, 20, "mm", ""],
  ];
  const values = cells.map((line) => [...line]);
  values[2][4] = value;
  const job: SheetDouble = { name: "Job", cells, values, ...more };
  const data: SheetDouble = {
    name: "Shop data",
    cells: [
      ["Speed", 60],
      ["Diameter", 8],
    ],
  };
  return giveExcel([job, data], { sheet: "Job", boxes: [at] }, { names });
}

async function told(formula: string, given?: Given): Promise<Explanation> {
  excelWith(formula, given);
  return explainCell(workbook, help);
}

/** Of the first call: what each given argument was, where from, and what came of it. */
const firstOf = ({ calls: [{ described, args, value, note }] }: Explanation) => ({
  id: described.id,
  args: args.filter(({ written }) => written !== "").map(({ cells, value: one }) => [cells.join(), one]),
  value,
  note,
});

describe("an argument", () => {
  const table = { tables: [{ name: "Jobs", box: [0, 0, 4, 5] as const }] };
  test.each<[string, string, Given, [string, string | number][], number]>([
    [
      "cells",
      "=REAM.RPM(B3,C3)",
      {},
      [
        ["B3", 30],
        ["C3", 12],
      ],
      rpm(30, 12),
    ],
    [
      "a name of the workbook",
      "=REAM.RPM(Speed,C3)",
      { names: { Speed: "='Shop data'!$B$1" } },
      [
        ["'Shop data'!B1", 60],
        ["C3", 12],
      ],
      rpm(60, 12),
    ],
    [
      "a name of the sheet, before one of the workbook",
      "=REAM.RPM(Speed,C3)",
      { names: { Speed: "='Shop data'!$B$1" }, more: { names: { Speed: "=Job!$B$4" } } },
      [
        ["B4", 45],
        ["C3", 12],
      ],
      rpm(45, 12),
    ],
    [
      "a name for a figure",
      "=REAM.RPM(Speed,C3)",
      { names: { Speed: "=25" } },
      [
        ["", 25],
        ["C3", 12],
      ],
      rpm(25, 12),
    ],
    [
      "this row of a table",
      "=REAM.RPM([@Speed],[@Dia])",
      { more: table },
      [
        ["B3", 30],
        ["C3", 12],
      ],
      rpm(30, 12),
    ],
    [
      "this row of a table as a file has it",
      "=REAM.RPM(Jobs[[#This Row],[Speed]],Jobs[[#This Row],[Dia]])",
      { more: table },
      [
        ["B3", 30],
        ["C3", 12],
      ],
      rpm(30, 12),
    ],
    [
      "a cell of another sheet",
      "=REAM.RPM('Shop data'!B1,'Shop data'!$B$2)",
      {},
      [
        ["'Shop data'!B1", 60],
        ["'Shop data'!B2", 8],
      ],
      rpm(60, 8),
    ],
    [
      "figures",
      "=REAM.RPM(15,2.5E1)",
      {},
      [
        ["", 15],
        ["", 25],
      ],
      rpm(15, 25),
    ],
    [
      "a percentage",
      "=REAM.RPM(1500%,10)",
      {},
      [
        ["", 15],
        ["", 10],
      ],
      rpm(15, 10),
    ],
    [
      "a formula of cells",
      "=REAM.RPM(B3*0.8,C3+C2)",
      {},
      [
        ["B3", 24],
        ["C3,C2", 22],
      ],
      rpm(24, 22),
    ],
    [
      "a function of the spreadsheet",
      "=REAM.RPM(MAX(B2:B4),INDEX(C2:C4,2))",
      {},
      [
        ["B2:B4", 45],
        ["C2:C4", 12],
      ],
      rpm(45, 12),
    ],
    [
      "a look-up",
      "=REAM.RPM(VLOOKUP(A3,A2:C4,2,FALSE),C3)",
      {},
      [
        ["A3,A2:C4", 30],
        ["C3", 12],
      ],
      rpm(30, 12),
    ],
    [
      "the cell of this row with @",
      "=REAM.RPM(@B2:B4,@C2:C4)",
      {},
      [
        ["B2:B4", 30],
        ["C2:C4", 12],
      ],
      rpm(30, 12),
    ],
    [
      "our function with @",
      "=@REAM.RPM(B3,C3)",
      {},
      [
        ["B3", 30],
        ["C3", 12],
      ],
      rpm(30, 12),
    ],
    [
      "as a file stores our names",
      "=_xldudf_REAM_RPM(B3,C3)",
      {},
      [
        ["B3", 30],
        ["C3", 12],
      ],
      rpm(30, 12),
    ],
  ])("of %s", async (_, formula, given, args, value) => {
    const explanation = await told(formula, { value, ...given });
    expect(firstOf(explanation)).toEqual({ id: "RPM", args, value: [close(value)], note: undefined });
    expect(explanation.calls[0].steps.join(" ")).toContain(`${Math.floor(value)}.`);
    expect(explanation.calls[0].sources.length).toBeGreaterThan(0);
    expect(explanation.otherwise).toBeUndefined();
  });

  test("of columns of a table is that of the row that is looked at", async () => {
    const more = { tables: [{ name: "Jobs", box: [0, 0, 4, 3] as const }], spilled: [[2, 4, 3, 1]] as const };
    const cells = [...Array(5)].map(() => Array(5).fill("")) as (string | number)[][];
    cells[0] = ["Callout", "Speed", "Dia", "", ""];
    [15, 30, 45].forEach((speed, at) => {
      cells[at + 1] = ["12 H7", speed, 10 + at, "", ""];
    });
    cells[2][4] = "=REAM.RPM(Jobs[Speed],Jobs[Dia])";
    const values = cells.map((line) => [...line]);
    [15, 30, 45].forEach((speed, at) => {
      values[at + 2][4] = rpm(speed, 10 + at);
    });
    const explanation = await told("", { more: { ...more, cells, values }, at: [4, 4, 1, 1] });
    expect(explanation.formula).toBe("=REAM.RPM(Jobs[Speed],Jobs[Dia])");
    expect(firstOf(explanation).args).toEqual([
      ["B4", 45],
      ["C4", 12],
    ]);
    expect(firstOf(explanation).value).toEqual([close(rpm(45, 12))]);
    expect(explanation.otherwise).toBeUndefined();
  });

  test("of all that another formula spills", async () => {
    const cells = [
      ["=B2:B4*2", 15, 10, "", ""],
      ["", 15, 10, "", ""],
      ["", 30, 12, "", "=REAM.RPM(A1#,10)"],
    ];
    const values = [
      [30, 15, 10, "", ""],
      [60, 15, 10, "", ""],
      [90, 30, 12, "", rpm(30, 10)],
      ["", "", "", "", rpm(60, 10)],
      ["", "", "", "", rpm(90, 10)],
    ];
    const spilled = [
      [0, 0, 3, 1],
      [2, 4, 3, 1],
    ] as const;
    const explanation = await told("", { more: { cells, values, spilled }, at: [3, 4, 1, 1] });
    expect(firstOf(explanation)).toEqual({
      id: "RPM",
      args: [
        ["A1", 60],
        ["", 10],
      ],
      value: [close(rpm(60, 10))],
      note: "The steps are for row 2 of 3.",
    });
    expect(explanation.otherwise).toBeUndefined();
  });
});

describe("several calls", () => {
  const idsOf = ({ calls }: Explanation) => calls.map(({ described }) => described.id);
  test("one inside another: both, the inner one's result as the outer one's argument", async () => {
    const feed = 0.3;
    const explanation = await told(`=REAM.FEEDRATE(${feed},REAM.RPM(B3,C3))`, { value: feed * rpm(30, 12) });
    expect(idsOf(explanation)).toEqual(["FEEDRATE", "RPM"]);
    const [outer, inner] = explanation.calls;
    expect(outer.args.slice(0, 2).map(({ value }) => value)).toEqual([feed, close(rpm(30, 12))]);
    expect(outer.args[1].cells).toEqual(["B3", "C3"]);
    expect(outer.value).toEqual([close(feed * rpm(30, 12))]);
    expect(inner.value).toEqual([close(rpm(30, 12))]);
    for (const { steps, sources } of explanation.calls) {
      expect(steps.length).toBeGreaterThan(0);
      expect(sources.length).toBeGreaterThan(0);
    }
  });
  test("inside INDEX, ROUND and a sum", async () => {
    const explanation = await told("=INDEX(REAM.LIMITS(A3),1,2)", { value: 20.021 });
    expect(firstOf(explanation)).toEqual({
      id: "LIMITS",
      args: [["A3", "20 H7"]],
      value: [20, 20.021],
      note: undefined,
    });
    const both = await told("=ROUND(REAM.RPM(B2,C2),0)+REAM.RPM(B3,C3)", {
      value: Math.round(rpm(15, 10)) + rpm(30, 12),
    });
    expect(both.calls.map(({ value }) => value)).toEqual([[close(rpm(15, 10))], [close(rpm(30, 12))]]);
    expect(both.otherwise).toBeUndefined();
  });
  test("inside IF: the one that is computed has steps, the other says that it is not", async () => {
    const explanation = await told('=IF(D3="in",REAM.RPM(B3,C3,,"in"),REAM.RPM(B3,C3))', {
      value: rpm(30, 12),
    });
    const [inch, metric] = explanation.calls;
    expect(inch.steps).toEqual([]);
    expect(inch.value).toEqual([]);
    expect(inch.note).toContain("takes another branch");
    expect(metric.steps.join(" ")).toContain("795.77");
  });
  test("inside LET, with its names", async () => {
    const explanation = await told("=LET(d,C3,v,B3*2,REAM.RPM(v,d))", { value: rpm(60, 12) });
    expect(explanation.calls[0].args.slice(0, 2).map(({ value }) => value)).toEqual([60, 12]);
    expect(explanation.calls[0].value).toEqual([close(rpm(60, 12))]);
  });
  test("over columns: the steps say for which row they are", async () => {
    const explanation = await told("=SUM(REAM.RPM(B2:B4,C2:C4))", {
      value: rpm(15, 10) + rpm(30, 12) + rpm(45, 20),
    });
    expect(explanation.calls[0].note).toBe("The steps are for row 1 of 3.");
    expect(explanation.calls[0].value).toEqual([close(rpm(15, 10))]);
    expect(explanation.otherwise).toBeUndefined();
  });
  test("a list taken whole is one calculation", async () => {
    const explanation = await told("=REAM.STACKUP(C2:C4)");
    expect(explanation.calls[0].note).toBeUndefined();
    expect(explanation.calls[0].args[0].cells).toEqual(["C2:C4"]);
    expect(explanation.calls[0].steps.length).toBeGreaterThan(0);
  });
});

describe("where something cannot be known", () => {
  test("a function that is not computed here: the call in it is explained by itself", async () => {
    const explanation = await told("=CUBEVALUE(REAM.RPM(B3,C3))");
    expect(explanation.calls[0].value).toEqual([close(rpm(30, 12))]);
    expect(explanation.otherwise).toBeUndefined();
  });
  test.each([
    ["a name that is not there", "=REAM.RPM(Nowhere,C3)", {}],
    ["a name that means other cells in every cell", "=REAM.RPM(Beside,C3)", { names: { Beside: "=Job!B3" } }],
    ["cells that are worked out on the way", "=REAM.RPM(OFFSET(B3,1,0),C3)", {}],
    ["another workbook", "=REAM.RPM([Prices.xlsx]Sheet1!$A$1,C3)", {}],
    ["a function of chance", "=REAM.RPM(RAND()*10,C3)", {}],
  ])("%s: no steps, and why", async (_, formula, given) => {
    const explanation = await told(formula, given);
    const [{ steps, note, value, args }] = explanation.calls;
    // What is known is told.
    expect(args[1].value).toBe(12);
    expect(steps).toEqual([]);
    expect(value).toEqual([]);
    expect(note).toMatch(/^There are no steps: .+\.$/);
    expect(explanation.otherwise).toBeUndefined();
  });
  test("a cell that shows something else says so", async () => {
    expect((await told("=REAM.RPM(B3,C3)", { value: 700 })).otherwise).toEqual(close(rpm(30, 12)));
    expect((await told("=REAM.RPM(B3,C3)", { value: "#NAME?" })).otherwise).toEqual(close(rpm(30, 12)));
    expect((await told("=REAM.RPM(B3,C3)", { value: "#BUSY!" })).otherwise).toEqual(close(rpm(30, 12)));
  });
  test("an error that is given, and one that the function finds", async () => {
    const missing = await told('=REAM.RPM("fast",C3)', { value: "#VALUE!" });
    expect(missing.message).toMatch(/^surfaceSpeed "fast"/);
    expect(missing.calls[0].value).toEqual(["#VALUE!"]);
    expect(missing.otherwise).toBeUndefined();
    const given = await told("=REAM.RPM(1/0,C3)", { value: "#DIV/0!" });
    expect(given.calls[0].args[0].value).toBe("#DIV/0!");
    expect(given.message).toBe("#DIV/0!");
  });
  test("columns of unequal length say so, in every row", async () => {
    for (const at of [HOME, [3, 4, 1, 1]] as const) {
      const explanation = await told("=REAM.RPM(B2:B4,C2:C3)", {
        value: "#VALUE!",
        more: { spilled: [[2, 4, 2, 1]] },
        at,
      });
      expect(explanation.calls[0].message).toBe(
        "surfaceSpeed has 3 cells and diameter has 2. Make them the same size.",
      );
      expect(explanation.calls[0].steps).toEqual([]);
    }
  });
  test("an empty cell is no 0, and an empty row no error", async () => {
    const explanation = await told("=REAM.RPM(B9,C9)", { value: "" });
    expect(explanation.calls[0].note).toBe("The inputs are empty.");
    expect(explanation.otherwise).toBeUndefined();
  });
});
