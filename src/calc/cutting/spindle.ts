// calc: spindle speed, surface speed, feeds. Surface speed in m/min (ft/min), diameters and feeds in mm (in),
// feed rate in mm/min (in/min).

import type { Formula } from "../formula.ts";
import type { Units } from "../lengths.ts";

/** Spindle speed, rev/min: 1000·v/(π·D) in mm, 12·V/(π·D) in inches, not above `maxRpm`. */
export function spindleSpeed(
  surfaceSpeed: number,
  diameter: number,
  maxRpm = Number.POSITIVE_INFINITY,
  units: Units = "mm",
): number {
  const speed = ((units === "mm" ? 1000 : 12) * surfaceSpeed) / (Math.PI * diameter);
  return Math.min(speed, maxRpm);
}
spindleSpeed.formula = {
  source: "spindle-speed",
  steps: (units, _surfaceSpeed, _diameter, maxRpm?: number) => {
    const speed = `${units === "mm" ? 1000 : 12} * surfaceSpeed / (pi * diameter)`;
    const expression = maxRpm === undefined ? speed : `min(${speed}, maxRpm)`;
    return [{ symbol: "rpm", expression, unit: "rev/min" }];
  },
} satisfies Formula;

/** Surface speed, m/min (ft/min): π·D·n/1000, in inches π·D·n/12. */
export function surfaceSpeedOf(rpm: number, diameter: number, units: Units = "mm"): number {
  return (Math.PI * diameter * rpm) / (units === "mm" ? 1000 : 12);
}
surfaceSpeedOf.formula = {
  source: "spindle-speed",
  steps: (units) => [
    {
      symbol: "surfaceSpeed",
      expression: `pi * diameter * rpm / ${units === "mm" ? 1000 : 12}`,
      unit: units === "mm" ? "m/min" : "ft/min",
    },
  ],
} satisfies Formula;

/** Feed rate per minute from the feed per revolution. */
export function feedRate(feedPerRev: number, rpm: number): number {
  return feedPerRev * rpm;
}
feedRate.formula = {
  source: "feed",
  steps: () => [{ symbol: "feedRate", expression: "feedPerRev * rpm", unit: "length/min" }],
} satisfies Formula;

/** Feed per revolution from the feed rate per minute. */
export function feedPerRevolution(feedRate: number, rpm: number): number {
  return feedRate / rpm;
}
feedPerRevolution.formula = {
  source: "feed",
  steps: () => [{ symbol: "feedPerRev", expression: "feedRate / rpm", unit: "length/rev" }],
} satisfies Formula;

/** Feed per tooth from the feed per revolution. */
export function feedPerTooth(feedPerRev: number, flutes: number): number {
  return feedPerRev / flutes;
}
feedPerTooth.formula = {
  source: "feed",
  steps: () => [{ symbol: "feedPerTooth", expression: "feedPerRev / flutes", unit: "length/tooth" }],
} satisfies Formula;

/** Feed per revolution from the feed per tooth. */
export function feedFromTooth(feedPerTooth: number, flutes: number): number {
  return feedPerTooth * flutes;
}
feedFromTooth.formula = {
  source: "feed",
  steps: () => [{ symbol: "feedPerRev", expression: "feedPerTooth * flutes", unit: "length/rev" }],
} satisfies Formula;

/** Depth in diameters. */
export function depthRatio(depth: number, diameter: number): number {
  return depth / diameter;
}
depthRatio.formula = {
  source: "derived",
  steps: () => [{ symbol: "depthRatio", expression: "depth / diameter", unit: "diameters" }],
} satisfies Formula;
