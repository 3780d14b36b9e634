// calc: exact lengths. A stated length is a decimal; it is held as a whole number of ticks of 1e-8 mm,
// in which 0.1 µm, 0.000001 in and 1/64 in are all whole, so that no share or sum is off by a floating-point hair.

export type Units = "mm" | "in";

export const TICKS_PER_MM = 1e8;
export const TICKS_PER_UM = 1e5;
export const TICKS_PER_IN = 25.4e8;
/** The longest length read, the end of ISO 286: 3150 mm (124 in). */
export const LONGEST = { mm: 3150, in: 124 } as const;

/** Whole ticks of a length in mm or in. */
export function toTicks(length: number, units: Units): number {
  return Math.round(length * (units === "mm" ? TICKS_PER_MM : TICKS_PER_IN));
}

/** A length in mm or in from ticks, rounded to 1e-7 of its unit. */
export function fromTicks(ticks: number, units: Units): number {
  return units === "mm" ? Math.round(ticks / 10) / 1e7 + 0 : Math.round(ticks / 254) / 1e7 + 0;
}

/** A length as it leaves a function: rounded to 1e-7 of its unit, never −0. */
export function roundLength(length: number): number {
  return Math.round(length * 1e7) / 1e7 + 0;
}

/** Rounds half away from zero to a whole multiple of `step`, both in ticks. */
export function roundTicks(ticks: number, step: number): number {
  const whole = Math.floor(Math.abs(ticks) / step + 0.5) * step;
  return ticks < 0 ? -whole : whole;
}

/** A length as a message writes it: at most seven decimals, no trailing zeros. */
export function lengthText(ticks: number, units: Units): string {
  return String(Number(fromTicks(ticks, units).toFixed(7)));
}
