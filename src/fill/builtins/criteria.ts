// fill: the spreadsheet's counts and sums under conditions, such as ">12".

import { LAST_COLUMN, LAST_ROW } from "../../workbook/xlsx/addresses.ts";
import type { Argument, Cells, Context } from "../formula/evaluate.ts";
import { Area, divisionByZero, finite, type Scalar, Unsupported, valueError } from "../formula/values.ts";
import { conditionOf } from "./conditions.ts";
import { many, type Named, ranged, value } from "./define.ts";
import { indexOf, type RangeIndex } from "./range-index.ts";
import { type Asked, type Found, Selections } from "./selection.ts";

/** The places where every condition holds. Ranges come with their conditions in pairs. */
function places(args: readonly Argument[], { cells }: Context, counts = false): Found {
  const sheets = new Set(args.flatMap((arg) => (arg instanceof Area ? arg.sheet : [])));
  const asked: Asked[] = [];
  for (let i = 0; i + 1 < args.length; i += 2) {
    const area = args[i];
    if (!(area instanceof Area)) throw valueError();
    const condition = conditionOf(value(args, i + 1));
    // Whole columns are cut where their sheet ends, so what holds for empty cells would hold for too few.
    if (isCut(area) && condition.meets(null) && (counts || sheets.size > 1))
      throw new Unsupported("a condition on the empty cells of a whole column");
    if (area.right === LAST_COLUMN && sheets.size > 1)
      throw new Unsupported("a condition on whole rows of several sheets");
    asked.push({ index: indexOf(area, cells), condition });
  }
  let selections = asking.get(cells);
  if (!selections) {
    selections = new Selections();
    asking.set(cells, selections);
  }
  return selections.where(asked);
}

const asking = new WeakMap<Cells, Selections>();

const isCut = ({ bottom, right }: Area) => bottom === LAST_ROW || right === LAST_COLUMN;

/** Ranges of one size; of the arguments, every second is one. */
function sameShape(ranges: readonly Argument[]): void {
  const areas = ranges.filter((arg): arg is Area => arg instanceof Area);
  const sizes = areas.map((area) => `${area.bottom - area.top}×${area.right - area.left}`);
  if (new Set(sizes).size > 1) throw valueError();
}

const rangesOf = (pairs: readonly Argument[]) => pairs.filter((_, i) => i % 2 === 0);

/** What is made of the cells of a range at the places that were found. */
type Finish = (range: RangeIndex, found: Found) => Scalar;

/**
 * An empty condition is 0 by Microsoft's help for COUNTIFS and AVERAGEIF. For COUNTIF and SUMIF it says nothing, and Apache
 * POI counts nothing at all: both are the same where no 0 stands.
 */
function refuseDoubtful(given: Argument, isEmptyZero: boolean, found: Found): void {
  if (given === undefined || (given === null && !isEmptyZero && found.count > 0))
    throw new Unsupported("an empty condition");
}

const total: Finish = (range, found) => finite(found.fold(range, "sum"));
const mean: Finish = (range, found) => {
  const count = found.fold(range, "count");
  return count === 0 ? divisionByZero() : finite(found.fold(range, "sum") / count);
};
const extreme =
  (kind: "minimum" | "maximum"): Finish =>
  (range, found) =>
    found.fold(range, "count") === 0 ? 0 : found.fold(range, kind);

/** SUMIF: the range that is summed stands last, and begins where it says but is as large as the first. */
const single = (name: string, finish: Finish, isEmptyZero: boolean): Named =>
  ranged(name, 2, 3, "rvr", (args, context) => {
    const [range, condition, summed = range] = args;
    if (!(range instanceof Area) || !(summed instanceof Area)) return valueError();
    const { sheet, top, left } = summed;
    const fitted = new Area(
      sheet,
      top,
      left,
      Math.min(top + range.bottom - range.top, LAST_ROW),
      Math.min(left + range.right - range.left, LAST_COLUMN),
    );
    if (isCut(range) && fitted.bottom - fitted.top !== range.bottom - range.top)
      throw new Unsupported("a whole column beside a part of one");
    const found = places([range, condition], context);
    refuseDoubtful(condition, isEmptyZero, found);
    return finish(indexOf(fitted, context.cells), found);
  });

/** SUMIFS: the range that is summed stands first. */
const several = (name: string, finish: Finish): Named =>
  ranged(
    name,
    3,
    many,
    "rrv",
    ([range, ...pairs], context) => {
      sameShape([range, ...rangesOf(pairs)]);
      if (!(range instanceof Area)) return valueError();
      const found = places(pairs, context);
      return finish(indexOf(range, context.cells), found);
    },
    { repeating: 2 },
  );

export const criteria: readonly Named[] = [
  ranged("COUNTIF", 2, 2, "rv", (args, context) => {
    const found = places(args, context, true);
    refuseDoubtful(args[1], false, found);
    return found.count;
  }),
  ranged(
    "COUNTIFS",
    2,
    many,
    "rv",
    (args, context) => {
      sameShape(rangesOf(args));
      return places(args, context, true).count;
    },
    { repeating: 2 },
  ),
  single("SUMIF", total, false),
  single("AVERAGEIF", mean, true),
  several("SUMIFS", total),
  several("AVERAGEIFS", mean),
  several("MINIFS", extreme("minimum")),
  several("MAXIFS", extreme("maximum")),
];
