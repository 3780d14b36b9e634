// fill: the spreadsheet's sums, counts, means and ranks.

import { type Argument, type Context, matrixOf } from "../formula/evaluate.ts";
import {
  Area,
  CellError,
  divisionByZero,
  finite,
  type Matrix,
  notAvailable,
  numberError,
  type Scalar,
  toNumber,
  Unsupported,
  valueError,
} from "../formula/values.ts";
import { eachCell, many, type Named, number, numbers, ranged } from "./define.ts";

type OfNumbers = (values: readonly number[]) => Scalar;

/** Of all numbers in its arguments. */
const folded = (name: string, call: OfNumbers): Named =>
  ranged(name, 1, many, "r", (args, context) => call(numbers(args, context)), { overSheets: true });

/** From the left, as sheets add. */
function sum(values: readonly number[]): number {
  let total = 0;
  for (const value of values) total += value;
  return total;
}

const mean: OfNumbers = (values) =>
  values.length === 0 ? divisionByZero() : finite(sum(values) / values.length);

/** Mean square of the deviations; `less` is 1 for a sample. */
const variance =
  (less: 0 | 1, finish: (value: number) => number): OfNumbers =>
  (values) => {
    if (values.length <= less) return divisionByZero();
    const middle = sum(values) / values.length;
    const squares = values.map((value) => (value - middle) ** 2);
    return finite(finish(sum(squares) / (values.length - less)));
  };

const sorted = (values: readonly number[]) => [...values].sort((a, b) => a - b);
const least = (values: readonly number[]) =>
  values.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
const greatest = (values: readonly number[]) =>
  values.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);

/** The value under which a share of the others lies, between two of them in proportion. */
function percentile(values: readonly number[], share: number): Scalar {
  if (values.length === 0 || share < 0 || share > 1) return numberError();
  const order = sorted(values);
  const place = share * (order.length - 1);
  const below = Math.floor(place);
  const above = Math.min(below + 1, order.length - 1);
  return finite(order[below] + (place - below) * (order[above] - order[below]));
}

const ranked = (name: string, call: (values: readonly number[], which: number) => Scalar): Named =>
  ranged(name, 2, 2, "rv", (args, context) => call(numbers([args[0]], context), number(args, 1)));

const nth =
  (order: (values: readonly number[]) => number[]) =>
  (values: readonly number[], which: number): Scalar => {
    if (!Number.isInteger(which)) throw new Unsupported("a rank between two numbers");
    return order(values)[which - 1] ?? numberError();
  };

function rank(args: readonly Argument[], context: Context): Scalar {
  const value = number(args, 0);
  const list = numbers([args[1]], context);
  if (!list.includes(value)) return notAvailable();
  const ascending = number(args, 2) !== 0;
  return 1 + list.filter((other) => (ascending ? other < value : other > value)).length;
}

function sumOfProducts(args: readonly Argument[], context: Context): Scalar {
  // Whether a lone text or truth counts as a number is told differently everywhere.
  if (args.some((arg) => typeof arg === "string" || typeof arg === "boolean"))
    throw new Unsupported("SUMPRODUCT of a text or a truth value");
  const matrices = args.map((arg) => matrixOf(arg ?? null, context));
  const rows = matrices.map((matrix) => matrix.length);
  const columns = matrices.map((matrix) => matrix[0]?.length ?? 0);
  const sameSize = [rows, columns].every((sizes) => sizes.every((size) => size === sizes[0]));
  if (!sameSize) {
    // Areas that reach to the end of the sheet are cut where their own sheets end.
    if (args.some((arg) => arg instanceof Area))
      throw new Unsupported("SUMPRODUCT over ranges that differ in size");
    return valueError();
  }
  const products: number[] = [];
  matrices[0].forEach((line, row) => {
    for (let column = 0; column < line.length; column++) products.push(productOf(matrices, row, column));
  });
  return finite(sum(products));
}

function productOf(matrices: readonly Matrix[], row: number, column: number): number {
  let product = 1;
  for (const matrix of matrices) {
    const value = matrix[row][column]!;
    if (value instanceof CellError) throw value;
    // Texts and truths are 0.
    product *= typeof value === "number" ? value : 0;
  }
  return product;
}

