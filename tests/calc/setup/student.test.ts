// tests: quantiles of Student's t against its closed forms for 1, 2 and 4 degrees of freedom (W. T. Shaw, Sampling
// Student's T distribution, Journal of Computational Finance 9, 2006), and against the normal distribution.

import { erf } from "mathjs";
import { describe, expect, test } from "vitest";
import { normalQuantile, studentQuantile } from "../../../src/calc/setup/student.ts";

const shares = [
  1e-6, 0.001, 0.01, 0.1, 0.25, 0.4, 0.49, 0.499, 0.5, 0.501, 0.6, 0.75, 0.9, 0.975, 0.995, 0.9999,
];

const closed: Readonly<Record<number, (share: number) => number>> = {
  1: (share) => Math.tan(Math.PI * (share - 0.5)),
  2: (share) => (2 * share - 1) * Math.sqrt(2 / (1 - (2 * share - 1) ** 2)),
  4: (share) => {
    const alpha = 4 * share * (1 - share);
    const q = Math.cos(Math.acos(Math.sqrt(alpha)) / 3) / Math.sqrt(alpha);
    return Math.sign(share - 0.5) * 2 * Math.sqrt(Math.max(0, q - 1));
  },
};

describe.each([1, 2, 4])("of %d degrees of freedom", (freedom) => {
  test.each(shares)("%d", (share) => {
    const wanted = closed[freedom](share);
    expect(Math.abs(studentQuantile(share, freedom) - wanted)).toBeLessThanOrEqual(
      1e-7 + 1e-9 * Math.abs(wanted),
    );
  });
});

test.each(shares)(
  "of many degrees %d is nearly that of the normal distribution, whose share mathjs gives",
  (share) => {
    const normal = normalQuantile(share);
    expect((1 + erf(normal / Math.SQRT2)) / 2).toBeCloseTo(share, 12);
    // t ≈ z + (z³ + z)/(4ν): Abramowitz & Stegun, 26.7.5.
    const freedom = 10_000;
    expect(studentQuantile(share, freedom)).toBeCloseTo(normal + (normal ** 3 + normal) / (4 * freedom), 5);
  },
);
