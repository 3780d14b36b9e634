// calc: spindle speed, cutting speed, feeds. Cutting speed in m/min (ft/min), diameters and feeds in mm (in),
// feed rate in mm/min (in/min).

import type { Formula, FormulaStep } from "../formula.ts";
import type { Units } from "../lengths.ts";
import { wrong } from "../problem.ts";

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
  steps: (units, _surfaceSpeed, _diameter, maxRpm?: number) => [stepFrom("surfaceSpeed", units, maxRpm)],
} satisfies Formula;
/** The same line from a cutting speed of another name. */
spindleSpeed.stepFrom = stepFrom;

function stepFrom(speedSymbol: string, units: Units, maxRpm: number | undefined): FormulaStep {
  const speed = `${units === "mm" ? 1000 : 12} * ${speedSymbol} / (pi * diameter)`;
  return {
    symbol: "rpm",
    expression: maxRpm === undefined ? speed : `min(${speed}, maxRpm)`,
    unit: "rev/min",
  };
}

/** Cutting speed, m/min (ft/min): π·D·n/1000, in inches π·D·n/12. */
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

/** A length as a sheet gives it: a bare number, or with its own unit. */
export type StatedLength = number | { readonly value: number; readonly units: Units };

/** Depth in diameters; a bare number is in mm beside one in mm. @throws Problem "wrong" for one beside inches */
export function depthRatio(depth: StatedLength, diameter: StatedLength): number {
  if (typeof depth === "number" && typeof diameter === "number") return depth / diameter;
  if (typeof depth === "number" && typeof diameter !== "number") refuseBare("depth", depth, diameter.units);
  if (typeof diameter === "number" && typeof depth !== "number")
    refuseBare("diameter", diameter, depth.units);
  const [over, under] = inOneUnit(depth, diameter);
  return over / under;
}

function refuseBare(name: string, length: number, other: Units): void {
  if (other === "in")
    wrong(`${name} is ${length}, which could be mm or inches beside a length in inches. Write its unit too.`);
}
depthRatio.formula = {
  source: "derived",
  given: (depth: StatedLength, diameter: StatedLength) => {
    const [over, under] = inOneUnit(depth, diameter);
    const units = [depth, diameter].map((length) => (typeof length === "number" ? undefined : length.units));
    const unit = units[0] && units[1] && units[0] !== units[1] ? "mm" : (units[0] ?? units[1] ?? "");
    return { depth: [over, unit], diameter: [under, unit] };
  },
  steps: () => [{ symbol: "depthRatio", expression: "depth / diameter", unit: "diameters" }],
} satisfies Formula;

function inOneUnit(...lengths: [StatedLength, StatedLength]): [number, number] {
  const units = lengths.map((length) => (typeof length === "number" ? undefined : length.units));
  const values = lengths.map((length) => (typeof length === "number" ? length : length.value)) as [
    number,
    number,
  ];
  if (!units[0] || !units[1] || units[0] === units[1]) return values;
  return units[0] === "in" ? [values[0] * 25.4, values[1]] : [values[0], values[1] * 25.4];
}
