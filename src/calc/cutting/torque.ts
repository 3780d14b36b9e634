// calc: torque and power of a reamer, an order of magnitude: chips this thin lie outside the range that kc1.1 and
// mc were fitted to, and the rubbing of the margins is left out.

import type { Material } from "../../data/materials/materials.ts";
import { NEWTON_METERS_PER_POUND_FORCE_INCH } from "../../data/units.ts";
import type { Formula } from "../formula.ts";
import type { Units } from "../lengths.ts";
import { shown, wrong } from "../problem.ts";

const DEGREE = Math.PI / 180;

/**
 * Torque, N·m (lbf·in): kc·f·(D² − d²)/8000 with kc = kc1.1·h^−mc and h = (f/z)·sin κ, lengths in mm.
 * `chamferAngle` κ is the bevel lead's angle to the axis, degrees.
 */
export function torque(
  material: Material,
  diameter: number,
  drill: number,
  feedPerRev: number,
  flutes: number,
  chamferAngle = 45,
  units: Units = "mm",
): number {
  if (!(drill < diameter)) {
    wrong(
      `drill is ${shown(drill)}, not smaller than the diameter ${shown(diameter)}. A reamer needs stock to cut.`,
    );
  }
  const scale = units === "mm" ? 1 : 25.4;
  const feed = feedPerRev * scale;
  const thickness = (feed / flutes) * Math.sin(chamferAngle * DEGREE);
  const force = material.kc11 * thickness ** -material.mc;
  const moment = (force * feed * (diameter * diameter - drill * drill) * scale * scale) / 8000;
  return units === "mm" ? moment : moment / NEWTON_METERS_PER_POUND_FORCE_INCH;
}
torque.formula = {
  source: "kienzle",
  defaults: { chamferAngle: 45 },
  given: ({ kc11, mc }: Material) => ({ kc11: [kc11, "N/mm²"], mc }),
  steps: (units) => {
    const inch = units === "in";
    const [feed, diameter, drill] = inch
      ? ["feedInMm", "diameterInMm", "drillInMm"]
      : ["feedPerRev", "diameter", "drill"];
    const inMm = (symbol: string, from: string) => ({ symbol, expression: `inmm(${from})`, unit: "mm" });
    const moment = `specificForce * ${feed} * (${diameter} ^ 2 - ${drill} ^ 2) / 8`;
    return [
      ...(inch ? [inMm(feed, "feedPerRev"), inMm(diameter, "diameter"), inMm(drill, "drill")] : []),
      { symbol: "chipThickness", expression: `${feed} / flutes * sind(chamferAngle)`, unit: "mm" },
      { symbol: "specificForce", expression: "kc11 * chipThickness ^ -mc", unit: "N/mm²" },
      {
        symbol: "torque",
        expression: `${inch ? "inlbfin" : "innm"}(${moment})`,
        unit: inch ? "lbf·in" : "N·m",
      },
    ];
  },
} satisfies Formula;

/** Power, kW from N·m (hp of 550 ft·lbf/s from lbf·in): 2π·n·torque over the efficiency. */
export function power(torque: number, rpm: number, efficiency = 1, units: Units = "mm"): number {
  return (2 * Math.PI * torque * rpm) / ((units === "mm" ? 60000 : 396000) * efficiency);
}
power.formula = {
  source: "torque-power",
  defaults: { efficiency: 1 },
  steps: (units) => [
    {
      symbol: "power",
      expression:
        units === "mm"
          ? "inkw(2 * pi * torque * rpm / 60 / efficiency)"
          : "inhp(2 * pi * torque * rpm / efficiency)",
      unit: units === "mm" ? "kW" : "hp",
    },
  ],
} satisfies Formula;
