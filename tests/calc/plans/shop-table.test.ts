// tests: which row of the shop's own table counts, and what of it is read: worked by hand from the tables here.

import { describe, expect, test } from "vitest";
import { dataFor, namedMaterial, namedTool } from "../../../src/calc/plans/shop-table.ts";
import { cell, messageOf, row } from "../../support/sheet.ts";
import { problemOf } from "../golden-file.ts";

type Table = readonly (readonly unknown[])[];
const find = (table: Table, column: string, material: string, tool?: string, diameter?: number) =>
  dataFor(table, column, namedMaterial(material), tool === undefined ? undefined : namedTool(tool), diameter);
const refusal = (...args: Parameters<typeof find>) => problemOf(() => find(...args));

describe("the row", () => {
  const sizes: Table = [
    ["Material", "over", "up to", "note"],
    ["C45", 6, 10, "second"],
    ["C45", 3, 6, "first"],
    ["C45", 10, null, "open"],
    ["C45", 12, 14, "behind"],
  ];
  test.each([
    [3, "first"],
    [3.01, "first"],
    [6, "first"],
    [6.01, "second"],
    [10, "second"],
    [10.01, "open"],
    [13, "open"],
    [500, "open"],
  ])("of %d mm goes over its lower end, up to and including its upper one: %s", (diameter, note) => {
    expect(find(sizes, "note", "C45", undefined, diameter)).toBe(note);
  });
  test.each([2.99, 0.1])("of %d mm is none: the lowest includes its lower end alone", (diameter) => {
    expect(refusal(sizes, "note", "C45", undefined, diameter)).toMatchObject({
      kind: "none",
      message: `table has no row for C45, HSS, ${diameter}.`,
    });
  });
  test("without a lower end begins at 0", () => {
    const table: Table = [
      ["material", "up to", "note"],
      ["C45", 6, "to six"],
    ];
    expect(find(table, "note", "C45", undefined, 0.5)).toBe("to six");
  });

  const names: Table = [
    ["material", "tool", "up to", "note"],
    ["gray iron", null, null, "group"],
    [" gg25 ", "", 10, "own name"],
    ["GG25", "carbide", null, "carbide"],
  ];
  test.each([
    ["GG25", undefined, 8, "own name"],
    ["gg25", "HSS", 8, "own name"],
    ["GG25", "carbide", 12, "carbide"],
    // Its own rows do not cover it: the group's does.
    ["GG25", "HSS", 12, "group"],
    ["GG20", "HSS", 8, "group"],
    ["gray iron", "PCD", 8, "group"],
    ["GG25", "VHM", 12, "carbide"],
  ])(
    "of %s, %s, %d: its own name before its group, a blank tool for all",
    (material, tool, diameter, note) => {
      expect(find(names, "note", material, tool, diameter)).toBe(note);
    },
  );
  test("of a material or tool of no name known here goes by the text alone", () => {
    const own: Table = [
      ["material", "tool", "note"],
      ["Alloy X", "special", "a"],
      ["Alloy Y", "special", "b"],
    ];
    expect(find(own, "note", "alloy y", "SPECIAL")).toBe("b");
    expect(refusal(own, "note", "Alloy Z", "special")?.message).toBe(
      "table has no row for Alloy Z, special.",
    );
    expect(refusal(own, "note", "Alloy X")?.message).toBe("table has no row for Alloy X, HSS.");
  });

  test("without a diameter counts where all rows of the material and tool agree", () => {
    const table: Table = [
      ["material", "tool", "over", "up to", "speed", "note"],
      ["C45", "HSS", 0, 10, 15, "small"],
      ["C45", "HSS", 10, 20, 15, "large"],
      ["C45", "carbide", 0, 20, 40, "carbide"],
    ];
    expect(find(table, "speed", "C45")).toBe(15);
    expect(find(table, "note", "C45", "carbide")).toBe("carbide");
    expect(refusal(table, "note", "C45")).toMatchObject({
      kind: "wrong",
      message: "diameter is empty, and the rows of C45 in table differ. Enter the diameter.",
    });
  });
});

