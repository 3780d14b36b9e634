// calc: callouts without a unit of their own that could as well be in the other one: refused, with both readings as
// they would have to be written.

import type { Units } from "../lengths.ts";
import * as ticks from "../ticks.ts";
import { INCH, MICROMETER, MILLIMETER, type Ticks, ZERO } from "../ticks.ts";
import { type Cursor, type Quantity, ticksOf } from "./quantities.ts";
import type { Written } from "./written.ts";

/** Over this an inch size is doubtful whatever its decimals. */
const LARGE_INCH = 8;

/** Two limits or deviations with other numbers of decimals, one of more than this many: a space is lost behind one. */
const MOST_DECIMALS = 4;

/** `+.0005/-.000032 FINISH`, where 32 is the roughness. */
export function refuseOddDecimals({ size, limit, tolerance }: Written, cursor: Cursor): void {
  const pair = limit ? [size!, limit] : (tolerance?.deviations ?? []).map(({ quantity }) => quantity);
  const [one, other] = pair.filter(({ text, isFraction }) => !isFraction && text !== "0");
  if (!one || !other || one.decimals === other.decimals) return;
  const longer = one.decimals > other.decimals ? one : other;
  if (longer.decimals > MOST_DECIMALS)
    cursor.refuse(
      `has ${longer.text} beside ${(longer === one ? other : one).text}. Write both with the same number of decimals.`,
    );
}

/** Patterns of holes have as many; a depth of so little is rare. */
const MOST_LIKE_A_COUNT = 8;

/** `8 H7 x4` */
export function refuseCountOrDepth(
  { depth, isDepthBare, count, size }: Written,
  units: Units,
  cursor: Cursor,
): void {
  if (!depth || !isDepthBare || count !== undefined || depth.units || depth.isFraction) return;
  const { value, text, decimals } = depth;
  if (decimals > 0 || value < 2 || value > MOST_LIKE_A_COUNT) return;
  if (units === "in" || value < size!.value)
    cursor.refuse(
      `could be ${text} holes, or one that is ${text} deep. Write ${text}X before the size, or x ${text} DEEP.`,
    );
}

const PLACES = "ENDE?|SIDE|FACE|FLANGE|FLANSCH|HALF|LEG|EAR|LUG|ARM|ROW|SEITE|C[OÔ]T[EÉ]|LATO|LADO";
const AT_EACH = new RegExp(
  `^(?:(?:ON|AT|IN|AN|AUF|SUR|SU) )?(?:EACH|EA|PER|BOTH|JEDER?|JE|BEIDEN?|PAR|CHAQUE|OGNI|CADA|POR) (?:${PLACES})`,
  "i",
);

/** `4 HOLES EACH END`; not `4X THRU BOTH SIDES`. */
export function refuseCountAtEach({ count, notes, through }: Written, cursor: Cursor): void {
  if (count === undefined || count === 1) return;
  for (const { start, end } of notes) {
    const words = cursor.plain.slice(start, end);
    if (AT_EACH.test(words) && !(through && /^BOTH/i.test(words)))
      cursor.refuse(
        `could be ${count} holes in all, or ${count} "${words}". Write the number of all holes, without these words.`,
      );
  }
}

export function refuseDoubtful(written: Written, units: Units, width: Ticks, cursor: Cursor): void {
  if (width === ZERO) return;
  if (units === "in") refuseDoubtfulInches(written, cursor);
  else refuseDoubtfulMillimeters(written, width, cursor);
  const { size, isCountApart, count, tolerance } = written;
  if (
    isCountApart &&
    tolerance &&
    width >= (units === "mm" ? ticks.dividedBy(MILLIMETER, 5) : ticks.dividedBy(INCH, 100))
  )
    cursor.refuse(
      `could be ${count} holes of ${size!.text}, or a hole of ${count} that is ${size!.text} deep. Write ${count}X ⌀${size!.text}, or ⌀${count} with its tolerance.`,
    );
}