/** SUBTOTAL passes over other subtotals and over rows that a filter hides. */
function subtotal(args: readonly Argument[], context: Context): Scalar {
  const which = Math.trunc(number(args, 0)) % 100;
  const call = subtotals[which - 1];
  if (!call) return valueError();
  for (const arg of args.slice(1)) {
    if (!(arg instanceof Area)) return valueError();
    if (context.cells.hasHiddenRows(arg.sheet)) throw new Unsupported("SUBTOTAL over hidden rows");
    if (context.cells.hasSubtotal(arg)) throw new Unsupported("a subtotal of subtotals");
  }
  return call(args.slice(1), context);
}

const countIf =
  (counts: (value: Scalar, isDirect: boolean) => boolean) =>
  (args: readonly Argument[], context: Context): number => {
    let count = 0;
    eachCell(args, context, (value, isDirect) => {
      if (counts(value, isDirect)) count++;
    });
    return count;
  };

const countNumbers = countIf(
  (value, isDirect) => typeof value === "number" || (isDirect && typeof toNumber(value) === "number"),
);
const countFilled = countIf((value, isDirect) => value !== null || isDirect);

/** Also cells that hold an empty text; those beyond the end of the sheet are empty too. */
function countBlank([arg]: readonly Argument[], context: Context): Scalar {
  if (!(arg instanceof Area)) return valueError();
  const size = (arg.bottom - arg.top + 1) * (arg.right - arg.left + 1);
  return size - countIf((value) => value !== null && value !== "")([arg], context);
}

const ofNumbers: Readonly<Record<string, OfNumbers>> = {
  SUM: (values) => finite(sum(values)),
  PRODUCT: (values) => (values.length === 0 ? 0 : finite(values.reduce((a, b) => a * b, 1))),
  SUMSQ: (values) => finite(sum(values.map((value) => value * value))),
  AVERAGE: mean,
  MIN: (values) => (values.length === 0 ? 0 : least(values)),
  MAX: (values) => (values.length === 0 ? 0 : greatest(values)),
  MEDIAN: (values) => (values.length === 0 ? numberError() : percentile(values, 0.5)),
  "STDEV.S": variance(1, Math.sqrt),
  STDEV: variance(1, Math.sqrt),
  "STDEV.P": variance(0, Math.sqrt),
  STDEVP: variance(0, Math.sqrt),
  "VAR.S": variance(1, (value) => value),
  VAR: variance(1, (value) => value),
  "VAR.P": variance(0, (value) => value),
  VARP: variance(0, (value) => value),
};
const over = (name: string) => (args: readonly Argument[], context: Context) =>
  ofNumbers[name](numbers(args, context));

/** By SUBTOTAL's numbers, from 1. */
const subtotals = [
  over("AVERAGE"),
  countNumbers,
  countFilled,
  over("MAX"),
  over("MIN"),
  over("PRODUCT"),
  over("STDEV.S"),
  over("STDEV.P"),
  over("SUM"),
  over("VAR.S"),
  over("VAR.P"),
];

export const statistics: readonly Named[] = [
  ...Object.entries(ofNumbers).map(([name, call]) => folded(name, call)),
  ranged("COUNT", 1, many, "r", countNumbers, { overSheets: true }),
  ranged("COUNTA", 1, many, "r", countFilled, { overSheets: true }),
  ranged("COUNTBLANK", 1, 1, "r", countBlank),
  ranked(
    "LARGE",
    nth((values) => sorted(values).reverse()),
  ),
  ranked("SMALL", nth(sorted)),
  ranked("PERCENTILE", percentile),
  ranked("PERCENTILE.INC", percentile),
  ...["QUARTILE", "QUARTILE.INC"].map((name) =>
    ranked(name, (values, which) => percentile(values, Math.trunc(which) / 4)),
  ),
  ranged("RANK", 2, 3, "vrv", rank),
  ranged("RANK.EQ", 2, 3, "vrv", rank),
  ranged("SUMPRODUCT", 1, many, "a", sumOfProducts),
  ranged("SUBTOTAL", 2, many, "vr", subtotal),
];
