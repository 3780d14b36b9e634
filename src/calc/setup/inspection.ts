// calc: measured holes against their callout. Lengths in mm (in).

import { type Callout, limitsOf } from "../callouts/callout.ts";
import type { Formula, Given } from "../formula.ts";
import { lengthText, ONE, roundLength, toTicks, type Units } from "../lengths.ts";
import { none, shown } from "../problem.ts";
import * as ticks from "../ticks.ts";
import { TICK, type Ticks, ZERO } from "../ticks.ts";
import { complementaryError } from "./normal.ts";

/** `ok`, `under by 0.002`, or `over by 0.003`; a size at the limit itself is ok. */
export function inspect(measured: number, callout: Callout, units: Units = "mm"): string {
  const { lower, upper } = limitsOf(callout, units);
  const size = toTicks(measured, units);
  if (size < lower) return `under by ${lengthText(ticks.minus(lower, size), units)}`;
  return size > upper ? `over by ${lengthText(ticks.minus(size, upper), units)}` : "ok";
}
inspect.formula = {
  source: "iso-286-1",
  steps: () => [],
  conclusion: (units: Units, measured: number, callout: Callout) => {
    const { lower, upper } = limitsOf(callout, units);
    const text = (length: Ticks) => lengthText(length, units);
    return [
      `${measured} ${units} beside the limits ${text(lower)} to ${text(upper)} ${units}`,
      inspect(measured, callout, units),
    ];
  },
} satisfies Formula;

interface Spread {
  readonly count: number;
  readonly average: number;
  /** Sum of the squares about the average. */
  readonly squares: number;
}

/** Worked about the first size in whole ticks, so that equal sizes have a spread of exactly nothing. */
function spreadOf(measured: readonly number[], units: Units): Spread {
  const count = measured.length;
  const first = toTicks(measured[0], units);
  const unit = ticks.ratio(ONE[units], TICK);
  let sum = ZERO;
  for (const size of measured) sum = ticks.plus(sum, ticks.minus(toTicks(size, units), first));
  const mean = ticks.dividedBy(sum, count);
  let squares = 0;
  for (const size of measured)
    squares += ticks.ratio(ticks.minus(ticks.minus(toTicks(size, units), first), mean), TICK) ** 2;
  return { count, average: ticks.ratio(ticks.plus(first, mean), ONE[units]), squares: squares / unit / unit };
}

/** Row: Cp, Cpk, mean, sample standard deviation (n − 1). */
export function capability(measured: readonly number[], callout: Callout, units: Units = "mm"): number[] {
  if (measured.length < 2)
    none(`measured has ${measured.length === 1 ? "one size" : "no sizes"}. A spread needs two or more.`);
  const { count, average, squares } = spreadOf(measured, units);
  if (squares === 0)
    none(`measured has ${count} equal sizes of ${shown(measured[0])}. Without a spread there is no index.`);
  const { lowerLimit: lower, upperLimit: upper } = limitNumbers(callout, units);
  const deviation = Math.sqrt(squares / (count - 1));
  return [
    (upper - lower) / (6 * deviation),
    Math.min(upper - average, average - lower) / (3 * deviation),
    roundLength(average),
    roundLength(deviation),
  ];
}
capability.formula = {
  source: "capability",
  given: (measured: readonly number[], callout: Callout, units: Units = "mm") => {
    const { count, average, squares } = spreadOf(measured, units);
    return {
      ...limitsGiven(callout, units),
      count,
      average: [average, units],
      squares: [squares, units === "mm" ? "mm²" : "in²"],
    };
  },
  steps: (units) => [
    { symbol: "spread", expression: "sqrt(squares / (count - 1))", unit: units },
    { symbol: "cp", expression: "(upperLimit - lowerLimit) / (6 * spread)", unit: "" },
    { symbol: "cpk", expression: "min(upperLimit - average, average - lowerLimit) / (3 * spread)", unit: "" },
    { symbol: "mean", expression: "average", unit: units },
    { symbol: "deviation", expression: "spread", unit: units },
  ],
} satisfies Formula;

/** Share expected between the limits of a normal distribution. */
export function inTolerance(mean: number, deviation: number, callout: Callout, units: Units = "mm"): number {
  const { lowerLimit, upperLimit } = limitNumbers(callout, units);
  const scale = deviation * Math.SQRT2;
  const below = (lowerLimit - mean) / scale;
  const above = (upperLimit - mean) / scale;
  // From the nearer tail, so that a small share keeps its figures.
  return below > 0
    ? (complementaryError(below) - complementaryError(above)) / 2
    : (complementaryError(-above) - complementaryError(-below)) / 2;
}
inTolerance.formula = {
  source: "capability",
  given: (_mean: number, _deviation: number, callout: Callout, units: Units = "mm") =>
    limitsGiven(callout, units),
  steps: () => [
    {
      symbol: "inTolerance",
      expression: "normal((upperLimit - mean) / deviation) - normal((lowerLimit - mean) / deviation)",
      unit: "",
    },
  ],
} satisfies Formula;

/** A length in mm or in from ticks, not rounded: for a share that is worked out from it. */
function unrounded(length: Ticks, units: Units): number {
  return ticks.ratio(length, ONE[units]);
}

function limitNumbers(callout: Callout, units: Units): { lowerLimit: number; upperLimit: number } {
  const { lower, upper } = limitsOf(callout, units);
  return { lowerLimit: unrounded(lower, units), upperLimit: unrounded(upper, units) };
}

function limitsGiven(callout: Callout, units: Units): Given {
  const { lowerLimit, upperLimit } = limitNumbers(callout, units);
  return { lowerLimit: [lowerLimit, units], upperLimit: [upperLimit, units] };
}

/** Row: share 6·√(EV² + AV²)/tolerance, and `good` to 10 %, `marginal` to 30 %, else `unfit`. */
export function gaugeShare(
  repeatability: number,
  reproducibility: number,
  callout: Callout,
  units: Units = "mm",
): [number, string] {
  const tolerance = unrounded(ticks.widthOf(limitsOf(callout, units)), units);
  const share = (6 * Math.sqrt(repeatability ** 2 + reproducibility ** 2)) / tolerance;
  return [share, share <= 0.1 + 1e-9 ? "good" : share <= 0.3 + 1e-9 ? "marginal" : "unfit"];
}
gaugeShare.formula = {
  source: "gauge-study",
  given: (_repeatability: number, _reproducibility: number, callout: Callout, units: Units = "mm") => ({
    tolerance: [unrounded(ticks.widthOf(limitsOf(callout, units)), units), units],
  }),
  steps: () => [
    {
      symbol: "share",
      expression: "6 * sqrt(repeatability ^ 2 + reproducibility ^ 2) / tolerance",
      unit: "",
    },
  ],
  conclusion: (units, ...inputs: [repeatability: number, reproducibility: number, callout: Callout]) => [
    `${gaugeShare(...inputs, units)[1]}: good up to 10 % of the tolerance, marginal up to 30 %`,
  ],
} satisfies Formula;
