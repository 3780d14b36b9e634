// calc: the standard drills by series, smallest first, and the drill that a name belongs to.

import { fractionDrills } from "../../data/drills/fraction-drills.ts";
import { letterDrills } from "../../data/drills/letter-drills.ts";
import { metricDrills, smallMetricDrills } from "../../data/drills/metric-drills.ts";
import { numberDrills } from "../../data/drills/number-drills.ts";
import { type DrillStep, longInchDrills, longMetricDrills } from "../../data/drills/taper-shank-drills.ts";
import { fromTicks, toTicks, type Units } from "../lengths.ts";
import * as ticks from "../ticks.ts";
import { INCH, type Ticks } from "../ticks.ts";

export type DrillSeries = "metric" | "fraction" | "number" | "letter" | "inch";

export interface Drill {
  readonly name: string;
  readonly size: Ticks;
}

const bySize = (drills: Drill[]) => drills.sort((a, b) => ticks.inOrder(a.size, b.size));
const tenThousandths = (inches: number) => ticks.times(ticks.dividedBy(INCH, 1e4), inches);

function steps(rows: readonly DrillStep[]): number[] {
  return rows.flatMap(({ over, upTo, step }) =>
    Array.from({ length: Math.round((upTo - over) / step) }, (_, k) => over + (k + 1) * step),
  );
}

const SIXTY_FOURTHS = fractionDrills.denominator;
const fraction = [
  ...Array.from({ length: fractionDrills.last }, (_, k) => (k + fractionDrills.first) / SIXTY_FOURTHS),
  ...steps(longInchDrills),
].map((inches): Drill => ({ name: fractionName(inches), size: ticks.times(INCH, inches) }));
const number = bySize(numberDrills.map((inches, k) => ({ name: `#${k + 1}`, size: tenThousandths(inches) })));
const letter = bySize(
  Object.entries(letterDrills).map(([name, inches]) => ({ name, size: tenThousandths(inches) })),
);
const metric = [
  ...[...smallMetricDrills, ...steps(metricDrills)].map((size) => size / 100),
  ...steps(longMetricDrills),
].map((millimeters): Drill => ({ name: String(millimeters), size: toTicks(millimeters, "mm") }));
/** Of drills of one size a search from the end finds the fraction before the number before the letter. */
const inch = bySize([...letter, ...number, ...fraction]);

const series: Readonly<Record<DrillSeries, readonly Drill[]>> = { metric, fraction, number, letter, inch };

/** The drills of a series, by default the metric or all the inch ones. */
export function drillsOf(name: DrillSeries | undefined, units: Units): readonly Drill[] {
  return series[name ?? (units === "mm" ? "metric" : "inch")];
}

/** Where the last drill of the list that is up to a size is, −1 where none is. */
export function lastAtOrUnder(drills: readonly Drill[], size: Ticks): number {
  let low = -1;
  let high = drills.length;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (drills[middle].size <= size) low = middle;
    else high = middle;
  }
  return low;
}

/** A drill with its diameter, as messages write it: `31/64 (0.484375 in)`, `11.8 mm`. */
export function drillText({ name, size }: Drill, units: Units): string {
  const diameter = String(fromTicks(size, units));
  return name === diameter ? `${name} ${units}` : `${name} (${diameter} ${units})`;
}

/** `31/64`, `1-7/32`, `2`. */
function fractionName(inches: number): string {
  const whole = Math.floor(inches);
  let over = Math.round((inches - whole) * SIXTY_FOURTHS);
  let under: number = SIXTY_FOURTHS;
  if (over === 0) return String(whole);
  while (over % 2 === 0) [over, under] = [over / 2, under / 2];
  return `${whole === 0 ? "" : `${whole}-`}${over}/${under}`;
}
