// fill: the spreadsheet's counts and sums under conditions, such as ">12". A range is read once, and its cells are found
// by their values, so that a column of such formulas takes time with its length and not with the square of it.

import { LAST_COLUMN, LAST_ROW } from "../../workbook/xlsx/addresses.ts";
import type { Argument, Cells, Context } from "../formula/evaluate.ts";
import {
  Area,
  CellError,
  compareTexts,
  divisionByZero,
  finite,
  type Scalar,
  sameNumber,
  toNumber,
  Unsupported,
  valueError,
} from "../formula/values.ts";
import { many, type Named, ranged, throwIfError, value } from "./define.ts";
import { keyOf, RangeIndex, Slice } from "./range-index.ts";
import { greatest, least, sum } from "./statistics.ts";
import { hasWildcards, wildcardTest } from "./wildcards.ts";

interface Condition {
  readonly meets: (value: Scalar) => boolean;
  /** All cells that can meet it are found under this key. */
  readonly key?: number | string;
  /** They are the numbers on one side of one. */
  readonly side?: "below" | "above";
}

const compares: Readonly<Record<string, (difference: number) => boolean>> = {
  "=": (difference) => difference === 0,
  "<>": (difference) => difference !== 0,
  "<": (difference) => difference < 0,
  ">": (difference) => difference > 0,
  "<=": (difference) => difference <= 0,
  ">=": (difference) => difference >= 0,
};

const errors = /^#(?:N\/A|NULL!|DIV\/0!|VALUE!|REF!|NAME\?|NUM!)$/i;

/** What a condition asks of a cell. A number in it asks for numbers and for texts that are one, a text for texts. */
function conditionOf(condition: Scalar): Condition {
  if (condition instanceof CellError) return ofError("=", condition.code);
  const given = condition ?? 0;
  if (typeof given === "boolean") return { meets: (value) => value === given };
  const [, operator = "=", wanted = ""] = /^(<>|<=|>=|=|<|>)?([\s\S]*)$/.exec(String(given))!;
  const holds = compares[operator];
  if (wanted === "") return { meets: ofNothing(operator, String(given)) };
  if (/^(?:true|false)$/i.test(wanted)) throw new Unsupported("a condition on TRUE or FALSE");
  if (errors.test(wanted)) return ofError(operator, wanted.toUpperCase());
  const number = typeof given === "number" ? given : toNumber(wanted);
  if (typeof number === "number") return ofNumber(operator, holds, number);
  return ofText(operator, holds, wanted);
}

function ofError(operator: string, code: string): Condition {
  if (operator !== "=" && operator !== "<>") throw new Unsupported("an error that is compared by size");
  const isEqual = operator === "=";
  return { meets: (value) => (value instanceof CellError && value.code === code) === isEqual };
}

function ofNumber(operator: string, holds: (difference: number) => boolean, number: number): Condition {
  const readsTexts = operator === "=" || operator === "<>";
  const meets = (value: Scalar) => {
    const cell = typeof value === "string" && readsTexts ? numberIn(value) : value;
    if (typeof cell !== "number") return operator === "<>";
    return holds(sameNumber(cell, number) ? 0 : cell - number);
  };
  if (operator === "=") return { meets, key: keyOf(number) };
  return operator === "<>" ? { meets } : { meets, side: operator.startsWith("<") ? "below" : "above" };
}

function ofText(operator: string, holds: (difference: number) => boolean, wanted: string): Condition {
  const isEqual = operator === "=";
  if (hasWildcards(wanted)) {
    if (!isEqual && operator !== "<>") throw new Unsupported("wildcards that are compared by size");
    const isLike = wildcardTest(wanted);
    return { meets: (value) => (typeof value === "string" && isLike(value)) === isEqual };
  }
  const key = keyOf(wanted);
  if (isEqual) return { meets: (value) => typeof value === "string" && keyOf(value) === key, key };
  if (operator === "<>") return { meets: (value) => typeof value !== "string" || keyOf(value) !== key };
  return { meets: (value) => typeof value === "string" && holds(compareTexts(value, wanted)) };
}

function ofNothing(operator: string, given: string): (value: Scalar) => boolean {
  if (given === "") return (value) => value === null || value === "";
  if (operator === "=") return (value) => value === null;
  if (operator === "<>") return (value) => value !== null;
  return () => false;
}

function numberIn(value: string): Scalar {
  const number = toNumber(value);
  return typeof number === "number" ? number : value;
}

