import { describe, expect, test } from "vitest";
import { cell, down, messageOf, row, said, sheet } from "../support/sheet.ts";

describe("RUNOUT", () => {
  test("a row for each tool; readings of 0 count", () => {
    const cells = sheet("RUNOUT", down(0, 0), down(0.01, 0), down(0, 0), down(-0.01, 0));
    expect(cells).toEqual([
      [0.02, 90, 0.01],
      [0, 0, 0],
    ]);
  });

  test("no readings at all give an empty row, one missing an error", () => {
    expect(row("RUNOUT", null, null, "", null)).toEqual(["", "", ""]);
    expect(messageOf(cell("RUNOUT", 0, 0.003, null, 0.005))).toBe("at180 is empty. Enter a length.");
  });

  test("readings in inches come back in inches", () => {
    expect(row("RUNOUT", 0.0002, 0, -0.0002, 0, "in")).toEqual([0.0004, 0, 0.0002]);
  });

  test("readings of no round surface are refused", () => {
    expect(messageOf(cell("RUNOUT", 0.01, 0, 0.01, 0))).toMatch(/differ by 0\.02\. Clean the tool/);
  });
});

describe("RUNOUTAT", () => {
  test("lies on the line through the two readings, either side of them", () => {
    expect(sheet("RUNOUTAT", 0.004, 50, 0.01, 150, down(50, 100, 200, 0))).toEqual([
      [0.004],
      [0.007],
      [0.013],
      [0.001],
    ]);
  });

  test("takes two distances", () => {
    expect(messageOf(cell("RUNOUTAT", 0.004, 50, 0.01, 50, 200))).toMatch(
      /^distance1 and distance2 are both 50/,
    );
  });
});

test("RUNOUTCHECK: the limit itself is ok", () => {
  expect(
    sheet("RUNOUTCHECK", down(0, 0.005, 0.0051, "8"), undefined, "mm")
      .flat()
      .map(said),
  ).toEqual(["ok", "ok", "over by 0.0001", "over by 7.995"]);
});

describe("CHIPPATH", () => {
  test("takes what CALLOUT gives, and the words of drawings", () => {
    const [through, blind] = [cell("CHIPPATH", "through"), cell("CHIPPATH", "blind")];
    for (const one of [true, "TRUE", "THRU", " thru all ", cell("CALLOUT", "12 H7 THRU", "through")])
      expect(cell("CHIPPATH", one)).toBe(through);
    for (const one of [false, "FALSE", "Blind hole", cell("CALLOUT", "12 H7 x 30 DEEP", "through")])
      expect(cell("CHIPPATH", one)).toBe(blind);
    expect(cell("CHIPPATH", cell("CALLOUT", "12 H7", "through"))).toBe("");
  });

  test("a blocked way out is as blind, and a left-hand helix never goes into a blind hole", () => {
    expect(cell("CHIPPATH", "Through", "yes")).toBe(cell("CHIPPATH", "BLIND"));
    expect(cell("CHIPPATH", "blind", false, true)).toMatch(
      /never left-hand helix.*at least one edge always bearing/,
    );
  });

  test("a keyway asks for an edge that always bears", () => {
    expect(sheet("CHIPPATH", "through", down(false, true), [[false, true]])).toEqual([
      [expect.stringMatching(/^flush forward.*straight/), expect.stringMatching(/left-hand.*always bearing/)],
      [expect.stringMatching(/never left-hand helix$/), expect.stringMatching(/right-hand.*always bearing/)],
    ]);
  });

  test.each([
    [["bottomless"], /^holeKind "bottomless" is not known. Write "through" or "blind"/],
    [["through", "perhaps"], /^blocked is "perhaps". Write TRUE or FALSE/],
  ])("%j", (args, message) => {
    expect(messageOf(cell("CHIPPATH", ...args))).toMatch(message);
  });
});

describe("TOOLFOR", () => {
  const list = [down(0, 6, 12, null, 10), down(6, 12, 20, null, 13), down("R6", 12, "R20", null, "spare")];

  test("over, up to and including; the lowest includes its foot; the first of two", () => {
    expect(sheet("TOOLFOR", down(6, 6.001, 12, 12.5, 20), ...list)).toEqual([
      ["R6"],
      [12],
      [12],
      ["R20"],
      ["R20"],
    ]);
    expect(cell("TOOLFOR", 3, down(3), down(6), down("R6"))).toBe("R6");
  });

  test("empty rows give nothing beside a list that is filled", () => {
    expect(sheet("TOOLFOR", down(8, null, ""), ...list)).toEqual([[12], [""], [""]]);
  });

  test("a size in no range is no answer", () => {
    expect(messageOf(cell("TOOLFOR", 21, ...list), "#N/A")).toMatch(/^size is 21\. No range/);
  });

  test.each([
    [down(0, 6), down(6), down("a", "b"), /Make them the same size/],
    [down(0, 6), down(6, 5), down("a", "b"), /^over is 6 in position 2, not less than upTo 5/],
    [down(0, "six"), down(6, 12), down("a", "b"), /^over \(entry 2 of the list\) "six" is not a number/],
  ])("refuses %j, %j, %j", (over, upTo, entries, message) => {
    expect(messageOf(cell("TOOLFOR", 5, over, upTo, entries))).toMatch(message);
  });
});