describe("the entry", () => {
  const speeds: Table = [
    ["material", "speed low", "speed high", "feed"],
    ["a", 10, 20, 0],
    ["b", 10, null, " "],
    ["c", null, "20", "own"],
    ["d", null, null, true],
    ["e", "fast", 20, null],
    ["f", -1, 20, null],
  ];
  test.each([
    ["a", 15],
    ["b", 10],
    ["c", 20],
    ["d", ""],
  ])("of the speed of %s is the middle of the range, or the end that is there: %j", (material, speed) => {
    expect(find(speeds, "Speed", material)).toBe(speed);
  });
  test.each([
    ["a", 0],
    ["b", ""],
    ["c", "own"],
    ["d", true],
  ])("of another column is the cell, %s: %j", (material, entry) => {
    expect(find(speeds, "feed", material)).toBe(entry);
  });
  test("of a speed of its own is that one, though there is a range", () => {
    const table: Table = [
      ["material", "speed", "speed low", "speed high"],
      ["a", 17, 10, 20],
    ];
    expect(find(table, "speed", "a")).toBe(17);
    expect(find(table, "speed low", "a")).toBe(10);
  });
  test.each([
    ["e", 'table column "speed low" "fast" is not a number.'],
    ["f", 'table column "speed low" has -1. Write a number of 0 or more.'],
  ])("of %s is no number", (material, message) => {
    expect(refusal(speeds, "speed", material)?.kind).toBe("wrong");
    expect(refusal(speeds, "speed", material)?.message).toContain(message);
  });
  test("that has no column is refused with the headers, twelve at the most", () => {
    const many: Table = [["material", ...Array.from({ length: 14 }, (_, at) => `h${at + 1}`)], ["a"]];
    expect(refusal(many, "price", "a")?.message).toBe(
      'column "price" is not in table. Its headers are material, h1, h2, h3, h4, h5, h6, h7, h8, h9, h10, h11.',
    );
    expect(
      refusal(
        [
          ["material", "speed low"],
          ["a", 10],
        ],
        "speed",
        "a",
      )?.message,
    ).toBe('column "speed" is not in table. Its headers are material, speed low.');
    expect(refusal([[null, 3], ["a"]], "speed", "a")?.message).toBe(
      'table has no column "material". Its headers are empty.',
    );
    expect(refusal([], "speed", "a")?.message).toBe('table has no column "material". Its headers are empty.');
  });
  test.each(["Speed, m/min", "SPEED (m/min)", " speed [m/min]", "Speed"])(
    "under %j is the speed",
    (header) => {
      expect(
        find(
          [
            ["MATERIAL", header],
            ["a", 15],
          ],
          " Speed ",
          "a",
        ),
      ).toBe(15);
    },
  );
  test("under a name with underscores or more spaces is found", () => {
    expect(
      find(
        [
          ["material", "feed_per  tooth"],
          ["a", 0.1],
        ],
        "Feed per tooth",
        "a",
      ),
    ).toBe(0.1);
  });
});

describe("a header of the other unit is refused", () => {
  test.each([
    ["Speed, ft/min", "mm"],
    ["Feed (in)", "mm"],
    ["Feed per tooth [ipt]", "mm"],
    ["Feed, in/rev", "mm"],
    ["Over (inch)", "mm"],
    ["speed (sfm)", "mm"],
    ["Speed, m/min", "in"],
    ["Up to [MM]", "in"],
    ["Feed, mm/rev", "in"],
    ["Feed (mm/z)", "in"],
  ] as const)("%s with units %s", (header, units) => {
    const other = units === "mm" ? "in" : "mm";
    const table: Table = [
      ["material", header],
      ["a", 1],
    ];
    expect(
      problemOf(() => dataFor(table, "note", namedMaterial("a"), undefined, undefined, units))?.message,
    ).toBe(
      `table has the header "${header}", and units is "${units}". Set units to "${other}", or convert the table.`,
    );
  });
  test.each(["Price (EUR)", "Remark, own", "Speed, m/min"])("%s is read in mm", (header) => {
    expect(
      refusal(
        [
          ["material", header, "note"],
          ["a", 1, "n"],
        ],
        "note",
        "a",
      ),
    ).toBeUndefined();
  });
});

describe("a number with its unit", () => {
  const feedOf = (feed: unknown, units: "mm" | "in" = "mm", column = "feed", flutes: unknown = null) => {
    const table = [
      ["material", column, "flutes"],
      ["C45", feed, flutes],
    ];
    const size = units === "mm" ? "12 H7" : ".5000 +.0005/0";
    return row("PLAN", size, "C45", undefined, "HSS", undefined, table, units)[10];
  };
  test.each([
    [0.2, "mm", 0.2],
    ["0.2", "mm", 0.2],
    ["0,2 mm/rev", "mm", 0.2],
    ["0.01 in", "mm", 0.254],
    ["0.01 in/rev", "in", 0.01],
    ["0.254 mm", "in", 0.01],
  ] as const)("%j as a feed in %s is %d", (feed, units, expected) => {
    expect(feedOf(feed, units)).toBeCloseTo(expected, 12);
  });
  test("a feed per tooth is times the flutes, those of the table before the usual ones", () => {
    // 12 mm takes 1.5·√12 + 2, to the nearest even number 8.
    expect(feedOf(0.05, "mm", "feed per tooth")).toBeCloseTo(0.4, 12);
    expect(feedOf("0.05 mm", "mm", "feed per tooth", 6)).toBeCloseTo(0.3, 12);
    expect(messageOf(feedOf(0.05, "mm", "feed per tooth", 5.5))).toBe(
      'table column "flutes" has 5.5. Write a whole number, like 6.',
    );
  });
  test("a size goes by its own unit", () => {
    const table: Table = [
      ["material", "over", "up to", "note"],
      ["a", "6 mm", "1/2 in", "n"],
    ];
    expect(find(table, "note", "a", undefined, 12.7)).toBe("n");
    expect(refusal(table, "note", "a", undefined, 12.71)?.kind).toBe("none");
    expect(refusal(table, "note", "a", undefined, 5.9)?.kind).toBe("none");
  });
  test("an error cell is passed on", () => {
    const error = { code: "#DIV/0!" };
    const table = [
      ["material", "speed", "feed"],
      ["C45", 15, error],
    ];
    expect(cell("DATAFOR", table, "feed", "C45")).toMatchObject(error);
    expect(cell("DATAFOR", table, "speed", "C45")).toBe(15);
    expect(row("PLAN", "12 H7", "C45", undefined, "HSS", undefined, table)[10]).toMatchObject(error);
  });
});
