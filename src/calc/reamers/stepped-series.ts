// calc: a reamer from a stepped series for a toleranced hole. Lengths in mm or in.

import type { Callout, Deviations } from "../callouts/callout.ts";
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
import { none } from "../problem.ts";
import { orderWindow } from "./reamer-limits.ts";

/** Common practice, no source: a stocked reamer is up to this much over its nominal diameter. */
const BAND = { mm: 5 * TICKS_PER_UM, in: TICKS_PER_IN * 0.0002 } as const;
const SMALL_BAND = 4 * TICKS_PER_UM;
const SMALL = 5.5 * TICKS_PER_MM;

/** The series in the callout's own unit, coarsest first. */
const SERIES = {
  mm: [10 * TICKS_PER_UM, 5 * TICKS_PER_UM, TICKS_PER_UM],
  in: [TICKS_PER_IN * 0.0005, TICKS_PER_IN * 0.0001],
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
    const text = (ticks: number) => `${lengthText(ticks, units)} ${units}`;
    const lines = [`window of a new reamer: ${text(lower)} to ${text(upper)}`];
    for (const size of seriesOf(callout, step, units)) {
      const nominal = largestStep(upper, size, callout.units);
      const largest = nominal + bandOf(nominal, callout.units);
      const fits = nominal >= lower;
      lines.push(
        `steps of ${text(size)}: ${text(nominal)}, up to ${text(largest)} with its band, ${fits ? "lies in the window" : "is below the window"}`,
      );
      if (fits) break;
    }
    return lines;
  },
} satisfies Formula;

function findSize(callout: Callout, cutsOver: number, step: number | undefined, units: Units): number {
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

/** The window in ticks by the callout's own unit, so that a sheet in the other unit orders the same reamer. */
function windowOf(callout: Callout, cutsOver: number, units: Units): Deviations {
  return orderWindow(callout, toTicks(cutsOver, units), callout.units);
}

/** The steps to try, in ticks; a step too small to be one is none. */
function seriesOf(callout: Callout, step: number | undefined, units: Units): readonly number[] {
  if (step === undefined) return SERIES[callout.units];
  return [toTicks(step, units)].filter((ticks) => ticks > 0);
}

function bandOf(nominal: number, units: Units): number {
  return units === "mm" && nominal <= SMALL ? SMALL_BAND : BAND[units];
}

function largestStep(greatest: number, step: number, units: Units): number {
  const nominal = Math.floor((greatest - BAND[units]) / step) * step;
  if (units === "in" || nominal > SMALL) return nominal;
  return Math.floor(Math.min(greatest - SMALL_BAND, SMALL) / step) * step;
}
