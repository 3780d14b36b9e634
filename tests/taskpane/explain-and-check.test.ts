// tests: what explains a cell, what looks through a sheet, and what enters formulas again. Expected speed:
// 1000·15/(π·10) = 477.464829…, limits of 12 H7 by ISO 286-1:2010 Table 1.

import { beforeAll, describe, expect, test } from "vitest";
import { registered } from "../../functions/register.ts";
import { paneHelp } from "../../src/build/pane-help.ts";
import { checkSheet } from "../../src/taskpane/actions/check-sheet.ts";
import { explainCell } from "../../src/taskpane/actions/explain-cell.ts";
import { ourCalls } from "../../src/taskpane/actions/formula-calls.ts";
import { reenterFormulas } from "../../src/taskpane/actions/reenter-formulas.ts";
import { planFormula } from "../../src/taskpane/actions/write-formula.ts";
import type { Content } from "../../src/workbook/workbook.ts";
import { type MemoryCell, MemoryWorkbook, refusal } from "../support/memory-workbook.ts";
import { declarations } from "../support/sheet.ts";

const help = paneHelp(declarations);
const job = (cells: Record<string, Content | MemoryCell>) => new MemoryWorkbook({ Job: cells });

beforeAll(() => {
  Object.assign(globalThis, { reamwrightFunctions: registered });
});

describe("a call in a formula", () => {
  test.each<[string, [string, string[]][]]>([
    ["=REAM.RPM(A2,B2)", [["RPM", ["A2", "B2"]]]],
    ['=IF(A1="a,b",REAM.RPM( A2 , , 6000),"")', [["RPM", ["A2", "", "6000"]]]],
    ["=_xldudf_REAM_RPM(MAX(A1,B1),{1;2})", [["RPM", ["MAX(A1,B1)", "{1;2}"]]]],
    [
      "=REAM.PRICE(REAM.PARTCOST(1,2),3)",
      [
        ["PRICE", ["REAM.PARTCOST(1,2)", "3"]],
        ["PARTCOST", ["1", "2"]],
      ],
    ],
    ["=REAM.MATERIALS()", [["MATERIALS", []]]],
    ['="REAM.RPM(1,2)"', []],
    ["=DREAM.RPM(1)", []],
  ])("%s", (formula, calls) => {
    expect(ourCalls(formula).map(({ id, args }) => [id, args])).toEqual(calls);
  });
});

describe("explaining a cell", () => {
  test("gives the arguments with their cells, the steps and the sources", async () => {
    const told = await explainCell(
      job({ A2: 15, B2: 10, C2: { formula: "=REAM.RPM(A2,B2)", value: 477.464829 } }).select("C2"),
      help,
    );
    const [{ described, args, steps, sources, value, note }, ...others] = told.calls;
    expect(others).toEqual([]);
    expect(described.id).toBe("RPM");
    expect(args.slice(0, 2).map(({ name, written, value }) => [name, written, value])).toEqual([
      ["surfaceSpeed", "A2", 15],
      ["diameter", "B2", 10],
    ]);
    expect(args.slice(2).every(({ written }) => written === "")).toBe(true);
    expect(steps.join(" ")).toMatch(/1000.*15.*10.*477\.46/);
    expect(sources.length).toBeGreaterThan(0);
    expect(value).toEqual([expect.closeTo(477.464829, 6)]);
    expect([told.message, told.otherwise, note]).toEqual([undefined, undefined, undefined]);
  });

  test("takes the row of a cell that a column spills into", async () => {
    const workbook = job({
      A2: 15,
      A3: 30,
      B2: 10,
      B3: 10,
      C2: { formula: "=REAM.RPM(A2:A3,B2:B3)", value: 477.464829 },
      C3: { value: 954.929659, fixed: "spilled" },
    }).select("C3");
    const [{ args, steps }] = (await explainCell(workbook, help)).calls;
    expect(args.slice(0, 2).map(({ value, cells }) => [value, cells])).toEqual([
      [30, ["A3"]],
      [10, ["B3"]],
    ]);
    expect(steps.join(" ")).toContain("954.9");
  });

  test("does not take a formula of ours beside it for the one that spills into a cell", async () => {
    const workbook = job({
      A2: 15,
      A3: 30,
      B2: { formula: "=REAM.RPM(A2,10)", value: 477.464829 },
      B3: { formula: "=REAM.RPM(A3,10)", value: 954.929659 },
      C2: { formula: "=A2:A3*2", value: 30 },
      C3: { value: 60, fixed: "spilled" },
    }).select("C3");
    expect(await refusal(explainCell(workbook, help))).toContain("holds no REAM formula");
  });

  test("says what an error says", async () => {
    const told = await explainCell(
      job({ A2: "fast", B2: 10, C2: { formula: "=REAM.RPM(A2,B2)", value: "#VALUE!" } }).select("C2"),
      help,
    );
    expect(told.message).toMatch(/^surfaceSpeed "fast"/);
    expect(told.calls[0].steps).toEqual([]);
  });

  test("says so where there is none of ours", async () => {
    expect(await refusal(explainCell(job({ A1: "=SUM(B1)" }).select("A1"), help))).toContain(
      "holds no REAM formula",
    );
  });
});

