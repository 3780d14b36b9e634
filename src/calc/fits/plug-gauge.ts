// calc: plain plug gauges for a hole, the ISO/R 1938 scheme as in GOST 24853-81: all in ticks.

import { type PlugGaugeRow, plugGauges } from "../../data/plug-gauges.ts";
import type { Callout } from "../callouts/callout.ts";
import type { Formula } from "../formula.ts";
import { fromTicks, lengthText, TICKS_PER_MM, TICKS_PER_UM, type Units } from "../lengths.ts";
import { none, shown } from "../problem.ts";
import { holeLimits } from "../reamers/reamer-limits.ts";
import { deviationIn } from "./iso286.ts";

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
  const [, , z, y, tolerance] = rowFor(nominal, grade);
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

function rowFor(nominal: number, grade: string): PlugGaugeRow {
  const rows =
    grade === "6" || grade === "7"
      ? plugGauges[grade]
      : none(`callout is of IT${grade}: plug gauges are tabulated for holes of IT6 and IT7`);
  return (
    rows.find(([over, upTo]) => nominal > over * TICKS_PER_MM && nominal <= upTo * TICKS_PER_MM) ??
    none(`callout is of ${lengthText(nominal, "mm")} mm: plug gauges are tabulated to 180 mm`)
  );
}

/** The grade of the callout's hole class. */
function gradeOf(callout: Callout, units: Units): string {
  holeLimits(callout, units);
  if (!callout.iso)
    none(`callout ${shown(callout.text)} has no ISO class: plug gauges are tabulated for classes such as H7`);
  return callout.className.replace(/^\D+/, "");
}

/** Row: GO least, GO greatest, GO worn, NOT GO least, NOT GO greatest, in inches to 0.00001 from the nominal size. */
export function plugGauge(callout: Callout, units: Units = "mm"): number[] {
  const { nominal, lower, upper } = callout;
  const gauge = plugGaugeFor(nominal, lower, upper, gradeOf(callout, units));
  return [gauge.goLeast, gauge.goGreatest, gauge.goWorn, gauge.notGoLeast, gauge.notGoGreatest].map((ticks) =>
    fromTicks(nominal + deviationIn(ticks - nominal, units), units),
  );
}
plugGauge.formula = {
  source: "plug-gauges",
  given: (callout: Callout, units: Units = "mm") => {
    const [, , z, y, tolerance] = rowFor(callout.nominal, gradeOf(callout, units));
    return {
      nominal: fromTicks(callout.nominal, units),
      lowerDeviation: callout.lower / TICKS_PER_MM,
      upperDeviation: callout.upper / TICKS_PER_MM,
      goInside: z / 1000,
      wornOutside: y / 1000,
      gaugeTolerance: tolerance / 1000,
    };
  },
  steps: (units) => {
    const line = (symbol: string, deviation: string) => ({
      symbol,
      expression:
        units === "mm" ? `nominal + ${deviation}` : `nominal + round((${deviation}) / 25.4 * 1e5) / 1e5`,
      unit: units,
    });
    return [
      line("goLeast", "lowerDeviation + goInside - gaugeTolerance / 2"),
      line("goGreatest", "lowerDeviation + goInside + gaugeTolerance / 2"),
      line("goWorn", "lowerDeviation - wornOutside"),
      line("notGoLeast", "upperDeviation - gaugeTolerance / 2"),
      line("notGoGreatest", "upperDeviation + gaugeTolerance / 2"),
    ];
  },
} satisfies Formula;
