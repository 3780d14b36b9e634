// calc: how a calculation is written out for a user. A calculation that has a formula carries it as
// `calculation.formula`, beside the code that computes it; a test evaluates the lines and holds both together.

import type { SourceKey } from "../data/sources.ts";
import type { Units } from "./lengths.ts";

/** One line: `symbol = expression`, in the names of the arguments, of earlier lines, of defaults, and of `given`. */
export interface FormulaStep {
  readonly symbol: string;
  /** Operators `+ - * / ^`, brackets, `pi`, and the functions of evaluate.ts. */
  readonly expression: string;
  readonly unit: string;
  /** Which of the function's numbers this line is, from 0. Where no line says so, the last lines are, in order. */
  readonly result?: number;
}

/** A value by name, with its unit where its name is no argument's. */
export type Given = Readonly<Record<string, number | readonly [value: number, unit: string]>>;

export type Default = number | string | Readonly<Record<Units, number>>;

export interface Formula {
  /** The source key, as in src/data/sources.ts. */
  readonly source: SourceKey;
  /** What arguments left out stand for, by name. */
  readonly defaults?: Readonly<Record<string, Default>>;
  /** Values that the calculation looks up, from the calculation's own arguments. */
  readonly given?: (...args: any[]) => Given;
  /** The lines of the calculation; none where the answer is a comparison alone. */
  readonly steps: (units: Units, ...args: any[]) => readonly FormulaStep[];
  /** Lines of words before the steps: which rows of a table the values come from. */
  readonly lookup?: (units: Units, ...args: any[]) => readonly string[];
  /** Lines of words behind the steps: what is compared, and what follows from it. */
  readonly conclusion?: (units: Units, ...args: any[]) => readonly string[];
}

/** For each line of the steps the function's number that it is, undefined for a line on the way. */
export function resultsOf(steps: readonly FormulaStep[], count: number): (number | undefined)[] {
  if (steps.some(({ result }) => result !== undefined)) return steps.map(({ result }) => result);
  const first = steps.length - count;
  return steps.map((_, at) => (at >= first ? at - first : undefined));
}

/** The values that the lines start from, by name, each with its unit ("" where it has none or is an argument's). */
export function scopeOf(
  formula: Formula,
  names: readonly string[],
  values: readonly unknown[],
  units: Units,
): Map<string, readonly [value: number, unit: string | undefined]> {
  const scope = new Map<string, readonly [number, string | undefined]>();
  for (const [name, value] of Object.entries(formula.defaults ?? {})) {
    const own = typeof value === "object" ? value[units] : value;
    if (typeof own === "number") scope.set(name, [own, undefined]);
  }
  names.forEach((name, at) => {
    if (typeof values[at] === "number") scope.set(name, [values[at], undefined]);
  });
  for (const [name, value] of Object.entries(formula.given?.(...values) ?? {}))
    scope.set(name, typeof value === "number" ? [value, undefined] : value);
  return scope;
}
