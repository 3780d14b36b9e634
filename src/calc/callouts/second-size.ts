// calc: a size written a second time in the other unit, in brackets: the one outside counts, the other must agree.

import { lengthText, ONE, type Units } from "../lengths.ts";
import * as ticks from "../ticks.ts";
import { type Limits, TICK, type Ticks, ZERO } from "../ticks.ts";
import { type Cursor, ticksOf } from "./quantities.ts";
import type { Written } from "./written.ts";

const HAIR = ticks.times(TICK, 100);

export function refuseOtherSecond(
  written: Written,
  nominal: Ticks,
  tolerance: Limits,
  outer: Units,
  cursor: Cursor,
): void {
  const second = written.second!;
  const units = outer === "mm" ? "in" : "mm";
  const step = (decimals: number) => ticks.dividedBy(ONE[units], 10 ** decimals);
  const isNear = (one: Ticks, own: Ticks, within: Ticks) => ticks.apart(one, own) <= ticks.plus(within, HAIR);
  const areNear = (one: Ticks, other: Ticks, own: Limits, decimals: number): boolean => {
    // Limits are often rounded inward, so each may be off by almost a whole step.
    const within = ticks.minus(step(decimals), TICK);
    return (
      isNear(ticks.smaller(one, other), own.lower, within) &&
      isNear(ticks.larger(one, other), own.upper, within)
    );
  };

  const isSize = ({ size, limit }: Written): boolean => {
    if (!size) return true;
    const ownUnit = [size, limit].every((one) => !one?.units || one.units === units);
    if (!ownUnit) return false;
    if (!limit)
      return isNear(
        ticksOf(size, units),
        nominal,
        ticks.dividedBy(step(size.isFraction ? 3 : size.decimals), 2),
      );
    const decimals = Math.max(size.decimals, limit.decimals);
    return areNear(ticksOf(size, units), ticksOf(limit, units), ticks.moved(tolerance, nominal), decimals);
  };

  const size = written.size!.text;
  if (second.classes.length > 0 || !isSize(second)) {
    cursor.refuse(
      `has ${second.size!.text} in brackets, and ${size} ${outer} is ${lengthText(nominal, units)} ${units}. Write the one that counts.`,
    );
  }
  if (!second.tolerance) return;
  const { deviations, plusMinus } = second.tolerance;
  const [first, last = plusMinus ? ticks.negative(first) : ZERO] = deviations.map(({ sign, quantity }) =>
    ticks.times(ticksOf(quantity, units), sign),
  );
  const decimals = Math.max(...deviations.map(({ quantity }) => quantity.decimals));
  if (areNear(first, last, tolerance, decimals)) return;
  const range = (one: Ticks, other: Ticks) =>
    `${lengthText(ticks.smaller(one, other), units)} to ${lengthText(ticks.larger(one, other), units)} ${units}`;
  cursor.refuse(
    `has brackets with deviations of ${range(first, last)}, and those of ${size} ${outer} are ${range(tolerance.lower, tolerance.upper)}. Write the ones that count.`,
  );
}