function refuseDoubtfulMillimeters(written: Written, width: Ticks, cursor: Cursor): void {
  const { size, limit, classes, tolerance } = written;
  const sizes = limit ? [size!, limit] : [size!];
  const deviations = classes.length > 0 || !tolerance ? [] : tolerance.deviations;
  if (deviations.some(({ quantity }) => quantity.decimals === 0 && quantity.value >= 3))
    refuseWholeNumbers(written, width, cursor);
  const mostDecimals = Math.max(...sizes.map(({ decimals }) => decimals));
  const isThin = width < ticks.times(MICROMETER, 10);
  const smallest = Math.min(...sizes.map(({ value }) => value));
  const isDoubtful =
    (classes.length === 0 && width < ticks.times(MICROMETER, 2)) ||
    mostDecimals >= 4 ||
    (smallest < 1 && deviations.some(({ quantity }) => quantity.decimals >= 4)) ||
    (smallest < 4 && mostDecimals === 3 && (classes.length > 0 || isThin));
  if (isDoubtful) refuseEither(written, cursor);
}

function refuseDoubtfulInches(written: Written, cursor: Cursor): void {
  const { size, limit, tolerance } = written;
  const decimals = (tolerance?.deviations ?? [])
    .map(({ quantity }) => quantity)
    .filter((one) => one.decimals > 0);
  const isInchTolerance = !limit && decimals.length > 0 && decimals.every(({ text }) => /^[.,]/.test(text));
  const isDoubtful = ({ value, decimals, isFraction }: Quantity) =>
    !isFraction &&
    (value > LARGE_INCH || (value >= 1 && decimals < (value >= 3 ? 4 : 3) && !isInchTolerance));
  if (isDoubtful(size!) || (limit && isDoubtful(limit))) refuseEither(written, cursor);
}

function refuseEither(written: Written, cursor: Cursor): never {
  return cursor.refuse(
    `could be mm or inches. Write ${withUnit(written, "mm")}, or ${withUnit(written, "in")}.`,
  );
}

/** `160 +40/0`: µm or mm. */
function refuseWholeNumbers(written: Written, width: Ticks, cursor: Cursor): never {
  const { size, tolerance } = written;
  const deviations = tolerance!.deviations.map(({ sign, quantity }) => ({
    sign,
    quantity: { ...quantity, text: inMillimeters(quantity) },
  }));
  const micrometers = withUnit({ ...written, tolerance: { ...tolerance!, deviations } }, "");
  const nominal = ticksOf(size!, "mm");
  if (tolerance!.deviations.some(({ quantity }) => quantity.value >= size!.value))
    cursor.refuse(`has a deviation as large as the size. For µm write ${micrometers}.`);
  if (width > ticks.dividedBy(nominal, 4))
    cursor.refuse(`has a tolerance wider than a quarter of the size. For µm write ${micrometers}.`);
  return cursor.refuse(
    `has deviations that could be µm or mm. Write ${micrometers}, or ${withUnit(written, "mm")}.`,
  );
}

/** Deviations stated in µm, as mm. */
const inMillimeters = ({ value, decimals, text }: Quantity): string =>
  value === 0 ? text : (value / 1000).toFixed(decimals + 3);

/** The size and its tolerance written again, with a unit behind the size. */
function withUnit({ size, limit, classes, tolerance }: Written, unit: string): string {
  const space = unit === "" ? "" : ` ${unit}`;
  if (limit) return `${size!.text}-${limit.text}${space}`;
  const signed = (tolerance?.deviations ?? []).map(({ sign, quantity }) =>
    sign > 0 && quantity.value === 0 ? quantity.text : `${sign < 0 ? "-" : "+"}${quantity.text}`,
  );
  const deviations = tolerance?.plusMinus ? `±${tolerance.deviations[0].quantity.text}` : signed.join("/");
  const parts = [`${size!.text}${space}`, classes.join("/"), classes.length > 0 ? "" : deviations];
  return parts.filter((part) => part !== "").join(" ");
}

/** A fraction or a size like .500 in a sheet in mm, without a unit. */
export function refuseInchStyle(sizes: (Quantity | undefined)[], written: Written, cursor: Cursor): void {
  for (const size of sizes)
    if (size && (size.isFraction || /^[.,]\d{3}/.test(size.text)))
      cursor.refuse(
        `has an inch size (${size.text}) in a sheet in mm. Write ${withUnit(written, "in")}, set units to "in", or write ${withUnit(written, "mm")}.`,
      );
}
