// calc: the standard drill up to a diameter, and the one that leaves the reamer its stock.

import type { Material } from "../../data/materials/materials.ts";
import type { Formula } from "../formula.ts";
import { fromTicks, lengthText, toTicks, type Units } from "../lengths.ts";
import { none } from "../problem.ts";
import * as ticks from "../ticks.ts";
import { INCH, type Limits, MILLIMETER, type Ticks, ZERO } from "../ticks.ts";
import { type Drill, type DrillSeries, drillsOf, drillText, lastAtOrUnder } from "./standard-drills.ts";
import { stockLimits } from "./stock.ts";

/** Beyond the end of these series by more than this a smaller drill would be no answer, only the end of the table. */
const LAST_STEP: Partial<Record<DrillSeries, Ticks>> = {
  metric: MILLIMETER,
  fraction: ticks.dividedBy(INCH, 16),
  inch: ticks.dividedBy(INCH, 16),
};

/** A size in inches is rounded to 1e-7 in, so a drill may lie that little above it. */
const hair = (units: Units) => (units === "in" ? ticks.dividedBy(INCH, 1e7) : ZERO);

/**
 * Name and diameter of the largest standard drill up to a diameter, mm or in.
 * @throws Problem "none" below the smallest drill and beyond the end of the table
 */
export function drillName(diameter: number, series?: DrillSeries, units: Units = "mm"): [string, number] {
  const name = series ?? (units === "mm" ? "metric" : "inch");
  const drills = drillsOf(name, units);
  const last = drills[drills.length - 1];
  const size = ticks.plus(toTicks(diameter, units), hair(units));
  const lastStep = LAST_STEP[name];
  const text = (drill: Drill) => `${fromTicks(drill.size, units)} ${units}`;
  if (size < drills[0].size)
    none(`diameter is ${diameter}. The smallest ${name} drill is ${text(drills[0])}.`);
  if (lastStep !== undefined && ticks.minus(size, last.size) >= lastStep)
    none(`diameter is ${diameter}. The table of ${name} drills ends at ${text(last)}.`);
  const drill = drills[lastAtOrUnder(drills, size)];
  return [drill.name, fromTicks(drill.size, units)];
}
drillName.formula = {
  source: "drill-sizes",
  steps: () => [],
  conclusion: (units: Units, diameter: number, series?: DrillSeries) => {
    const drills = drillsOf(series, units);
    const at = lastAtOrUnder(drills, ticks.plus(toTicks(diameter, units), hair(units)));
    const next = drills[at + 1];
    return [
      `largest standard drill up to ${diameter} ${units}: ${drillText(drills[at], units)}`,
      ...(next ? [`next larger: ${drillText(next, units)}`] : []),
    ];
  },
} satisfies Formula;

/**
 * Row: name, diameter and stock left, mm or in, of the standard drill whose stock on diameter lies in the range,
 * nearest its middle; of two as near the larger drill. All in whole half ticks, so that ties are exact.
 * @throws Problem "none" with the drills on either side where none leaves stock in the range
 */
export function drillFor(
  diameter: number,
  material?: Material,
  series?: DrillSeries,
  units: Units = "mm",
): [string, number, number] {
  const reamed = toTicks(diameter, units);
  const usual = stockLimits(diameter, material, units);
  const drills = drillsOf(series, units);
  let best: Drill | undefined;
  let bestOff: Ticks | undefined;
  const last = lastAtOrUnder(drills, ticks.minus(reamed, usual.lower));
  for (let at = last; at >= 0 && ticks.minus(reamed, drills[at].size) <= usual.upper; at--) {
    const off = ticks.apart(
      ticks.minus(ticks.times(ticks.minus(reamed, drills[at].size), 2), usual.lower),
      usual.upper,
    );
    if (bestOff === undefined || off < bestOff) [best, bestOff] = [drills[at], off];
  }
  if (!best) return none(noDrill(diameter, drills, last, units, usual));
  return row(best, reamed, units);
}
drillFor.formula = {
  source: "stock-practice",
  steps: () => [],
  conclusion: (units: Units, diameter: number, material?: Material, series?: DrillSeries) => {
    const [name] = drillFor(diameter, material, series, units);
    const { lower, upper } = stockLimits(diameter, material, units);
    const text = (length: Ticks) => `${lengthText(length, units)} ${units}`;
    const left = ({ size }: Drill) => ticks.minus(toTicks(diameter, units), size);
    const drills = drillsOf(series, units).filter((drill) => left(drill) >= lower && left(drill) <= upper);
    return [
      `usual stock: ${text(lower)} to ${text(upper)}, middle ${text(ticks.dividedBy(ticks.plus(lower, upper), 2))}`,
      ...drills.map((drill) => `${drillText(drill, units)} leaves ${text(left(drill))}`),
      `nearest the middle, of two the larger: ${name}`,
    ];
  },
} satisfies Formula;

/** Row as drillFor, of the standard drill whose stock is nearest a given one; of two as near the larger drill. */
export function drillLeaving(diameter: number, stock: number, units: Units = "mm"): [string, number, number] {
  const reamed = toTicks(diameter, units);
  const wanted = ticks.minus(reamed, toTicks(stock, units));
  const drills = drillsOf(undefined, units).filter(({ size }) => size < reamed);
  if (drills.length === 0) return none(`diameter is ${diameter}. No standard drill is smaller.`);
  const best = drills.reduce((a, b) => (ticks.apart(b.size, wanted) <= ticks.apart(a.size, wanted) ? b : a));
  return row(best, reamed, units);
}

function row({ name, size }: Drill, reamed: Ticks, units: Units): [string, number, number] {
  return [name, fromTicks(size, units), fromTicks(ticks.minus(reamed, size), units)];
}

function noDrill(
  diameter: number,
  drills: readonly Drill[],
  last: number,
  units: Units,
  usual: Limits,
): string {
  const reamed = toTicks(diameter, units);
  const neighbors = [drills[last], drills[last + 1]]
    .filter((drill): drill is Drill => drill !== undefined && drill.size <= reamed)
    .map(
      (drill) => `${drillText(drill, units)} leaves ${lengthText(ticks.minus(reamed, drill.size), units)}`,
    );
  const range = `${lengthText(usual.lower, units)} to ${lengthText(usual.upper, units)} ${units}`;
  const nearest = neighbors.length === 0 ? "" : `: ${neighbors.join(", ")}`;
  return `diameter is ${diameter}. No standard drill leaves ${range} of stock${nearest}.`;
}
