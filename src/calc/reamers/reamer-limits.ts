// calc: the diameter of a new reamer for a toleranced hole (ISO 522 / DIN 1420 rule). Lengths in mm or in.

import { type Callout, type Deviations, limitsOf } from "../callouts/callout.ts";
import type { Formula } from "../formula.ts";
import {
  fromTicks,
  lengthText,
  TICKS_PER_IN,
  TICKS_PER_MM,
  TICKS_PER_UM,
  toTicks,
  type Units,
} from "../lengths.ts";
import { none, shown, wrong } from "../problem.ts";

/** To what each share of the tolerance is rounded up: 0.001 mm or 0.00005 in. */
const SHARE_STEP = { mm: TICKS_PER_UM, in: TICKS_PER_IN / 20000 } as const;

/**
 * Window of a new reamer in ticks, before what it cuts over: 15 % of the tolerance under the hole's maximum,
 * 35 % deep, each share rounded up in the callout's own unit.
 * @throws Problem "wrong" for a shaft, "none" where the least comes out under the hole's minimum
 */
function reamerWindow(callout: Callout, units: Units): Deviations {
  const hole = bareHoleLimits(callout, units);
  const step = SHARE_STEP[callout.units];
  const tolerance = ownTolerance(callout);
  const wearReserve = sharedUp(tolerance, 15, step);
  const reamerTolerance = sharedUp(tolerance, 35, step);
  const upper = hole.upper - wearReserve;
  const lower = upper - reamerTolerance;
  if (wearReserve + reamerTolerance > tolerance)
    none(
      `callout leaves a reamer ${lengthText(lower, units)} to ${lengthText(upper, units)}, under the hole's minimum ${lengthText(hole.lower, units)}: the tolerance is too narrow for the rule`,
    );
  return { lower, upper };
}

/** Limits of size of a hole in ticks. @throws Problem "wrong" for a shaft */
export function holeLimits(callout: Callout, units: Units): Deviations {
  if (callout.kind === "shaft")
    wrong(`callout: ${callout.className} is a shaft: write ${callout.className.toUpperCase()}`);
  return limitsOf(callout, units);
}

/** As holeLimits, of a hole whose limits hold as it is reamed. @throws Problem "wrong" for one to be coated after, too */
function bareHoleLimits(callout: Callout, units: Units): Deviations {
  if (callout.coated)
    wrong(
      `callout ${shown(callout.text)} holds after coating. Calculate the limits before it with PREPLATE, and ream to those.`,
    );
  return holeLimits(callout, units);
}

/** The tolerance in the callout's own unit, so that a sheet in the other unit orders the same reamer. */
function ownTolerance(callout: Callout): number {
  const { lower, upper } = limitsOf(callout, callout.units);
  return upper - lower;
}

/** A share in per cent of a length in ticks, rounded up to whole steps; exact, as both are whole numbers. */
function sharedUp(ticks: number, percent: number, step: number): number {
  return Math.ceil((ticks * percent) / (100 * step)) * step;
}

/**
 * The window less what the reamer cuts over: the diameters to order it at, in ticks.
 * @throws Problem "wrong" where cutsOver leaves no reamer, and as `reamerWindow` does
 */
export function orderWindow(callout: Callout, cutsOver: number, units: Units): Deviations {
  const { lower, upper } = reamerWindow(callout, units);
  const over = toTicks(cutsOver, units);
  if (lower - over <= 0)
    wrong(`cutsOver ${cutsOver} is larger than the hole: give what one reamer cuts over its size`);
  return { lower: lower - over, upper: upper - over };
}

