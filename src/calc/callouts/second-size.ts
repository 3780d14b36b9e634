// calc: a size written a second time in the other unit, in brackets: the one outside counts, the other must agree.

import { lengthText, TICKS_PER_IN, TICKS_PER_MM, type Units } from "../lengths.ts";
import type { Deviations } from "./callout.ts";
import { type Cursor, type Quantity, ticksOf } from "./quantities.ts";
import type { Written, WrittenDeviation } from "./written.ts";

const HAIR = 100;

export function refuseOtherSecond(
  written: Written,
  nominal: number,
  tolerance: Deviations,
  outer: Units,
  cursor: Cursor,
): void {
  const second = written.second!;
  const units = outer === "mm" ? "in" : "mm";
  const step = (decimals: number) => (units === "mm" ? TICKS_PER_MM : TICKS_PER_IN) / 10 ** decimals;
  const isNear = (ticks: number, own: number, within: number) => Math.abs(ticks - own) <= within + HAIR;
  const { lower, upper } = tolerance;

  const isSize = ({ size, limit }: Written): boolean => {
    if (!size) return true;
    const ownUnit = [size, limit].every((one) => !one?.units || one.units === units);
    if (!ownUnit) return false;
    if (!limit) return isNear(ticksOf(size, units), nominal, step(size.isFraction ? 3 : size.decimals) / 2);
    const [minimum, maximum] = [ticksOf(size, units), ticksOf(limit, units)].sort((a, b) => a - b);
    const within = step(Math.max(size.decimals, limit.decimals));
    return isNear(minimum, nominal + lower, within - 1) && isNear(maximum, nominal + upper, within - 1);
  };

  /** Limits are often rounded inward, so a deviation may be off by almost a whole step. */
  const isTolerance = ({ tolerance }: Written): boolean => {
    if (!tolerance) return true;
    const { deviations, plusMinus } = tolerance;
    const ticks = ({ sign, quantity }: WrittenDeviation) => sign * ticksOf(quantity, units);
    const [first, other] = [ticks(deviations[0]), deviations[1] ? ticks(deviations[1]) : 0];
    const [minimum, maximum] = plusMinus ? [-first, first] : [Math.min(first, other), Math.max(first, other)];
    const within =
      step(Math.max(...deviations.map(({ quantity }: { quantity: Quantity }) => quantity.decimals))) - 1;
    return isNear(minimum, lower, within) && isNear(maximum, upper, within);
  };

  if (second.classes.length === 0 && isSize(second) && isTolerance(second)) return;
  const text = second.size?.text ?? "the tolerance";
  cursor.refuse(
    `has ${text} in brackets, and ${written.size!.text} ${outer} is ${lengthText(nominal, units)} ${units}. Write the one that counts.`,
  );
}
