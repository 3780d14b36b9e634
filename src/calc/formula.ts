// calc: how a calculation is written out for a person. A calculation that has a formula carries it as
// `calculation.formula`, beside the code that computes it; a test evaluates the lines and holds both together.

import type { SourceKey } from "../data/sources.ts";
import type { Units } from "./lengths.ts";

/** One line: `symbol = expression`, in the names of the arguments, of earlier lines and of `given`. */
export interface FormulaStep {
  readonly symbol: string;
  /** Operators `+ - * / ^`, brackets, `pi`, and the functions of evaluate.ts. */
  readonly expression: string;
  readonly unit: string;
}

export interface Formula {
  /** The source key, as in src/data/sources.ts. */
  readonly source: SourceKey;
  /** Values that the calculation looks up (table values, defaults), by name, from the calculation's own arguments. */
  readonly given?: (...args: any[]) => Readonly<Record<string, number>>;
  /** The lines, last the result (for several results each has a line, in order, the last ones). */
  readonly steps: (units: Units, ...args: any[]) => readonly FormulaStep[];
}
