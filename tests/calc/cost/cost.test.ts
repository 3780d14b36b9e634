import fc from "fast-check";
import { linearRegression, linearRegressionLine, rSquared } from "simple-statistics";
import { describe, expect, test } from "vitest";
import { compare } from "../../../src/calc/cost/compare.ts";
import {
  breakEven,
  edgeCost,
  partCost,
  payback,
  price,
  saving,
  toolCost,
} from "../../../src/calc/cost/part-cost.ts";
import {
  costAtSpeed,
  economicSpeed,
  fastestSpeed,
  partsPerEdge,
  taylorFit,
  taylorLife,
  taylorSpeed,
} from "../../../src/calc/cost/tool-life.ts";
import { cpkBound } from "../../../src/calc/cost/tool-stock.ts";
import { golden, problemOf } from "../golden-file.ts";

golden("taylor-fit", taylorFit);
golden("taylor-life", taylorLife);
golden("taylor-speed", taylorSpeed);
golden("parts-per-edge", partsPerEdge);
golden("economic-speed", economicSpeed);
golden("fastest-speed", fastestSpeed);
golden("cost-at-speed", costAtSpeed);
golden("edge-cost", edgeCost);
golden("tool-cost", toolCost);
golden("part-cost", partCost);
golden("price", price);
golden("saving", saving);
golden("payback", payback);
golden("break-even", breakEven);

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const near = (value: number, wanted: number, share = 1e-9) =>
  expect(Math.abs(value - wanted)).toBeLessThanOrEqual(share * Math.abs(wanted));

describe("tool life", () => {
  test("life and speed are inverse", () => {
    fc.assert(
      fc.property(between(5, 50), between(0.1, 0.9), between(20, 100), (speed, n, c) => {
        near(taylorSpeed(taylorLife(speed, n, c), n, c), speed);
      }),
    );
  });

  test("a fit through points of the law gives the law back", () => {
    fc.assert(
      fc.property(between(0.1, 0.9), between(40, 100), (n, c) => {
        const speeds = [15, 20, 26, 31];
        const [fittedN, fittedC, fit] = taylorFit(
          speeds,
          speeds.map((speed) => taylorLife(speed, n, c)),
        );
        near(fittedN, n);
        near(fittedC, c);
        near(fit, 1);
      }),
    );
  });

  test("a fit agrees with a statistics library", () => {
    const speeds = [12, 15, 19, 26];
    const lives = [300, 160, 55, 21];
    const points = speeds.map((speed, index) => [Math.log(speed), Math.log(lives[index])]);
    const line = linearRegression(points);
    const [n, c, fit] = taylorFit(speeds, lives);
    near(n, -1 / line.m);
    near(c, Math.exp(-line.b / line.m));
    near(fit, rSquared(points, linearRegressionLine(line)));
  });

  test("no speed costs less than the economic one, none is faster than the fastest", () => {
    fc.assert(
      fc.property(
        between(0.1, 0.45),
        between(30, 200),
        between(5, 100),
        between(20, 200),
        between(1, 2),
        between(0.5, 1.5),
        (n, c, edge, rate, factor, times) => {
          const timePerPart = (speed: number) => factor / speed + 2 / speed / taylorLife(speed, n, c);
          const costPerPart = (speed: number) =>
            ((rate / 60) * factor) / speed + ((rate / 60) * 2 + edge) / speed / taylorLife(speed, n, c);
          const best = economicSpeed(n, c, 120, edge, rate, factor);
          const fastest = fastestSpeed(n, c, 120, factor);
          expect(costPerPart(best)).toBeLessThanOrEqual(costPerPart(best * times) * (1 + 1e-12));
          expect(timePerPart(fastest)).toBeLessThanOrEqual(timePerPart(fastest * times) * (1 + 1e-12));
          expect(best).toBeLessThan(fastest);
        },
      ),
    );
  });

  test("cost at speed is the same in inches", () => {
    const metric = costAtSpeed(18, 0.25, 60, 12, 0.3, 30, 120, 40, 90, 2);
    const foot = 1 / 0.3048;
    const inch = costAtSpeed(
      18 * foot,
      0.25,
      60 * foot,
      12 / 25.4,
      0.3 / 25.4,
      30 / 25.4,
      120,
      40,
      90,
      2,
      "in",
    );
    metric.forEach((value, index) => {
      near(inch[index], value);
    });
  });

  test("messages", () => {
    expect(problemOf(() => taylorFit([20], [60]))?.message).toMatch(/hold 1 pair\. A fit needs two/);
    expect(problemOf(() => taylorFit([20, 20], [60, 50]))?.message).toMatch(/^speeds are all 20/);
    expect(problemOf(() => taylorFit([20, 25], [60, 60]))?.message).toMatch(/lives are all the same/);
    expect(problemOf(() => economicSpeed(0.2, 60, 0, 0, 90))?.message).toMatch(
      /^changeTime and edgeCost are both empty or 0/,
    );
  });
});

