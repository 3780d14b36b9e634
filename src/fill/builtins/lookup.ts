// fill: the spreadsheet's look-ups and references.

import {
  type Argument,
  areaValue,
  type Context,
  implicitIntersection,
  matrixOf,
} from "../formula/evaluate.ts";
import {
  Area,
  CellError,
  compare,
  isMatrix,
  type Matrix,
  notAvailable,
  referenceError,
  type Scalar,
  Unsupported,
  type Value,
  valueError,
} from "../formula/values.ts";
import { type Named, number, ranged, text, throwIfError, truth, value } from "./define.ts";
import { hasWildcards, wildcardTest } from "./wildcards.ts";

/** A row or a column of cells as a list. */
function list(arg: Argument, context: Context): Scalar[] {
  const matrix = matrixOf(arg ?? null, context);
  if (matrix.length === 1) return matrix[0];
  if ((matrix[0]?.length ?? 0) > 1) throw notAvailable();
  return matrix.map(([cell]) => cell!);
}

const sameKind = (a: Scalar, b: Scalar) => typeof a === typeof b && b !== null;

const wanted = (args: readonly Argument[]): Scalar => throwIfError(value(args, 0)) ?? 0;

/** The place of the value itself; a text may have wildcards. */
function exactly(cells: readonly Scalar[], value: Scalar): number {
  if (typeof value === "string" && hasWildcards(value)) {
    const meets = wildcardTest(value);
    return cells.findIndex((cell) => typeof cell === "string" && meets(cell));
  }
  return literally(cells, value);
}

const literally = (cells: readonly Scalar[], value: Scalar): number =>
  cells.findIndex((cell) => sameKind(value, cell) && compare(value, cell) === 0);

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
  const cells = list(args[1], context);
  const kind = number(args, 2, args.length > 2 ? 0 : 1);
  const place = kind === 0 ? exactly(cells, value) : sortedPlace(cells, value, kind > 0 ? 1 : -1);
  return place < 0 ? notAvailable() : place + 1;
}

const turned = (matrix: Matrix): Matrix =>
  (matrix[0] ?? []).map((_, column) => matrix.map((line) => line[column]!));

/** VLOOKUP; HLOOKUP is the same of the table turned. */
const inTable =
  (turn: boolean) =>
  (args: readonly Argument[], context: Context): Scalar => {
    const value = wanted(args);
    const given = matrixOf(args[1] ?? null, context);
    const table = turn ? turned(given) : given;
    const column = Math.trunc(number(args, 2));
    if (column < 1) return valueError();
    if (column > (table[0]?.length ?? 0)) return referenceError();
    const first = table.map((line) => line[0]!);
    const sorted = args.length < 4 || truth(args, 3, false);
    const row = sorted ? sortedPlace(first, value, 1) : exactly(first, value);
    return row < 0 ? notAvailable() : (table[row][column - 1] ?? 0);
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
  return lines[place].at(-1) ?? 0;
}