describe("checking a sheet finds", () => {
  const found = async (cells: Record<string, Content | MemoryCell>) =>
    (await checkSheet(job(cells), help)).map(({ address, what }) => `${address}: ${what}`);

  test("a number typed over a filled column, in it and at its end", async () => {
    expect(
      await found({ A1: "=B1*2", A2: "=B2*2", A3: 7, A4: "=B4*2", A5: 9, B1: 1, B2: 2, B3: 3, B4: 4, B5: 5 }),
    ).toEqual(["A3: 7 is typed where the column has a formula."]);
    expect(await found({ A1: "=B1*2", A2: "=B2*2", A3: "=B3*2", A4: 9, B1: 1 })).toEqual([
      "A4: 9 is typed where the column has a formula.",
    ]);
  });

  test("a formula unlike its neighbors", async () => {
    expect(await found({ A1: "=B1*2", A2: "=B2*3", A3: "=B3*2", B1: 1, B2: 2, B3: 3 })).toEqual([
      "A2: The formula differs from those above and below it.",
    ]);
  });

  test("columns of unequal length in one call", async () => {
    expect(
      await found({
        A1: 15,
        A2: 15,
        A3: 15,
        B1: 10,
        B2: 10,
        C1: { formula: "=REAM.RPM(A1:A3,B1:B2)", value: 477 },
      }),
    ).toEqual(["C1: surfaceSpeed has 3 cells and diameter has 2."]);
  });

  test.each([
    ["=REAM.RPM(A2,B2)", undefined, /diameter is taken in mm, but B1 says "Size \(in\)"/],
    ['=REAM.RPM(A2,B2,,"in")', undefined, /^$/],
    ["=REAM.RPM(A2,B2,,D1)", "mm", /diameter is taken in mm/],
    ["=REAM.RPM(A2,B2,,D1)", "in", /^$/],
  ])("units that disagree with a header: %s with %s", async (formula, unit, words) => {
    const cells = {
      B1: "Size (in)",
      A2: 50,
      B2: 0.5,
      C2: { formula, value: 382 },
      ...(unit ? { D1: unit } : {}),
    };
    expect((await found(cells)).join(" ")).toMatch(words);
  });

  test("errors, and texts that look like numbers", async () => {
    const lines = await found({
      A1: 1,
      A2: 2,
      A3: "3,5",
      B1: { formula: "=_xldudf_REAM_RPM(A1,A2)", value: "#NAME?" },
      B2: { formula: "=1/0", value: "#DIV/0!" },
      B3: "12 H7",
    });
    expect(lines).toEqual([
      "B1: #NAME?. The formula came before the add-in. Enter it again.",
      "B2: #DIV/0!.",
      'A3: "3,5" is a text that looks like a number.',
    ]);
  });

  test("nothing in a sound sheet, and changes nothing", async () => {
    const workbook = job({ A1: "Size (mm)", A2: 10, A3: 12, B2: "=REAM.STOCK(A2)", B3: "=REAM.STOCK(A3)" });
    expect(await checkSheet(workbook, help)).toEqual([]);
    expect(workbook.steps).toEqual([]);
    expect(await refusal(checkSheet(job({}), help))).toContain("is empty");
  });
});

describe("entering formulas again", () => {
  test("writes every stored form as a person writes it, in all sheets, as one step", async () => {
    const workbook = new MemoryWorkbook({
      Job: { A1: { formula: "=_xldudf_REAM_RPM(15,10)", value: "#NAME?" }, A2: "=1+1", A3: 5 },
      "Job 2": { B2: "=[2]!_xldudf_REAM_STOCK(A1)*2", B3: "=REAM.LIMITS(A1)" },
    });
    expect(
      await reenterFormulas(
        workbook,
        declarations.map(({ id }) => id),
      ),
    ).toEqual({ formulas: 3, sheets: 2, steps: 1 });
    expect(workbook.at("A1")).toBe("=REAM.RPM(15,10)");
    expect(workbook.at("B2", "Job 2")).toBe("=REAM.STOCK(A1)*2");
    expect(workbook.at("B3", "Job 2")).toBe("=REAM.LIMITS(A1)");
    expect(workbook.steps.length).toBe(1);
    expect(
      workbook.steps[0].flatMap(({ formulas }) => formulas.flat()).filter((one) => one !== undefined).length,
    ).toBe(3);
  });

  test("of none is refused", async () => {
    expect(await refusal(reenterFormulas(job({ A1: "=1+1" }), []))).toContain("no REAM formula");
  });
});

describe("a function put into a table", () => {
  const limits = help.functions.find(({ id }) => id === "LIMITS")!;
  const rpm = help.functions.find(({ id }) => id === "RPM")!;
  const inTable = () => {
    const workbook = job({ A2: "12 H7", B2: 10, C2: "" }).select("C2");
    workbook.table = "Jobs";
    return workbook;
  };

  test("gives its first cell by INDEX where it would spill", async () => {
    expect((await planFormula(inTable(), limits, [{ text: "=A2" }], "cell")).formula).toBe(
      "=INDEX(REAM.LIMITS(A2),1,1)",
    );
    expect((await planFormula(inTable(), rpm, [{ text: "15" }, { text: "=B2" }], "cell")).formula).toBe(
      "=REAM.RPM(15,B2)",
    );
  });

  test("does not fill a column", async () => {
    const workbook = inTable();
    workbook.content.get("Job")!.set("B3", { formula: 12 });
    expect(
      await refusal(planFormula(workbook, rpm, [{ text: "15" }, { text: "=B2:B3" }], "column")),
    ).toContain("table Jobs");
  });
});
