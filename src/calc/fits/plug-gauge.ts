// calc: plain plug gauges for a hole: the ISO/R 1938 scheme as in GOST 24853-81 where it is tabulated, else the 10 % rule.

import { type PlugGaugeRow, plugGauges } from "../../data/plug-gauges.ts";
import type { Callout } from "../callouts/callout.ts";
import type { Formula, Given } from "../formula.ts";
import { fromTicks, lengthText, micrometers, type Units } from "../lengths.ts";
import { none } from "../problem.ts";
import { holeLimits } from "../reamers/reamer-limits.ts";
import * as ticks from "../ticks.ts";
import { type Limits, MICROMETER, MILLIMETER, type Ticks } from "../ticks.ts";
import { deviationIn } from "./iso286.ts";

/** End of the table. */
const LAST_TABULATED = ticks.times(MILLIMETER, 180);

/** Limits of size of the gauges. */
export interface PlugGauge {
  readonly goMinimum: Ticks;
  readonly goMaximum: Ticks;
  /** The size down to which the GO gauge may wear. */
  readonly goWorn: Ticks;
  readonly notGoMinimum: Ticks;
  readonly notGoMaximum: Ticks;
}

/**
 * GO: minimum of the hole + z ± H/2; worn at the minimum − y; NOT GO: maximum ± H/2.
 * @param nominal nominal size of the hole
 * @param deviations its limit deviations
 * @param grade its standard tolerance grade, "6" or "7"; every other is `none`
 */
export function plugGaugeFor(nominal: Ticks, deviations: Limits, grade: string): PlugGauge {
  const [, , z, y, tolerance] = rowFor(nominal, grade);
  const half = ticks.rounded(ticks.dividedBy(ticks.times(MICROMETER, tolerance), 2));
  const { lower, upper: notGo } = ticks.moved(deviations, nominal);
  const go = ticks.plus(lower, micrometers(z));
  return {
    goMinimum: ticks.minus(go, half),
    goMaximum: ticks.plus(go, half),
    goWorn: ticks.minus(lower, micrometers(y)),
    notGoMinimum: ticks.minus(notGo, half),
    notGoMaximum: ticks.plus(notGo, half),
  };
}

function rowFor(nominal: Ticks, grade: string): PlugGaugeRow {
  const rows =
    grade === "6" || grade === "7"
      ? plugGauges[grade]
      : none(`grade is IT${grade}. Plug gauges are tabulated for holes of IT6 and IT7.`);
  return (
    rows.find(([, upTo]) => nominal <= ticks.times(MILLIMETER, upTo)) ??
    none(`nominal size is ${lengthText(nominal, "mm")} mm. Plug gauges are tabulated to 180 mm.`)
  );
}

/** Whether the gauge of a hole is tabulated: an ISO class of grade 6 or 7 written in mm, to 180 mm. */
function tabulatedGrade(callout: Callout): string | undefined {
  const grade = callout.className.replace(/^\D+/, "");
  const tabulated = callout.iso && callout.units === "mm" && callout.nominal <= LAST_TABULATED;
  return tabulated && (grade === "6" || grade === "7") ? grade : undefined;
}

/** The 10 % rule, common practice: GO takes 5 % of the tolerance from below, NOT GO 5 % from above. */
function plugGaugeByTenth(hole: Limits): PlugGauge {
  const { lower, upper } = hole;
  const twentieth = ticks.dividedBy(ticks.widthOf(hole), 20);
  return {
    goMinimum: lower,
    goMaximum: ticks.plus(lower, twentieth),
    goWorn: lower,
    notGoMinimum: ticks.minus(upper, twentieth),
    notGoMaximum: upper,
  };
}

/** Row: GO minimum and maximum, GO worn, NOT GO minimum and maximum; tabulated gauges in inches to 0.00001. */
export function plugGauge(callout: Callout, units: Units = "mm"): number[] {
  const hole = holeLimits(callout, units);
  const { nominal } = callout;
  const grade = tabulatedGrade(callout);
  const gauge = grade ? plugGaugeFor(nominal, callout, grade) : plugGaugeByTenth(hole);
  return [gauge.goMinimum, gauge.goMaximum, gauge.goWorn, gauge.notGoMinimum, gauge.notGoMaximum].map(
    (size) =>
      fromTicks(grade ? ticks.plus(nominal, deviationIn(ticks.minus(size, nominal), units)) : size, units),
  );
}
plugGauge.formula = {
  source: "plug-gauges",
  given: (callout: Callout, units: Units = "mm"): Given => {
    const grade = tabulatedGrade(callout);
    if (!grade) {
      const { lower, upper } = holeLimits(callout, units);
      return {
        holeMinimum: [fromTicks(lower, units), units],
        holeMaximum: [fromTicks(upper, units), units],
      };
    }
    const [, , z, y, tolerance] = rowFor(callout.nominal, grade);
    return {
      nominal: [fromTicks(callout.nominal, units), units],
      lowerDeviation: [ticks.ratio(callout.lower, MILLIMETER), "mm"],
      upperDeviation: [ticks.ratio(callout.upper, MILLIMETER), "mm"],
      goInside: [z / 1000, "mm"],
      wornOutside: [y / 1000, "mm"],
      gaugeTolerance: [tolerance / 1000, "mm"],
    };
  },
  steps: (units, callout: Callout) => {
    if (!tabulatedGrade(callout))
      return [
        { symbol: "goMinimum", expression: "holeMinimum", unit: units },
        { symbol: "goMaximum", expression: "holeMinimum + 0.05 * (holeMaximum - holeMinimum)", unit: units },
        { symbol: "goWorn", expression: "holeMinimum", unit: units },
        {
          symbol: "notGoMinimum",
          expression: "holeMaximum - 0.05 * (holeMaximum - holeMinimum)",
          unit: units,
        },
        { symbol: "notGoMaximum", expression: "holeMaximum", unit: units },
      ];
    const line = (symbol: string, deviation: string) => ({
      symbol,
      expression:
        units === "mm" ? `nominal + ${deviation}` : `nominal + roundto(inin(${deviation}), 0.00001)`,
      unit: units,
    });
    return [
      line("goMinimum", "lowerDeviation + goInside - gaugeTolerance / 2"),
      line("goMaximum", "lowerDeviation + goInside + gaugeTolerance / 2"),
      line("goWorn", "lowerDeviation - wornOutside"),
      line("notGoMinimum", "upperDeviation - gaugeTolerance / 2"),
      line("notGoMaximum", "upperDeviation + gaugeTolerance / 2"),
    ];
  },
} satisfies Formula;
