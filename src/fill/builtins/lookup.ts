// fill: the spreadsheet's look-ups.

import { type Argument, type Context, matrixOf } from "../formula/evaluate.ts";
import {
  Area,
  compare,
  type Matrix,
  notAvailable,
  referenceError,
  type Scalar,
  Unsupported,
  type Value,
  valueError,
} from "../formula/values.ts";
import { type Named, number, ranged, throwIfError, truth, value } from "./define.ts";
import { indexOf } from "./range-index.ts";
import { hasWildcards, wildcardTest } from "./wildcards.ts";

const height = ({ top, bottom }: Area) => bottom - top + 1;
const width = ({ left, right }: Area) => right - left + 1;

/** A row or a column of cells as a list. */
function list(arg: Argument, context: Context): Scalar[] {
  const matrix = matrixOf(arg ?? null, context);
  if (matrix.length === 1) return matrix[0];
  if ((matrix[0]?.length ?? 0) > 1) throw notAvailable();
  return matrix.map(([cell]) => cell!);
}

const sameKind = (a: Scalar, b: Scalar) => typeof a === typeof b && b !== null;

/** An empty cell is 0 to a look-up, as Apache POI has it from Excel's own results (`LookupUtils`, `BlankEval`). */
const wanted = (args: readonly Argument[]): Scalar => throwIfError(value(args, 0)) ?? 0;

/** The place of the value itself in a row or a column of cells; a text may have wildcards. */
function exactly(arg: Argument, value: Scalar, context: Context): number {
  if (typeof value !== "string" || !hasWildcards(value)) return literally(arg, value, context);
  const meets = wildcardTest(value);
  return list(arg, context).findIndex((cell) => typeof cell === "string" && meets(cell));
}

function literally(arg: Argument, value: Scalar, context: Context): number {
  const isLine = arg instanceof Area && (height(arg) === 1 || width(arg) === 1);
  if (isLine && (typeof value === "number" || typeof value === "string"))
    return indexOf(arg, context.cells).firstOf(value);
  return list(arg, context).findIndex((cell) => sameKind(value, cell) && compare(value, cell) === 0);
}

/** The place of the last that is not past the value, in a list that rises (`way` 1) or falls (-1). */
function sortedPlace(cells: readonly Scalar[], value: Scalar, way: 1 | -1): number {
  let found = -1;
  let last: Scalar | undefined;
  for (let i = 0; i < cells.length; i++) {
    const cell = cells[i]!;
    if (!sameKind(value, cell)) continue;
    if (last !== undefined && compare(last, cell) * way > 0)
      throw new Unsupported("a look-up in a list that is not sorted");
    last = cell;
    if (compare(cell, value) * way <= 0) found = i;
  }
  return found;
}

function match(args: readonly Argument[], context: Context): Scalar {
  const value = wanted(args);
  const kind = number(args, 2, args.length > 2 ? 0 : 1);
  const place =
    kind === 0
      ? exactly(args[1], value, context)
      : sortedPlace(list(args[1], context), value, kind > 0 ? 1 : -1);
  return place < 0 ? notAvailable() : place + 1;
}

const turned = (matrix: Matrix): Matrix =>
  (matrix[0] ?? []).map((_, column) => matrix.map((line) => line[column]!));

/** A column of a table, or a row if it is `turned`; undefined if it has none there. */
function lineOf(table: Area | Matrix, at: number, isTurned: boolean): Area | Matrix | undefined {
  if (table instanceof Area) {
    const { sheet, top, left, bottom, right } = table;
    if (isTurned) return top + at > bottom ? undefined : new Area(sheet, top + at, left, top + at, right);
    return left + at > right ? undefined : new Area(sheet, top, left + at, bottom, left + at);
  }
  if (isTurned) return table[at] && [table[at]];
  return at < (table[0]?.length ?? 0) ? table.map((row) => [row[at]!]) : undefined;
}

/** The cell at a place of a row or a column. */
const cellOf = ({ sheet, top, left, bottom }: Area, place: number, { cells }: Context): Scalar =>
  top === bottom ? cells.cell(sheet, top, left + place) : cells.cell(sheet, top + place, left);

