// tests: the quoting sheet computed in the grid, on the invented shop's parts. The figures behind the prices were worked
// out in Python from the rules of speed, feed, time and cost, not by this program.

import { beforeAll, describe, expect } from "vitest";
import { materials } from "../../src/data/materials/materials.ts";
import { continueQuote } from "../../src/taskpane/actions/continue-quote.ts";
import { quoteColumns } from "../../src/taskpane/actions/quote-columns.ts";
import {
  letterOf,
  quotingSheet,
  rowFormulas,
  settingCell,
} from "../../src/taskpane/actions/quoting-sheet.ts";
import { shopTable, shopTableFaults, shopTablesOf } from "../../src/taskpane/actions/shop-table.ts";
import { exampleParts, typeParts } from "../support/example-parts.ts";
import { type FunctionGrid, functionGrid, gridOf } from "../support/function-grid.ts";
import { refusal } from "../support/memory-workbook.ts";
import { longTest, quickTest } from "../support/share.ts";

type Key = (typeof quoteColumns)[number]["key"];
const shown = (grid: FunctionGrid, key: Key, row: number) => grid.shown(`${letterOf(key)}${row}`);
const value = (grid: FunctionGrid, key: Key, row: number) => grid.value(`${letterOf(key)}${row}`) as number;

async function quoted(): Promise<FunctionGrid> {
  const grid = gridOf(quotingSheet(6));
  typeParts(grid);
  return grid;
}

describe("a quoting sheet of mixed rows", () => {
  let grid: FunctionGrid;
  beforeAll(async () => {
    grid = await quoted();
  });

  quickTest("gives the prices of the invented shop", () => {
    const price = [9, 10, 11].map((row) => [shown(grid, "price", row), shown(grid, "amount", row)]);
    expect(price).toEqual([
      ["3.44", "860.00"],
      ["3.72", "930.00"],
      ["3.64", "364.00"],
    ]);
    expect(grid.shown("B3")).toBe("2,154.00");
    expect(grid.shown("B4")).toBe("0");
    expect(value(grid, "price", 9)).toBeCloseTo(3.44494, 5);
  });

  quickTest.each<[Key, number[], number]>([
    ["speed", [13.716, 47.244, 30], 4],
    ["rpm", [363.8282, 939.8895, 229.1831], 3],
    ["feed", [0.352, 0.516267, 0.0132], 5],
    ["feedRate", [128.0675, 485.2336, 3.0252], 3],
    ["holeTime", [29.9842, 7.4191, 57.5165], 3],
    ["partTime", [108.9684, 84.6764, 103.5165], 3],
    ["edgeCost", [18.75, 65.25, 19.3333], 3],
    ["cost", [2.28067, 2.47393, 2.15219], 4],
    ["depthUsed", [30, 40, 1.25], 6],
    ["holesUsed", [2, 4, 1], 6],
    ["stock", [0.2, 0.25, 0.015625], 6],
  ])("computes %s in the unit of each row", (key, expected, digits) => {
    expected.forEach((number, index) => {
      expect(value(grid, key, 9 + index), `${key} of row ${9 + index}`).toBeCloseTo(number, digits);
    });
  });

  quickTest("shows sizes in their own decimals, and drills by name", () => {
    expect([9, 10, 11].map((row) => shown(grid, "upper", row))).toEqual(["12.018", "16.018", "0.5005"]);
    expect([9, 10, 11].map((row) => grid.value(`${letterOf("drill")}${row}`))).toEqual([
      "11.8",
      "15.75",
      "31/64",
    ]);
    expect([9, 10, 11].map((row) => shown(grid, "reamerSize", row))).toEqual(["12.010", "16.010", "0.5002"]);
  });

  quickTest("leaves rows without a callout empty", () => {
    for (const { key, isInput } of quoteColumns) if (!isInput) expect(shown(grid, key, 12), key).toBe("");
  });

  quickTest("every setting moves the price", async () => {
    const changed = await quoted();
    for (const [key, other] of Object.entries({
      machineRate: 80,
      setupTime: 60,
      setupRate: 90,
      maxRpm: 200,
      overhead: 0.2,
      margin: 0.1,
      scrap: 0.05,
      edgeChange: 600,
      moveTime: 9,
      toolChange: 12,
      loadTime: 60,
    })) {
      const before = value(changed, "price", 9);
      changed.type(settingCell(key as "margin").replaceAll("$", ""), other);
      expect(value(changed, "price", 9), key).not.toBeCloseTo(before, 4);
    }
  });
});

