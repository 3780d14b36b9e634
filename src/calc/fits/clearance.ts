// calc: a hole and a shaft together. A negative clearance is an interference.

import { type Callout, type Deviations, deviationsOf, limitsOf } from "../callouts/callout.ts";
import type { Formula } from "../formula.ts";
import { fromTicks, type Units } from "../lengths.ts";
import { wrong } from "../problem.ts";

/** Least and greatest clearance, mm or in; the hole may carry the shaft too (`12 H7/g6`). */
export function clearance(hole: Callout, shaft?: Callout, units: Units = "mm"): [number, number] {
  const both = limitsOfBoth(hole, shaft, units);
  return [fromTicks(leastOf(both), units), fromTicks(greatestOf(both), units)];
}
clearance.formula = {
  source: "iso-286-1",
  given: (hole: Callout, shaft: Callout | undefined, units: Units = "mm") => {
    const [holeLimits, shaftLimits] = limitsOfBoth(hole, shaft, units);
    return {
      holeLeast: fromTicks(holeLimits.lower, units),
      holeGreatest: fromTicks(holeLimits.upper, units),
      shaftLeast: fromTicks(shaftLimits.lower, units),
      shaftGreatest: fromTicks(shaftLimits.upper, units),
    };
  },
  steps: (units) => [
    { symbol: "least", expression: "holeLeast - shaftGreatest", unit: units },
    { symbol: "greatest", expression: "holeGreatest - shaftLeast", unit: units },
  ],
} satisfies Formula;

/** `clearance`, `interference` or `transition`. */
export function fitType(hole: Callout, shaft?: Callout, units: Units = "mm"): string {
  const both = limitsOfBoth(hole, shaft, units);
  if (leastOf(both) >= 0) return "clearance";
  return greatestOf(both) <= 0 ? "interference" : "transition";
}

type HoleAndShaft = readonly [Deviations, Deviations];

const leastOf = ([hole, shaft]: HoleAndShaft) => hole.lower - shaft.upper;
const greatestOf = ([hole, shaft]: HoleAndShaft) => hole.upper - shaft.lower;

function limitsOfBoth(hole: Callout, shaft: Callout | undefined, units: Units): HoleAndShaft {
  if (hole.kind === "shaft") wrong(`hole is ${hole.className}, a shaft: write the hole in capitals, like H7`);
  return [limitsOf(hole, units), shaftLimits(hole, shaft, units)];
}

function shaftLimits(hole: Callout, shaft: Callout | undefined, units: Units): Deviations {
  if (shaft) {
    if (hole.shaft) wrong(`hole carries the shaft ${hole.shaft.className} already: leave shaft out`);
    if (shaft.kind === "hole" && shaft.className)
      wrong(`shaft is ${shaft.className}, a hole: write the shaft in small letters, like g6`);
    return limitsOf(shaft, units);
  }
  if (!hole.shaft) return wrong("shaft is missing: give it, or write the fit like 12 H7/g6");
  const { lower, upper } = deviationsOf(hole, hole.shaft, units);
  return { lower: hole.nominal + lower, upper: hole.nominal + upper };
}
