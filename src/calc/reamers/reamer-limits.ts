// calc: the diameter of a new reamer for a toleranced hole (ISO 522 / DIN 1420 rule). Lengths in mm or in.

import { type Callout, limitsOf } from "../callouts/callout.ts";
import type { Formula } from "../formula.ts";
import { fromTicks, lengthText, ONE, toTicks, type Units } from "../lengths.ts";
import { maximumOf, minimumOf } from "../numbers.ts";
import { none, shown, wrong } from "../problem.ts";
import * as ticks from "../ticks.ts";
import { INCH, type Limits, MICROMETER, type Ticks, ZERO } from "../ticks.ts";

/** To what each share of the tolerance is rounded up: 0.001 mm or 0.00005 in. */
const SHARE_STEP = { mm: MICROMETER, in: ticks.dividedBy(INCH, 20000) } as const;

/**
 * Window of a new reamer, before its cutting oversize: the oversize allowance, 15 % of the tolerance, lies
 * above it, and it is 35 % wide; each share is rounded up in the callout's own unit.
 * @throws Problem "wrong" for a shaft, "none" where the minimum falls under the hole's minimum
 */
function reamerWindow(callout: Callout, units: Units): Limits {
  const hole = bareHoleLimits(callout, units);
  const step = SHARE_STEP[callout.units];
  const tolerance = ownTolerance(callout);
  const oversizeAllowance = sharedUp(tolerance, 15, step);
  const reamerTolerance = sharedUp(tolerance, 35, step);
  const upper = ticks.minus(hole.upper, oversizeAllowance);
  const lower = ticks.minus(upper, reamerTolerance);
  if (ticks.plus(oversizeAllowance, reamerTolerance) > tolerance)
    none(
      `callout leaves a reamer of ${lengthText(lower, units)} to ${lengthText(upper, units)} ${units}, under the hole's minimum of ${lengthText(hole.lower, units)}. The tolerance is too narrow for the rule.`,
    );
  return { lower, upper };
}

/** Limits of size of a hole. @throws Problem "wrong" for a shaft */
export function holeLimits(callout: Callout, units: Units): Limits {
  if (callout.kind === "shaft")
    wrong(`callout: ${callout.className} is a shaft class. Is ${callout.className.toUpperCase()} meant?`);
  return limitsOf(callout, units);
}

/** As holeLimits, of a hole whose limits hold as it is reamed. @throws Problem "wrong" for one to be coated after, too */
function bareHoleLimits(callout: Callout, units: Units): Limits {
  if (callout.coated === "perhaps")
    wrong(
      `callout ${shown(callout.text)} may hold after coating. Calculate the limits before it with PREPLATE, or delete the words if nothing is coated.`,
    );
  if (callout.coated)
    wrong(
      `callout ${shown(callout.text)} holds after coating. Calculate the limits before it with PREPLATE, and ream to those.`,
    );
  return holeLimits(callout, units);
}

/** The tolerance in the callout's own unit, so that a sheet in the other unit orders the same reamer. */
function ownTolerance(callout: Callout): Ticks {
  return ticks.widthOf(limitsOf(callout, callout.units));
}

/** A share in percent of a length, rounded up to whole steps; exact, as both are whole numbers. */
function sharedUp(length: Ticks, percent: number, step: Ticks): Ticks {
  return ticks.times(step, Math.ceil(ticks.ratio(ticks.times(length, percent), ticks.times(step, 100))));
}

/**
 * The window less the cutting oversize: the diameters to order a reamer at.
 * @throws Problem "wrong" where the oversize leaves no reamer, and as `reamerWindow` does
 */
export function orderWindow(callout: Callout, cutsOver: Ticks, units: Units): Limits {
  const order = ticks.moved(reamerWindow(callout, units), ticks.negative(cutsOver));
  if (order.lower <= ZERO)
    wrong(
      `cutsOver is ${lengthText(cutsOver, units)}, larger than the hole. Enter how much larger than itself the reamer cuts.`,
    );
  return order;
}

