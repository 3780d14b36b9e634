// calc: the standard drill at or under a diameter.

import { fractionDrills } from "../../data/drills/fraction-drills.ts";
import { letterDrills } from "../../data/drills/letter-drills.ts";
import { metricDrills } from "../../data/drills/metric-drills.ts";
import { numberDrills } from "../../data/drills/number-drills.ts";
import { fromTicks, TICKS_PER_IN, TICKS_PER_MM, toTicks, type Units } from "../lengths.ts";
import { none } from "../problem.ts";

export type DrillSeries = "metric" | "fraction" | "number" | "letter" | "inch";

interface Drill {
  readonly name: string;
  readonly ticks: number;
}

const bySize = (drills: Drill[]) => drills.sort((a, b) => a.ticks - b.ticks);
const tenThousandths = (inches: number) => inches * (TICKS_PER_IN / 1e4);

const fraction = Array.from({ length: fractionDrills.last }, (_, k): Drill => {
  const over = k + fractionDrills.first;
  const ticks = (over / fractionDrills.denominator) * TICKS_PER_IN;
  return { name: fractionName(over, fractionDrills.denominator), ticks };
});
const number = bySize(numberDrills.map((size, k) => ({ name: `#${k + 1}`, ticks: tenThousandths(size) })));
const letter = bySize(
  Object.entries(letterDrills).map(([name, size]) => ({ name, ticks: tenThousandths(size) })),
);
const metric = metricDrills.map(
  (size): Drill => ({ name: String(size / 100), ticks: (size * TICKS_PER_MM) / 100 }),
);
/** Of drills of one size the search finds the last: fraction before number before letter. */
const inch = bySize([...letter, ...number, ...fraction]);

const series: Readonly<Record<DrillSeries, readonly Drill[]>> = { metric, fraction, number, letter, inch };

/** Beyond the end of these series a smaller drill would be no answer, only the end of the table. */
const TABLE_ENDS: Partial<Record<DrillSeries, number>> = {
  metric: TICKS_PER_MM / 2,
  fraction: TICKS_PER_IN / 64,
  inch: TICKS_PER_IN / 64,
};

/**
 * Name and diameter of the largest standard drill at or under a diameter, mm or in.
 * @throws Problem "none" below the smallest drill and beyond the end of the table
 */
export function drillName(diameter: number, of?: DrillSeries, units: Units = "mm"): [string, number] {
  const name = of ?? (units === "mm" ? "metric" : "inch");
  const drills = series[name];
  const last = drills[drills.length - 1];
  // A size in inches is rounded to 1e-7 in, so a drill may lie that little above it.
  const ticks = toTicks(diameter, units) + (units === "in" ? TICKS_PER_IN / 1e7 : 0);
  const text = (drill: Drill) => `${fromTicks(drill.ticks, units)} ${units}`;
  if (ticks < drills[0].ticks)
    none(`diameter ${diameter} is under the smallest ${name} drill, ${text(drills[0])}`);
  if (ticks - last.ticks >= (TABLE_ENDS[name] ?? Number.POSITIVE_INFINITY))
    none(`diameter ${diameter} is beyond the table of ${name} drills, which ends at ${text(last)}`);
  const drill = drills[lastAtOrUnder(drills, ticks)];
  return [drill.name, fromTicks(drill.ticks, units)];
}

function lastAtOrUnder(drills: readonly Drill[], ticks: number): number {
  let low = 0;
  let high = drills.length;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (drills[middle].ticks <= ticks) low = middle;
    else high = middle;
  }
  return low;
}

function fractionName(over: number, under: number): string {
  return over % 2 === 0 && under > 1
    ? fractionName(over / 2, under / 2)
    : under === 1
      ? String(over)
      : `${over}/${under}`;
}
