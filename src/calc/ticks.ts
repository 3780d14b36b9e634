// calc: lengths in ticks of 1e-8 mm, and their arithmetic. A tick is a number when it runs and none to the compiler, so
// that neither is taken for the other. Ticks compare with <, > and ===; all else is a function here.

declare const unit: unique symbol;
export interface Ticks {
  readonly [unit]: "1e-8 mm";
}

/** Lower and upper limit of a size, or the limit deviations from it. */
export interface Limits {
  readonly lower: Ticks;
  readonly upper: Ticks;
}

const asTicks = (count: number) => count as unknown as Ticks;
const count = (length: Ticks) => length as unknown as number;

export const ZERO = asTicks(0);
export const TICK = asTicks(1);
export const MICROMETER = asTicks(1e5);
export const MILLIMETER = asTicks(1e8);
export const INCH = asTicks(25.4e8);

export const plus = (a: Ticks, b: Ticks) => asTicks(count(a) + count(b));
export const minus = (a: Ticks, b: Ticks) => asTicks(count(a) - count(b));
export const times = (length: Ticks, factor: number) => asTicks(count(length) * factor);
export const dividedBy = (length: Ticks, parts: number) => asTicks(count(length) / parts);
/** How many times `b` is in `a`. */
export const ratio = (a: Ticks, b: Ticks) => count(a) / count(b);
export const negative = (length: Ticks) => asTicks(-count(length));
export const absolute = (length: Ticks) => asTicks(Math.abs(count(length)));
export const smaller = (a: Ticks, b: Ticks) => asTicks(Math.min(count(a), count(b)));
export const larger = (a: Ticks, b: Ticks) => asTicks(Math.max(count(a), count(b)));
/** How far two lengths are from one another. */
export const apart = (a: Ticks, b: Ticks) => absolute(minus(a, b));
/** For sorting, the smaller first. */
export const inOrder = (a: Ticks, b: Ticks) => count(a) - count(b);
export const rounded = (length: Ticks) => asTicks(Math.round(count(length)));

/** The nearest multiple of `step`; of two the one away from zero. */
export function roundedTo(step: Ticks, length: Ticks): Ticks {
  const whole = times(step, Math.floor(ratio(absolute(length), step) + 0.5));
  return length < ZERO ? negative(whole) : whole;
}

export const widthOf = ({ lower, upper }: Limits) => minus(upper, lower);
export const moved = ({ lower, upper }: Limits, by: Ticks): Limits => ({
  lower: plus(lower, by),
  upper: plus(upper, by),
});