/** Minimum and maximum diameter of a new reamer. */
export function reamerLimits(callout: Callout, cutsOver = 0, units: Units = "mm"): [number, number] {
  const { lower, upper } = orderWindow(callout, toTicks(cutsOver, units), units);
  return [fromTicks(lower, units), fromTicks(upper, units)];
}
reamerLimits.formula = {
  source: "reamer-limits",
  defaults: { cutsOver: 0 },
  given: (callout: Callout, _cutsOver?: number, units: Units = "mm") => ({
    holeMaximum: [fromTicks(holeLimits(callout, units).upper, units), units],
    tolerance: [ticks.ratio(ownTolerance(callout), ONE[units]), units],
  }),
  steps: (units, callout: Callout) => {
    const step = ticks.ratio(SHARE_STEP[callout.units], ONE[units]);
    return [
      { symbol: "oversizeAllowance", expression: `roundup(0.15 * tolerance, ${step})`, unit: units },
      { symbol: "reamerTolerance", expression: `roundup(0.35 * tolerance, ${step})`, unit: units },
      {
        symbol: "maximum",
        expression: "holeMaximum - oversizeAllowance - cutsOver",
        unit: units,
        result: 1,
      },
      { symbol: "minimum", expression: "maximum - reamerTolerance", unit: units, result: 0 },
    ];
  },
} satisfies Formula;

/** How much diameter the reamer can still lose before the hole goes undersize; negative if it already does. */
export function wearAllowance(callout: Callout, reamer: number, cutsOver = 0, units: Units = "mm"): number {
  const { lower } = bareHoleLimits(callout, units);
  return fromTicks(ticks.minus(ticks.plus(toTicks(reamer, units), toTicks(cutsOver, units)), lower), units);
}
wearAllowance.formula = {
  source: "derived",
  defaults: { cutsOver: 0 },
  given: (callout: Callout, _reamer: number, _cutsOver?: number, units: Units = "mm") => ({
    holeMinimum: [fromTicks(holeLimits(callout, units).lower, units), units],
  }),
  steps: (units) => [{ symbol: "wearAllowance", expression: "reamer + cutsOver - holeMinimum", unit: units }],
} satisfies Formula;

/** Mean of trial holes less the reamer, and their spread (maximum − minimum). @param measured at least one hole */
export function cuttingOversize(
  measured: readonly number[],
  reamer: number,
  units: Units = "mm",
): [number, number] {
  const holes = measured.map((hole) => toTicks(hole, units));
  const mean = ticks.dividedBy(holes.reduce(ticks.plus, ZERO), holes.length);
  return [
    fromTicks(ticks.minus(mean, toTicks(reamer, units)), units),
    fromTicks(ticks.minus(holes.reduce(ticks.larger), holes.reduce(ticks.smaller)), units),
  ];
}
cuttingOversize.formula = {
  source: "derived",
  given: (measured: readonly number[], _reamer: number, units: Units = "mm") => ({
    mean: [measured.reduce((sum, hole) => sum + hole, 0) / measured.length, units],
    largest: [maximumOf(measured), units],
    smallest: [minimumOf(measured), units],
  }),
  steps: (units) => [
    { symbol: "cutsOver", expression: "mean - reamer", unit: units },
    { symbol: "spread", expression: "largest - smallest", unit: units },
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
  const minimum = ticks.plus(hole.lower, ticks.times(ticks.plus(thick, scatter), 2 * buildUp));
  const maximum = ticks.plus(hole.upper, ticks.times(ticks.minus(thick, scatter), 2 * buildUp));
  if (minimum > maximum)
    none(
      `thicknessTolerance is ${thicknessTolerance}. The hole would have to be at least ${lengthText(minimum, units)} and at most ${lengthText(maximum, units)} before plating: plate more evenly or widen the tolerance.`,
    );
  return [fromTicks(minimum, units), fromTicks(maximum, units)];
}
beforePlating.formula = {
  source: "derived",
  defaults: { thicknessTolerance: 0, buildUp: 1 },
  given: (
    callout: Callout,
    _thickness: number,
    _tolerance?: number,
    _buildUp?: number,
    units: Units = "mm",
  ) => {
    const { lower, upper } = holeLimits(callout, units);
    return { holeMinimum: [fromTicks(lower, units), units], holeMaximum: [fromTicks(upper, units), units] };
  },
  steps: (units) => [
    {
      symbol: "minimum",
      expression: "holeMinimum + 2 * buildUp * (thickness + thicknessTolerance)",
      unit: units,
    },
    {
      symbol: "maximum",
      expression: "holeMaximum + 2 * buildUp * (thickness - thicknessTolerance)",
      unit: units,
    },
  ],
} satisfies Formula;
