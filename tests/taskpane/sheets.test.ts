// tests: the new quoting sheet, and the copy with values.

import { describe, expect, test } from "vitest";
import { materials } from "../../src/data/materials/materials.ts";
import { callsOurs } from "../../src/taskpane/actions/formula-calls.ts";
import { freezeSheet } from "../../src/taskpane/actions/freeze-sheet.ts";
import { quotingSheet } from "../../src/taskpane/actions/quoting-sheet.ts";
import { columnLetters } from "../../src/workbook/workbook.ts";
import { MemoryWorkbook, refusal } from "../support/memory-workbook.ts";

describe("a quoting sheet", () => {
  test.each(["mm", "in"] as const)("in %s has its unit in the headers and in one cell", (units) => {
    const { columns, top } = quotingSheet(units, 30);
    expect(top[2][2]).toBe(units);
    const headers = columns.map(({ header }) => header);
    expect(headers.filter((header) => header.endsWith(`, ${units}`)).length).toBeGreaterThan(5);
    const other = units === "mm" ? /, in\b|, ft\// : /mm|, m\//;
    expect(headers.filter((header) => other.test(header))).toEqual([]);
  });

  test("has formulas over all its rows and nothing beside a row function's cells", () => {
    const { columns, top } = quotingSheet("mm", 12);
    const first = top.length + 2;
    const formulas = columns.filter(({ first: content }) => String(content ?? "").startsWith("="));
    for (const { first: formula } of formulas) {
      const ranges = String(formula).match(/[A-Z]+\d+:[A-Z]+\d+/g)!;
      for (const range of ranges) expect(range).toMatch(new RegExp(`^([A-Z])${first}:(?:\\1)${first + 11}$`));
    }
    const column = (header: string) => columns.findIndex((one) => one.header.startsWith(header));
    for (const spilled of [
      "Upper limit",
      "Reamer greatest",
      "Drill diameter",
      "Speed,",
      "Feed,",
      "Feed rate",
    ])
      expect(columns[column(spilled)].first, spilled).toBeUndefined();
  });

  test("its formulas read the columns that they name", () => {
    const { columns, top } = quotingSheet("mm", 12);
    const letter = (header: string) =>
      columnLetters(columns.findIndex((one) => one.header.startsWith(header)));
    const range = (header: string) =>
      `${letter(header)}${top.length + 2}:${letter(header)}${top.length + 13}`;
    const formula = (header: string) => columns.find((one) => one.header.startsWith(header))!.first;
    expect(formula("Drill")).toBe(`=REAM.DRILLFOR(${range("Nominal")},${range("Material")},,$C$3)`);
    expect(formula("Surface speed")).toBe(
      `=REAM.CUTTINGDATA(${range("Material")},${range("Nominal")},${range("Tool")},,$C$4,$C$3)`,
    );
    expect(formula("Per hole")).toBe(`=REAM.HOLETIME(${range("Depth")},${range("Feed rate")},,,,$C$3)`);
    expect(formula("Per part")).toBe(
      `=REAM.CYCLETIME(${range("Per hole")},${range("Holes")},$F$3,$F$4,$F$5)`,
    );
    expect(formula("Price")).toBe(`=REAM.PRICE(${range("Cost per part")},$I$3,$I$4,${range("Batch")},,$I$5)`);
    expect([top[2][1], top[3][1], top[2][3], top[3][3], top[4][3], top[2][6], top[3][6], top[4][6]]).toEqual([
      "Units",
      "Spindle limit, rev/min",
      "Move between holes, s",
      "Tool change, s",
      "Load and unload, s",
      "Set-up, min",
      "Set-up rate, per hour",
      "Margin on the price",
    ]);
  });

  test("offers every material and both tools", () => {
    const { columns } = quotingSheet("in", 5);
    expect(columns.find(({ header }) => header === "Material")!.choices).toEqual(
      materials.map(({ key }) => key),
    );
    expect(columns.find(({ header }) => header === "Tool")!.choices).toEqual(["HSS", "carbide"]);
  });

  test("refuses rows that are no whole number or too many", async () => {
    for (const rows of [0, 2.5, 1001, Number.NaN])
      expect(await refusal(() => quotingSheet("mm", rows))).toContain("from 1 to 1000");
  });
});

describe("a frozen copy", () => {
  test("has values where our formulas were", async () => {
    const workbook = new MemoryWorkbook({
      "Job's": {
        A1: { formula: "=REAM.RPM(15,10)", value: 477.4648 },
        A2: { formula: "=A1*2", value: 954.93 },
        A3: 5,
      },
    });
    expect(await freezeSheet(workbook)).toEqual({ name: "Job's (values)", replaced: 1, others: 1 });
    expect(workbook.at("A1", "Job's (values)")).toBe(477.4648);
    expect(workbook.at("A2", "Job's (values)")).toBe("=A1*2");
    expect(workbook.at("A1")).toBe("=REAM.RPM(15,10)");
  });

  test("is refused for an empty sheet, one without our formulas and one still at work, without a copy", async () => {
    for (const [cells, words] of [
      [{}, "empty"],
      [{ A1: "=SUM(A2:A3)", A2: "REAM.RPM" }, "no REAM formula"],
      [{ A1: { formula: "=REAM.RPM(15,10)", value: "#BUSY!" } }, "still computing"],
      [{ A1: { formula: "=_xldudf_REAM_RPM(15,10)", value: "#NAME?" } }, "show #NAME?"],
    ] as const) {
      const workbook = new MemoryWorkbook({ Job: cells });
      expect(await refusal(freezeSheet(workbook))).toContain(words);
      expect(workbook.content.size).toBe(1);
    }
  });

  test("knows a formula of ours by its call", () => {
    for (const formula of [
      "=REAM.RPM(1,2)",
      "=1+ream.rpm(1,2)",
      "=IF(A1,REAM.STOCK(B1),0)",
      "=_xldudf_REAM_RPM(1,2)",
      "=[2]!_xldudf_REAM_RPM(1,2)",
    ])
      expect(callsOurs(formula), formula).toBe(true);
    for (const formula of ['="REAM.RPM(1,2)"', "=DREAM.RPM(1)", "REAM.RPM(1,2)", "=A1"])
      expect(callsOurs(formula), formula).toBe(false);
  });
});
