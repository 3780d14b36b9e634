// calc: coolant through the tool, bending of a long tool, and the size that a warm part has.

import type { Material } from "../../data/materials/materials.ts";
import {
  LITERS_PER_GALLON,
  MM_PER_INCH,
  NEWTONS_PER_POUND_FORCE,
  PASCALS_PER_PSI,
} from "../../data/units.ts";
import type { Formula } from "../formula.ts";
import { roundLength, type Units } from "../lengths.ts";

/** Water, kg/m³. */
const DENSITY = 1000;
const COEFFICIENT = 0.7;

/** Flow, L/min from mm and bar (US gpm from in and psi): bores·C·π/4·d²·√(2Δp/ρ). */
export function coolantFlow(
  bore: number,
  pressure: number,
  bores = 1,
  coefficient = COEFFICIENT,
  units: Units = "mm",
): number {
  const meters = units === "mm" ? bore / 1000 : (bore * MM_PER_INCH) / 1000;
  const pascals = pressure * (units === "mm" ? 1e5 : PASCALS_PER_PSI);
  const speed = Math.sqrt((2 * pascals) / DENSITY);
  const liters = bores * coefficient * (Math.PI / 4) * meters * meters * speed * 60_000;
  return units === "mm" ? liters : liters / LITERS_PER_GALLON;
}
coolantFlow.formula = {
  source: "coolant-flow",
  defaults: { bores: 1, coefficient: COEFFICIENT },
  given: () => ({ density: [DENSITY, "kg/m³"] }),
  steps: (units) => {
    const inch = units === "in";
    return [
      {
        symbol: "jetSpeed",
        expression: `sqrt(2 * ${inch ? "inpascalfrompsi" : "inpascal"}(pressure) / density)`,
        unit: "m/s",
      },
      {
        symbol: "flow",
        expression: inch
          ? "ingpm(bores * coefficient * pi / 4 * inmm(bore) ^ 2 * jetSpeed)"
          : "inlpermin(bores * coefficient * pi / 4 * bore ^ 2 * jetSpeed)",
        unit: inch ? "US gpm" : "L/min",
      },
    ];
  },
} satisfies Formula;

/** Elastic modulus, N/mm²: textbook values from memory. */
const MODULUS = { steel: 210_000, carbide: 600_000 } as const;
export type ToolMaterial = keyof typeof MODULUS;

/** Bending at the free end, mm from N and mm (in from lbf and in): F·L³/(3·E·I), I = π·d⁴/64. */
export function deflection(
  force: number,
  length: number,
  diameter: number,
  toolMaterial: ToolMaterial = "steel",
  units: Units = "mm",
): number {
  const modulus = MODULUS[toolMaterial] * (units === "mm" ? 1 : MM_PER_INCH ** 2 / NEWTONS_PER_POUND_FORCE);
  return (force * length ** 3) / (3 * modulus * ((Math.PI * diameter ** 4) / 64));
}
deflection.formula = {
  source: "deflection",
  given: (_force: number, _length: number, _diameter: number, toolMaterial: ToolMaterial = "steel") => ({
    modulus: [MODULUS[toolMaterial], "N/mm²"],
  }),
  steps: (units) => [
    {
      symbol: "areaMoment",
      expression: "pi * diameter ^ 4 / 64",
      unit: units === "mm" ? "mm⁴" : "in⁴",
    },
    {
      symbol: "deflection",
      expression: `force * length ^ 3 / (3 * ${units === "mm" ? "modulus" : "inpsi(modulus)"} * areaMoment)`,
      unit: units,
    },
  ],
} satisfies Formula;

/** The size that a part of this size at 20 °C (68 °F) has at a temperature: size·(1 + α(T − 20)). */
export function hotSize(size: number, temperature: number, material: Material, units: Units = "mm"): number {
  const over = units === "mm" ? temperature - 20 : (temperature - 68) / 1.8;
  return roundLength(size * (1 + material.expansion * 1e-6 * over));
}
hotSize.formula = {
  source: "reference-temperature",
  given: (_size: number, _temperature: number, { expansion }: Material) => ({
    expansion: [expansion, "µm/(m·K)"],
  }),
  steps: (units) => [
    {
      symbol: "hotSize",
      expression: `size * (1 + expansion / 1000000 * ${units === "mm" ? "(temperature - 20)" : "inkelvin(temperature - 68)"})`,
      unit: units,
    },
  ],
} satisfies Formula;
