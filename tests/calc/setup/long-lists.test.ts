// tests: more readings than a call can spread out.

import { expect, test } from "vitest";
import { holeForm } from "../../../src/calc/setup/hole-form.ts";

test("the form of a hole measured 200,000 times", () => {
  const positions = Array.from({ length: 200_000 }, (_, at) => at / 1000);
  // 0.01 mm wider at the bottom than at the entry, in a straight line.
  const diameters = positions.map((position) => 12 + (0.01 * position) / 199.999);
  const [taper, bellMouth, barrel, name] = holeForm(diameters, positions);
  expect(taper).toBeCloseTo(0.01, 7);
  expect(bellMouth).toBeCloseTo(-0.005, 6);
  expect(barrel).toBeCloseTo(0, 7);
  expect(name).toBe("taper");
});
