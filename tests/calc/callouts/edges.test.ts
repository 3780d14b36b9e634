// tests: callouts at the edges of what a text may be: its line breaks, signs of other scripts, and the fewest decimals.

import { describe, expect, test } from "vitest";
import { limitsOf } from "../../../src/calc/callouts/callout.ts";
import { readCallout } from "../../../src/calc/callouts/read-callout.ts";
import { fromTicks, type Units } from "../../../src/calc/lengths.ts";
import { problemOf } from "../golden-file.ts";

function limits(text: string, units: Units = "mm"): number[] {
  const { lower, upper } = limitsOf(readCallout(text, "callout", units), units);
  return [fromTicks(lower, units), fromTicks(upper, units)];
}
const refusal = (text: string, units: Units = "mm") =>
  problemOf(() => readCallout(text, "callout", units))?.message;

describe("limits one above the other", () => {
  const breaks = ["\n", "\r\n", "\v", "\f", "\u0085", "\u2028", "\u2029", "\n\n", "\n \n", " \n\t\n "];
  test.each(breaks.map((one) => [JSON.stringify(one), one]))("apart by %s", (_, lineBreak) => {
    expect(limits(`12.018${lineBreak}12.000`)).toEqual([12, 12.018]);
    expect(limits(`12${lineBreak}H7`)).toEqual([12, 12.018]);
    expect(readCallout(`12 H7${lineBreak}DEBURR`, "callout", "mm").note).toBe("DEBURR");
  });

  test("have two decimals or more in mm, three or more in inches, as many in both", () => {
    expect(limits("12.05\n12.00")).toEqual([12, 12.05]);
    expect(limits(".501\n.500", "in")).toEqual([0.5, 0.501]);
    expect(refusal("12.5\n12.0")).toContain("For two limits write 12.5/12.0.");
    expect(refusal(".51\n.50", "in")).toContain("For two limits write .51/.50.");
    expect(refusal("12.018\n12.00")).toContain("12.018/12.00");
  });

  test("have a diameter sign before or behind", () => {
    expect(limits("Ø12.018\nØ12.000")).toEqual([12, 12.018]);
    expect(limits("12.018 Ø\n12.000 Ø")).toEqual([12, 12.018]);
  });
});

describe("signs of Chinese and Japanese drawings", () => {
  test.each([
    ["12 H7、4箇所", 4],
    ["12 H7。4箇所", 4],
    ["12 H7。", 1],
    ["１２ Ｈ７", 1],
  ])("%s", (text, count) => {
    expect(limits(text)).toEqual([12, 12.018]);
    expect(readCallout(text, "callout", "mm").count).toBe(count);
  });
  test("a wide comma is a comma, a wave dash joins limits", () => {
    expect(limits("12，5 H7")).toEqual([12.5, 12.518]);
    expect(readCallout("12 H7，DEBURR", "callout", "mm").note).toBe("DEBURR");
    expect(limits("12.000〜12.018")).toEqual([12, 12.018]);
  });
});

test("a fraction of one character stands alone or behind a whole number", () => {
  expect(limits("½ +.001/0", "in")).toEqual([0.5, 0.501]);
  expect(limits("1½ +.001/0", "in")).toEqual([1.5, 1.501]);
  expect(limits("Ø½ +.001/0", "in")).toEqual([0.5, 0.501]);
});

describe("counts and depths behind REAM are no size", () => {
  test.each([
    ["11.7 DRILL, 12 H7 REAM 4 HOLES", 4],
    ["11.7 DRILL, 12 H7 REAM 4 PLACES", 4],
    ["DRILL 11.7, REAM 4 HOLES 12 H7", 4],
    ["11.7 DRILL, 12 H7 REAM 30 DEEP", 1],
  ])("%s", (text, count) => {
    expect(limits(text)).toEqual([12, 12.018]);
    expect(readCallout(text, "callout", "mm").count).toBe(count);
  });
});

test("a lost decimal mark is said with both places where it may have stood", () => {
  expect(refusal("12 -002/0")).toMatch(
    /has a deviation of 002\. Write its decimal point, like \.002 or 0\.02\.$/,
  );
});

test("a taper is said to be one", () => {
  expect(refusal("12 H7 1:50")).toContain("taper or cone");
});

test("a count apart from a size as wide as a depth's tolerance is doubtful: from 0.2 mm or .010 in on", () => {
  expect(refusal("4 x 12 +0.2/0")).toContain("could be 4 holes of 12, or a hole of 4 that is 12 deep");
  expect(limits("4 x 12 +0.19/0")).toEqual([12, 12.19]);
  expect(limits("4X 12 +0.2/0")).toEqual([12, 12.2]);
  expect(refusal("4 x .5000 +.0100/0", "in")).toContain("could be 4 holes of .5000");
  expect(limits("4 x .5000 +.0099/0", "in")).toEqual([0.5, 0.5099]);
});

test("a class turned around is told from other numbers before letters", () => {
  expect(refusal("12 7H")).toContain("has 7H. A class begins with its letter: is H7 meant?");
  for (const text of ["12 123H", "12 7ABC", "12 7 H"]) expect(refusal(text)).toContain("needs its sign");
});

test("words are joined to one note, and the parts of it by commas", () => {
  const note = (text: string) => readCallout(text, "callout", "mm").note;
  expect(note("12 H7 SLIP FIT, DEBURR")).toBe("SLIP FIT, DEBURR");
  expect(note("12 H7 SLIP\nFIT")).toBe("SLIP FIT");
});

test("the hole of a fit is a hole, in ISO and in inches", () => {
  for (const text of ["12 H7/g6", "12 g6/H7", ".5000 in RC4"])
    expect(readCallout(text, "callout", "mm").kind).toBe("hole");
  for (const text of ["12 h7", "dia 12 g6"]) expect(readCallout(text, "callout", "mm").kind).toBe("shaft");
});
