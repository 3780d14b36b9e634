// functions: columns in, columns out. A calculation for one row becomes a worksheet function here; one bad row
// spoils only itself.

import type { Argument } from "./arguments.ts";
import { BLANK, OUTSIDE, PROBLEM, VALUE } from "./cell-reader.ts";
import { errorCell, isBlank, notAvailable, resultCell, valueError } from "./cells.ts";
import {
  ArgumentSpec,
  type ArgumentSpecs,
  type Call,
  type Column,
  cellsOf,
  differentSizes,
  readCall,
} from "./columns.ts";
import type { Matrix } from "./register.ts";

type Calculation = (...values: any[]) => any;

/** Marks an argument that is taken whole: it does not spread, and its blanks are skipped. */
export const list = (matrix: Matrix | undefined): ArgumentSpec => new ArgumentSpec(matrix, undefined, true);

/** Reads an argument, or each entry of a list, in another way than its name says in the vocabulary. */
export const readAs = (argument: Argument, given: Matrix | ArgumentSpec | undefined): ArgumentSpec =>
  given instanceof ArgumentSpec
    ? new ArgumentSpec(given.matrix, argument, given.whole)
    : new ArgumentSpec(given, argument, false);

/** A range taken whole, its blanks keeping their place; a wholly blank one is left out. */
export function wholeRange(matrix: Matrix | undefined): ArgumentSpec {
  const cells = cellsOf(matrix);
  const isLeftOut = cells.every((row) => row.every(isBlank));
  return new ArgumentSpec(isLeftOut ? undefined : [[cells]], undefined, false);
}

/** The ranges of a repeating argument as one list. */
export function repeated(ranges: unknown): ArgumentSpec {
  if (!Array.isArray(ranges)) return list(cellsOf(ranges));
  const isRow = (range: unknown) => Array.isArray(range) && !Array.isArray(range[0]);
  return list(ranges.flatMap((range) => (isRow(range) ? [range] : cellsOf(range))));
}

/** One result for each row, or for each cell of the grid where columns meet rows. */
export function mapRows(
  calculate: Calculation,
  required: ArgumentSpecs,
  optional: ArgumentSpecs = {},
): Matrix {
  const size = tooLarge(required, optional);
  if (size) return [[size]];
  const call = readCall(required, optional);
  const results = compute(calculate, call, 0);
  if (call.columns === 1) return explained(results, calculate, call);
  return Array.from({ length: call.rows }, (_, row) =>
    results.slice(row * call.columns, (row + 1) * call.columns).map(([cell]) => cell),
  );
}

/** More results than any sheet shows at once; a column of a whole sheet has 1,048,576. */
const MOST_RESULTS = 4_000_000;

/** The error for a grid larger than that, undefined otherwise. */
function tooLarge(required: ArgumentSpecs, optional: ArgumentSpecs): CustomFunctions.Error | undefined {
  let rows = 1;
  let columns = 1;
  for (const given of [...Object.values(required), ...Object.values(optional)]) {
    if (given instanceof ArgumentSpec && given.whole) continue;
    const cells = cellsOf(given);
    rows = Math.max(rows, cells.length);
    columns = Math.max(columns, cells[0].length);
  }
  if (rows * columns <= MOST_RESULTS) return undefined;
  return valueError(`The ranges make a grid of ${rows} by ${columns} results. Select smaller ranges.`);
}

/** `width` results for each row, side by side; an error or "" fills them all. */
export function mapToColumns(
  width: number,
  calculate: Calculation,
  required: ArgumentSpecs,
  optional: ArgumentSpecs = {},
): Matrix {
  const call = readCall(required, optional);
  if (call.columns > 1) {
    const [name] = Object.entries({ ...required, ...optional }).find(
      ([, given]) => !(given instanceof ArgumentSpec && given.whole) && cellsOf(given)[0].length > 1,
    )!;
    const error = valueError(`${name} is ${call.columns} columns wide. Give one column.`);
    return Array.from({ length: call.rows }, () => new Array(width).fill(error));
  }
  return explained(compute(calculate, call, width), calculate, call);
}

/** A result of its own shape, from lists and single values. */
export function spill(calculate: Calculation, required: ArgumentSpecs, optional: ArgumentSpecs = {}): Matrix {
  const call = readCall(required, optional);
  const many = call.arguments.find((column) => column.stride === 1 || column.turn);
  if (many) return [[valueError(`${many.name} is more than one cell. Give one.`)]];
  let shaped: unknown[][] | undefined;
  const [[cell]] = compute(
    (...values) => {
      shaped = calculate(...values) as unknown[][];
      return "";
    },
    call,
    0,
  ) as [[unknown]];
  return shaped
    ? explained(
        shaped.map((row) => row.map(resultCell)),
        calculate,
        call,
      )
    : [[cell]];
}

/** What a result was computed from: the calculation, and the values of its first row. */
export interface Explanation {
  readonly calculate: Calculation;
  readonly names: readonly string[];
  readonly values: readonly any[];
  /** Rows of the call, each a calculation of its own. */
  readonly rows: number;
}
const explanations = new WeakMap<Matrix, Explanation>();