/** VLOOKUP; HLOOKUP is the same of the table turned. */
const inTable =
  (turn: boolean) =>
  (args: readonly Argument[], context: Context): Scalar => {
    const value = wanted(args);
    const given = args[1] ?? null;
    const table = given instanceof Area ? given : matrixOf(given, context);
    const column = Math.trunc(number(args, 2));
    if (column < 1) return valueError();
    const line = lineOf(table, column - 1, turn);
    if (line === undefined) return referenceError();
    const first = lineOf(table, 0, turn);
    const sorted = args.length < 4 || truth(args, 3, false);
    const place = sorted ? sortedPlace(list(first, context), value, 1) : exactly(first, value, context);
    if (place < 0) return notAvailable();
    return (line instanceof Area ? cellOf(line, place, context) : list(line, context)[place]) ?? 0;
  };

function lookup(args: readonly Argument[], context: Context): Scalar {
  const value = wanted(args);
  const table = matrixOf(args[1] ?? null, context);
  const wide = table.length < (table[0]?.length ?? 0);
  const lines = wide ? turned(table) : table;
  const place = sortedPlace(
    lines.map((line) => line[0]!),
    value,
    1,
  );
  if (place < 0) return notAvailable();
  if (args.length > 2) return list(args[2], context)[place] ?? notAvailable();
  return lines[place][lines[place].length - 1] ?? 0;
}

function xlookup(args: readonly Argument[], context: Context): Value {
  // Microsoft's help has it find empty cells if its value is left out, and is silent about an empty one.
  if (value(args, 0) === null) throw new Unsupported("XLOOKUP of an empty cell");
  const sought = wanted(args);
  const mode = number(args, 4);
  if ((mode !== 0 && mode !== 2) || number(args, 5, 1) !== 1) throw new Unsupported("XLOOKUP with a mode");
  const place = (mode === 2 ? exactly : literally)(args[1], sought, context);
  if (place < 0) return args[3] ?? notAvailable();
  const results = matrixOf(args[2] ?? null, context);
  const searched = matrixOf(args[1] ?? null, context);
  const down = searched.length > 1 || results.length === searched[0].length;
  const found = down ? [results[place] ?? []] : results.map((line) => [line[place]!]);
  return found.length === 1 && found[0].length === 1 ? (found[0][0] ?? 0) : found;
}

/** The cell, row or column at a place: of a range as a range, so that it can go on being one. */
function index(args: readonly Argument[], context: Context): Value {
  const source = args[0] ?? null;
  const area = source instanceof Area ? source : undefined;
  const matrix = area ? undefined : matrixOf(source, context);
  const rows = area ? area.bottom - area.top + 1 : matrix!.length;
  const columns = area ? area.right - area.left + 1 : (matrix![0]?.length ?? 0);
  let row = Math.trunc(number(args, 1));
  let column = Math.trunc(number(args, 2, rows > 1 && columns > 1 ? 0 : 1));
  // Of a single row the second argument counts along it.
  if (rows === 1 && columns > 1 && args.length < 3) [row, column] = [1, row];
  if (args.length > 3) throw new Unsupported("INDEX of several areas");
  if (row < 0 || column < 0) return valueError();
  if (row > rows || column > columns) return referenceError();
  if (area) {
    const top = row === 0 ? area.top : area.top + row - 1;
    const left = column === 0 ? area.left : area.left + column - 1;
    return new Area(area.sheet, top, left, row === 0 ? area.bottom : top, column === 0 ? area.right : left);
  }
  const lines = row === 0 ? matrix! : [matrix![row - 1]];
  const cut = column === 0 ? lines : lines.map((line) => [line[column - 1]!]);
  return cut.length === 1 && cut[0].length === 1 ? cut[0][0]! : cut;
}

export const lookups: readonly Named[] = [
  ranged("MATCH", 2, 3, "vrv", match),
  ranged("VLOOKUP", 3, 4, "vrvv", inTable(false)),
  ranged("HLOOKUP", 3, 4, "vrvv", inTable(true)),
  ranged("LOOKUP", 2, 3, "va", lookup),
  ranged("XLOOKUP", 3, 6, "vaarvv", xlookup),
  ranged("INDEX", 2, 4, "avvv", index),
  ranged("TRANSPOSE", 1, 1, "a", ([arg], context) => turned(matrixOf(arg ?? null, context))),
];