describe("rows of a quoting sheet", () => {
  quickTest("take any name of a material or tool that the functions read", async () => {
    const { columns } = quotingSheet(2);
    const column = (header: string) => columns.find((one) => one.header === header)!;
    expect(column("Material").offers).toEqual(materials.map(({ key }) => key));
    expect([column("Material").choices, column("Tool").choices]).toEqual([undefined, undefined]);
    expect(column("Units").choices).toEqual(["mm", "in"]);
    const grid = await quoted();
    grid.type(`${letterOf("material")}9`, "4140");
    grid.type(`${letterOf("tool")}9`, "VHM");
    expect(value(grid, "price", 9)).toBeGreaterThan(0);
    grid.type(`${letterOf("material")}9`, "unobtainium");
    expect(shown(grid, "speed", 9)).toBe("#VALUE!");
    expect(grid.shown("B3")).toBe("not all rows have a price");
    expect(grid.shown("B4")).toBe("1");
  });

  quickTest("without tool figures are priced without the tool, and say so", async () => {
    const grid = await quoted();
    grid.type(`${letterOf("toolPrice")}9`, "");
    grid.type(`${letterOf("partsPerEdge")}9`, "");
    expect(value(grid, "cost", 9)).toBeCloseTo((72 * 108.9684) / 3600 / 0.99, 4);
    expect(shown(grid, "notes", 9)).toBe("(tool and edge change are not in the cost)");
    grid.type(`${letterOf("partsPerEdge")}9`, 300);
    expect(value(grid, "cost", 9)).toBeCloseTo(((72 * 108.9684) / 3600 + (72 * 240) / 3600 / 300) / 0.99, 4);
    grid.type(`${letterOf("partsPerEdge")}9`, "");
    grid.type(`${letterOf("toolPrice")}9`, 42);
    expect(shown(grid, "cost", 9)).toBe("#VALUE!");
  });

  quickTest("read their own row alone, so that they can be sorted, moved and inserted", () => {
    for (const [key, formula] of rowFormulas({})) {
      const cells = formula.replace(/"[^"]*"/g, "").match(/\$?[A-Z]{1,2}\$?(?:\d+|\{row\})/g)!;
      for (const cell of cells) expect(cell, key).toMatch(/^(?:[A-Z]{1,2}\{row\}|\$[A-Z]\$[3-6])$/);
    }
  });

  quickTest("follow their inputs when those are sorted", async () => {
    const grid = await quoted();
    const sheetId = grid.model.getters.getActiveSheetId();
    const right = quoteColumns.filter(({ isInput }) => isInput).length - 1;
    const result = grid.model.dispatch("SORT_CELLS", {
      sheetId,
      col: 0,
      row: 8,
      zone: { left: 0, right, top: 8, bottom: 10 },
      sortDirection: "asc",
      sortOptions: {},
    } as any);
    expect(result.isSuccessful).toBe(true);
    expect([9, 10, 11].map((row) => shown(grid, "part", row))).toEqual(["LV-5", "PB-12", "VB-40"]);
    expect([9, 10, 11].map((row) => shown(grid, "price", row))).toEqual(["3.64", "3.44", "3.72"]);
  });

  quickTest("get their formulas where they are added below or inserted between", async () => {
    const grid = await quoted();
    const sheetId = grid.model.getters.getActiveSheetId();
    grid.model.dispatch("ADD_COLUMNS_ROWS", {
      sheetId,
      sheetName: grid.model.getters.getSheetName(sheetId),
      dimension: "ROW",
      base: 9,
      quantity: 1,
      position: "before",
    } as any);
    typeParts(grid, [exampleParts[2]], 10);
    typeParts(grid, [exampleParts[1]], 18);
    expect(shown(grid, "price", 10)).toBe("");
    expect(await continueQuote(grid.workbook, 0, {})).toBe(4);
    expect([9, 10, 11, 12, 18].map((row) => shown(grid, "price", row))).toEqual([
      "3.44",
      "3.64",
      "3.72",
      "3.64",
      "3.72",
    ]);
    expect(grid.shown("B3")).toBe("3,448.00");
    expect(await refusal(continueQuote(functionGrid().workbook, 3, {}))).toContain("no quoting sheet");
  });

  quickTest("are refused if they are no whole number or too many", async () => {
    for (const rows of [0, 2.5, 1001, Number.NaN])
      expect(await refusal(() => quotingSheet(rows))).toContain("from 1 to 1000");
  });
});

