// calc: runout of a tool in the spindle. Readings and runout in mm (in), angles in degrees.

import type { Formula, FormulaStep } from "../formula.ts";
import { lengthText, roundLength, toTicks, type Units } from "../lengths.ts";
import { wrong } from "../problem.ts";
import * as ticks from "../ticks.ts";
import { INCH, MILLIMETER, ZERO } from "../ticks.ts";

const DEGREE = Math.PI / 180;
/** Opposite sums may differ by this much whatever the runout: 0.002 mm, 0.0001 in (common practice). */
const ROUND_WITHIN = { mm: 0.002, in: 0.0001 } as const;
const HAIR = 1e-9;

/** Where the middle of the fitted circle lies from the axis, toward at0 and at90. */
function centerOf(at0: number, at90: number, at180: number, at270: number): [ex: number, ey: number] {
  return [roundLength((at0 - at180) / 2), roundLength((at90 - at270) / 2)];
}
const centerSteps = (units: Units): FormulaStep[] => [
  { symbol: "ex", expression: "(at0 - at180) / 2", unit: units },
  { symbol: "ey", expression: "(at90 - at270) / 2", unit: units },
];

/**
 * Row: runout 2·√(ex² + ey²) of the fitted circle, angle of the high side, how far to move the tool toward the low
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
  const [ex, ey] = centerOf(at0, at90, at180, at270);
  const eccentricity = Math.sqrt(ex * ex + ey * ey);
  const apart = Math.abs(at0 + at180 - (at90 + at270));
  if (apart > eccentricity / 2 + HAIR && apart > ROUND_WITHIN[units] + HAIR) {
    wrong(
      `The readings at0 to at270 do not fit a round tool: opposite pairs differ by ${lengthText(toTicks(apart, units), units)}. Clean the tool and the indicator, then read again.`,
    );
  }
  const turned = Math.atan2(ey, ex) / DEGREE;
  const angle = turned < 0 ? turned + 360 : turned;
  return [roundLength(2 * eccentricity), angle < 360 ? angle : 0, roundLength(eccentricity)];
}
runout.formula = {
  source: "runout",
  steps: (units) => [
    ...centerSteps(units),
    { symbol: "runout", expression: "2 * sqrt(ex ^ 2 + ey ^ 2)", unit: units },
    { symbol: "angle", expression: "mod(atan2d(ey, ex), 360)", unit: "°" },
    { symbol: "move", expression: "runout / 2", unit: units },
  ],
} satisfies Formula;

/**
 * Row: how far each of four adjusting screws, at 0°, 90°, 180°, and 270°, pushes the tool: the eccentricity toward the
 * screw where it is on the high side, 0 for the screw opposite. @throws Problem "wrong" as `runout` does
 */
export function screwMoves(
  at0: number,
  at90: number,
  at180: number,
  at270: number,
  units: Units = "mm",
): number[] {
  runout(at0, at90, at180, at270, units);
  const [ex, ey] = centerOf(at0, at90, at180, at270);
  return [ex, ey, -ex, -ey].map((move) => Math.max(0, move));
}
screwMoves.formula = {
  source: "runout",
  steps: (units) => [
    ...centerSteps(units),
    { symbol: "screw0", expression: "max(0, ex)", unit: units },
    { symbol: "screw90", expression: "max(0, ey)", unit: units },
    { symbol: "screw180", expression: "max(0, -ex)", unit: units },
    { symbol: "screw270", expression: "max(0, -ey)", unit: units },
  ],
} satisfies Formula;

/**
 * Runout at another distance from the nose, along the line through two readings: as vectors with the angles of their
 * high sides, or, without angles, signed in one plane. @throws Problem "wrong" for one angle alone
 */
export function runoutAt(
  reading1: number,
  distance1: number,
  reading2: number,
  distance2: number,
  distance: number,
  angle1?: number,
  angle2?: number,
): number {
  if (distance1 === distance2) wrong(`distance1 and distance2 are both ${distance1}. Read at two distances.`);
  const share = (distance - distance1) / (distance2 - distance1);
  const at = (first: number, second: number) => first + (second - first) * share;
  if (angle1 === undefined && angle2 === undefined) return roundLength(at(reading1, reading2));
  if (angle1 === undefined || angle2 === undefined)
    return wrong(
      `${angle1 === undefined ? "angle1" : "angle2"} is empty. Enter both angles, or none if both readings are in one plane.`,
    );
  const along = (direction: (angle: number) => number) =>
    at(reading1 * direction(angle1 * DEGREE), reading2 * direction(angle2 * DEGREE));
  return roundLength(Math.hypot(along(Math.cos), along(Math.sin)));
}
runoutAt.formula = {
  source: "derived",
  steps: (_units, _r1, _d1, _r2, _d2, _distance, angle1?: number) => {
    const unit = "as the readings";
    const line = (first: string, second: string) =>
      `${first} + (${second} - ${first}) * (distance - distance1) / (distance2 - distance1)`;
    if (angle1 === undefined) return [{ symbol: "runout", expression: line("reading1", "reading2"), unit }];
    return [
      { symbol: "x1", expression: "reading1 * cosd(angle1)", unit },
      { symbol: "y1", expression: "reading1 * sind(angle1)", unit },
      { symbol: "x2", expression: "reading2 * cosd(angle2)", unit },
      { symbol: "y2", expression: "reading2 * sind(angle2)", unit },
      { symbol: "x", expression: line("x1", "x2"), unit },
      { symbol: "y", expression: line("y1", "y2"), unit },
      { symbol: "runout", expression: "sqrt(x ^ 2 + y ^ 2)", unit },
    ];
  },
} satisfies Formula;

/** To what the excess is told: 0.0001 mm, 0.00001 in. */
const TOLD_TO = { mm: ticks.dividedBy(MILLIMETER, 1e4), in: ticks.dividedBy(INCH, 1e5) } as const;

/** The runout to allow where none is named: common practice, no source. */
const LIMIT = { mm: 0.005, in: 0.0002 } as const;

/** `ok`, or `over by 0.003`. */
export function runoutCheck(runout: number, limit?: number, units: Units = "mm"): string {
  const over = ticks.minus(toTicks(runout, units), toTicks(limit ?? LIMIT[units], units));
  if (over <= ZERO) return "ok";
  const told = ticks.roundedTo(TOLD_TO[units], over);
  return `over by ${lengthText(told === ZERO ? over : told, units)}`;
}
runoutCheck.formula = {
  source: "runout-limit",
  defaults: { limit: LIMIT },
  steps: () => [],
  conclusion: (units: Units, runout: number, limit?: number) => [
    `runout ${runout} ${units}, limit ${limit ?? LIMIT[units]} ${units}`,
    runoutCheck(runout, limit, units),
  ],
} satisfies Formula;
