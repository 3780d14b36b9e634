import { describe, expect, test } from "vitest";
import { cell, down, messageOf, said, sheet } from "../support/sheet.ts";

describe("PARTCOST", () => {
  test("a blank among the optional ones is its default, row by row", () => {
    // 90 per hour is 1.5 a minute; (48.75 + 90·300/3600)/400 is 0.140625.
    const cells = sheet(
      "PARTCOST",
      down(60, 60, 60),
      90,
      down(48.75, null, 0),
      down(400, "", 0),
      down(300, null, 0),
    );
    expect(cells).toEqual([[1.640625], [1.5], [1.5]]);
  });

  test.each([
    [[60, 90, 48.75], /^partsPerEdge is empty or 0 and edgeCost is 48\.75\. Enter the parts/],
    [[60, 90, 0, 0, 300], /^partsPerEdge is empty or 0 and changeTime is 300/],
    [[60, 90, null, null, null, null, 1], /^scrapRate is 1. Write a share from 0 to under 1/],
    [[60, 90, null, null, null, null, "2 x"], /^scrapRate "2 x" is not a number/],
    [[60, 0], /^machineRate is empty or 0/],
    [[-1, 90], /^cycleTime is -1. Write a number of 0 or more/],
    [["1,250", 90], /^cycleTime "1,250" could be 1.250 or 1250/],
    [[60, true], /^machineRate is TRUE/],
  ])("refuses %j", (args, message) => {
    expect(messageOf(cell("PARTCOST", ...args))).toMatch(message);
  });
});

describe("cost of an edge", () => {
  test("a new tool that is never reground costs its price", () => {
    expect(sheet("EDGECOST", 120, undefined, down(0, 1, 3), 30)).toEqual([[120], [75], [52.5]]);
  });

  test("no parts per edge is refused", () => {
    expect(messageOf(cell("TOOLCOST", 48.75, 0))).toMatch(/^partsPerEdge is empty or 0/);
  });
});

describe("PRICE", () => {
  test.each([
    [[10, 45, undefined, 250], /^setupRate is empty or 0 and setupTime is not/],
    [[10, 45, 90], /^batch is empty or 0 and setupTime is not/],
    [[10, null, null, null, null, 1], /^margin is 1. Write a share from 0 to under 1/],
  ])("refuses %j", (args, message) => {
    expect(messageOf(cell("PRICE", ...args))).toMatch(message);
  });
});

describe("savings", () => {
  test("a loss is negative, and money has no floating-point hair", () => {
    expect(sheet("SAVING", down(2.3, 2.2, 0.3), down(2.2, 2.3, 0.1))).toEqual([[0.1], [-0.1], [0.2]]);
  });

  test("without a saving nothing is paid back", () => {
    expect(messageOf(cell("PAYBACK", 6000, 0, 40000), "#N/A")).toMatch(/^savingPerPart is 0/);
  });
});

describe("BREAKEVEN", () => {
  test("takes decimals as they are written", () => {
    expect(cell("BREAKEVEN", 100, 2.3, 200, 2.2)).toBe(1000);
  });

  test("is 0 where the proposal is cheaper from the first part", () => {
    expect(sheet("BREAKEVEN", down(100, 100, 200), 2, 100, down(1.5, 1.9, 2))).toEqual([[0], [0], [0]]);
  });

  test.each([
    [[500, 1, 0, 2], /cheaper only below 500 parts\.$/],
    [[0, 2, 100, 2], /proposedFixed is more\. The proposal costs more/],
    [[100, 2, 100, 2], /^proposedFixed and proposedCost equal the present costs/],
    [[0, 1, 100, 2], /costs more at every quantity/],
  ])("%j has none, and the message says why", (args, message) => {
    expect(messageOf(cell("BREAKEVEN", ...args), "#N/A")).toMatch(message);
  });
});

describe("COMPARE", () => {
  const present = down(60, 90, 48.75, 400, 300, 40, 0.02);

  test("its lines add up to the cost per part, and PARTCOST agrees", () => {
    const cells = sheet("COMPARE", present, down(48, 90, 60, 800, 300, 40, 0.01), 1000);
    expect(cells.length).toBe(10);
    expect(cells.every((row) => row.length === 4)).toBe(true);
    for (const column of [1, 2]) {
      const lines = cells.slice(1, 6).map((row) => row[column] as number);
      expect(lines.reduce((sum, line) => sum + line, 0)).toBeCloseTo(cells[6][column] as number, 9);
    }
    expect(cells[6][1]).toBeCloseTo(cell("PARTCOST", 60, 90, 48.75, 400, 300, 40, 0.02), 9);
    expect(cells[9][1]).toBeCloseTo(42490.434, 3);
  });

  test("a blank counts as 0 and keeps its place", () => {
    const filled = sheet("COMPARE", down(60, 90, 0, 0, 0, 40, 0.02), present);
    expect(sheet("COMPARE", down(60, 90, null, "", " ", 40, 0.02), present)).toEqual(filled);
    expect(filled[4]).toEqual(["other operations", 40, 40, 0]);
    expect(filled[9]).toEqual(["cost per year", "", "", ""]);
  });

  test("columns that hold nothing yet give an empty cell", () => {
    expect(sheet("COMPARE", down(...new Array(7).fill(null)), down(...new Array(7).fill("")))).toEqual([
      [""],
    ]);
  });

  test.each([
    [down(60, 90), down(60, 90), /^present holds 2 values. Enter cycle time, machine rate/],
    [down(60, 90), present, /^present has 2 cells and proposed has 7. Make them the same size.$/],
    [down(null, 90, 0, 0, 0, 0, 0), present, /^present has the cycle time 0/],
    [present, down(60, null, 0, 0, 0, 0, 0), /^proposed has the machine rate 0/],
    [present, down(60, 90, 5, null, 0, 0, 0), /^proposed has an edge or a change and 0 parts per edge/],
    [present, down(60, 90, 0, 0, 0, 0, 2), /^proposed has the scrap rate 2/],
    [present, down(60, 90, "?", 0, 0, 0, 0), /^proposed \(entry 3 of the list\) "\?" is not a number/],
  ])("refuses %j beside %j", (one, other, message) => {
    const cells = sheet("COMPARE", one, other);
    expect(cells.length).toBe(1);
    expect(messageOf(cells[0][0])).toMatch(message);
  });

  test("takes one partsPerYear", () => {
    expect(said(cell("COMPARE", present, present, down(1000, 2000)))).toMatch(
      /partsPerYear is more than one cell/,
    );
  });
});