describe("cost", () => {
  test.each([
    [100, 2, 100, 1, 0],
    [200, 2, 100, 2, 0],
    [200, 3, 100, 2, 0],
    [100, 3, 200, 2, 100],
    [0.1, 2.3, 0.3, 2.2, 2],
  ])(
    "%d + %d a part against %d + %d a part breaks even at %d",
    (fixed, cost, otherFixed, otherCost, parts) => {
      expect(breakEven(fixed, cost, otherFixed, otherCost)).toBeCloseTo(parts, 9);
    },
  );

  test("a saving has no floating-point hair, and none is 0", () => {
    expect(saving(2.3, 2.2)).toBe(0.1);
    expect(saving(1, 1 + 1e-12)).toBe(0);
    expect(Object.is(saving(1, 1 + 1e-12), 0)).toBe(true);
    expect(saving(3e6, 1e6)).toBe(2e6);
  });

  test("an edge that costs nothing, and a change that takes none, need no parts per edge", () => {
    expect(partCost(60, 60)).toBe(1);
    expect(partCost(60, 60, 0, 0, 0)).toBe(1);
    expect(problemOf(() => partCost(60, 60, 10))?.kind).toBe("wrong");
  });

  const rate = between(1, 500);
  test("a part costs more with a dearer machine, edge, scrap or longer cycle, and less with a longer life", () => {
    fc.assert(
      fc.property(rate, rate, rate, between(1.01, 3), (cycle, machine, edge, factor) => {
        const base = partCost(cycle, machine, edge, 100, 60, 1, 0.1);
        expect(partCost(cycle * factor, machine, edge, 100, 60, 1, 0.1)).toBeGreaterThan(base);
        expect(partCost(cycle, machine * factor, edge, 100, 60, 1, 0.1)).toBeGreaterThan(base);
        expect(partCost(cycle, machine, edge * factor, 100, 60, 1, 0.1)).toBeGreaterThan(base);
        expect(partCost(cycle, machine, edge, 100, 60, 1, 0.1 * factor)).toBeGreaterThan(base);
        expect(partCost(cycle, machine, edge, 100 * factor, 60, 1, 0.1)).toBeLessThan(base);
      }),
    );
  });

  test("at the break-even quantity both cost the same", () => {
    fc.assert(
      fc.property(
        between(0, 1e4),
        between(1, 10),
        between(1, 1e4),
        between(0.1, 0.9),
        (fixed, part, more, share) => {
          const quantity = breakEven(fixed, part, fixed + more, part * share);
          near(fixed + part * quantity, fixed + more + part * share * quantity, 1e-6);
        },
      ),
    );
  });

  test("the lines of a comparison add up to the cost of a part", () => {
    const present = [60, 90, 48.75, 400, 300, 40, 0.02];
    const proposed = [42, 90, 120, 1500, 300, 30, 0.01];
    const table = compare(present, proposed, 400000);
    expect(table.map((row) => row.length)).toEqual(Array(10).fill(4));
    expect(table[0]).toEqual(["line", "present", "proposed", "saving"]);
    const cell = (row: number, column: number) => table[row][column] as number;
    for (const column of [1, 2, 3]) {
      near(
        [1, 2, 3, 4, 5].reduce((sum, row) => sum + cell(row, column), 0),
        cell(6, column),
      );
      near(cell(9, column), cell(6, column) * 400000);
    }
    // By hand: 1.5 + 48.75/400 + 7.5/400 + 40, over .98; 1.05 + 120/1500 + 7.5/1500 + 30, over .99.
    near(cell(6, 1), 41.640625 / 0.98);
    near(cell(6, 2), 31.135 / 0.99);
    near(cell(7, 3), 100 * (1 - 31.135 / 0.99 / (41.640625 / 0.98)));
    expect([cell(8, 1), cell(8, 2)]).toEqual([60, 3600 / 42]);
    expect(compare(present, proposed)[9]).toEqual(["cost per year", "", "", ""]);
  });

  test("messages", () => {
    expect(problemOf(() => partCost(60, 90, 48.75))?.message).toMatch(
      /^partsPerEdge is empty or 0 and edgeCost is 48.75/,
    );
    expect(problemOf(() => partCost(60, 90, 0, undefined, 60))?.message).toMatch(/changeTime is 60/);
    expect(problemOf(() => breakEven(600, 2, 100, 3))?.message).toMatch(/cheaper only below 500 parts\.$/);
    expect(problemOf(() => breakEven(100, 2, 200, 2))?.message).toMatch(
      /proposedFixed is more\. The proposal costs more/,
    );
    expect(problemOf(() => breakEven(100, 2, 100, 2))?.message).toMatch(/equal the present/);
    expect(problemOf(() => breakEven(100, 2, 200, 3))?.message).toMatch(/costs more at every quantity/);
    expect(problemOf(() => breakEven(100, 2, 100, 3))?.message).toMatch(/costs more at every quantity/);
    expect(problemOf(() => compare([1, 2], [1, 2]))?.message).toMatch(/^present holds 2 values/);
    expect(problemOf(() => compare([0, 1, 0, 0, 0, 0, 0], [1, 1, 0, 0, 0, 0, 0]))?.message).toMatch(
      /cycle time 0/,
    );
    expect(problemOf(() => compare([1, 1, 0, 0, 0, 0, 0], [1, 1, 5, 0, 0, 0, 0]))?.message).toMatch(
      /^proposed .* 0 parts per edge/,
    );
  });
});

test("a capability takes two parts or more", () => {
  // 1.33 − 1.644854·√(1/18 + 1.33²/2)
  expect(cpkBound(1.33, 2)).toBeCloseTo(-0.264749, 6);
  expect(problemOf(() => cpkBound(1.33, 1))?.message).toBe(
    "count is 1. Enter how many parts were measured, 2 or more.",
  );
});
