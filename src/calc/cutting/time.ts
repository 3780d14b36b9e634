// calc: time in the hole, per part, per shift and per year. Lengths in mm (in), feed rates in mm/min (in/min).

import type { Formula, Given } from "../formula.ts";
import type { Units } from "../lengths.ts";
import { wholeDown, wholeUp } from "../numbers.ts";
import { wrong } from "../problem.ts";

/**
 * Time in the hole, s: 60·L/feedRate + 60·L/retractRate, L = leadIn + depth + overrun.
 * The return is at the feed rate unless a rate is given; `"rapid"` leaves it out.
 */
export function holeTime(
  depth: number,
  feedRate: number,
  leadIn = 0,
  overrun = 0,
  retractRate: number | "rapid" = feedRate,
  _units: Units = "mm",
): number {
  const travel = leadIn + depth + overrun;
  const inward = (60 * travel) / feedRate;
  return retractRate === "rapid" ? inward : inward + (60 * travel) / retractRate;
}
holeTime.formula = {
  source: "machining-time",
  defaults: { leadIn: 0, overrun: 0 },
  given: (
    _depth: number,
    feedRate: number,
    _leadIn?: number,
    _overrun?: number,
    retractRate: number | "rapid" = feedRate,
  ): Given => (retractRate === "rapid" ? {} : { retractRate }),
  steps: (units, _depth, _feedRate, _leadIn, _overrun, retractRate?: number | "rapid") => [
    { symbol: "travel", expression: "leadIn + depth + overrun", unit: units },
    {
      symbol: "holeTime",
      expression: `60 * travel / feedRate${retractRate === "rapid" ? "" : " + 60 * travel / retractRate"}`,
      unit: "s",
    },
  ],
} satisfies Formula;

/** Time per part, s; `toolChange` is chip to chip per part. */
export function cycleTime(holeTime: number, holes = 1, moveTime = 0, toolChange = 0, loadTime = 0): number {
  return holes * holeTime + (holes - 1) * moveTime + toolChange + loadTime;
}
cycleTime.formula = {
  source: "machining-time",
  defaults: { holes: 1, moveTime: 0, toolChange: 0, loadTime: 0 },
  steps: () => [
    {
      symbol: "cycleTime",
      expression: "holes * holeTime + (holes - 1) * moveTime + toolChange + loadTime",
      unit: "s",
    },
  ],
} satisfies Formula;

/** Whole parts in a shift; cycle time in s, uptime a share. */
export function partsPerShift(cycleTime: number, shiftHours: number, uptime = 1): number {
  if (cycleTime === 0) wrong("cycleTime is empty or 0. Enter the seconds per part.");
  return wholeDown((3600 * shiftHours * uptime) / cycleTime);
}
partsPerShift.formula = {
  source: "derived",
  defaults: { uptime: 1 },
  steps: () => [
    { symbol: "parts", expression: "wholedown(3600 * shiftHours * uptime / cycleTime)", unit: "parts" },
  ],
} satisfies Formula;

/** Row: load in machines, whole machines. */
export function machinesNeeded(
  partsPerYear: number,
  cycleTime: number,
  hoursPerYear: number,
  uptime = 1,
  scrapRate = 0,
): number[] {
  const load = ((partsPerYear / (1 - scrapRate)) * cycleTime) / (3600 * hoursPerYear * uptime);
  return [load, wholeUp(load)];
}
machinesNeeded.formula = {
  source: "derived",
  defaults: { uptime: 1, scrapRate: 0 },
  steps: () => [
    {
      symbol: "load",
      expression: "partsPerYear / (1 - scrapRate) * cycleTime / (3600 * hoursPerYear * uptime)",
      unit: "machines",
    },
    { symbol: "machines", expression: "wholeup(load)", unit: "machines" },
  ],
} satisfies Formula;

/** Hours a year; cycles in s. Negative: the proposed cycle is longer. */
export function hoursSaved(presentCycle: number, proposedCycle: number, partsPerYear: number): number {
  return ((presentCycle - proposedCycle) * partsPerYear) / 3600;
}
hoursSaved.formula = {
  source: "derived",
  steps: () => [
    {
      symbol: "hoursSaved",
      expression: "(presentCycle - proposedCycle) * partsPerYear / 3600",
      unit: "h/year",
    },
  ],
} satisfies Formula;
