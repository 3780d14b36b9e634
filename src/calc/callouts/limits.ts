// calc: limits of size and the parts of a callout. Lengths in mm or in, as `units` says.

import { classLines } from "../fits/iso286-in-words.ts";
import type { Formula, Given } from "../formula.ts";
import { fromTicks, lengthText, toTicks, type Units } from "../lengths.ts";
import { none } from "../problem.ts";
import * as ticks from "../ticks.ts";
import { type Callout, deviationsOf, limitsOf } from "./callout.ts";

/** Lower and upper limit of size. */
export function limits(callout: Callout, units: Units = "mm"): [number, number] {
  const { lower, upper } = deviationsOf(callout, callout, units);
  return [
    fromTicks(ticks.plus(callout.nominal, lower), units),
    fromTicks(ticks.plus(callout.nominal, upper), units),
  ];
}
limits.formula = {
  source: "iso-286-1",
  given: (callout: Callout, units: Units = "mm") => deviationsGiven(callout, units),
  lookup: (_units: Units, { iso, nominal, className }: Callout) =>
    iso ? classLines(nominal, className) : [],
  steps: (units) => [
    { symbol: "lowerLimit", expression: "nominal + lower", unit: units },
    { symbol: "upperLimit", expression: "nominal + upper", unit: units },
  ],
} satisfies Formula;

export function minimumSize(callout: Callout, units: Units = "mm"): number {
  return fromTicks(limitsOf(callout, units).lower, units);
}
minimumSize.formula = {
  ...limits.formula,
  steps: (units) => [{ symbol: "lowerLimit", expression: "nominal + lower", unit: units }],
} satisfies Formula;

export function maximumSize(callout: Callout, units: Units = "mm"): number {
  return fromTicks(limitsOf(callout, units).upper, units);
}
maximumSize.formula = {
  ...limits.formula,
  steps: (units) => [{ symbol: "upperLimit", expression: "nominal + upper", unit: units }],
} satisfies Formula;

export function middleSize(callout: Callout, units: Units = "mm"): number {
  const { lower, upper } = limitsOf(callout, units);
  return fromTicks(ticks.dividedBy(ticks.plus(lower, upper), 2), units);
}
middleSize.formula = {
  ...limits.formula,
  steps: (units) => [{ symbol: "middle", expression: "nominal + (lower + upper) / 2", unit: units }],
} satisfies Formula;

/** Width of the tolerance. */
export function toleranceOf(callout: Callout, units: Units = "mm"): number {
  return fromTicks(ticks.widthOf(limitsOf(callout, units)), units);
}
toleranceOf.formula = {
  ...limits.formula,
  steps: (units) => [{ symbol: "tolerance", expression: "upper - lower", unit: units }],
} satisfies Formula;

/** Nominal size and limit deviations in the unit of the result, for the lines of a formula. */
function deviationsGiven(callout: Callout, units: Units): Given {
  const { lower, upper } = deviationsOf(callout, callout, units);
  return {
    nominal: [fromTicks(callout.nominal, units), units],
    lower: [fromTicks(lower, units), units],
    upper: [fromTicks(upper, units), units],
  };
}

export type CalloutPart =
  | "nominal"
  | "lower"
  | "upper"
  | "class"
  | "count"
  | "depth"
  | "note"
  | "through"
  | "marks";

/** One part of a callout; "" where the callout does not say it. */
export function calloutPart(
  callout: Callout,
  part: CalloutPart,
  units: Units = "mm",
): number | string | boolean {
  switch (part) {
    case "nominal":
      return fromTicks(callout.nominal, units);
    case "lower":
    case "upper":
      return fromTicks(deviationsOf(callout, callout, units)[part], units);
    case "class":
      return callout.className;
    case "count":
      return callout.count;
    case "depth":
      return callout.depth === undefined ? "" : fromTicks(callout.depth, units);
    case "note":
      return callout.note;
    case "through":
      return callout.through ? true : callout.depth === undefined ? "" : false;
    case "marks":
      return callout.marks;
  }
}

calloutPart.formula = {
  source: "iso-286-1",
  steps: () => [],
  lookup: (_units: Units, { iso, nominal, className }: Callout, part: CalloutPart) =>
    iso && (part === "lower" || part === "upper") ? classLines(nominal, className) : [],
  conclusion: (units: Units, callout: Callout, part: CalloutPart) => [
    `${part} of ${callout.text.trim()}: ${calloutPart(callout, part, units)}`,
  ],
} satisfies Formula;

/** Limits of size less the measurement uncertainty on each side (ISO 14253-1). @throws Problem "none" if they cross */
export function acceptanceLimits(
  callout: Callout,
  uncertainty: number,
  units: Units = "mm",
): [number, number] {
  const { lower, upper } = limitsOf(callout, units);
  const margin = toTicks(uncertainty, units);
  const [minimum, maximum] = [ticks.plus(lower, margin), ticks.minus(upper, margin)];
  if (minimum > maximum)
    none(
      `uncertainty is ${uncertainty}, which leaves nothing of ${lengthText(lower, units)} to ${lengthText(upper, units)}. Measure with less uncertainty.`,
    );
  return [fromTicks(minimum, units), fromTicks(maximum, units)];
}
acceptanceLimits.formula = {
  source: "iso-14253-1",
  given: (callout: Callout, _uncertainty: number, units: Units = "mm") => deviationsGiven(callout, units),
  steps: (units) => [
    { symbol: "lowerLimit", expression: "nominal + lower + uncertainty", unit: units },
    { symbol: "upperLimit", expression: "nominal + upper - uncertainty", unit: units },
  ],
} satisfies Formula;
