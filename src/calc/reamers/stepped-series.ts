// calc: a reamer from a stepped series for a toleranced hole. Lengths in mm or in.

import type { Callout } from "../callouts/callout.ts";
import type { Formula } from "../formula.ts";
import { fromTicks, lengthText, toTicks, type Units } from "../lengths.ts";
import { none } from "../problem.ts";
import * as ticks from "../ticks.ts";
import { INCH, type Limits, MICROMETER, type Ticks } from "../ticks.ts";
import { orderWindow } from "./reamer-limits.ts";

/** Common practice, no source: a stocked reamer is up to this much over its nominal diameter. */
const BAND = { mm: ticks.times(MICROMETER, 5), in: ticks.times(INCH, 0.0002) } as const;
const SMALL_BAND = ticks.times(MICROMETER, 4);
const SMALL = ticks.times(MICROMETER, 5500);

/** The series in the callout's own unit, coarsest first. */
const SERIES = {
  mm: [ticks.times(MICROMETER, 10), ticks.times(MICROMETER, 5), MICROMETER],
  in: [ticks.times(INCH, 0.0005), ticks.times(INCH, 0.0001)],
} as const;

/**
 * The largest nominal diameter of the series whose own band lies in the window of a new reamer. Without a step, of the
 * coarsest series of the callout's unit that has one. A given `step` is in `units`.
 * @throws Problem "none" with the window to grind to where no series has one
 */
export function reamerSize(callout: Callout, cutsOver = 0, step?: number, units: Units = "mm"): number {
  return fromTicks(findSize(callout, cutsOver, step, units), units);
}
reamerSize.formula = {
  source: "reamer-nominal-band",
  defaults: { cutsOver: 0 },
  steps: () => [],
  conclusion: (units: Units, callout: Callout, cutsOver = 0, step?: number) => {
    const { lower, upper } = windowOf(callout, cutsOver, units);
    const text = (length: Ticks) => `${lengthText(length, units)} ${units}`;
    const lines = [`window of a new reamer: ${text(lower)} to ${text(upper)}`];
    for (const size of seriesOf(callout, step, units)) {
      const nominal = largestStep(upper, size, callout.units);
      const largest = ticks.plus(nominal, bandOf(nominal, callout.units));
      const fits = nominal >= lower;
      lines.push(
        `steps of ${text(size)}: ${text(nominal)}, up to ${text(largest)} with its band, ${fits ? "lies in the window" : "is below the window"}`,
      );
      if (fits) break;
    }
    return lines;
  },
} satisfies Formula;

function findSize(callout: Callout, cutsOver: number, step: number | undefined, units: Units): Ticks {
  const { lower, upper } = windowOf(callout, cutsOver, units);
  for (const size of seriesOf(callout, step, units)) {
    const nominal = largestStep(upper, size, callout.units);
    if (nominal >= lower) return nominal;
  }
  const limits = `${lengthText(lower, units)} to ${lengthText(upper, units)} ${units}`;
  return none(
    step === undefined
      ? `callout leaves a window of ${limits}, too narrow for a stepped reamer. Grind a reamer to it.`
      : `step is ${step}. No such step lies in the window ${limits}: leave step empty, or grind a reamer to the window.`,
  );
}

/** The window by the callout's own unit, so that a sheet in the other unit orders the same reamer. */
function windowOf(callout: Callout, cutsOver: number, units: Units): Limits {
  return orderWindow(callout, toTicks(cutsOver, units), callout.units);
}

/** The steps to try. */
const seriesOf = (callout: Callout, step: number | undefined, units: Units): readonly Ticks[] =>
  step === undefined ? SERIES[callout.units] : [toTicks(step, units)];

function bandOf(nominal: Ticks, units: Units): Ticks {
  return units === "mm" && nominal <= SMALL ? SMALL_BAND : BAND[units];
}

function largestStep(maximum: Ticks, step: Ticks, units: Units): Ticks {
  const wholeSteps = (length: Ticks) => ticks.times(step, Math.floor(ticks.ratio(length, step)));
  const nominal = wholeSteps(ticks.minus(maximum, BAND[units]));
  if (units === "in" || nominal > SMALL) return nominal;
  return wholeSteps(ticks.smaller(ticks.minus(maximum, SMALL_BAND), SMALL));
}
