// calc: the form of a hole from diameters at several depths: taper, bell-mouth, barrel. Lengths in mm (in).

import type { Formula } from "../formula.ts";
import { roundLength, type Units } from "../lengths.ts";
import { maximumOf, minimumOf } from "../numbers.ts";
import { wrong } from "../problem.ts";

/** A form this small is ok: common practice, no source. */
const STRAIGHT_WITHIN = { mm: 0.002, in: 0.0001 } as const;
const HAIR = 1e-9;

interface Reading {
  readonly position: number;
  readonly diameter: number;
}

const meanOf = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

/** Sorted by position from the entry, equal positions averaged. @throws Problem "wrong" under three positions */
function readingsOf(diameters: readonly number[], positions: readonly number[]): Reading[] {
  const at = new Map<number, number[]>();
  positions.forEach((position, i) => {
    at.set(position, [...(at.get(position) ?? []), diameters[i]]);
  });
  if (at.size < 3)
    wrong(
      `positions has ${at.size} different ${at.size === 1 ? "position" : "positions"}. Measure at three or more.`,
    );
  return [...at]
    .sort(([a], [b]) => a - b)
    .map(([position, values]) => ({ position, diameter: meanOf(values) }));
}

/** Middle diameter; of an even number of positions the mean of the two middle ones. */
function middleOf(readings: readonly Reading[]): number {
  const half = readings.length / 2;
  const [low, high] = [readings[Math.ceil(half) - 1], readings[Math.floor(half)]];
  return meanOf([low.diameter, high.diameter]);
}

/**
 * Row: taper over the measured length (least-squares slope × length, plus is wider toward the bottom), bell-mouth
 * (entry less the mean of the others), barrel (middle less the mean of the ends), and the name of the form.
 */
export function holeForm(
  diameters: readonly number[],
  positions: readonly number[],
  units: Units = "mm",
): [number, number, number, string] {
  const readings = readingsOf(diameters, positions);
  const [entry, ...others] = readings;
  const bottom = others[others.length - 1];
  const meanPosition = meanOf(readings.map(({ position }) => position));
  const meanDiameter = meanOf(readings.map(({ diameter }) => diameter));
  let squares = 0;
  let products = 0;
  for (const { position, diameter } of readings) {
    squares += (position - meanPosition) ** 2;
    products += (position - meanPosition) * (diameter - meanDiameter);
  }
  const taper = roundLength((products / squares) * (bottom.position - entry.position));
  const bellMouth = roundLength(entry.diameter - meanOf(others.map(({ diameter }) => diameter)));
  const barrel = roundLength(middleOf(readings) - (entry.diameter + bottom.diameter) / 2);
  return [taper, bellMouth, barrel, nameOf(taper, bellMouth, barrel, spreadOf(others), units)];
}
holeForm.formula = {
  source: "hole-form",
  given: (diameters: readonly number[], positions: readonly number[], units: Units = "mm") => {
    const readings = readingsOf(diameters, positions);
    const [entry, ...others] = readings;
    const bottom = others[others.length - 1];
    const length = bottom.position - entry.position;
    const [taper] = holeForm(diameters, positions, units);
    return {
      slope: [taper / length, ""],
      measuredLength: [length, units],
      entry: [entry.diameter, units],
      bottom: [bottom.diameter, units],
      middle: [middleOf(readings), units],
      meanOfOthers: [meanOf(others.map(({ diameter }) => diameter)), units],
    };
  },
  steps: (units) => [
    { symbol: "taper", expression: "slope * measuredLength", unit: units },
    { symbol: "bellMouth", expression: "entry - meanOfOthers", unit: units },
    { symbol: "barrel", expression: "middle - (entry + bottom) / 2", unit: units },
  ],
  conclusion: (units: Units, diameters: readonly number[], positions: readonly number[]) => [
    `form: ${holeForm(diameters, positions, units)[3]}`,
  ],
} satisfies Formula;

function spreadOf(readings: readonly Reading[]): number {
  const diameters = readings.map(({ diameter }) => diameter);
  return maximumOf(diameters) - minimumOf(diameters);
}

function nameOf(taper: number, bellMouth: number, barrel: number, restDiffers: number, units: Units): string {
  const within = STRAIGHT_WITHIN[units] + HAIR;
  if ([taper, bellMouth, barrel].every((form) => Math.abs(form) <= within)) return "ok";
  if (restDiffers < Math.abs(bellMouth) / 3 - HAIR) return bellMouth > 0 ? "bell-mouth" : "tight entry";
  if (Math.abs(taper) >= Math.abs(barrel) - HAIR) return "taper";
  return barrel > 0 ? "barrel" : "waist";
}