function indexOf(area: Area, cells: Cells): RangeIndex {
  const { sheet, top, left, bottom, right } = area;
  const key = `${sheet} ${top} ${left} ${bottom} ${right}`;
  const indices = read.get(cells) ?? new Map<string, RangeIndex>();
  read.set(cells, indices);
  const found = indices.get(key);
  const revision = cells.revision(area);
  if (found?.revision === revision) return found;
  const index = new RangeIndex(cells.matrix(area).flat(), revision);
  indices.set(key, index);
  return index;
}

const read = new WeakMap<Cells, Map<string, RangeIndex>>();

interface Asked extends Condition {
  readonly index: RangeIndex;
  /** The places that the index finds, if it does. */
  readonly listed: readonly number[] | Slice | undefined;
}

/** The places where every condition holds. Ranges come with their conditions in pairs. */
function places(args: readonly Argument[], { cells }: Context, counts = false): readonly number[] | Slice {
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
    const index = indexOf(area, cells);
    const { key, side, meets } = condition;
    const listed = key !== undefined ? index.under(key) : side && index.beside(side, meets);
    asked.push({ ...condition, index, listed });
  }
  return meeting(asked);
}

/** Looks through the fewest places that a condition leaves. */
function meeting(asked: readonly Asked[]): readonly number[] | Slice {
  const size = Math.min(...asked.map(({ index }) => index.cells.length));
  const sizeOf = ({ listed }: Asked) => listed?.length ?? size;
  const fewest = asked.reduce((best, one) => (sizeOf(one) < sizeOf(best) ? one : best));
  const { listed } = fewest;
  const others = asked.filter((one) => one !== fewest || !listed);
  if (listed && others.length === 0) return listed;
  const candidates = listed ? placesOf(listed) : Array.from({ length: size }, (_, at) => at);
  return candidates.filter((at) => at < size && others.every(({ meets, index }) => meets(index.cells[at]!)));
}

const placesOf = (found: readonly number[] | Slice): readonly number[] =>
  found instanceof Slice ? found.places() : found;

const isCut = ({ bottom, right }: Area) => bottom === LAST_ROW || right === LAST_COLUMN;

/** Ranges of one size; of the arguments, every second is one. */
function sameShape(ranges: readonly Argument[]): void {
  const areas = ranges.filter((arg): arg is Area => arg instanceof Area);
  const sizes = areas.map((area) => `${area.bottom - area.top}×${area.right - area.left}`);
  if (new Set(sizes).size > 1) throw valueError();
}

const rangesOf = (pairs: readonly Argument[]) => pairs.filter((_, i) => i % 2 === 0);

/** The numbers of a range at those places; an error among them is thrown. */
function numbersAt({ cells }: RangeIndex, found: readonly number[] | Slice): number[] {
  const numbers: number[] = [];
  for (const place of placesOf(found)) {
    const value = throwIfError(cells[place] ?? null);
    if (typeof value === "number") numbers.push(value);
  }
  return numbers;
}

/** What is made of the cells of a range at the places that were found. */
type Finish = (range: RangeIndex, found: readonly number[] | Slice) => Scalar;

const ofNumbers =
  (call: (values: readonly number[]) => Scalar): Finish =>
  (range, found) =>
    call(numbersAt(range, found));

const mean = ofNumbers((values) =>
  values.length === 0 ? divisionByZero() : finite(sum(values) / values.length),
);
const total: Finish = (range, found) =>
  finite((found instanceof Slice ? found.sum(range) : undefined) ?? sum(numbersAt(range, found)));
const orZero = (call: (values: readonly number[]) => number): Finish =>
  ofNumbers((values) => (values.length === 0 ? 0 : call(values)));

/** SUMIF: the range that is summed stands last, and begins where it says but is as large as the first. */
const single = (name: string, finish: Finish): Named =>
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
  ranged("COUNTIF", 2, 2, "rv", (args, context) => places(args, context, true).length),
  ranged(
    "COUNTIFS",
    2,
    many,
    "rv",
    (args, context) => {
      sameShape(rangesOf(args));
      return places(args, context, true).length;
    },
    { repeating: 2 },
  ),
  single("SUMIF", total),
  single("AVERAGEIF", mean),
  several("SUMIFS", total),
  several("AVERAGEIFS", mean),
  several("MINIFS", orZero(least)),
  several("MAXIFS", orZero(greatest)),
];
