// tests: runs a calculation over the rows of a golden file. Line 1 is the source, line 2 names the arguments in
// order, then `expected` (several results apart by "; ", a text, "~part of a text", #VALUE! or #N/A), the absolute
// `tolerance` and the row's own source.

import { describe, expect, test } from "vitest";
import { readCallout } from "../../src/calc/callouts/read-callout.ts";
import { evaluate } from "../../src/calc/evaluate.ts";
import { type Formula, resultsOf, scopeOf } from "../../src/calc/formula.ts";
import type { Units } from "../../src/calc/lengths.ts";
import { findMaterial } from "../../src/calc/materials/find-material.ts";
import { Problem } from "../../src/calc/problem.ts";
import { findTool } from "../../src/calc/tools.ts";
import { readRows } from "../support/csv.ts";
import { expectSentences } from "../support/refusal.ts";

type Calculation = ((...args: any[]) => any) & { formula?: Formula };

const lists = new Set(["speeds", "lives", "contributions"]);

function read(name: string, cell: string, units: Units, isList: boolean): unknown {
  if (cell === "") return undefined;
  if (isList) return cell.split(" ").map(Number);
  if (name === "callout") return readCallout(cell, name, units);
  if (name === "material" || name === "gaugeMaterial") return findMaterial(cell);
  if (name === "tool") return findTool(cell);
  return Number.isNaN(Number(cell)) ? cell : Number(cell);
}

/** The values of the lines that are a calculation's numbers, in their order. */
export function workedOut(
  formula: Formula,
  names: readonly string[],
  args: readonly unknown[],
  count: number,
) {
  const units = (args[names.indexOf("units")] ?? "mm") as Units;
  const scope: Record<string, number> = {};
  for (const [name, [value]] of scopeOf(formula, names, args, units)) scope[name] = value;
  const steps = formula.steps(units, ...args);
  for (const { symbol, expression } of steps) scope[symbol] = evaluate(expression, scope);
  const at = resultsOf(steps, count);
  return Array.from({ length: count }, (_, result) => scope[steps[at.indexOf(result)].symbol]);
}

export function golden(
  quantity: string,
  calculate: Calculation,
  listNames: ReadonlySet<string> = lists,
): void {
  const [head, ...rows] = readRows(quantity);
  const names = head.slice(0, -3);
  describe(quantity, () => {
    test.each(rows.map((cells) => [cells.join(","), cells] as const))("%s", (_, cells) => {
      const units = (cells[names.indexOf("units")] || "mm") as Units;
      const args = names.map((name, index) => read(name, cells[index], units, listNames.has(name)));
      const [expected, tolerance] = cells.slice(names.length);
      if (expected === "#VALUE!" || expected === "#N/A") {
        const problem = problemOf(() => calculate(...args));
        expect(problem?.kind).toBe(expected === "#N/A" ? "none" : "wrong");
        expectSentences(problem?.message);
        return;
      }
      const results = [calculate(...args)].flat() as (number | string)[];
      const wanted = expected.split("; ");
      if (typeof results[0] === "number") expect(results.length).toBe(wanted.length);
      for (const result of results) expect(Object.is(result, -0)).toBe(false);
      wanted.forEach((want, index) => {
        const result = results[index];
        if (typeof result === "number") {
          expect(Math.abs(result - Number(want)), `${result} for ${want}`).toBeLessThanOrEqual(
            Number(tolerance),
          );
        } else if (want.startsWith("~")) expect(result).toContain(want.slice(1));
        else expect(result).toBe(want);
      });
      if (calculate.formula === undefined) return;
      const numbers = results.filter((result) => typeof result === "number");
      if (calculate.formula.steps("mm", ...args).length === 0) return;
      const worked = workedOut(calculate.formula, names, args, numbers.length);
      numbers.forEach((number, index) => {
        expect(Math.abs(worked[index] - number)).toBeLessThanOrEqual(5.1e-8 + 1e-12 * Math.abs(number));
      });
    });
  });
}

/** The Problem that a call throws, if it does. */
export function problemOf(call: () => unknown): Problem | undefined {
  try {
    call();
  } catch (thrown) {
    if (thrown instanceof Problem) return thrown;
    throw thrown;
  }
  return undefined;
}
