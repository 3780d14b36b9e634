// calc: the standard drill up to a diameter, and the one that leaves the reamer its stock.

import type { Material } from "../../data/materials/materials.ts";
import type { Formula } from "../formula.ts";
import { fromTicks, lengthText, TICKS_PER_IN, TICKS_PER_MM, toTicks, type Units } from "../lengths.ts";
import { none } from "../problem.ts";
import { type Drill, type DrillSeries, drillsOf, drillText, lastAtOrUnder } from "./standard-drills.ts";
import { stockTicks } from "./stock.ts";

/** Beyond the end of these series by more than this a smaller drill would be no answer, only the end of the table. */
const LAST_STEP: Partial<Record<DrillSeries, number>> = {
  metric: TICKS_PER_MM,
  fraction: TICKS_PER_IN / 16,
  inch: TICKS_PER_IN / 16,
};

/** A size in inches is rounded to 1e-7 in, so a drill may lie that little above it. */
const hair = (units: Units) => (units === "in" ? TICKS_PER_IN / 1e7 : 0);

/**
 * Name and diameter of the largest standard drill up to a diameter, mm or in.
 * @throws Problem "none" below the smallest drill and beyond the end of the table
 */
export function drillName(diameter: number, series?: DrillSeries, units: Units = "mm"): [string, number] {
  const name = series ?? (units === "mm" ? "metric" : "inch");
  const drills = drillsOf(name, units);
  const last = drills[drills.length - 1];
  const ticks = toTicks(diameter, units) + hair(units);
  const text = (drill: Drill) => `${fromTicks(drill.ticks, units)} ${units}`;
  if (ticks < drills[0].ticks)
    none(`diameter is ${diameter}. The smallest ${name} drill is ${text(drills[0])}.`);
  if (ticks - last.ticks >= (LAST_STEP[name] ?? Number.POSITIVE_INFINITY))
    none(`diameter is ${diameter}. The table of ${name} drills ends at ${text(last)}.`);
  const drill = drills[lastAtOrUnder(drills, ticks)];
  return [drill.name, fromTicks(drill.ticks, units)];
}
drillName.formula = {
  source: "drill-sizes",
  steps: () => [],
  conclusion: (units: Units, diameter: number, series?: DrillSeries) => {
    const drills = drillsOf(series, units);
    const at = lastAtOrUnder(drills, toTicks(diameter, units) + hair(units));
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
  const { minimum, maximum } = stockTicks(diameter, material, units);
  const drills = drillsOf(series, units);
  let best: Drill | undefined;
  let bestOff = Number.POSITIVE_INFINITY;
  const last = lastAtOrUnder(drills, reamed - minimum);
  for (let at = last; at >= 0 && reamed - drills[at].ticks <= maximum; at--) {
    const off = Math.abs(2 * (reamed - drills[at].ticks) - minimum - maximum);
    if (off < bestOff) [best, bestOff] = [drills[at], off];
  }
  if (!best) return none(noDrill(diameter, drills, last, units, minimum, maximum));
  return [best.name, fromTicks(best.ticks, units), fromTicks(reamed - best.ticks, units)];
}
drillFor.formula = {
  source: "stock-practice",
  steps: () => [],
  conclusion: (units: Units, diameter: number, material?: Material, series?: DrillSeries) => {
    const [name] = drillFor(diameter, material, series, units);
    const { minimum, maximum } = stockTicks(diameter, material, units);
    const reamed = toTicks(diameter, units);
    const text = (ticks: number) => `${lengthText(ticks, units)} ${units}`;
    const drills = drillsOf(series, units).filter(
      ({ ticks }) => reamed - ticks >= minimum && reamed - ticks <= maximum,
    );
    return [
      `usual stock: ${text(minimum)} to ${text(maximum)}, middle ${text((minimum + maximum) / 2)}`,
      ...drills.map((drill) => `${drillText(drill, units)} leaves ${text(reamed - drill.ticks)}`),
      `nearest the middle, of two the larger: ${name}`,
    ];
  },
} satisfies Formula;

/** Row as drillFor, of the standard drill whose stock is nearest a given one; of two as near the larger drill. */
export function drillLeaving(diameter: number, stock: number, units: Units = "mm"): [string, number, number] {
  const reamed = toTicks(diameter, units);
  const wanted = reamed - toTicks(stock, units);
  const drills = drillsOf(undefined, units).filter(({ ticks }) => ticks < reamed);
  if (drills.length === 0) return none(`diameter is ${diameter}. No standard drill is smaller.`);
  const best = drills.reduce((a, b) => (Math.abs(b.ticks - wanted) <= Math.abs(a.ticks - wanted) ? b : a));
  return [best.name, fromTicks(best.ticks, units), fromTicks(reamed - best.ticks, units)];
}

function noDrill(
  diameter: number,
  drills: readonly Drill[],
  last: number,
  units: Units,
  minimum: number,
  maximum: number,
): string {
  const reamed = toTicks(diameter, units);
  const neighbors = [drills[last], drills[last + 1]]
    .filter((drill): drill is Drill => drill !== undefined && drill.ticks <= reamed)
    .map((drill) => `${drillText(drill, units)} leaves ${lengthText(reamed - drill.ticks, units)}`);
  const range = `${lengthText(minimum, units)} to ${lengthText(maximum, units)} ${units}`;
  const nearest = neighbors.length === 0 ? "" : `: ${neighbors.join(", ")}`;
  return `diameter is ${diameter}. No standard drill leaves ${range} of stock${nearest}.`;
}
