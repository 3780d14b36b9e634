// tests: how a class comes about, in lines; and what it would be without Δ and in the ranges next to its size, for checks of
// hand figures. ISO 286-1:2010.

import { describe, expect, test } from "vitest";
import { classLines, neighborSizes, withoutDelta } from "../../../src/calc/fits/iso286-in-words.ts";
import { inTicks } from "../../support/ticks.ts";

const mm = (size: number) => inTicks(size * 1e8);
const um = (micrometers: number) => Math.round(micrometers * 1e5);

describe("a class without Δ", () => {
  // Over 18 to 24 mm: K −2 + Δ, N −15 + Δ, P −22 + Δ, R −28 + Δ; Δ is 8 µm of IT7 and 12 of IT8, which are 21 and 33 wide.
  test.each([
    [20, "K7", -23, -2],
    [20, "K8", -35, -2],
    [20, "N7", -36, -15],
    [20, "N8", -48, -15],
    [20, "P7", -43, -22],
    [20, "R7", -49, -28],
  ])("of %d %s is %d and %d µm", (size, className, lower, upper) => {
    expect(withoutDelta(mm(size), className, "mm")).toEqual({ lower: um(lower), upper: um(upper) });
  });

  test("is rounded to 0.00001 in in inches", () => {
    // −2 and −23 µm are −0.0000787 and −0.0009055 in, which is −0.00091.
    expect(withoutDelta(mm(20), "K7", "in")).toEqual({ lower: -91 * 25_400, upper: -8 * 25_400 });
  });

  test.each([
    ["P to ZC from grade 8 on", 20, "P8"],
    ["K to N from grade 9 on", 20, "N9"],
    ["to 3 mm", 3, "K7"],
    ["over 500 mm", 600, "K7"],
    ["holes to J", 20, "H7"],
    ["holes to J", 20, "J7"],
    ["JS, split evenly", 20, "JS7"],
    ["shafts", 20, "k6"],
    ["M6 over 250 to 315 mm, which has its own value", 280, "M6"],
  ])("there is none for %s", (_, size, className) => {
    expect(withoutDelta(mm(size), className, "mm")).toBeUndefined();
  });
});

test.each<[number, ...string[]]>([
  [20, "over 30 up to 50 mm", "over 10 up to 18 mm", "over 24 up to 30 mm", "over 14 up to 18 mm"],
  [2, "over 3 up to 6 mm", "over 3 up to 6 mm", "over 0 up to 1 mm"],
  [3000, "over 2000 up to 2500 mm", "over 2500 up to 2800 mm"],
])("the ranges next to that of %d mm", (size, ...texts) => {
  expect(neighborSizes(mm(size)).map(({ text }) => text)).toEqual(texts);
});

describe("the lines of a class", () => {
  // Standard tolerances, fundamental deviations and Δ of ISO 286-1:2010, Tables 1 to 5.
  const it7 = "IT7 over 18 up to 30 mm: 21 µm";
  test.each<[number, string, ...string[]]>([
    [20, "H7", it7, "fundamental deviation H, over 18 up to 30 mm: EI = 0 µm", "ES = EI + IT7 = 21 µm"],
    [20, "JS7", it7, "ES = +IT7/2, EI = −IT7/2"],
    [20, "js7", it7, "es = +IT7/2, ei = −IT7/2"],
    [20, "J7", it7, "fundamental deviation J, over 18 up to 30 mm: ES = 12 µm", "EI = ES − IT7 = −9 µm"],
    [20, "j7", it7, "fundamental deviation j, over 18 up to 30 mm: ei = −8 µm", "es = ei + IT7 = 13 µm"],
    [
      20,
      "K7",
      it7,
      "fundamental deviation K, over 18 up to 30 mm: ES = −2 µm + Δ",
      "Δ of IT7, over 18 up to 30 mm: 8 µm",
      "ES = −2 µm + 8 µm = 6 µm",
      "EI = ES − IT7 = −15 µm",
    ],
    [
      20,
      "R7",
      it7,
      "fundamental deviation R, over 18 up to 24 mm: ES = −28 µm + Δ",
      "Δ of IT7, over 18 up to 30 mm: 8 µm",
      "ES = −28 µm + 8 µm = −20 µm",
      "EI = ES − IT7 = −41 µm",
    ],
    [
      20,
      "P8",
      "IT8 over 18 up to 30 mm: 33 µm",
      "fundamental deviation P, over 18 up to 30 mm: ES = −22 µm",
      "EI = ES − IT8 = −55 µm",
    ],
    [20, "k7", it7, "fundamental deviation k, over 18 up to 30 mm: ei = 2 µm", "es = ei + IT7 = 23 µm"],
    [20, "g7", it7, "fundamental deviation g, over 18 up to 30 mm: es = −7 µm", "ei = es − IT7 = −28 µm"],
    [
      12,
      "c11",
      "IT11 over 10 up to 18 mm: 110 µm",
      "fundamental deviation c, over 10 up to 14 mm: es = −95 µm",
      "ei = es − IT11 = −205 µm",
    ],
    [
      0.5,
      "r6",
      "IT6 over 0 up to 3 mm: 6 µm",
      "fundamental deviation r, over 0 up to 3 mm: ei = 10 µm",
      "es = ei + IT6 = 16 µm",
    ],
  ])("%d %s", (size, className, ...lines) => {
    expect(classLines(mm(size), className)).toEqual(lines);
  });
});
