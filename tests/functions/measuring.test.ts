import { describe, expect, test } from "vitest";
import { associated } from "../support/custom-functions.ts";
import { cell, down, messageOf, row, said, sheet } from "../support/sheet.ts";

describe("VBLOCK", () => {
  test.each([
    [[15, 4], /^flutes is 4\. .*odd number.*micrometer/],
    [[15, 3, 90], /^angle is 90\. 3 flutes sit in a V of 60°/],
    [[0, 3], /^reading is 0\. Enter the height/],
  ])("refuses %j", (args, message) => {
    expect(messageOf(cell("VBLOCK", ...args))).toMatch(message);
  });

  test("reads inches in a sheet of mm", () => {
    expect(cell("VBLOCK", "0.75 in", 3)).toBeCloseTo(12.7, 7);
  });
});

describe("STACKUP", () => {
  test("takes single cells and ranges, blanks passed over, a 0 counted", () => {
    expect(
      sheet(
        "STACKUP",
        1,
        [
          [2, null],
          ["", "2"],
        ],
        0,
      ),
    ).toEqual([[3]]);
  });

  test("a host may hand the ranges over together, one range by itself, or a row", () => {
    const stackUp = associated.get("STACKUP")!;
    for (const given of [[[[3]], [[4]]], [[[3, 4]]], [[3], [4]], [[3, 4]], [3, 4]])
      expect(stackUp(given, { address: "A1" })).toEqual([[5]]);
  });

  test("nothing given is an empty cell", () => {
    expect(sheet("STACKUP", null)).toEqual([[""]]);
    expect(sheet("STACKUP", undefined, [["", " "]])).toEqual([[""]]);
    expect(sheet("STACKUP")).toEqual([[""]]);
  });

  test("a text that is no number spoils it, with its place", () => {
    expect(messageOf(cell("STACKUP", 3, "four"))).toMatch(
      /^contribution1 \(entry 2 of the list\) "four" is not a number/,
    );
  });

  test("its steps name every contribution", () => {
    expect(sheet("STEPS", "STACKUP", 3, 4).flat()).toContain("stackUp = √(3² + 4²)");
  });

  test("an error cell comes back as itself", () => {
    expect(cell("STACKUP", 3, { code: "#N/A" })).toMatchObject({ code: "#N/A" });
  });
});

test("INSPECT: a column against a column, one bad row by itself", () => {
  const cells = sheet(
    "INSPECT",
    down(12.018, 11.998, 12.021, null, 12),
    down("12 H7", "12 H7", "12 H7", "", "H7"),
  );
  expect(cells.flat().slice(0, 4)).toEqual(["ok", "under by 0.002", "over by 0.003", ""]);
  expect(messageOf(cells[4][0])).toMatch(/^callout "H7"/);
});

describe("CAPABILITY", () => {
  // Mean 10.009, s 0.0015, tolerance 15 µm: Cp 15/9, Cpk 6/4.5.
  const expected = ["1.666667", "1.333333", "10.009000", "0.001500"];
  const result = (...args: unknown[]) => row("CAPABILITY", ...args).map((one) => one.toFixed(6));

  test("texts that read as a length count, other texts, blanks and 0 are passed over", () => {
    const measured = down("size", 10.0075, "10,0105", null, 0, "scrap: 9.9", "-", "10.009 mm", "n/a");
    expect(result(measured, "10 H7")).toEqual(expected);
  });

  test("sizes in inches against a callout in mm", () => {
    const inches = [10.0075, 10.0105, 10.009].map((size) => size / 25.4);
    const [cp, cpk] = row("CAPABILITY", down(...inches), "10 mm +0.015/0", "in");
    expect([cp, cpk].map((one) => one.toFixed(4))).toEqual(["1.6667", "1.3333"]);
  });

  test("one list against a column of callouts", () => {
    const cells = sheet("CAPABILITY", down(10.0075, 10.0105, 10.009), down("10 H7", "", "10 H8"));
    expect(cells[0].map((one: any) => one.toFixed(6))).toEqual(expected);
    expect(cells[1]).toEqual(["", "", "", ""]);
    expect(cells[2][0] as number).toBeCloseTo(22 / 9, 6);
  });

  test.each([
    [down(10.01, "n/a"), /^measured has one size/],
    [down("n/a", "-"), /^measured has no sizes/],
    [down(10.01, 10.01), /^measured has 2 equal sizes/],
  ])("%j is no answer", (measured, message) => {
    const cells = row("CAPABILITY", measured, "10 H7");
    for (const one of cells) expect(messageOf(one, "#N/A")).toMatch(message);
  });

  test.each([
    [down(10.01, "1,250"), /^measured \(entry 2 of the list\) "1,250" could be 1.250 or 1250/],
    [down(10.01, true), /^measured \(entry 2 of the list\) is TRUE/],
    [down(10.01, -3), /^measured \(entry 2 of the list\) is -3/],
  ])("%j is refused", (measured, message) => {
    expect(messageOf(cell("CAPABILITY", measured, "10 H7"))).toMatch(message);
  });

  test("an error cell makes it that error, an empty range an empty row", () => {
    const missing = { code: "#N/A" };
    expect(row("CAPABILITY", down(10.01, missing, "n/a"), "10 H7")).toEqual(new Array(4).fill(missing));
    expect(row("CAPABILITY", down(null, ""), "10 H7")).toEqual(["", "", "", ""]);
  });
});

test("INTOLERANCE is symmetric about the middle of the tolerance", () => {
  // 10 H7 is 10 to 10.015.
  const [[low], [high]] = sheet("INTOLERANCE", down(10.0055, 10.0095), 0.002, "10 H7") as number[][];
  expect(low).toBeCloseTo(high, 12);
  expect(messageOf(cell("INTOLERANCE", 10.01, 0, "10 H7"))).toMatch(/^deviation is empty or 0/);
});

test("GAUGESHARE: a verdict beside each share", () => {
  expect(
    sheet("GAUGESHARE", down(0, 0.0003, 0.0008), 0.0004, "10 H7").map(([, verdict]) => said(verdict)),
  ).toEqual(["marginal", "marginal", "unfit"]);
});

describe("SIZEAT20", () => {
  test("at 20 °C and 68 °F is what was measured; 0 °C is a temperature", () => {
    expect(cell("SIZEAT20", 50, 20, "aluminum")).toBe(50);
    expect(cell("SIZEAT20", 2, 68, "aluminum", 68, "C45", "in")).toBe(2);
    expect(cell("SIZEAT20", 50, 0, "aluminum")).toBeGreaterThan(50);
  });

  test("a gauge of the part's own material at its temperature changes nothing", () => {
    expect(cell("SIZEAT20", 50, 35, "brass", 35, "brass")).toBe(50);
  });

  test("a material that is not known is named with its argument", () => {
    expect(messageOf(cell("SIZEAT20", 50, 30, "aluminum", 30, "granite"))).toMatch(/"granite" is not known/);
  });
});

describe("PLUGGAUGE", () => {
  test("a row for each callout, with an answer or not", () => {
    const cells = sheet("PLUGGAUGE", down("20 P7", "25 H8", null, "25 h7"));
    // GOST 24853-81, Table 2.
    expect(cells[0]).toEqual([19.966, 19.97, 19.962, 19.984, 19.988]);
    // The 10 % rule: 5 % of 33 µm at each end.
    expect(cells[1]).toEqual([25, 25.00165, 25, 25.03135, 25.033]);
    expect(cells[2]).toEqual(["", "", "", "", ""]);
    for (const one of cells[3]) expect(messageOf(one)).toMatch(/h7 is a shaft class/);
  });
});
