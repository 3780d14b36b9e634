// tests: a formula as people write it.

import { expect, test } from "vitest";
import { writtenSteps } from "../../../src/calc/checking/written-steps.ts";
import type { FormulaStep } from "../../../src/calc/formula.ts";

const linesOf = (steps: readonly FormulaStep[], values: readonly number[], results: readonly number[]) =>
  writtenSteps({
    formula: { source: "derived", steps: () => steps },
    names: ["a", "b"],
    values,
    units: "mm",
    results,
    unitOf: (name) => (name === "a" ? "mm" : ""),
  });

test.each<[string, readonly number[], string, string]>([
  ["a * b", [2, 3], "a · b", "2 mm · 3"],
  ["a - b", [2, -3], "a − b", "2 mm − (−3)"],
  ["a ^ 2", [2, 3], "a²", "(2 mm)²"],
  ["b ^ 2", [2, 3], "b²", "3²"],
  ["pi * a", [2, 3], "π · a", "π · 2 mm"],
  ["sqrt(a) + sind(b)", [4, 30], "√(a) + sin(b)", "√(4 mm) + sin(30)"],
  [
    "wholedown(a / b)",
    [7, 2],
    "a / b, rounded down to a whole number",
    "7 mm / 2, rounded down to a whole number",
  ],
  ["roundup(a, 0.5)", [2.2, 2], "a, rounded up to a whole 0.5", "2.2 mm, rounded up to a whole 0.5"],
  ["roundto(a * b, 0.5)", [2.2, 2], "a · b, rounded to 0.5", "2.2 mm · 2, rounded to 0.5"],
  ["nearesteven(a)", [5, 2], "a, the nearest even number", "5 mm, the nearest even number"],
  // What is not the whole line is said where it stands.
  ["2 * roundup(a, 0.5)", [2.2, 2], "2 · roundup(a, 0.5)", "2 · roundup(2.2 mm, 0.5)"],
  ["roundup(a, 0.5) * 2", [2.2, 2], "roundup(a, 0.5) · 2", "roundup(2.2 mm, 0.5) · 2"],
  ["-a", [2, 3], "−a", "−2 mm"],
  ["max(0, -a)", [2, 3], "max(0, −a)", "max(0, −2 mm)"],
  ["(-a)", [2, 3], "(−a)", "(−2 mm)"],
  ["a ^ -b", [2, 3], "a ^ −b", "(2 mm) ^ −3"],
  ["normal(b)", [2, 0], "Φ(b)", "Φ(0)"],
  ["inin(a)", [25.4, 2], "a, in in", "25.4 mm, in in"],
  // The brackets of the first do not close at the end.
  ["inin(a) + inin(b)", [25.4, 50.8], "in(a) + in(b)", "in(25.4 mm) + in(50.8)"],
  ["inin((a) + (b))", [25.4, 50.8], "(a) + (b), in in", "(25.4 mm) + (50.8), in in"],
])("%s", (expression, values, symbols, numbers) => {
  const lines = linesOf([{ symbol: "x", expression, unit: "mm" }], values, []);
  expect(lines.slice(0, 2)).toEqual([`x = ${symbols}`, `x = ${numbers}`]);
});

test("a result is shown as the function gives it, a line on the way as it is worked out", () => {
  const steps = [
    { symbol: "x", expression: "a / b", unit: "mm" },
    { symbol: "y", expression: "x * 2", unit: "mm" },
  ];
  // The function rounds to 1e-7.
  const lines = linesOf(steps, [1, 3], [0.6666667]);
  expect([lines[2], lines[4], lines[5]]).toEqual([
    "x = 0.333333333333 mm",
    "y = 0.333333333333 mm · 2",
    "y = 0.6666667 mm",
  ]);
});
