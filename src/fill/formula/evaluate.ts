// fill: computes a formula. In a plain cell a range where one value belongs means the cell of it that lies in the same
// row or column; in an array formula, and inside the functions that take arrays, it means all of its cells. A function
// that takes one value and is given an array is repeated for each, or the formula is not computed.

import type { Node } from "./nodes.ts";
import { operate, sign } from "./operators.ts";
import {
  Area,
  isError,
  isMatrix,
  type Matrix,
  notAvailable,
  type Scalar,
  Unsupported,
  type Value,
  valueError,
} from "./values.ts";

/** The cells that formulas read. */
export interface Cells {
  cell(sheet: number, row: number, column: number): Scalar;
  /** The cells of an area, as far as the sheet has any: an area that reaches to the end of the sheet is cut there. */
  matrix(area: Area): Matrix;
  /** The same cells in reading order, without making a matrix of them; null for an empty one. */
  each(area: Area, visit: (value: Scalar) => void): void;
  /** The area, without what lies past the last cells of the sheet if it reaches to its end. */
  cut(area: Area): Area;
  /** A point in time, and whether a cell of an area was written to after it. */
  mark(sheet: number): number;
  isChangedSince(area: Area, mark: number): boolean;
  /** What else functions ask of a sheet; see the functions that do. */
  hasHiddenRows(sheet: number): boolean;
  spilledArea(sheet: number, row: number, column: number): Area | undefined;
  area(text: string, sheet: number): Area | undefined;
  hasSubtotal(area: Area): boolean;
  readonly from1904: boolean;
}

export interface Context {
  readonly cells: Cells;
  readonly sheet: number;
  readonly row: number;
  readonly column: number;
  readonly functions: Functions;
  readonly variables: ReadonlyMap<string, Value>;
  /** Whether the formula is one that is entered as an array. */
  readonly isArrayFormula: boolean;
}

/** A function that takes one value for each argument, and is repeated where it is given several. */
export interface ScalarFunction {
  readonly kind: "scalar";
  readonly fewestArguments: number;
  readonly mostArguments: number;
  readonly call: (...args: any[]) => Scalar;
  /** Error cells come in as values. */
  readonly takesErrors?: boolean;
}

/** What an argument is: `v` one value, for several the function is repeated; `r` a range; `a` a range, or an array of all cells. */
type Taken = "v" | "r" | "a";

/** A function that takes whole ranges. */
export interface RangeFunction {
  readonly kind: "range";
  readonly fewestArguments: number;
  readonly mostArguments: number;
  /** Of each argument by its place; of those behind, the last `repeating` go round. */
  readonly takes: string;
  readonly repeating?: number;
  /** Takes references over several sheets. */
  readonly overSheets?: boolean;
  readonly call: (args: readonly Argument[], context: Context) => Value;
}

/** A function that does not always compute all of its arguments. */
export interface LazyFunction {
  readonly kind: "lazy";
  readonly fewestArguments: number;
  readonly mostArguments: number;
  readonly call: (args: readonly Node[], context: Context, mode: Mode) => Value;
}

export type SheetFunction = ScalarFunction | RangeFunction | LazyFunction;
export type Functions = ReadonlyMap<string, SheetFunction>;
/** undefined: left out between commas. */
export type Argument = Value | undefined;

/**
 * What a place in a formula wants: `plain` one value, of a range the cell beside the formula; `inside` the same, within
 * a function that would take an array; `range` one value or a range as it is; `array` all cells; `arrayRange` all cells,
 * and a range as it is.
 */
export type Mode = "plain" | "inside" | "range" | "array" | "arrayRange";

export const isArrayMode = (mode: Mode): boolean => mode === "array" || mode === "arrayRange";

/** What the operands of an operator are wanted as. */
export const operandMode = (mode: Mode): Mode =>
  isArrayMode(mode) ? "array" : mode === "range" ? "inside" : mode;

export function evaluate(node: Node, context: Context, mode: Mode): Value {
  switch (node.kind) {
    case "value":
      return node.value;
    case "missing":
      return null;
    case "area":
      return areaValue(node.area, context, mode);
    case "sheets":
      throw new Unsupported("a reference to several sheets");
    case "named": {
      // What a name stands for is computed as an array is, wherever the name is.
      const value = evaluate(node.node, { ...context, isArrayFormula: true }, "arrayRange");
      return value instanceof Area ? areaValue(value, context, mode) : value;
    }
    case "variable": {
      const value = context.variables.get(node.name);
      if (value === undefined) throw new Unsupported(`the name ${node.name}`);
      return value instanceof Area ? areaValue(value, context, mode) : value;
    }
    case "sign":
      return broadcast([evaluate(node.operand, context, operandMode(mode))], (one) =>
        sign(node.operator, one!),
      );
    case "operation": {
      const left = evaluate(node.left, context, operandMode(mode));
      const right = evaluate(node.right, context, operandMode(mode));
      if (!isMatrix(left) && !isMatrix(right)) return operate(node.operator, left as Scalar, right as Scalar);
      refuseMixture([node.left, node.right], mode);
      return broadcast([left, right], (a, b) => operate(node.operator, a!, b!));
    }
    case "array":
      return node.rows.map((row) => row.map((cell) => single(evaluate(cell, context, "plain"))));
    case "call":
      return call(node.name, node.args, context, mode);
  }
}