/** How a result that a function gave came about; undefined for one that did not come from a calculation. */
export const explanationOf = (result: Matrix): Explanation | undefined => explanations.get(result);

function explained(result: Matrix, calculate: Calculation, call: Call): Matrix {
  for (const column of call.arguments) column.turn?.(0);
  explanations.set(result, {
    calculate,
    names: call.arguments.map((column) => column.name),
    values: call.arguments.map((column) => column.values[0]),
    rows: call.rows * call.columns,
  });
  return result;
}

/** The results in reading order, each an array of its cells; `width` 0 is one result that is no array. */
function compute(calculate: Calculation, call: Call, width: number): Matrix {
  const count = call.rows * call.columns;
  const results: Matrix = new Array(count);
  const evaluate = evaluator(calculate, call.arguments);
  const unclean = call.arguments.filter((column) => column.state !== undefined);
  const asked = askedOf(call.arguments);
  const turning = call.arguments.filter((column) => column.turn !== undefined);
  if (unclean.length === 0 && turning.length === 0) {
    for (let i = 0; i < count; i++) results[i] = cellsAt(evaluate, i, width);
    return results;
  }
  for (let i = 0; i < count; i++) {
    for (const column of turning) column.turn!(i);
    const instead = unclean.length === 0 ? undefined : insteadOfResult(asked, unclean, i);
    if (instead !== undefined) {
      results[i] = new Array(width || 1).fill(instead);
      continue;
    }
    results[i] = cellsAt(evaluate, i, width);
  }
  return results;
}

/** The cells of one result, all of them an error where it cannot be computed. */
function cellsAt(evaluate: (i: number) => any, i: number, width: number): any[] {
  try {
    const result = evaluate(i);
    return width === 0 ? [isPlain(result) ? result : resultCell(result)] : checkedCells(result);
  } catch (thrown) {
    return new Array(width || 1).fill(errorCell(thrown));
  }
}

function isPlain(result: unknown): boolean {
  return typeof result === "number" && result - result === 0 && result !== 0;
}

function checkedCells(cells: any[]): any[] {
  for (let k = 0; k < cells.length; k++) if (!isPlain(cells[k])) cells[k] = resultCell(cells[k]);
  return cells;
}

type Cells = ArrayLike<any>;

/** The calculation at a result cell; the usual short lists of arguments are passed without an array. */
function evaluator(calculate: Calculation, read: readonly Column[]): (i: number) => any {
  const values = read.map((column) => column.values);
  const strides = read.map((column) => column.stride);
  const [v0, v1, v2, v3] = values as [Cells, Cells, Cells, Cells];
  const [s0, s1, s2, s3] = strides as [number, number, number, number];
  switch (read.length) {
    case 1:
      return (i) => calculate(v0[i * s0]);
    case 2:
      return (i) => calculate(v0[i * s0], v1[i * s1]);
    case 3:
      return (i) => calculate(v0[i * s0], v1[i * s1], v2[i * s2]);
    case 4:
      return (i) => calculate(v0[i * s0], v1[i * s1], v2[i * s2], v3[i * s3]);
  }
  const row = new Array(read.length).fill(undefined);
  return (i) => {
    for (let k = 0; k < row.length; k++) row[k] = values[k][i * strides[k]];
    return calculate(...row);
  };
}

/** What stands in a cell that is not computed: "" for an empty row, an error cell; undefined if it is computed. */
function insteadOfResult(asked: readonly Column[], unclean: readonly Column[], i: number): unknown {
  let problem: unknown;
  let blank: Column | undefined;
  let isClean = true;
  for (const column of unclean) {
    const at = i * column.stride;
    const state = column.state![at];
    if (state === VALUE) continue;
    isClean = false;
    if (state === OUTSIDE) return notAvailable(sizesDiffer(asked, column));
    if (state === PROBLEM) problem ??= column.values[at];
    else if (state === BLANK && column.required) blank ??= column;
  }
  if (isClean) return undefined;
  if (isEmptyRow(asked, i)) return "";
  if (problem !== undefined) return problem;
  return blank && valueError(isEmpty(blank));
}

/** A range that ends before another one does. */
function sizesDiffer(asked: readonly Column[], short: Column): string {
  const isLonger = ({ shape }: Column) => shape[0] > short.shape[0] || shape[1] > short.shape[1];
  const long = asked.find(isLonger);
  const two = asked.filter((column) => column === short || column === long);
  return differentSizes(two.map(({ name, shape }) => [name, shape[0] * shape[1]]));
}

function isEmpty({ name, argument }: Column): string {
  return `${name} is ${argument.zeroCounts ? "empty" : "empty or 0"}. Enter ${argument.accepts}.`;
}

/** The arguments that make a row empty when they are all blank in it: those of many cells, else the required ones. */
function askedOf(all: readonly Column[]): readonly Column[] {
  const some = all.some((column) => column.many);
  return all.filter((column) => (some ? column.many : column.required));
}

function isEmptyRow(asked: readonly Column[], i: number): boolean {
  return asked.length > 0 && asked.every((column) => column.state?.[i * column.stride] === BLANK);
}
