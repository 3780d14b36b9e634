// calc: the written parts of a callout become one size with its limit deviations, or are refused together.

import { inchFit, isInchFit } from "../fits/ansi-b41.ts";
import { deviationIn, isHoleClass, limitDeviations } from "../fits/iso286.ts";
import {
  LONGEST,
  lengthText,
  TICKS_PER_IN,
  TICKS_PER_MM,
  TICKS_PER_UM,
  toTicks,
  type Units,
} from "../lengths.ts";
import type { Callout, Deviations } from "./callout.ts";
import { type Cursor, type Quantity, ticksOf } from "./quantities.ts";
import type { Written } from "./written-callout.ts";

/** The written parts, joined to one size with its deviations. @throws Problem where they do not agree */
export function join(written: Written, cursor: Cursor, sheetUnits: Units): Callout {
  const { size, limit, depth } = written;
  if (!size) return cursor.refuse("has no size: write 12 H7 or 12 +0.018/0");
  const inch = written.classes.length > 0 && isInchFit(written.classes[0]);
  const stated = statedUnits(written, cursor);
  const units = stated ?? (inch ? "in" : sheetUnits);
  if (units === "mm" && stated === undefined) refuseInchStyle([size, limit], cursor);
  const first = ticksOf(size, units);
  const second = limit ? ticksOf(limit, units) : first;
  const nominal = Math.min(first, second);
  if (nominal <= 0) cursor.refuse("has a size of 0");
  if (Math.max(first, second) > toTicks(LONGEST[units], units))
    cursor.refuse(`has a size over ${LONGEST[units]} ${units}`);
  const { lower, upper, kind, className, iso, shaft } = limit
    ? fromLimits(Math.max(first, second), nominal, written, units, cursor)
    : fromTolerance(nominal, written, units, cursor);
  return {
    text: cursor.callout,
    nominal,
    lower,
    upper,
    units,
    kind,
    className,
    iso,
    shaft,
    count: written.count,
    depth: depth && ticksOf(depth, units),
    through: written.through,
    marks: written.marks.join(" "),
  };
}

type Toleranced = Pick<Callout, "lower" | "upper" | "kind" | "className" | "iso" | "shaft">;

function withoutClass(lower: number, upper: number): Toleranced {
  return { lower, upper, kind: "hole", className: "", iso: false, shaft: undefined };
}

function fromLimits(
  greatest: number,
  least: number,
  written: Written,
  units: Units,
  cursor: Cursor,
): Toleranced {
  if (written.classes.length > 0) cursor.refuse(`has both limits and the class ${written.classes[0]}`);
  refuseOddTolerance(0, greatest - least, least, units, cursor);
  return withoutClass(0, greatest - least);
}

function fromTolerance(nominal: number, written: Written, units: Units, cursor: Cursor): Toleranced {
  const [first, second] = written.classes;
  const deviations = written.deviations.length > 0 ? statedDeviations(written, units, cursor) : undefined;
  if (first === undefined) {
    if (!deviations) return cursor.refuse("has no tolerance: write 12 H7 or 12 +0.018/0");
    refuseOddTolerance(deviations.lower, deviations.upper, nominal, units, cursor);
    return withoutClass(deviations.lower + 0, deviations.upper + 0);
  }
  const read = isInchFit(first)
    ? fromInchFit(first, second, nominal, cursor)
    : fromClasses(first, second, nominal, cursor);
  refuseOddTolerance(read.lower, read.upper, nominal, units, cursor);
  if (deviations) refuseContradiction(read, deviations, written, units, cursor);
  return read;
}

/** The unit written with the size, a limit or a deviation; one for all of them. */
function statedUnits({ size, limit, deviations }: Written, cursor: Cursor): Units | undefined {
  let units = size!.units;
  const check = (other: Units | undefined) => {
    if (other && units && other !== units)
      cursor.refuse("is written in mm and in inches: write it in one of them");
    units ??= other;
  };
  check(limit?.units);
  for (const { quantity } of deviations) check(quantity.units);
  return units;
}

function refuseInchStyle(sizes: (Quantity | undefined)[], cursor: Cursor): void {
  for (const size of sizes)
    if (size && /^\.\d{3}/.test(size.text))
      cursor.refuse(`looks like inches (${size.text}) and units is "mm": give units "in" or write mm`);
  const [first] = sizes;
  if (first?.text.startsWith(".") && first.joinedToWord)
    cursor.refuse(
      `has ${first.text} written to a word: put a space, to tell ${first.text} from ${first.text.slice(1)}`,
    );
}

