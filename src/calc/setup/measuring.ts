// calc: diameters from a V-block, at 20 °C, and contributions to an error. Lengths in mm (in).

import type { Material } from "../../data/materials/materials.ts";
import type { Formula } from "../formula.ts";
import { roundLength, type Units } from "../lengths.ts";
import { shown, wrong } from "../problem.ts";

const DEGREE = Math.PI / 180;

/** Expansion of a steel gauge, µm/(m·K): value from memory. */
const STEEL_EXPANSION = 11.5;

/** How far the V may be from the angle in which odd flutes sit on their margins, degrees. */
const ANGLE_SLACK = 5;

const fittingAngle = (flutes: number) => 180 - 360 / flutes;

/**
 * Diameter over an odd number of evenly spaced flutes from the height over the V's apex:
 * D = 2M/(1 + cos β + sin β·cot(V/2)), β = 180°/flutes; V is 180° − 360°/flutes if not given.
 */
export function vBlock(reading: number, flutes: number, angle?: number, _units: Units = "mm"): number {
  if (flutes % 2 !== 1 || flutes < 3) {
    wrong(
      `flutes is ${shown(flutes)}. A V-block takes an odd number of evenly spaced flutes, 3 or more: measure an even number with a micrometer.`,
    );
  }
  if (!(reading > 0)) wrong(`reading is ${shown(reading)}. Enter the height over the apex of the V.`);
  const fitting = fittingAngle(flutes);
  const vee = angle ?? fitting;
  if (Math.abs(vee - fitting) > ANGLE_SLACK + 1e-9) {
    wrong(
      `angle is ${shown(vee)}. ${flutes} flutes sit in a V of ${Number(fitting.toFixed(3))}°, within ${ANGLE_SLACK}°.`,
    );
  }
  const half = (vee / 2) * DEGREE;
  const beta = (180 / flutes) * DEGREE;
  return roundLength((2 * reading) / (1 + Math.cos(beta) + Math.sin(beta) / Math.tan(half)));
}
vBlock.formula = {
  source: "v-block",
  given: (_reading: number, flutes: number, angle: number = fittingAngle(flutes)) => ({
    angle: [angle, "°"],
  }),
  steps: (units) => [
    { symbol: "beta", expression: "180 / flutes", unit: "°" },
    {
      symbol: "diameter",
      expression: "2 * reading / (1 + cosd(beta) + sind(beta) / tand(angle / 2))",
      unit: units,
    },
  ],
} satisfies Formula;

/** Root sum of squares of independent random contributions at one confidence. */
export function stackUp(contributions: readonly number[]): number {
  let sum = 0;
  for (const contribution of contributions) sum += contribution * contribution;
  return roundLength(Math.sqrt(sum));
}
stackUp.formula = {
  source: "root-sum-square",
  given: (contributions: readonly number[]) =>
    Object.fromEntries(
      contributions.map((contribution, index) => [`contribution${index + 1}`, contribution]),
    ),
  steps: (_units, contributions: readonly number[]) => [
    {
      symbol: "stackUp",
      expression: `sqrt(${contributions.map((_, index) => `contribution${index + 1} ^ 2`).join(" + ")})`,
      unit: "as the contributions",
    },
  ],
} satisfies Formula;

/** Degrees over 20 °C (68 °F), in K. */
function over20(temperature: number, units: Units): number {
  return units === "mm" ? temperature - 20 : (temperature - 68) / 1.8;
}

/**
 * Size at 20 °C: measured·(1 + αg(Tg − 20))/(1 + αp(T − 20)). Temperatures in °C (°F); the gauge is at 20 °C
 * and of steel if not given.
 */
export function sizeAt20(
  measured: number,
  temperature: number,
  material: Material,
  gaugeTemperature?: number,
  gaugeMaterial?: Material,
  units: Units = "mm",
): number {
  const gauge = gaugeMaterial === undefined ? STEEL_EXPANSION : gaugeMaterial.expansion;
  const gaugeOver = gaugeTemperature === undefined ? 0 : over20(gaugeTemperature, units);
  return roundLength(
    (measured * (1 + gauge * 1e-6 * gaugeOver)) /
      (1 + material.expansion * 1e-6 * over20(temperature, units)),
  );
}
sizeAt20.formula = {
  source: "reference-temperature",
  given: (
    _measured: number,
    _temperature: number,
    material: Material,
    gaugeTemperature?: number,
    gaugeMaterial?: Material,
    units: Units = "mm",
  ) => ({
    partExpansion: [material.expansion, "µm/(m·K)"],
    gaugeExpansion: [gaugeMaterial === undefined ? STEEL_EXPANSION : gaugeMaterial.expansion, "µm/(m·K)"],
    gaugeTemperature: gaugeTemperature ?? (units === "mm" ? 20 : 68),
  }),
  steps: (units) => {
    const over = (temperature: string) =>
      units === "mm" ? `(${temperature} - 20)` : `inkelvin(${temperature} - 68)`;
    return [
      {
        symbol: "size",
        expression: `measured * (1 + gaugeExpansion / 1000000 * ${over("gaugeTemperature")}) / (1 + partExpansion / 1000000 * ${over("temperature")})`,
        unit: units,
      },
    ];
  },
} satisfies Formula;
