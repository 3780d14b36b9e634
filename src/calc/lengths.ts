// calc: exact lengths. A stated length is a decimal; it is held as a whole number of ticks of 1e-8 mm,
// in which 0.1 µm, 0.000001 in and 1/64 in are all whole, so that no share or sum is off by a floating-point hair.

import * as ticks from "./ticks.ts";

export type Units = "mm" | "in";

/** One millimeter or one inch. */
export const ONE = { mm: ticks.MILLIMETER, in: ticks.INCH } as const;
/** The longest length read, the end of ISO 286: 3150 mm (124 in). */
export const LONGEST = { mm: 3150, in: 124 } as const;

/** Whole ticks of a length in mm or in. */
export function toTicks(length: number, units: Units): ticks.Ticks {
  return ticks.rounded(ticks.times(units === "mm" ? ticks.MILLIMETER : ticks.INCH, length));
}

/** Whole ticks of a length in µm. */
export function micrometers(length: number): ticks.Ticks {
  return ticks.rounded(ticks.times(ticks.MICROMETER, length));
}

/** A length in mm or in from ticks, rounded to 1e-7 of its unit. */
export function fromTicks(length: ticks.Ticks, units: Units): number {
  return Math.round(ticks.ratio(length, ticks.TICK) / (units === "mm" ? 10 : 254)) / 1e7 + 0;
}

/** A length as it leaves a function: rounded to 1e-7 of its unit, never −0. */
export function roundLength(length: number): number {
  return Math.round(length * 1e7) / 1e7 + 0;
}

/** A length as a message writes it: at most seven decimals, no trailing zeros. */
export function lengthText(length: ticks.Ticks, units: Units): string {
  const text = fromTicks(length, units)
    .toFixed(7)
    .replace(/\.?0+$/, "");
  return text === "-0" ? "0" : text;
}
