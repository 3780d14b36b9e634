import { describe, expect, it } from "vitest";
import { drillsOf } from "../../src/calc/stock/standard-drills.ts";
import { fractionDrills } from "../../src/data/drills/fraction-drills.ts";
import { letterDrills } from "../../src/data/drills/letter-drills.ts";
import { numberDrills } from "../../src/data/drills/number-drills.ts";

describe("number drills", () => {
  it("run backwards from #1 to #97", () => {
    expect(numberDrills.length).toBe(97);
    for (let index = 1; index < numberDrills.length; index++)
      expect(numberDrills[index]).toBeLessThan(numberDrills[index - 1]);
  });

  // Handbook drill tables.
  it.each([
    [1, 0.228],
    [2, 0.221],
    [3, 0.213],
    [7, 0.201],
    [10, 0.1935],
    [16, 0.177],
    [21, 0.159],
    [29, 0.136],
    [30, 0.1285],
    [36, 0.1065],
    [43, 0.089],
    [50, 0.07],
    [52, 0.0635],
    [60, 0.04],
    [69, 0.0292],
    [79, 0.0145],
    [80, 0.0135],
    [97, 0.0059],
  ])("#%d is %d in", (number, inches) => {
    expect(numberDrills[number - 1] / 1e4).toBe(inches);
  });
});

describe("letter drills", () => {
  it("run from A to Z, upward, above #1", () => {
    const entries = Object.entries(letterDrills);
    expect(entries.map(([letter]) => letter).join("")).toBe("ABCDEFGHIJKLMNOPQRSTUVWXYZ");
    let before: number = numberDrills[0];
    for (const [letter, diameter] of entries) {
      expect(diameter, letter).toBeGreaterThan(before);
      before = diameter;
    }
  });

  // Handbook drill tables.
  it.each([
    ["A", 0.234],
    ["E", 0.25],
    ["F", 0.257],
    ["I", 0.272],
    ["O", 0.316],
    ["Q", 0.332],
    ["U", 0.368],
    ["Z", 0.413],
  ] as const)("%s is %d in", (letter, inches) => {
    expect(letterDrills[letter] / 1e4).toBe(inches);
  });
});

describe("fraction drills", () => {
  it("are the 64ths to 1 in", () => {
    expect(fractionDrills).toEqual({ denominator: 64, first: 1, last: 64 });
  });
});

describe("metric drills", () => {
  // BS 328: .x0 .x2 .x5 .x8 to 1 mm, then by 0.05 to 3, by 0.1 to 14, by 0.25 to 25.
  it("are the series of BS 328", () => {
    const series: number[] = [];
    for (let tenth = 20; tenth < 100; tenth += 10) series.push(tenth, tenth + 2, tenth + 5, tenth + 8);
    for (let size = 100; size < 300; size += 5) series.push(size);
    for (let size = 300; size < 1400; size += 10) series.push(size);
    for (let size = 1400; size <= 2500; size += 25) series.push(size);
    const drills = drillsOf("metric", "mm").slice(0, series.length);
    expect(drills.map(({ name }) => name)).toEqual(series.map((size) => String(size / 100)));
    expect(drills.map(({ size }) => size)).toEqual(series.map((size) => size * 1e6));
  });
});