function call(name: string, nodes: readonly Node[], context: Context, mode: Mode): Value {
  const called = context.functions.get(name);
  if (!called) throw new Unsupported(`the function ${name.slice(0, 40)}`);
  if (nodes.length < called.fewestArguments || nodes.length > called.mostArguments)
    throw new Unsupported(`${name} with ${nodes.length} arguments`);
  if (called.kind === "lazy") return called.call(nodes, context, mode);
  if (called.kind === "range") return callWithRanges(called, nodes, context, mode);
  const args = nodes.map((node) =>
    node.kind === "missing" ? null : evaluate(node, context, operandMode(mode)),
  );
  if (args.some(isMatrix)) refuseMixture(nodes, mode);
  return broadcast(
    args,
    (...values) => (called.takesErrors ? undefined : values.find(isError)) ?? called.call(...values),
  );
}

/** Beside an array a range means all of its cells in some versions and one of them in others. */
function refuseMixture(nodes: readonly Node[], mode: Mode): void {
  if (!isArrayMode(mode) && nodes.some((node) => node.kind === "area" && !node.area.isCell))
    throw new Unsupported("a range beside an array, where a value belongs");
}

function callWithRanges(called: RangeFunction, nodes: readonly Node[], context: Context, mode: Mode): Value {
  /** Places of values that are several. */
  const several: number[] = [];
  const args: Argument[] = [];
  nodes.forEach((node, i) => {
    if (node.kind === "missing") args.push(undefined);
    else if (node.kind === "sheets" && called.overSheets) args.push(...node.areas);
    else if (takenAt(called, i) === "v") {
      const value = evaluate(node, context, operandMode(mode));
      if (isMatrix(value) && !isOne(value)) several.push(args.length);
      args.push(isMatrix(value) && isOne(value) ? value[0][0] : value);
    } else {
      const isArray = isArrayMode(mode) || takenAt(called, i) === "a";
      args.push(evaluate(node, context, isArray ? "arrayRange" : "range"));
    }
  });
  if (several.length > 0)
    return broadcast(
      several.map((place) => args[place]!),
      (...values) => {
        const once = [...args];
        values.forEach((value, i) => {
          once[several[i]] = value;
        });
        return onlyOne(called.call(once, context), context);
      },
    );
  const result = called.call(args, context);
  if (result instanceof Area) return areaValue(result, context, mode);
  if (!isMatrix(result) || isOne(result))
    return mode === "range" || isArrayMode(mode) ? result : single(result);
  if (mode === "inside") throw new Unsupported("an array where a value belongs");
  return mode === "plain" ? single(result) : result;
}

function takenAt({ takes, repeating = 1 }: RangeFunction, i: number): Taken {
  const place = i < takes.length ? i : takes.length - repeating + ((i - takes.length) % repeating);
  return takes[place] as Taken;
}

/** Whether a function gives one value for each of the values that it is given. */
export const isByValue = (called: SheetFunction): boolean =>
  called.kind === "range" ? /^v*$/.test(called.takes) : true;

const isOne = (matrix: Matrix): boolean => matrix.length === 1 && matrix[0].length === 1;

/** What a function gives where it is repeated: one cell each time. */
function onlyOne(value: Value, context: Context): Scalar {
  if (value instanceof Area && value.isCell) return context.cells.cell(value.sheet, value.top, value.left);
  if (value instanceof Area || (isMatrix(value) && !isOne(value)))
    throw new Unsupported("an array of arrays");
  return single(value);
}

/** An area as the mode wants it. */
export function areaValue(area: Area, context: Context, mode: Mode): Value {
  if (mode === "range" || mode === "arrayRange") return area;
  if (area.isCell) return context.cells.cell(area.sheet, area.top, area.left);
  return mode === "array" ? context.cells.matrix(area) : implicitIntersection(area, context);
}

/** The cell of a column or a row of cells that lies beside the formula. */
export function implicitIntersection(area: Area, { cells, row, column }: Context): Scalar {
  const inRows = row >= area.top && row <= area.bottom;
  const inColumns = column >= area.left && column <= area.right;
  if (area.left === area.right && inRows) return cells.cell(area.sheet, row, area.left);
  if (area.top === area.bottom && inColumns) return cells.cell(area.sheet, area.top, column);
  if (inRows && inColumns) return cells.cell(area.sheet, row, column);
  return valueError("the range has no cell in this row or column");
}

/** One value: the first of an array. */
export function single(value: Value): Scalar {
  if (isMatrix(value)) return value[0]?.[0] ?? null;
  if (value instanceof Area) throw new Unsupported("a range where a value belongs");
  return value;
}

/** The most cells that a single result may have. */
const LARGEST_RESULT = 4_000_000;

/**
 * Repeats `run` over arrays as spreadsheets do: one row or column serves all, and cells that do not meet are `apart`,
 * #N/A.
 */
export function broadcast(
  args: readonly Value[],
  run: (...values: Scalar[]) => Scalar,
  apart: () => Scalar = notAvailable,
): Value {
  if (!args.some(isMatrix)) return run(...(args as Scalar[]));
  const matrices = args.map((arg) => (isMatrix(arg) ? arg : [[arg as Scalar]]));
  const rows = Math.max(...matrices.map((matrix) => matrix.length));
  const columns = Math.max(...matrices.map((matrix) => matrix[0]?.length ?? 0));
  if (rows * columns > LARGEST_RESULT) throw new Unsupported("an array of too many cells");
  return Array.from({ length: rows }, (_, row) =>
    Array.from({ length: columns }, (_, column) => {
      const values: Scalar[] = [];
      for (const matrix of matrices) {
        const line = matrix.length === 1 ? matrix[0] : matrix[row];
        const value = line?.length === 1 ? line[0] : line?.[column];
        if (value === undefined) return apart();
        values.push(value);
      }
      return run(...values);
    }),
  );
}

/** Any value as a matrix. */
export function matrixOf(value: Value, context: Context): Matrix {
  if (value instanceof Area) return context.cells.matrix(value);
  return isMatrix(value) ? value : [[value]];
}
