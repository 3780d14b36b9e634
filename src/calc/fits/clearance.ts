// calc: a hole and a shaft together. A negative clearance is an interference.

import { type Callout, deviationsOf, limitsOf } from "../callouts/callout.ts";
import type { Formula } from "../formula.ts";
import { fromTicks, type Units } from "../lengths.ts";
import { wrong } from "../problem.ts";
import * as ticks from "../ticks.ts";
import { type Limits, ZERO } from "../ticks.ts";

/** Minimum and maximum clearance, mm or in; the hole may carry the shaft too (`12 H7/g6`). */
export function clearance(hole: Callout, shaft?: Callout, units: Units = "mm"): [number, number] {
  const both = limitsOfBoth(hole, shaft, units);
  return [fromTicks(minimumOf(both), units), fromTicks(maximumOf(both), units)];
}
clearance.formula = {
  source: "iso-286-1",
  given: (hole: Callout, shaft: Callout | undefined, units: Units = "mm") => {
    const [holeLimits, shaftLimits] = limitsOfBoth(hole, shaft, units);
    return {
      holeMinimum: [fromTicks(holeLimits.lower, units), units],
      holeMaximum: [fromTicks(holeLimits.upper, units), units],
      shaftMinimum: [fromTicks(shaftLimits.lower, units), units],
      shaftMaximum: [fromTicks(shaftLimits.upper, units), units],
    };
  },
  steps: (units) => [
    { symbol: "minimum", expression: "holeMinimum - shaftMaximum", unit: units },
    { symbol: "maximum", expression: "holeMaximum - shaftMinimum", unit: units },
  ],
} satisfies Formula;

/** `clearance`, `interference` or `transition`. */
export function fitType(
  hole: Callout,
  shaft?: Callout,
  units: Units = "mm",
): "clearance" | "interference" | "transition" {
  const both = limitsOfBoth(hole, shaft, units);
  if (minimumOf(both) >= ZERO) return "clearance";
  return maximumOf(both) <= ZERO ? "interference" : "transition";
}
fitType.formula = {
  ...clearance.formula,
  conclusion: (units: Units, hole: Callout, shaft?: Callout) => {
    const type = fitType(hole, shaft, units);
    const why = {
      clearance: "the minimum clearance is 0 or more",
      interference: "the maximum clearance is 0 or less",
      transition: "the minimum clearance is negative and the maximum positive",
    };
    return [`${type}: ${why[type]}`];
  },
} satisfies Formula;

type HoleAndShaft = readonly [Limits, Limits];

const minimumOf = ([hole, shaft]: HoleAndShaft) => ticks.minus(hole.lower, shaft.upper);
const maximumOf = ([hole, shaft]: HoleAndShaft) => ticks.minus(hole.upper, shaft.lower);

function limitsOfBoth(hole: Callout, shaft: Callout | undefined, units: Units): HoleAndShaft {
  if (hole.kind === "shaft")
    wrong(`hole is ${hole.className}, a shaft class. Is ${hole.className.toUpperCase()} meant?`);
  return [limitsOf(hole, units), shaftLimits(hole, shaft, units)];
}

function shaftLimits(hole: Callout, shaft: Callout | undefined, units: Units): Limits {
  if (shaft) {
    if (hole.shaft) wrong(`hole carries the shaft ${hole.shaft.className} already. Leave shaft empty.`);
    if (shaft.kind === "hole" && shaft.className)
      wrong(`shaft is ${shaft.className}, a hole class. Is ${shaft.className.toLowerCase()} meant?`);
    return limitsOf(shaft, units);
  }
  if (!hole.shaft) return wrong("shaft is empty. Enter it, or write the fit as 12 H7/g6.");
  return ticks.moved(deviationsOf(hole, hole.shaft, units), hole.nominal);
}
