// tests: costs at the values where their rules change, worked by hand.

import { describe, expect, test } from "vitest";
import { breakEven, saving } from "../../../src/calc/cost/part-cost.ts";
import { lifeRange } from "../../../src/calc/cost/tool-stock.ts";
import type { Formula } from "../../../src/calc/formula.ts";
import { problemOf } from "../golden-file.ts";

const linesOf = (...costs: [number, number, number, number]) =>
  (breakEven.formula as Formula).steps("mm", ...costs).map(({ expression }) => expression);

describe("break-even", () => {
  test("names the quantity below which less fixed cost is cheaper", () => {
    // 500 less fixed against 2 more a part: 500/2.
    expect(problemOf(() => breakEven(600, 2, 100, 4))?.message).toMatch(/cheaper only below 250 parts\.$/);
    expect(problemOf(() => breakEven(100, 2, 101, 2))?.kind).toBe("none");
  });

  test.each<[number, number, number, number]>([
    [100, 3, 100, 2],
    [200, 3, 100, 2],
    [200, 2, 100, 2],
  ])("is 0 by rule, not by the quotient, for %d + %d a part against %d + %d", (...costs) => {
    expect(breakEven(...costs)).toBe(0);
    expect(linesOf(...costs)).toEqual(["0"]);
  });

  test("is the quotient where more fixed cost buys less per part", () => {
    expect(linesOf(100, 3, 300, 2)).toEqual([
      "(proposedFixed - presentFixed) / (presentCost - proposedCost)",
    ]);
  });
});

test("a range of lives takes two, and begins over 0", () => {
  expect(problemOf(() => lifeRange([]))?.message).toBe("lives has no lives, too few for a range.");
  expect(problemOf(() => lifeRange([720]))?.message).toBe("lives has one life, too few for a range.");
  // t at 0.975 and one degree of freedom is 12.7062: 705 ∓ 12.7062·5, and 55 − 12.7062·45 under 0.
  const [mean, low, high] = lifeRange([700, 710]);
  expect([mean, low, high].map((one) => Number(one.toFixed(3)))).toEqual([705, 641.469, 768.531]);
  expect(problemOf(() => lifeRange([10, 100]))).toMatchObject({
    kind: "none",
    message: "lives has 2 lives, too few for their scatter: the range would begin at 0 or below.",
  });
});

test("a saving of any size is a number", () => {
  expect(saving(1e300, 1)).toBe(1e300);
  expect(saving(100_000.1, 0.1)).toBeCloseTo(100_000, 9);
});