function fromInchFit(fit: string, second: string | undefined, nominal: number, cursor: Cursor): Toleranced {
  if (second) cursor.refuse(`has ${fit}/${second}: an inch fit stands alone`);
  const className = fit.toUpperCase();
  const read = inchFit(nominal, className);
  return {
    lower: read.holeLower,
    upper: read.holeUpper,
    kind: "hole",
    className,
    iso: false,
    shaft: { lower: read.shaftLower, upper: read.shaftUpper, className },
  };
}

function fromClasses(first: string, second: string | undefined, nominal: number, cursor: Cursor): Toleranced {
  if (second === undefined)
    return {
      ...limitDeviations(nominal, first),
      kind: isHoleClass(first) ? "hole" : "shaft",
      className: first,
      iso: true,
      shaft: undefined,
    };
  if (isHoleClass(first) === isHoleClass(second))
    cursor.refuse(
      `has ${first}/${second}: a fit is a hole in capitals and a shaft in small letters, like H7/g6`,
    );
  const [hole, shaft] = isHoleClass(first) ? [first, second] : [second, first];
  return {
    ...limitDeviations(nominal, hole),
    kind: "hole",
    className: hole,
    iso: true,
    shaft: { ...limitDeviations(nominal, shaft), className: shaft },
  };
}

/** Deviations as written; beside a class, whole numbers are µm. */
function statedDeviations(written: Written, units: Units, cursor: Cursor): Deviations {
  const { deviations, plusMinus, classes, size } = written;
  const inMicrometres =
    classes.length > 0 && deviations.every(({ quantity }) => /^\d+$/.test(quantity.text) && !quantity.units);
  const values = deviations.map(({ sign, quantity }) =>
    inMicrometres ? sign * quantity.value * TICKS_PER_UM : sign * ticksOf(quantity, units),
  );
  const [first, second] = values as [number, number | undefined];
  if (plusMinus) return { lower: -first, upper: first };
  if (second === undefined) {
    const [{ sign, quantity }] = deviations as [(typeof deviations)[0]];
    if (Math.abs(first) > ticksOf(size!, units) / 4)
      cursor.refuse(
        `has ${quantity.text} beside ${size!.text}: two limits differ by 20 % at most, a deviation is smaller still`,
      );
    const text = quantity.value === 0 ? "0.018" : quantity.text;
    return cursor.refuse(
      `has one deviation alone: write ${size!.text} ${sign > 0 ? `+${text}/0` : `0/-${text}`}`,
    );
  }
  return { lower: Math.min(first, second), upper: Math.max(first, second) };
}

function refuseOddTolerance(
  lower: number,
  upper: number,
  nominal: number,
  units: Units,
  cursor: Cursor,
): void {
  if (nominal + lower <= 0 || upper >= nominal) cursor.refuse("has a deviation as large as the size");
  if (upper === lower) cursor.refuse("has a tolerance of 0: its two limits are the same");
  if (upper - lower > nominal / 4)
    cursor.refuse(`has a tolerance of ${lengthText(upper - lower, units)}, wider than a quarter of the size`);
}

/** Stated deviations must be those of the class, as far as their decimals go (to 0.001 mm or 0.0001 in at the worst). */
function refuseContradiction(
  read: Toleranced,
  stated: Deviations,
  written: Written,
  units: Units,
  cursor: Cursor,
): void {
  const decimals = Math.max(...written.deviations.map(({ quantity }) => quantity.decimals));
  const coarsest = units === "mm" ? TICKS_PER_UM : TICKS_PER_IN / 1e4;
  const step =
    decimals === 0
      ? TICKS_PER_UM
      : Math.min(coarsest, (units === "mm" ? TICKS_PER_MM : TICKS_PER_IN) / 10 ** decimals);
  const own = read.iso
    ? { lower: deviationIn(read.lower, units), upper: deviationIn(read.upper, units) }
    : read;
  if (Math.abs(own.lower - stated.lower) <= step / 2 && Math.abs(own.upper - stated.upper) <= step / 2)
    return;
  const text = (one: Deviations) => `${signedText(one.upper, units)}/${signedText(one.lower, units)}`;
  cursor.refuse(`contradicts itself: ${read.className} is ${text(own)}, written is ${text(stated)}`);
}

function signedText(ticks: number, units: Units): string {
  return `${ticks > 0 ? "+" : ""}${lengthText(ticks, units)}`;
}
