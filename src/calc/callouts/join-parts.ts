// calc: the written parts of a callout become one size with its limit deviations, or are refused together.

import { inchFit, isInchFit } from "../fits/ansi-b41.ts";
import { deviationIn, isHoleClass, limitDeviations } from "../fits/iso286.ts";
import { LONGEST, lengthText, ONE, toTicks, type Units } from "../lengths.ts";
import * as ticks from "../ticks.ts";
import { INCH, type Limits, MICROMETER, type Ticks, ZERO } from "../ticks.ts";
import type { Callout } from "./callout.ts";
import {
  refuseCountAtEach,
  refuseCountOrDepth,
  refuseDoubtful,
  refuseInchStyle,
  refuseOddDecimals,
} from "./doubts.ts";
import { type Cursor, ticksOf } from "./quantities.ts";
import { refuseOtherSecond } from "./second-size.ts";
import type { Written } from "./written.ts";

/** The written parts, joined to one size with its deviations. @throws Problem where they do not agree */
export function join(written: Written, cursor: Cursor): Callout {
  const { size, limit, depth } = written;
  if (!size) return cursor.refuse("has no size. Write one with its tolerance, like 12 H7 or 12 +0.018/0.");
  refuseOddDecimals(written, cursor);
  const inch = written.classes.length > 0 && isInchFit(written.classes[0]);
  const stated = statedUnits(written, cursor) ?? (inch ? "in" : undefined);
  const units = stated ?? cursor.sheetUnits;
  if (units === "mm" && stated === undefined) refuseInchStyle([size, limit], written, cursor);
  if (units === "mm" && depth?.isFraction && !depth.units)
    cursor.refuse(`has an inch depth (${depth.text}) in a sheet in mm. Write ${depth.text} in for it.`);
  const first = ticksOf(size, units);
  const second = limit ? ticksOf(limit, units) : first;
  const [nominal, largest] = [ticks.smaller(first, second), ticks.larger(first, second)];
  if (nominal <= ZERO) cursor.refuse("has a size of 0. Write the size, like 12 H7.");
  if (largest > toTicks(LONGEST[units], units))
    cursor.refuse(`has a size over ${LONGEST[units]} ${units}. Sizes end there.`);
  const toleranced = limit
    ? fromLimits(largest, nominal, written, units, cursor)
    : fromTolerance(nominal, written, units, stated === undefined, cursor);
  if (stated === undefined && !written.second)
    refuseDoubtful(written, units, ticks.widthOf(toleranced), cursor);
  refuseCountOrDepth(written, units, cursor);
  refuseCountAtEach(written, cursor);
  if (written.second) refuseOtherSecond(written, nominal, toleranced, units, cursor);
  const { lower, upper, kind, className, iso, shaft } = toleranced;
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
    count: written.count ?? 1,
    depth: depth && ticksOf(depth, units),
    through: written.through,
    coated: written.coated,
    marks: written.marks.join(" "),
    note: written.notes
      .map(({ start, end }) => cursor.plain.slice(start, end).replace(/\n/g, " "))
      .join(", "),
  };
}

type Toleranced = Pick<Callout, "lower" | "upper" | "kind" | "className" | "iso" | "shaft">;

const withoutClass = (lower: Ticks, upper: Ticks): Toleranced => ({
  lower,
  upper,
  kind: "hole",
  className: "",
  iso: false,
  shaft: undefined,
});

function fromLimits(
  largest: Ticks,
  smallest: Ticks,
  written: Written,
  units: Units,
  cursor: Cursor,
): Toleranced {
  if (written.classes.length > 0)
    cursor.refuse(`has both limits and the class ${written.classes[0]}. Write the size once, like 12 H7.`);
  const read = withoutClass(ZERO, ticks.minus(largest, smallest));
  refuseOddTolerance(read, smallest, units, cursor);
  return read;
}

function fromTolerance(
  nominal: Ticks,
  written: Written,
  units: Units,
  isDoubtful: boolean,
  cursor: Cursor,
): Toleranced {
  const [first, second] = written.classes;
  const deviations = written.tolerance ? statedDeviations(written, units, cursor) : undefined;
  if (first === undefined) {
    if (!deviations) return refuseBare(written, units, cursor);
    if (isDoubtful && units === "mm" && !written.second)
      refuseDoubtful(written, units, ticks.widthOf(deviations), cursor);
    refuseOddTolerance(deviations, nominal, units, cursor);
    return withoutClass(ticks.plus(deviations.lower, ZERO), ticks.plus(deviations.upper, ZERO));
  }
  const read = isInchFit(first)
    ? fromInchFit(first, second, nominal, cursor)
    : fromClasses(first, second, nominal, cursor);
  if (read.kind === "shaft" && written.holeWord)
    cursor.refuse(
      `has ${first}, a shaft class, beside ${written.holeWord}. Is ${first.toUpperCase()} meant?`,
    );
  refuseOddTolerance(read, nominal, units, cursor);
  if (deviations) refuseContradiction(read, deviations, written, units, cursor);
  return read;
}

/** Tolerances as title blocks state them: common practice, no source. */
const USUAL = { mm: { large: "±0.1", small: "±0.01" }, in: { large: "±.005", small: "±.0005" } } as const;

