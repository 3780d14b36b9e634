// fill: the spreadsheet's counts and sums under conditions, such as ">12".

import { LAST_COLUMN, LAST_ROW } from "../../workbook/xlsx/addresses.ts";
import { type Argument, type Context, matrixOf, scalarArgument } from "../formula/evaluate.ts";
import {
  Area,
  compareTexts,
  divisionByZero,
  finite,
  type Scalar,
  sameNumber,
  toNumber,
  Unsupported,
  valueError,
} from "../formula/values.ts";
import { many, type Named, ranged, throwIfError } from "./define.ts";
import { sum } from "./statistics.ts";

type Test = (value: Scalar) => boolean;

const compares: Readonly<Record<string, (difference: number) => boolean>> = {
  "=": (difference) => difference === 0,
  "<>": (difference) => difference !== 0,
  "<": (difference) => difference < 0,
  ">": (difference) => difference > 0,
  "<=": (difference) => difference <= 0,
  ">=": (difference) => difference >= 0,
};

/** What a condition asks of a cell. A number in it asks for numbers and for texts that are one, a text for texts. */
function testOf(condition: Scalar): Test {
  const given = throwIfError(condition) ?? 0;
  if (typeof given === "boolean") return (value) => value === given;
  const [, operator = "=", wanted = ""] = /^(<>|<=|>=|=|<|>)?([\s\S]*)$/.exec(String(given))!;
  const holds = compares[operator];
  if (wanted === "") return ofNothing(operator, String(given));
  if (/^(?:true|false)$/i.test(wanted)) throw new Unsupported("a condition on TRUE or FALSE");
  const number = typeof given === "number" ? given : toNumber(wanted);
  if (typeof number === "number")
    return (value) => {
      const cell = typeof value === "string" && /^=|^<>/.test(operator) ? numberIn(value) : value;
      if (typeof cell !== "number") return operator === "<>";
      return holds(sameNumber(cell, number) ? 0 : cell - number);
    };
  if (/[*?~]/.test(wanted)) throw new Unsupported("a condition with wildcards");
  return (value) => (typeof value === "string" ? holds(compareTexts(value, wanted)) : operator === "<>");
}

function ofNothing(operator: string, given: string): Test {
  if (given === "") return (value) => value === null || value === "";
  if (operator === "=") return (value) => value === null;
  if (operator === "<>") return (value) => value !== null;
  return () => false;
}

function numberIn(value: string): Scalar {
  const number = toNumber(value);
  return typeof number === "number" ? number : value;
}

/** The places, in reading order, where every condition holds. Ranges come with their conditions in pairs. */
function places(args: readonly Argument[], context: Context, counts = false): boolean[] {
  let holding: boolean[] | undefined;
  const sheets = new Set(args.map((arg) => (arg instanceof Area ? arg.sheet : undefined)));
  sheets.delete(undefined);
  for (let i = 0; i + 1 < args.length; i += 2) {
    const range = args[i];
    if (!(range instanceof Area)) throw valueError();
    const meets = testOf(scalarArgument(args[i + 1], context));
    // Whole columns are cut where their sheet ends, so what holds for empty cells would hold for too few.
    if (isCut(range) && meets(null) && (counts || sheets.size > 1))
      throw new Unsupported("a condition on the empty cells of a whole column");
    const cells = matrixOf(range, context).flat();
    const before: boolean[] | undefined = holding;
    const size = before ? Math.min(before.length, cells.length) : cells.length;
    holding = Array.from({ length: size }, (_, at) => (before?.[at] ?? true) && meets(cells[at]!));
  }
  return holding ?? [];
}

const isCut = ({ bottom, right }: Area) => bottom === LAST_ROW || right === LAST_COLUMN;

function sameShape(args: readonly Argument[]): void {
  const areas = args.filter((arg): arg is Area => arg instanceof Area);
  const sizes = areas.map((area) => `${area.bottom - area.top}×${area.right - area.left}`);
  if (new Set(sizes).size > 1) throw valueError();
}

/** The numbers of a range at those places; an error among them is thrown. */
function chosen(range: Argument, holding: readonly boolean[], context: Context): number[] {
  const cells = matrixOf(range ?? null, context).flat();
  const found: number[] = [];
  for (let at = 0; at < holding.length; at++) {
    if (!holding[at]) continue;
    const value = throwIfError(cells[at] ?? null);
    if (typeof value === "number") found.push(value);
  }
  return found;
}

const count = (holding: readonly boolean[]) => holding.filter(Boolean).length;
const mean = (values: readonly number[]) =>
  values.length === 0 ? divisionByZero() : finite(sum(values) / values.length);
const total = (values: readonly number[]) => finite(sum(values));
const least = (values: readonly number[]) => (values.length === 0 ? 0 : Math.min(...values));
const greatest = (values: readonly number[]) => (values.length === 0 ? 0 : Math.max(...values));

type Finish = (values: readonly number[]) => Scalar;

/** SUMIF: the range that is summed stands last, and begins where it says but is as large as the first. */
const single = (name: string, finish: Finish): Named =>
  ranged(name, 2, 3, (args, context) => {
    const [range, condition, summed = range] = args;
    if (!(range instanceof Area) || !(summed instanceof Area)) return valueError();
    const { sheet, top, left } = summed;
    const fitted = new Area(
      sheet,
      top,
      left,
      Math.min(top + range.bottom - range.top, 1_048_575),
      Math.min(left + range.right - range.left, 16_383),
    );
    return finish(chosen(fitted, places([range, condition], context), context));
  });

/** SUMIFS: the range that is summed stands first. */
const several = (name: string, finish: Finish): Named =>
  ranged(name, 3, many, ([range, ...pairs], context) => {
    sameShape([range, ...pairs]);
    return finish(chosen(range, places(pairs, context), context));
  });

export const criteria: readonly Named[] = [
  ranged("COUNTIF", 2, 2, (args, context) => count(places(args, context, true))),
  ranged("COUNTIFS", 2, many, (args, context) => {
    sameShape(args);
    return count(places(args, context, true));
  }),
  single("SUMIF", total),
  single("AVERAGEIF", mean),
  several("SUMIFS", total),
  several("AVERAGEIFS", mean),
  several("MINIFS", least),
  several("MAXIFS", greatest),
];
