// functions: a hand figure against the function that it was worked out for. Every usual mistake is made on the
// function's own inputs, and the one that gives the hand figure is named. Which mistakes people make is common
// practice, no source.

import { LENGTH_OK } from "../src/calc/checking/check-limits.ts";
import { offBy, placeOf, verdictInside } from "../src/calc/checking/written-digits.ts";
import type { Formula } from "../src/calc/formula.ts";
import { fromTicks, type Units } from "../src/calc/lengths.ts";
import { shown, wrong } from "../src/calc/problem.ts";
import { isBlank, isErrorCell } from "./cells.ts";
import { explanationOf } from "./map-rows.ts";
import { handedOver, type Matrix, type Registered, registered } from "./register.ts";
import { mistakesIn } from "./usual-mistakes.ts";

/** Functions whose results are lengths to be met to 0.0005 mm (0.00002 in), not to a share. */
const EXACT_LENGTHS = new Set([
  ...["LIMITS", "MINSIZE", "MAXSIZE", "MIDSIZE", "TOLERANCE", "CALLOUT", "UPPERDEV", "LOWERDEV", "ITWIDTH"],
  ...["CLEARANCE", "ACCEPTLIMITS", "REAMERLIMITS", "REAMERSIZE", "WEARALLOWANCE", "CUTSOVER", "PREPLATE"],
]);
const SHARE = 0.01;
/** Rounding on the way (3.14 for π) leaves this share; coarser figures than the other fit too many mistakes. */
const ROUNDED_ON_THE_WAY = 0.0006;
const COARSEST = 0.003;
const DIGITS = 1e-9;

/** `ok`, the mistake, or how far off. */
export function checkOf(functionName: string, handFigure: number, inputs: readonly Matrix[]): unknown {
  const id = functionName.toUpperCase().replace(/^REAM\./, "");
  const one = registered.get(id);
  if (!one || id === "CHECKOF" || id === "STEPS")
    return wrong(`functionName is ${shown(functionName)}. Write the name of a function, such as "RPM".`);
  const call = new Call(one, inputs);
  const results = call.results(call.cells);
  const [first] = results;
  if (isErrorCell(first)) return first;
  const numbers = results.filter((result): result is number => typeof result === "number");
  if (numbers.length === 0) return wrong(`functionName is ${id}, which gives no number to check against.`);
  const judge = new Judge(handFigure, EXACT_LENGTHS.has(id) ? call.units : undefined);
  const at = results.findIndex((result) => typeof result === "number" && judge.isOk(result));
  if (at >= 0) return results.length > 1 ? `ok: ${one.cells[at]?.name ?? `cell ${at + 1}`}` : "ok";
  // A mistake that changes nothing that the figure shows is none.
  const off = Math.min(...numbers.map((result) => Math.abs(result - handFigure)));
  const explains = (value: number) => judge.isMeant(value) && Math.abs(value - handFigure) < off / 2;
  const mistake = [...mistakesIn(call, numbers)].find(([, made]) => made.some(explains));
  if (mistake) return mistake[0];
  const nearest = numbers.reduce((a, b) => (Math.abs(b - handFigure) < Math.abs(a - handFigure) ? b : a));
  return judge.offFrom(nearest);
}

/** Holds a hand figure against others. */
class Judge {
  private readonly lengthOk: number | undefined;
  private readonly half: number;

  constructor(
    private readonly figure: number,
    units: Units | undefined,
  ) {
    this.lengthOk = units && fromTicks(LENGTH_OK[units], units) + DIGITS;
    this.half = placeOf(figure) / 2;
  }

  isOk(exact: number): boolean {
    if (this.lengthOk !== undefined) return Math.abs(this.figure - exact) <= this.lengthOk;
    return exact === 0 ? this.figure === 0 : verdictInside(this.figure, exact, SHARE) === "ok";
  }

  /** Whether the figure is this one to its own digits. */
  isMeant(value: number): boolean {
    const off = Math.abs(this.figure - value);
    if (!Number.isFinite(value) || value === 0) return false;
    if (this.lengthOk !== undefined) return off <= this.lengthOk;
    const share = off / Math.abs(value);
    return share <= ROUNDED_ON_THE_WAY || (off <= this.half && share <= COARSEST);
  }

  offFrom(expected: number): string {
    if (this.lengthOk !== undefined) {
      const off = Number((this.figure - expected).toFixed(7));
      return `${Math.abs(off)} ${off > 0 ? "high" : "low"}`;
    }
    if (expected === 0) return `${this.figure} for 0`;
    return verdictInside(this.figure, expected, SHARE) ?? offBy(this.figure, expected);
  }
}

/** A call of a function with single cells, that can be made again with others. */
export class Call {
  readonly cells: readonly unknown[];
  readonly names: readonly string[];
  readonly values: readonly unknown[];
  readonly units: Units;
  readonly formula: Formula | undefined;

  constructor(
    readonly one: Registered,
    inputs: readonly Matrix[],
  ) {
    this.cells = inputs.map((input) => (Array.isArray(input) && isSingle(input) ? input[0][0] : input));
    const how = explanationOf(this.run(this.cells));
    if (how && how.rows > 1)
      wrong(`inputs are ${how.rows} rows of ${one.id}. Enter one cell for each argument.`);
    this.names = how?.names ?? [];
    this.values = how?.values ?? [];
    this.formula = (how?.calculate as { formula?: Formula } | undefined)?.formula;
    this.units = this.values[this.names.indexOf("units")] === "in" ? "in" : "mm";
  }

  run(cells: readonly unknown[]): Matrix {
    const inputs = cells.map((cell) => (Array.isArray(cell) ? cell : [[cell]]) as Matrix);
    return this.one.call(...handedOver(this.one.call.length, inputs));
  }

  results(cells: readonly unknown[]): unknown[] {
    return this.run(cells)[0];
  }

  /** The numbers that the function gives with one cell changed, none where it gives an error. */
  with(changes: Readonly<Record<number, unknown>>): number[] {
    const last = Math.max(this.cells.length, ...Object.keys(changes).map((at) => Number(at) + 1));
    const cells = Array.from({ length: last }, (_, at) => (at in changes ? changes[at] : this.cells[at]));
    return this.results(cells).filter((result): result is number => typeof result === "number");
  }

  number(at: number): number | undefined {
    const value = this.values[at];
    return typeof value === "number" && !isBlank(this.cells[at]) ? value : undefined;
  }
}

const isSingle = (matrix: Matrix) => matrix.length === 1 && matrix[0]?.length === 1;
