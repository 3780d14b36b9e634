// calc: two numbers that could be limits and are too far apart to be them for certain: a count and a size, or two sizes.

import { standardTolerance } from "../fits/iso286.ts";
import { LONGEST, toTicks } from "../lengths.ts";
import * as ticks from "../ticks.ts";
import { MILLIMETER } from "../ticks.ts";
import { type Cursor, type Quantity, ticksOf } from "./quantities.ts";

/** The coarsest grade that limits are taken to have: of a hole with ⌀ or an operation beside it, of bare numbers. */
const COARSEST = { named: "11", bare: "14", apart: "16" } as const;

function isWiderThan(grade: string, first: Quantity, second: Quantity, cursor: Cursor): boolean {
  const [one, two] = [first, second].map((quantity) => ticksOf(quantity, cursor.units));
  // The grades begin above 1 mm.
  const nominal = ticks.larger(ticks.smaller(one, two), ticks.times(MILLIMETER, 2));
  return nominal <= toTicks(LONGEST.mm, "mm") && ticks.apart(two, one) > standardTolerance(nominal, grade);
}

/** `10-⌀10.5`, `98-106.259`, `10-10.2 DRILL`: limits, or that many holes of one size. */
export function refuseCountOrLimits(size: Quantity, limit: Quantity, isNamed: boolean, cursor: Cursor): void {
  if (size.units || !/^\d{1,5}$/.test(size.text) || Number(size.text) === 0 || limit.isFraction) return;
  const isRound = limit.decimals < (cursor.units === "mm" ? 2 : 3);
  if (!(isNamed && isRound) && !isWiderThan(isNamed ? COARSEST.named : COARSEST.bare, size, limit, cursor))
    return;
  const limits = `${size.value.toFixed(limit.decimals)}-${limit.text}`;
  cursor.refuse(
    `could be ${size.text} ${size.text === "1" ? "hole" : "holes"} of ${limit.text}, or two limits. Write ${size.text}X ⌀${limit.text} with its tolerance, or ${limits}.`,
  );
}

/** `12.00 14.00`: with nothing between them, limits or two sizes. */
export function refuseTwoSizes(size: Quantity, limit: Quantity, cursor: Cursor): void {
  if (isWiderThan(COARSEST.apart, size, limit, cursor))
    cursor.refuse(
      `could be two sizes, ${size.text} and ${limit.text}, or two limits. Write ${size.text}-${limit.text}, or one size with its tolerance.`,
    );
}