function xlookup(args: readonly Argument[], context: Context): Value {
  const value = wanted(args);
  const mode = number(args, 4);
  if ((mode !== 0 && mode !== 2) || number(args, 5, 1) !== 1) throw new Unsupported("XLOOKUP with a mode");
  const cells = list(args[1], context);
  const place = (mode === 2 ? exactly : literally)(cells, value);
  if (place < 0) return args[3] ?? notAvailable();
  const results = matrixOf(args[2] ?? null, context);
  const down = matrixOf(args[1] ?? null, context).length > 1 || results.length === cells.length;
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

function offset(args: readonly Argument[]): Value {
  const area = args[0];
  if (!(area instanceof Area)) return valueError();
  const [down, across] = [1, 2].map((i) => Math.trunc(number(args, i)));
  const rows = Math.trunc(number(args, 3, area.bottom - area.top + 1));
  const columns = Math.trunc(number(args, 4, area.right - area.left + 1));
  if (rows < 1 || columns < 1) throw new Unsupported("OFFSET with a negative size");
  return within(area.sheet, area.top + down, area.left + across, rows, columns);
}

function within(sheet: number, top: number, left: number, rows: number, columns: number): Value {
  if (top < 0 || left < 0 || top + rows > 1_048_576 || left + columns > 16_384) return referenceError();
  return new Area(sheet, top, left, top + rows - 1, left + columns - 1);
}

function indirect(args: readonly Argument[], context: Context): Value {
  if (!truth(args, 1, true)) throw new Unsupported("INDIRECT in R1C1 style");
  const address = text(args, 0);
  return context.cells.area(address, context.sheet) ?? referenceError();
}

/** A place counted from 1, of the area or of the formula itself. */
const place =
  (
    start: (area: Area) => number,
    size: (area: Area) => number,
    own: (context: Context) => number,
    down: boolean,
  ) =>
  ([arg]: readonly Argument[], context: Context): Value => {
    if (arg === undefined) return own(context) + 1;
    if (!(arg instanceof Area)) return valueError();
    if (size(arg) === 1) return start(arg) + 1;
    if (size(arg) > 100_000) throw new Unsupported("the places of a whole column");
    const places = Array.from({ length: size(arg) }, (_, i) => start(arg) + i + 1);
    return down ? places.map((one) => [one]) : [places];
  };

const height = (area: Area) => area.bottom - area.top + 1;
const width = (area: Area) => area.right - area.left + 1;

const extent =
  (ofArea: (area: Area) => number, ofMatrix: (matrix: Matrix) => number) =>
  ([arg]: readonly Argument[]): Value => {
    if (arg instanceof Area) return ofArea(arg);
    if (arg instanceof CellError) return arg;
    return isMatrix(arg ?? null) ? ofMatrix(arg as Matrix) : 1;
  };

/** `A2#`: all that the formula there gives. */
function spilled([arg]: readonly Argument[], { cells }: Context): Value {
  if (!(arg instanceof Area) || !arg.isCell) return referenceError();
  return cells.spilledArea(arg.sheet, arg.top, arg.left) ?? referenceError();
}

/** `@A2:A9`. */
function singled([arg]: readonly Argument[], context: Context): Value {
  if (arg instanceof Area)
    return arg.isCell ? areaValue(arg, context, "plain") : implicitIntersection(arg, context);
  return isMatrix(arg ?? null) ? ((arg as Matrix)[0]?.[0] ?? null) : (arg as Scalar);
}

export const lookups: readonly Named[] = [
  ranged("MATCH", 2, 3, "vrv", match),
  ranged("VLOOKUP", 3, 4, "vrvv", inTable(false)),
  ranged("HLOOKUP", 3, 4, "vrvv", inTable(true)),
  ranged("LOOKUP", 2, 3, "va", lookup),
  ranged("XLOOKUP", 3, 6, "vaarvv", xlookup),
  ranged("INDEX", 2, 4, "avvv", index),
  ranged("OFFSET", 3, 5, "rvvvv", offset),
  ranged("INDIRECT", 1, 2, "vv", indirect),
  ranged(
    "ROW",
    0,
    1,
    "r",
    place(
      (area) => area.top,
      height,
      ({ row }) => row,
      true,
    ),
  ),
  ranged(
    "COLUMN",
    0,
    1,
    "r",
    place(
      (area) => area.left,
      width,
      ({ column }) => column,
      false,
    ),
  ),
  ranged(
    "ROWS",
    1,
    1,
    "a",
    extent(height, (matrix) => matrix.length),
  ),
  ranged(
    "COLUMNS",
    1,
    1,
    "a",
    extent(width, (matrix) => matrix[0]?.length ?? 0),
  ),
  ranged("TRANSPOSE", 1, 1, "a", ([arg], context) => turned(matrixOf(arg ?? null, context))),
  ranged("ANCHORARRAY", 1, 1, "r", spilled),
  ranged("SINGLE", 1, 1, "r", singled),
  ranged("ISREF", 1, 1, "r", ([arg]) => arg instanceof Area),
];