/** Least and greatest diameter of a new reamer. */
export function reamerLimits(callout: Callout, cutsOver = 0, units: Units = "mm"): [number, number] {
  const { lower, upper } = orderWindow(callout, cutsOver, units);
  return [fromTicks(lower, units), fromTicks(upper, units)];
}
reamerLimits.formula = {
  source: "reamer-limits",
  given: (callout: Callout, cutsOver = 0, units: Units = "mm") => {
    const ticksPerUnit = units === "mm" ? TICKS_PER_MM : TICKS_PER_IN;
    return {
      holeGreatest: fromTicks(holeLimits(callout, units).upper, units),
      tolerance: ownTolerance(callout) / ticksPerUnit,
      shareStep: SHARE_STEP[callout.units] / ticksPerUnit,
      cutsOver,
    };
  },
  steps: (units) => [
    { symbol: "wearReserve", expression: "roundup(0.15 * tolerance, shareStep)", unit: units },
    { symbol: "reamerTolerance", expression: "roundup(0.35 * tolerance, shareStep)", unit: units },
    { symbol: "least", expression: "holeGreatest - wearReserve - reamerTolerance - cutsOver", unit: units },
    { symbol: "greatest", expression: "holeGreatest - wearReserve - cutsOver", unit: units },
  ],
} satisfies Formula;

/** How much the diameter may wear before the hole falls under its minimum; negative if it already does. */
export function wearAllowance(callout: Callout, reamer: number, cutsOver = 0, units: Units = "mm"): number {
  const { lower } = bareHoleLimits(callout, units);
  return fromTicks(toTicks(reamer, units) + toTicks(cutsOver, units) - lower, units);
}
wearAllowance.formula = {
  source: "derived",
  given: (callout: Callout, _reamer: number, cutsOver = 0, units: Units = "mm") => ({
    holeLeast: fromTicks(holeLimits(callout, units).lower, units),
    cutsOver,
  }),
  steps: (units) => [{ symbol: "wear", expression: "reamer + cutsOver - holeLeast", unit: units }],
} satisfies Formula;

/** Mean of trial holes less the reamer, and their spread (greatest − least). @param measured at least one hole */
export function cuttingOversize(
  measured: readonly number[],
  reamer: number,
  units: Units = "mm",
): [number, number] {
  const holes = measured.map((hole) => toTicks(hole, units));
  const mean = holes.reduce((sum, hole) => sum + hole, 0) / holes.length;
  const spread = Math.max(...holes) - Math.min(...holes);
  return [fromTicks(mean - toTicks(reamer, units), units), fromTicks(spread, units)];
}
cuttingOversize.formula = {
  source: "derived",
  given: (measured: readonly number[]) => ({
    mean: measured.reduce((sum, hole) => sum + hole, 0) / measured.length,
    greatest: Math.max(...measured),
    least: Math.min(...measured),
  }),
  steps: (units) => [
    { symbol: "cutsOver", expression: "mean - reamer", unit: units },
    { symbol: "spread", expression: "greatest - least", unit: units },
  ],
} satisfies Formula;

/**
 * Limits of a hole before plating. The hole shrinks on each side by buildUp × thickness.
 * @throws Problem "none" where the plating scatters more than the tolerance allows
 */
export function beforePlating(
  callout: Callout,
  thickness: number,
  thicknessTolerance = 0,
  buildUp = 1,
  units: Units = "mm",
): [number, number] {
  const hole = holeLimits(callout, units);
  const thick = toTicks(thickness, units);
  const scatter = toTicks(thicknessTolerance, units);
  const least = hole.lower + 2 * buildUp * (thick + scatter);
  const greatest = hole.upper + 2 * buildUp * (thick - scatter);
  if (least > greatest)
    none(
      `thicknessTolerance ${thicknessTolerance} asks for a hole of at least ${lengthText(least, units)} and at most ${lengthText(greatest, units)}: plate more evenly or widen the tolerance`,
    );
  return [fromTicks(least, units), fromTicks(greatest, units)];
}
beforePlating.formula = {
  source: "derived",
  given: (callout: Callout, _thickness: number, thicknessTolerance = 0, buildUp = 1, units: Units = "mm") => {
    const { lower, upper } = holeLimits(callout, units);
    const [holeLeast, holeGreatest] = [fromTicks(lower, units), fromTicks(upper, units)];
    return { holeLeast, holeGreatest, thicknessTolerance, buildUp };
  },
  steps: (units) => [
    {
      symbol: "least",
      expression: "holeLeast + 2 * buildUp * (thickness + thicknessTolerance)",
      unit: units,
    },
    {
      symbol: "greatest",
      expression: "holeGreatest + 2 * buildUp * (thickness - thicknessTolerance)",
      unit: units,
    },
  ],
} satisfies Formula;
