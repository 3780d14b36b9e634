// calc: run-out of a tool in the spindle. Readings and run-out in mm (in), angles in degrees.

import type { Formula } from "../formula.ts";
import {
  lengthText,
  roundLength,
  roundTicks,
  TICKS_PER_IN,
  TICKS_PER_MM,
  toTicks,
  type Units,
} from "../lengths.ts";
import { wrong } from "../problem.ts";

const DEGREE = Math.PI / 180;
/** Opposite sums may differ by this much whatever the run-out: 0.002 mm, 0.0001 in (common practice). */
const SOUND = { mm: 0.002, in: 0.0001 } as const;
const HAIR = 1e-9;

/**
 * Row: run-out 2·√(ex² + ey²) of the fitted circle, angle of the high side, how far to move the tool toward the low
 * side. Readings at marks numbered as they pass the indicator, plus toward the plunger: ex = (at0 − at180)/2,
 * ey = (at90 − at270)/2.
 */
export function runout(
  at0: number,
  at90: number,
  at180: number,
  at270: number,
  units: Units = "mm",
): number[] {
  const ex = roundLength((at0 - at180) / 2);
  const ey = roundLength((at90 - at270) / 2);
  const eccentricity = Math.sqrt(ex * ex + ey * ey);
  const apart = Math.abs(at0 + at180 - (at90 + at270));
  if (apart > eccentricity / 2 + HAIR && apart > SOUND[units] + HAIR) {
    wrong(
      `at0 + at180 and at90 + at270 differ by ${lengthText(toTicks(apart, units), units)}: the surface or the indicator is not sound, so clean both and read again`,
    );
  }
  const turned = Math.atan2(ey, ex) / DEGREE;
  const angle = turned < 0 ? turned + 360 : turned;
  return [roundLength(2 * eccentricity), angle < 360 ? angle : 0, roundLength(eccentricity)];
}
runout.formula = {
  source: "runout",
  steps: (units) => [
    { symbol: "ex", expression: "(at0 - at180) / 2", unit: units },
    { symbol: "ey", expression: "(at90 - at270) / 2", unit: units },
    { symbol: "runout", expression: "2 * sqrt(ex ^ 2 + ey ^ 2)", unit: units },
    { symbol: "angle", expression: "mod(atan2d(ey, ex), 360)", unit: "°" },
    { symbol: "move", expression: "runout / 2", unit: units },
  ],
} satisfies Formula;

/** Run-out at another distance from the nose, along the line through two readings in one plane. */
export function runoutAt(
  reading1: number,
  distance1: number,
  reading2: number,
  distance2: number,
  distance: number,
): number {
  if (distance1 === distance2) wrong(`distance1 and distance2 are both ${distance1}: read at two distances`);
  return roundLength(reading1 + ((reading2 - reading1) * (distance - distance1)) / (distance2 - distance1));
}
runoutAt.formula = {
  source: "derived",
  steps: () => [
    {
      symbol: "runout",
      expression: "reading1 + (reading2 - reading1) * (distance - distance1) / (distance2 - distance1)",
      unit: "as the readings",
    },
  ],
} satisfies Formula;

/** To what the excess is told, ticks: 0.0001 mm, 0.00001 in. */
const TOLD_TO = { mm: TICKS_PER_MM / 1e4, in: TICKS_PER_IN / 1e5 } as const;

/** `ok`, or `over by 0.003`; the limit is 0.005 mm, 0.0002 in, if none is given. */
export function runoutCheck(runout: number, limit?: number, units: Units = "mm"): string {
  const over = toTicks(runout, units) - toTicks(limit ?? (units === "mm" ? 0.005 : 0.0002), units);
  return over > 0 ? `over by ${lengthText(roundTicks(over, TOLD_TO[units]) || over, units)}` : "ok";
}
