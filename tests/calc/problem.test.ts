// tests: what a calculation has no result for, told from a fault of the program.

import { expect, test } from "vitest";
import { none, Problem, resultOrProblem, shown, wrong } from "../../src/calc/problem.ts";

test("a result, or the Problem in its place", () => {
  expect(resultOrProblem(() => 12)).toBe(12);
  const refused = resultOrProblem(() => wrong("uptime is 85. Write 0.85 for 85 %."));
  expect(refused).toBeInstanceOf(Problem);
  expect(refused).toMatchObject({ kind: "wrong", message: "uptime is 85. Write 0.85 for 85 %." });
  expect(resultOrProblem(() => none("There is no payback."))).toMatchObject({ kind: "none" });
});

test("a fault is not taken for a Problem", () => {
  const fault = new TypeError("undefined is no function");
  expect(() =>
    resultOrProblem(() => {
      throw fault;
    }),
  ).toThrow(fault);
});

test.each([
  [12.5, "12.5"],
  [1e21, "1E+21"],
  [true, "TRUE"],
  [{}, "a cell of another kind"],
  [null, '"null"'],
  ["12 H7", '"12 H7"'],
  ["  12\tH7\u0000 \n", '"12 H7"'],
  ["x".repeat(40), `"${"x".repeat(40)}"`],
  ["x".repeat(41), `"${"x".repeat(40)}…"`],
])("%j is shown as %s", (value, text) => {
  expect(shown(value)).toBe(text);
});
