// fill: the spreadsheet's functions of references: what they refer to, and where it stands.

import { type Argument, areaValue, type Context, implicitIntersection } from "../formula/evaluate.ts";
import {
  Area,
  CellError,
  isMatrix,
  type Matrix,
  referenceError,
  type Scalar,
  Unsupported,
  type Value,
  valueError,
} from "../formula/values.ts";
import { type Named, number, ranged, text, truth } from "./define.ts";

const height = (area: Area) => area.bottom - area.top + 1;
const width = (area: Area) => area.right - area.left + 1;

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

export const references: readonly Named[] = [
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
  ranged("ANCHORARRAY", 1, 1, "r", spilled),
  ranged("SINGLE", 1, 1, "r", singled),
  ranged("ISREF", 1, 1, "r", ([arg]) => arg instanceof Area),
];
