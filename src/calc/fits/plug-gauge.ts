// calc: plain plug gauges for a hole, the ISO/R 1938 scheme as in GOST 24853-81: all in ticks.

import { plugGauges } from "../../data/plug-gauges.ts";
import { lengthText, TICKS_PER_MM, TICKS_PER_UM } from "../lengths.ts";
import { none } from "../problem.ts";

/** Limits of size of the gauges, in ticks. */
export interface PlugGauge {
  readonly goLeast: number;
  readonly goGreatest: number;
  /** The size down to which the GO gauge may wear. */
  readonly goWorn: number;
  readonly notGoLeast: number;
  readonly notGoGreatest: number;
}

/**
 * GO: least size of the hole + z ± H/2; worn at least size − y; NOT GO: greatest size ± H/2.
 * @param nominal nominal size of the hole, ticks
 * @param lower @param upper its limit deviations, ticks
 * @param grade its standard tolerance grade, "6" or "7"; every other is `none`
 */
export function plugGaugeFor(nominal: number, lower: number, upper: number, grade: string): PlugGauge {
  const rows =
    grade === "6" || grade === "7"
      ? plugGauges[grade]
      : none(`plug gauges are tabulated for IT6 and IT7, not IT${grade}`);
  const row = rows.find(([over, upTo]) => nominal > over * TICKS_PER_MM && nominal <= upTo * TICKS_PER_MM);
  if (!row) return none(`plug gauges are tabulated to 180 mm, not at ${lengthText(nominal, "mm")} mm`);
  const [, , z, y, tolerance] = row;
  const half = Math.round((tolerance * TICKS_PER_UM) / 2);
  const go = nominal + lower + Math.round(z * TICKS_PER_UM);
  const notGo = nominal + upper;
  return {
    goLeast: go - half,
    goGreatest: go + half,
    goWorn: nominal + lower - Math.round(y * TICKS_PER_UM),
    notGoLeast: notGo - half,
    notGoGreatest: notGo + half,
  };
}
