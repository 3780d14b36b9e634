// fill: computes a formula. In a plain cell a range where one value belongs means the cell of it that lies in the same
// row or column; in an array formula, and inside the functions that take arrays, it means all of its cells.

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
  /** Whether a range where one value belongs means all of its cells. */
  readonly arrays: boolean;
}

/** A function that takes one value for each argument, and is repeated where it is given several. */
export interface ScalarFunction {
  readonly kind: "scalar";
  readonly least: number;
  readonly most: number;
  readonly call: (...args: any[]) => Scalar;
  /** Error cells come in as values. */
  readonly takesErrors?: boolean;
}

/** A function that takes whole ranges. */
export interface RangeFunction {
  readonly kind: "range";
  readonly least: number;
  readonly most: number;
  readonly call: (args: readonly Argument[], context: Context) => Value;
  /** Expressions in its arguments mean all the cells of their ranges, also in a plain cell. */
  readonly takesArrays?: boolean;
}

/** A function that does not always compute all of its arguments. */
export interface LazyFunction {
  readonly kind: "lazy";
  readonly least: number;
  readonly most: number;
  readonly call: (args: readonly Node[], context: Context, mode: Mode) => Value;
}

export type NativeFunction = ScalarFunction | RangeFunction | LazyFunction;
export type Functions = ReadonlyMap<string, NativeFunction>;
/** undefined: left out between commas. */
export type Argument = Value | undefined;

/** `plain`: one value; `range`: one value or a range as it is; `array`: all cells. */
export type Mode = "plain" | "range" | "array";

export function evaluate(node: Node, context: Context, mode: Mode): Value {
  switch (node.kind) {
    case "value":
      return node.value;
    case "missing":
      return null;
    case "area":
      return areaValue(node.area, context, mode);
    case "variable": {
      const value = context.variables.get(node.name);
      if (value === undefined) throw new Unsupported(`the name ${node.name}`);
      return value instanceof Area ? areaValue(value, context, mode) : value;
    }
    case "sign":
      return broadcast([evaluate(node.operand, context, inner(mode))], (one) => sign(node.operator, one!));
    case "operation": {
      const left = evaluate(node.left, context, inner(mode));
      const right = evaluate(node.right, context, inner(mode));
      if (!isMatrix(left) && !isMatrix(right)) return operate(node.operator, left as Scalar, right as Scalar);
      return broadcast([left, right], (a, b) => operate(node.operator, a!, b!));
    }
    case "array":
      return node.rows.map((row) => row.map((cell) => single(evaluate(cell, context, "plain"))));
    case "call":
      return call(node.name, node.args, context, mode);
  }
}

const inner = (mode: Mode): Mode => (mode === "array" ? "array" : "plain");

function call(name: string, nodes: readonly Node[], context: Context, mode: Mode): Value {
  const native = context.functions.get(name);
  if (!native) throw new Unsupported(`the function ${name.slice(0, 40)}`);
  if (nodes.length < native.least || nodes.length > native.most)
    throw new Unsupported(`${name} with ${nodes.length} arguments`);
  if (native.kind === "lazy") return native.call(nodes, context, mode);
  if (native.kind === "range") {
    const inside: Mode = native.takesArrays || mode === "array" ? "array" : "range";
    const within = inside === "array" && !context.arrays ? { ...context, arrays: true } : context;
    const args = nodes.map((node) => {
      if (node.kind === "missing") return undefined;
      // A range goes in as a range: what reads it decides how.
      return evaluate(node, within, inside === "array" && isReference(node, context) ? "range" : inside);
    });
    const result = native.call(args, within);
    if (result instanceof Area) return areaValue(result, context, mode);
    return mode === "plain" ? single(result) : result;
  }
  const args = nodes.map((node) => (node.kind === "missing" ? null : evaluate(node, context, inner(mode))));
  const run = (...values: Scalar[]): Scalar =>
    (native.takesErrors ? undefined : values.find(isError)) ?? native.call(...values);
  return broadcast(args, run);
}

const isReference = (node: Node, context: Context): boolean =>
  node.kind === "area" ||
  (node.kind === "call" && ["OFFSET", "INDIRECT", "INDEX", "ANCHORARRAY"].includes(node.name)) ||
  (node.kind === "variable" && context.variables.get(node.name) instanceof Area);

/** An area as the mode wants it. */
export function areaValue(area: Area, context: Context, mode: Mode): Value {
  if (mode === "range") return area;
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

/** Repeats `run` over arrays as spreadsheets do: one row or column serves all, and cells that do not meet are #N/A. */
export function broadcast(args: readonly Value[], run: (...values: Scalar[]) => Scalar): Value {
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
        if (value === undefined) return notAvailable();
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

/** An argument that is one value, in whatever it came. */
export function scalarArgument(value: Argument, context: Context): Scalar {
  if (value === undefined) return null;
  const isMany =
    value instanceof Area ? !value.isCell : isMatrix(value) && value.length * value[0].length > 1;
  if (isMany && context.arrays) throw new Unsupported("an array where a value belongs");
  return value instanceof Area ? (areaValue(value, context, "plain") as Scalar) : single(value);
}