describe("the sheet", () => {
  quickTest("has its inputs first, its price last, and keeps part and callout in sight", () => {
    const { columns, frozenColumns, painted } = quotingSheet(3);
    expect(columns.slice(0, 2).map(({ header }) => header)).toEqual(["Part", "Callout"]);
    expect(frozenColumns).toBe(2);
    expect(columns.at(-1)!.header).toBe("Price per part");
    const inputs = columns.map(({ isInput }) => isInput === true);
    expect(inputs.lastIndexOf(true)).toBe(inputs.indexOf(false) - 1);
    const marked = painted!.filter(({ look }) => look === "input").map(({ area }) => area);
    for (const key of ["machineRate", "scrap", "loadTime", "currency"] as const)
      expect(marked).toContain(settingCell(key).replaceAll("$", ""));
  });
});

describe("the shop's table", () => {
  longTest("is read by new quotes, each row in its own unit", async () => {
    const grid = gridOf(shopTable("mm"), shopTable("in"));
    await grid.workbook.addSheet(quotingSheet(4, await shopTablesOf(grid.workbook)));
    typeParts(grid);
    grid.type(`${letterOf("tool")}10`, "coated carbide");
    expect(value(grid, "speed", 9)).toBe(12);
    expect(value(grid, "speed", 10)).toBe(90);
    expect(value(grid, "speed", 11)).toBe(30);
    expect(value(grid, "feed", 10)).toBe(1.2);
    expect(value(grid, "edgeCost", 9)).toBe(18.75);
    for (const key of ["toolPrice", "regrinds", "regrindCost", "partsPerEdge"] as const)
      grid.type(`${letterOf(key)}10`, "");
    expect(value(grid, "edgeCost", 10)).toBe(120);
    expect(value(grid, "partsUsed", 10)).toBe(900);
  });

  quickTest("rows that nobody's size reaches, that overlap, and unknown headers are pointed out", () => {
    const head = ["material", "tool", "over, mm", "up to, mm", "speed", "colour"];
    const faults = shopTableFaults([
      head,
      ["gray iron", "", 5, 20, 15, ""],
      ["GG25", "HSS", 10, 18, 15, ""],
      ["gray iron", "", 18, 30, 15, ""],
      ["gray iron", "", 40, 30, 15, ""],
      ["aluminum", "PCD", "", "", 15, ""],
      ["", "", "", "", "", ""],
      ["", "PCD", 1, 2, 15, ""],
    ]);
    expect(faults).toEqual([
      'F4: the functions know no column "colour"; only DATAFOR reads it.',
      "Row 8: no size is over 40 and up to 30.",
      "Row 11 has no material.",
      "Row 6 is never read: row 5 covers all its sizes.",
      "Rows 5 and 7 overlap: row 5 counts.",
    ]);
    const { top, columns, data } = shopTable("mm");
    expect(top.length).toBe(3);
    expect(data!.length).toBe(5);
    expect(shopTableFaults([columns.map(({ header }) => header), ...data!])).toEqual([]);
    expect(
      shopTableFaults([shopTable("in").columns.map(({ header }) => header), ...shopTable("in").data!], "in"),
    ).toEqual([]);
    const said = ["material", "over", "up to", "feed", "flutes"];
    expect(
      shopTableFaults([
        said,
        ["brass", "3/8 in", "1/2 in", "0.2 mm/rev", 6],
        ["brass", "3/8", 20, 0.2, 6],
        ["brass", 20, 30, 0.2, 6.5],
      ]),
    ).toEqual([
      expect.stringMatching(/^Row 6: .*"3\/8" is an inch size/),
      'Row 7: table column "flutes" has 6.5. Write a whole number, like 6.',
    ]);
  });
});