function refuseBare({ size, depth }: Written, units: Units, cursor: Cursor): never {
  const usual = USUAL[units][size!.value < (units === "mm" ? 1 : 0.05) ? "small" : "large"];
  return cursor.refuse(
    depth
      ? `has no tolerance for ${size!.text}: one behind the depth is the depth's. Write it next to the size, like ${size!.text} H7.`
      : `has no tolerance. Write it behind the size, like ${size!.text} H7 or ${size!.text} ${usual} (a title block may state it).`,
  );
}

/** The unit written with the size, a limit or a deviation; one for all of them. */
function statedUnits({ size, limit, tolerance }: Written, cursor: Cursor): Units | undefined {
  const quantities = [size!, limit, ...(tolerance?.deviations ?? []).map(({ quantity }) => quantity)];
  const stated = new Set(quantities.map((one) => one?.units));
  if (stated.has("mm") && stated.has("in"))
    cursor.refuse("is written in mm and in inches. Write it in one of them.");
  if (stated.has("in")) return "in";
  if (stated.has("mm")) return "mm";
  if (!stated.has("µm")) return undefined;
  if (cursor.sheetUnits === "in")
    cursor.refuse(
      `has deviations in µm, and units is "in". Write ${size!.text} mm or ${size!.text} in for the size.`,
    );
  return "mm";
}

function fromInchFit(fit: string, second: string | undefined, nominal: Ticks, cursor: Cursor): Toleranced {
  if (second) cursor.refuse(`has ${fit}/${second}, and an inch fit stands alone. Write ${fit}.`);
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

function fromClasses(first: string, second: string | undefined, nominal: Ticks, cursor: Cursor): Toleranced {
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
      `has ${first}/${second}. A fit is a hole in capitals and a shaft in small letters, like H7/g6.`,
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
function statedDeviations(written: Written, units: Units, cursor: Cursor): Limits {
  const { classes, size } = written;
  const { deviations, plusMinus } = written.tolerance!;
  const inMicrometers =
    classes.length > 0 && deviations.every(({ quantity }) => /^\d+$/.test(quantity.text) && !quantity.units);
  const values = deviations.map(({ sign, quantity }) =>
    ticks.times(inMicrometers ? ticks.times(MICROMETER, quantity.value) : ticksOf(quantity, units), sign),
  );
  const [first, second] = values as [Ticks, Ticks | undefined];
  if (plusMinus) return { lower: ticks.negative(first), upper: first };
  if (second === undefined) {
    const [{ sign, quantity }] = deviations as [(typeof deviations)[0]];
    if (ticks.absolute(first) > ticks.dividedBy(ticksOf(size!, units), 4))
      cursor.refuse(
        `has ${quantity.text} beside ${size!.text}. Two limits differ by 20 % at most and one has a decimal point; a deviation is smaller still.`,
      );
    if (classes[0])
      cursor.refuse(
        `has ${classes[0]} and one deviation. Write ${classes[0]} alone, or both deviations behind it.`,
      );
    if (quantity.value === 0)
      cursor.refuse("has 0 as its only deviation. Write the other one too, with its sign, like +0.018/0.");
    return cursor.refuse(
      `has one deviation alone. Write ${size!.text} ${sign > 0 ? `+${quantity.text}/0` : `0/-${quantity.text}`}.`,
    );
  }
  return { lower: ticks.smaller(first, second), upper: ticks.larger(first, second) };
}

function refuseOddTolerance(deviations: Limits, nominal: Ticks, units: Units, cursor: Cursor): void {
  const { lower, upper } = deviations;
  const width = ticks.widthOf(deviations);
  if (ticks.plus(nominal, lower) <= ZERO || upper >= nominal)
    cursor.refuse("has a deviation as large as the size. Write the size and its tolerance again.");
  if (upper === lower) cursor.refuse("has a tolerance of 0. Write two different limits.");
  if (width > ticks.dividedBy(nominal, 4))
    cursor.refuse(
      `has a tolerance of ${lengthText(width, units)}, wider than a quarter of the size. Write the size and its tolerance again.`,
    );
}

/** Stated deviations must be those of the class, as far as their decimals go (to 0.001 mm or 0.0001 in at the worst). */
function refuseContradiction(
  read: Toleranced,
  stated: Limits,
  written: Written,
  units: Units,
  cursor: Cursor,
): void {
  const { deviations } = written.tolerance!;
  const micrometers = deviations[0].quantity.units === "µm";
  const decimals = micrometers ? 0 : Math.max(...deviations.map(({ quantity }) => quantity.decimals));
  const coarsest = units === "mm" ? MICROMETER : ticks.dividedBy(INCH, 1e4);
  const step =
    decimals === 0 ? MICROMETER : ticks.smaller(coarsest, ticks.dividedBy(ONE[units], 10 ** decimals));
  const own = read.iso
    ? { lower: deviationIn(read.lower, units), upper: deviationIn(read.upper, units) }
    : read;
  if (
    ticks.larger(ticks.apart(own.lower, stated.lower), ticks.apart(own.upper, stated.upper)) <=
    ticks.dividedBy(step, 2)
  )
    return;
  const text = (one: Limits) => `${signedText(one.upper, units)}/${signedText(one.lower, units)}`;
  cursor.refuse(
    `contradicts itself: ${read.className} is ${text(own)}, written is ${text(stated)}. Write the one that counts.`,
  );
}

function signedText(deviation: Ticks, units: Units): string {
  return `${deviation > ZERO ? "+" : ""}${lengthText(deviation, units)}`;
}
