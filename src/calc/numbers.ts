// calc: whole numbers, and the smallest and largest of a list.

/** However long the list is: a call with it spread out has a limit. */
export const minimumOf = (numbers: readonly number[]): number => numbers.reduce((a, b) => Math.min(a, b));
export const maximumOf = (numbers: readonly number[]): number => numbers.reduce((a, b) => Math.max(a, b));

/** Whole numbers are taken after this much, so that 408 computed as 407.9999999999 is 408. */
const HAIR = 1e-9;

export const wholeDown = (value: number): number => Math.floor(value + HAIR);
/** What is needed of something is one at least. */
export const wholeUp = (value: number): number => Math.max(Math.ceil(value - HAIR), value > 0 ? 1 : 0);
