// tests: the form of a hole against the rule worked apart from the code: whole micrometers, and the slope by a library.

import fc from "fast-check";
import { linearRegression } from "simple-statistics";
import { describe, expect, test } from "vitest";
import { holeForm } from "../../../src/calc/setup/hole-form.ts";
import { problemOf } from "../golden-file.ts";

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

/** By the rule: ok to 2 µm (.0001 in), the entry apart from the rest, else the larger of taper and barrel. */
function named(
  taper: number,
  bellMouth: number,
  barrel: number,
  rest: readonly number[],
  within: number,
): string {
  if (Math.max(Math.abs(taper), Math.abs(bellMouth), Math.abs(barrel)) <= within + 1e-9) return "ok";
  if (Math.max(...rest) - Math.min(...rest) < Math.abs(bellMouth) / 3 - 1e-9)
    return bellMouth > 0 ? "bell-mouth" : "tight entry";
  if (Math.abs(taper) >= Math.abs(barrel) - 1e-9) return "taper";
  return barrel > 0 ? "barrel" : "waist";
}

const offs = fc.oneof(fc.integer({ min: -3, max: 3 }), fc.integer({ min: -30, max: 30 }));
const holes = fc
  .array(offs, { minLength: 3, maxLength: 7 })
  .chain((own) =>
    fc.tuple(
      fc.constant(own),
      fc.shuffledSubarray([0, 1, 4, 9, 15, 22, 30, 41], { minLength: own.length, maxLength: own.length }),
    ),
  );

describe("the form of a hole", () => {
  test.each([
    ["mm", 12, 1000, 2],
    ["in", 0.5, 10_000, 1],
  ] as const)(
    "in %s is what the rule gives, whatever the order of the readings",
    (units, size, perUnit, within) => {
      fc.assert(
        fc.property(holes, ([off, positions]) => {
          const diameters = off.map((one) => (size * perUnit + one) / perUnit);
          const order = positions
            .map((position, at) => [position, off[at]] as const)
            .sort(([a], [b]) => a - b);
          const sorted = order.map(([, one]) => one);
          const [entry, ...rest] = sorted;
          const bottom = sorted[sorted.length - 1];
          const { m } = linearRegression(order.map(([position, one]) => [position, one]));
          const taper = m * (order[order.length - 1][0] - order[0][0]);
          const bellMouth = entry - mean(rest);
          const half = (sorted.length - 1) / 2;
          const barrel = (sorted[Math.floor(half)] + sorted[Math.ceil(half)]) / 2 - (entry + bottom) / 2;
          const [...form] = holeForm(diameters, positions, units);
          const name = form.pop();
          [taper, bellMouth, barrel].forEach((wanted, at) => {
            expect(Math.abs((form[at] as number) * perUnit - wanted)).toBeLessThanOrEqual(6e-8 * perUnit);
          });
          // At the edge of a rule the rounding of the figures to 1e-7 decides.
          const [own, mouth, middle] = form.map((one) => (one as number) * perUnit);
          expect(name).toBe(named(own, mouth, middle, rest, within));
        }),
        { numRuns: 200 },
      );
    },
  );

  test("takes readings at the same depth as one, and three depths at least", () => {
    expect(holeForm([12.02, 12.0, 12.01, 12.0], [0, 0, 10, 20])).toEqual(
      holeForm([12.01, 12.01, 12.0], [0, 10, 20]),
    );
    expect(problemOf(() => holeForm([12, 12], [3, 3]))?.message).toBe(
      "positions has 1 different position. Measure at three or more.",
    );
    expect(problemOf(() => holeForm([12, 12], [3, 5]))?.message).toBe(
      "positions has 2 different positions. Measure at three or more.",
    );
  });
});
