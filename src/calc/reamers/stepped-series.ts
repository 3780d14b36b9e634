// calc: a reamer from a stepped series for a toleranced hole. Lengths in mm or in.

import type { Callout } from "../callouts/callout.ts";
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
const DEFAULT_STEP = { mm: 0.01, in: 0.0005 } as const;

/**
 * The largest nominal diameter of the series whose own band lies in the window of a new reamer.
 * @throws Problem "none" when no step does
 */
export function reamerSize(callout: Callout, cutsOver = 0, step?: number, units: Units = "mm"): number {
  const { lower: least, upper: greatest } = orderWindow(callout, cutsOver, units);
  const stepTicks = toTicks(step ?? DEFAULT_STEP[units], units);
  const nominal = stepTicks > 0 ? largestStep(greatest, stepTicks, units) : Number.NEGATIVE_INFINITY;
  if (nominal < least) {
    const limits = `${lengthText(least, units)}–${lengthText(greatest, units)}`;
    const other = callout.className ? ` or order ${withArticle(callout.className)} reamer` : "";
    none(`no ${step ?? DEFAULT_STEP[units]} step fits: grind to ${limits}${other}`);
  }
  return fromTicks(nominal, units);
}

function largestStep(greatest: number, step: number, units: Units): number {
  const nominal = Math.floor((greatest - BAND[units]) / step) * step;
  if (units === "in" || nominal > SMALL) return nominal;
  return Math.floor(Math.min(greatest - SMALL_BAND, SMALL) / step) * step;
}

function withArticle(className: string): string {
  return /^[AEFHLMNRSX]/.test(className) ? `an ${className}` : `a ${className}`;
}
