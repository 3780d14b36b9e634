// tests: which drills a refusal names. Stock over 5 to 20 mm is 0.2 to 0.3 mm, half of it in hardened steel; metric
// drills go by 0.25 mm above 14 mm and by 0.1 mm under it.

import { expect, test } from "vitest";
import { findMaterial } from "../../../src/calc/materials/find-material.ts";
import { drillFor, drillLeaving } from "../../../src/calc/stock/drill-name.ts";
import { problemOf } from "../golden-file.ts";

test.each([
  [15, "0.1 to 0.15 mm of stock: 14.75 mm leaves 0.25, 15 mm leaves 0."],
  [14.7, "0.1 to 0.15 mm of stock: 14.5 mm leaves 0.2."],
  [0.2, "0.01 to 0.025 mm of stock: 0.2 mm leaves 0."],
  [0.1, "0.01 to 0.025 mm of stock."],
])("hardened steel, %d mm", (diameter, rest) => {
  const problem = problemOf(() => drillFor(diameter, findMaterial("hardened steel")));
  expect(problem?.kind).toBe("none");
  expect(problem?.message).toBe(`diameter is ${diameter}. No standard drill leaves ${rest}`);
});

test("a drill for a stock of one's own is the nearest under the size, of two as near the larger", () => {
  expect(drillLeaving(12, 0.25)).toEqual(["11.8", 11.8, 0.2]);
  expect(drillLeaving(12, 0.26)).toEqual(["11.7", 11.7, 0.3]);
  // Never the size itself.
  expect(drillLeaving(12, 0.01)).toEqual(["11.9", 11.9, 0.1]);
  expect(drillLeaving(12, 100)[0]).toBe("0.2");
  expect(problemOf(() => drillLeaving(0.1, 0.05))?.message).toBe(
    "diameter is 0.1. No standard drill is smaller.",
  );
  expect(problemOf(() => drillLeaving(0.2, 0.05))?.kind).toBe("none");
  expect(drillLeaving(0.5, 1 / 64, "in")).toEqual(["31/64", 0.484375, 0.015625]);
});
