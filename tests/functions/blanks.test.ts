// tests: empty cells, which arrive as null, as 0 or as an empty text, and the rows that they make empty.

import { describe, expect, test } from "vitest";
import { vocabulary } from "../../functions/arguments.ts";
import { across, cell, down, messageOf, row, sheet } from "../support/sheet.ts";

const BLANKS = [null, "", " ", "\u00a0", "\t \n", "\u3000\u200b\ufeff", 0];

describe("a required argument", () => {
  test.each(BLANKS)("blank as %j among filled ones is an error that says so", (blank) => {
    expect(messageOf(cell("RPM", 15, blank))).toBe("diameter is empty or 0. Enter a length over 0.");
    expect(messageOf(cell("RPM", blank, 10))).toBe("surfaceSpeed is empty or 0. Enter a number over 0.");
  });

  test("whose zero counts is blank when it is empty only", () => {
    expect(row("CLEANUP", 0.25, 0)).toEqual([0.125, 0.125]);
    expect(messageOf(row("CLEANUP", 0.25, null)[0])).toBe("offset is empty. Enter a length of 0 or more.");
  });
});

describe("an optional argument", () => {
  test.each(BLANKS)("blank as %j takes its default", (blank) => {
    expect(cell("PREDRILL", 12, blank, blank)).toBe(11.75);
    expect(row("DRILLDEPTH", 30, 2, 3, 11.7, blank)).toEqual(row("DRILLDEPTH", 30, 2, 3, 11.7, 118));
  });

  test("whose zero counts takes the zero", () => {
    // 12 − 0.25 of stock; the default of what the drill cuts over is 0.05.
    expect(cell("PREDRILL", 12, undefined, 0.05)).toBe(11.7);
    expect(cell("PREDRILL", 12, undefined, 0)).toBe(11.75);
    expect(cell("PREDRILL", 12, undefined, null)).toBe(11.75);
    expect(cell("PREDRILL", 12, undefined, "")).toBe(11.75);
  });

  test("may be blank in some rows of a column", () => {
    const uncapped = cell("RPM", 15, 10);
    const diameters = down(10, 10, 10, 10, 10);
    expect(sheet("RPM", 15, diameters, down(100, null, "", 0, 200)).flat()).toEqual([
      100,
      uncapped,
      uncapped,
      uncapped,
      200,
    ]);
  });

  test("that alone is a column makes the rows empty where it is blank", () => {
    expect(sheet("RPM", 15, 10, down(100, null, 200)).flat()).toEqual([100, "", 200]);
  });
});

describe("an empty row", () => {
  test("of single cells: every required argument is blank", () => {
    for (const blank of BLANKS) expect(sheet("RPM", blank, blank, 3000, "in")).toEqual([[""]]);
    expect(sheet("REAMERLIMITS", "")).toEqual([["", ""]]);
    expect(sheet("SHAREDREAMERS", null)).toEqual([[""]]);
  });

  test("of ranges: every argument given as more than one cell is blank there", () => {
    const cells = sheet("RPM", 15, down(10, null, "", 0, "  ", 20)).flat();
    expect(cells.slice(1, 5)).toEqual(["", "", "", ""]);
    expect([cells[0], cells[5]].map((one) => typeof one)).toEqual(["number", "number"]);
  });

  test("filled in one of two columns is an error", () => {
    const cells = sheet("RPM", down(15, null, 15, null), down(10, null, null, 10)).flat();
    expect(cells[1]).toBe("");
    expect(messageOf(cells[2])).toBe("diameter is empty or 0. Enter a length over 0.");
    expect(messageOf(cells[3])).toBe("surfaceSpeed is empty or 0. Enter a number over 0.");
  });

  test("of an optional column counts too: a filled one makes the row an error", () => {
    const cells = sheet("RPM", 15, down(10, null), down(null, 3000)).flat();
    expect(cells[0]).toBeCloseTo(477.464829, 6);
    expect(messageOf(cells[1])).toBe("diameter is empty or 0. Enter a length over 0.");
  });

  test("a zero that counts fills a row", () => {
    const cells = sheet("CLEANUP", down(0.25, 0, null), down(0, 0, null));
    expect(cells[0]).toEqual([0.125, 0.125]);
    expect(messageOf(cells[1][0])).toBe("stock is empty or 0. Enter a length over 0.");
    expect(cells[2]).toEqual(["", ""]);
  });

  test("beside a single cell in error stays empty", () => {
    expect(sheet("RPM", { code: "#N/A" }, down(null, null))).toEqual([[""], [""]]);
    expect(sheet("RPM", "abc", down(null, null))).toEqual([[""], [""]]);
  });

  test("in a grid is where both the column and the row are blank", () => {
    const grid = sheet("FEEDRATE", down(1, null), across(10, null));
    expect(grid[0][0]).toBe(10);
    expect(messageOf(grid[0][1])).toBe("rpm is empty or 0. Enter a number over 0.");
    expect(messageOf(grid[1][0])).toBe("feedPerRev is empty or 0. Enter a number over 0.");
    expect(grid[1][1]).toBe("");
  });
});

describe("the words of which a zero counts", () => {
  const counts = [
    ...["cutsOver", "drilledOver", "leadIn", "overrun", "offset", "thicknessTolerance", "scrapRate"],
    ...["at0", "at90", "at180", "at270", "reading1", "reading2", "reading", "runout", "contribution1"],
    ...["distance1", "distance2", "distance", "temperature", "gaugeTemperature"],
    ...["holeTime", "moveTime", "toolChange", "loadTime", "cycleTime", "presentCycle", "proposedCycle"],
    ...["cutTime", "changeTime", "setupTime", "edgeCost", "regrindCost", "otherCost", "cost", "price"],
    ...["presentCost", "proposedCost", "presentFixed", "proposedFixed", "savingPerPart"],
    ...["value", "handFigure", "expected"],
  ] as const;
  test.each(counts)("%s: it counts", (name) => {
    expect(vocabulary[name].zeroCounts).toBe(true);
  });

  const blank = [
    ...[
      "measured",
      "diameter",
      "size",
      "reamer",
      "thickness",
      "step",
      "depth",
      "drill",
      "stock",
      "surfaceSpeed",
    ],
    ...[
      "rpm",
      "maxRpm",
      "feedPerRev",
      "feedRate",
      "flutes",
      "pointAngle",
      "angle",
      "chamferAngle",
      "n",
      "c",
      "life",
    ],
    ...[
      "callout",
      "material",
      "tool",
      "units",
      "machineRate",
      "partsPerEdge",
      "partsPerYear",
      "batch",
      "holes",
    ],
  ] as const;
  test.each(blank)("%s: it is a blank", (name) => {
    expect(vocabulary[name].zeroCounts).toBe(false);
  });
});
