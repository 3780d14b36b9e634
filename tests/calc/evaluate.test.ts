import fc from "fast-check";
import { expect, test } from "vitest";
import { evaluate as mathjsEvaluate } from "../../src/build/mathjs.ts";
import { evaluate } from "../../src/calc/evaluate.ts";

test.each([
  ["2 ^ 3 ^ 2", 512],
  ["-2 ^ 2", -4],
  ["2 ^ -1", 0.5],
  ["8 / 4 / 2", 1],
  ["10 - 4 - 3", 3],
  ["-(1 + 2) * 3", -9],
  ["1e-9 * 1e9 + .5", 1.5],
  ["min(3, 1 + 1, 4) + max(1, 2)", 4],
  ["roundup(3.15, 1) + roundup(7, 7) + roundup(0.00315, 0.001)", 11.004],
  ["sind(30) + cosd(60) + tand(45)", 2],
  ["atan2d(1, 0)", 90],
  ["ln(exp(2)) + abs(-3) + wholedown(2.7) + wholeup(2.1) + nearesteven(2.5)", 12],
  ["wholedown(408 - 1e-12) + wholeup(3 + 1e-12) + nearesteven(7) + roundto(0.126, 0.01)", 419.13],
  ["normal(0)", 0.5],
  ["rate * pi", 2 * Math.PI],
])("%s", (expression, value) => {
  expect(evaluate(expression, { rate: 2 })).toBeCloseTo(value, 12);
  expect(evaluate(expression, new Map([["rate", 2]]))).toBeCloseTo(value, 12);
});

test("sine and cosine are 0 where they are, not the last digits of floating point", () => {
  for (const text of ["sind(0)", "sind(180)", "sind(360)", "cosd(90)", "cosd(270)"])
    expect(evaluate(text, {})).toBe(0);
  for (const text of ["sind(90)", "cosd(0)", "-cosd(180)", "-sind(270)"])
    expect(evaluate(text, {})).toBeCloseTo(1, 15);
});

test("agrees with mathjs on random arithmetic", () => {
  const { expression } = fc.letrec<{ expression: string }>((tie) => ({
    expression: fc.oneof(
      { depthSize: "small", withCrossShrink: true },
      fc.constantFrom("1", "2.5", "a", "b", "0.125"),
      fc
        .tuple(tie("expression"), fc.constantFrom("+", "-", "*", "/"), tie("expression"))
        .map(([left, operator, right]) => `${left} ${operator} ${right}`),
      tie("expression").map((inner) => `(${inner})`),
      tie("expression").map((inner) => `-(${inner})^2`),
    ),
  }));
  fc.assert(
    fc.property(expression, (text) => {
      const scope = { a: 3, b: 0.75 };
      expect(evaluate(text, scope)).toEqual(mathjsEvaluate(text, { ...scope }));
    }),
  );
});

test.each([
  "",
  "1 +",
  "(1",
  "1)",
  "2 3",
  "unknown",
  "unknown(1)",
  "constructor",
  "toString(1)",
  "a = 1",
  "1; 2",
  "'x'",
])("%s is refused", (expression) => {
  expect(() => evaluate(expression, {})).toThrow();
});
