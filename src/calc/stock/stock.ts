// calc: stock allowance, on diameter throughout, and the drill before the reamer. Lengths in mm or in.

import type { Material } from "../../data/materials/materials.ts";
import { stockAllowances, stockShares } from "../../data/stock-allowances.ts";
import type { Formula } from "../formula.ts";
import { fromTicks, lengthText, toTicks, type Units } from "../lengths.ts";
import { findMaterial } from "../materials/find-material.ts";
import { wrong } from "../problem.ts";
import * as ticks from "../ticks.ts";
import { type Limits, type Ticks, ZERO } from "../ticks.ts";

const defaultMaterial = findMaterial();

/** Minimum and maximum stock on diameter, counted on the drill's nominal diameter. */
export function stockRange(diameter: number, material?: Material, units: Units = "mm"): [number, number] {
  const { lower, upper } = stockLimits(diameter, material, units);
  return [fromTicks(lower, units), fromTicks(upper, units)];
}
stockRange.formula = {
  source: "stock-practice",
  given: (diameter: number, material: Material = defaultMaterial, units: Units = "mm") => {
    const row = allowanceFor(diameter, units);
    const share = stockShares[material.stockFactor];
    return {
      tableMinimum: [row.minimum, units],
      tableMaximum: [row.maximum, units],
      minimumFactor: share.minimum,
      maximumFactor: share.maximum,
    };
  },
  steps: (units) => [
    { symbol: "minimum", expression: "tableMinimum * minimumFactor", unit: units },
    { symbol: "maximum", expression: "tableMaximum * maximumFactor", unit: units },
  ],
} satisfies Formula;

/** The middle of the stock range. */
export function stock(diameter: number, material?: Material, units: Units = "mm"): number {
  return fromTicks(middleStock(diameter, material, units), units);
}
stock.formula = {
  ...stockRange.formula,
  steps: (units) => [
    {
      symbol: "stock",
      expression: "(tableMinimum * minimumFactor + tableMaximum * maximumFactor) / 2",
      unit: units,
    },
  ],
} satisfies Formula;

/** Diameter of the drill before the reamer: reamed size − stock − drill oversize. */
export function preReamDrill(
  diameter: number,
  material?: Material,
  drilledOver = 0,
  units: Units = "mm",
): number {
  const over = toTicks(drilledOver, units);
  const drill = ticks.minus(
    ticks.minus(toTicks(diameter, units), middleStock(diameter, material, units)),
    over,
  );
  if (drill <= ZERO) wrong(`diameter is ${diameter}. Stock and drilledOver leave no drill.`);
  return fromTicks(drill, units);
}
preReamDrill.formula = {
  source: "pre-ream-drill",
  given: (diameter: number, material?: Material, drilledOver = 0, units: Units = "mm") => ({
    stock: stock(diameter, material, units),
    drilledOver,
  }),
  steps: (units) => [{ symbol: "drill", expression: "diameter - stock - drilledOver", unit: units }],
} satisfies Formula;

/** `ok`, or `too little: 0.04 left, at least 0.2`. */
export function stockCheck(
  diameter: number,
  drill: number,
  material?: Material,
  drilledOver = 0,
  units: Units = "mm",
): string {
  const [reamed, drilled] = [toTicks(diameter, units), toTicks(drill, units)];
  if (drilled >= reamed) wrong(`drill is ${drill}, not smaller than the reamed diameter ${diameter}.`);
  const left = ticks.minus(ticks.minus(reamed, drilled), toTicks(drilledOver, units));
  const { lower, upper } = stockLimits(diameter, material, units);
  const text = (length: Ticks) => lengthText(length, units);
  if (left < lower) return `too little: ${text(left)} left, at least ${text(lower)}`;
  return left > upper ? `too much: ${text(left)} left, at most ${text(upper)}` : "ok";
}
stockCheck.formula = {
  source: "stock-practice",
  given: (_diameter: number, _drill: number, _material?: Material, drilledOver = 0) => ({ drilledOver }),
  steps: (units) => [{ symbol: "stock", expression: "diameter - drill - drilledOver", unit: units }],
  conclusion: (units: Units, diameter: number, drill: number, material?: Material, drilledOver?: number) => {
    const [minimum, maximum] = stockRange(diameter, material, units);
    return [
      `usual stock: ${minimum} to ${maximum} ${units}`,
      stockCheck(diameter, drill, material, drilledOver, units),
    ];
  },
} satisfies Formula;

/** Minimum and maximum stock per side when the drilled hole lies off the reamer's axis; negative is not cleaned up. */
export function cleanUp(stock: number, offset: number, units: Units = "mm"): [number, number] {
  const [perSide, off] = [ticks.dividedBy(toTicks(stock, units), 2), toTicks(offset, units)];
  return [fromTicks(ticks.minus(perSide, off), units), fromTicks(ticks.plus(perSide, off), units)];
}
cleanUp.formula = {
  source: "derived",
  steps: (units) => [
    { symbol: "minimum", expression: "stock / 2 - offset", unit: units },
    { symbol: "maximum", expression: "stock / 2 + offset", unit: units },
  ],
} satisfies Formula;

/** Depth of the drilled hole at full diameter, and to the drill's point ("" without a drill). */
export function drillDepth(
  reamedDepth: number,
  bevelLead: number,
  chipRoom = 0,
  drill?: number,
  pointAngle = 118,
  units: Units = "mm",
): [number, number | string] {
  const full = [reamedDepth, bevelLead, chipRoom].map((length) => toTicks(length, units)).reduce(ticks.plus);
  if (drill === undefined) return [fromTicks(full, units), ""];
  const point = (drill / 2) * Math.tan(((90 - pointAngle / 2) * Math.PI) / 180);
  return [fromTicks(full, units), fromTicks(ticks.plus(full, toTicks(point, units)), units)];
}
drillDepth.formula = {
  source: "drill-point",
  given: (_depth: number, _lead: number, chipRoom = 0, _drill?: number, pointAngle = 118) => ({
    chipRoom,
    pointAngle,
  }),
  steps: (units, _depth, _lead, _room, drill?: number) => {
    const full = { symbol: "fullDepth", expression: "reamedDepth + bevelLead + chipRoom", unit: units };
    const point = {
      symbol: "toPoint",
      expression: "fullDepth + drill / 2 * tand(90 - pointAngle / 2)",
      unit: units,
    };
    return drill === undefined ? [full] : [full, point];
  },
} satisfies Formula;

function allowanceFor(diameter: number, units: Units) {
  const size = toTicks(diameter, units);
  return stockAllowances[units].find((row) => row.upTo === null || size <= toTicks(row.upTo, units))!;
}

/** Minimum and maximum stock. */
export function stockLimits(diameter: number, material: Material = defaultMaterial, units: Units): Limits {
  const row = allowanceFor(diameter, units);
  const share = stockShares[material.stockFactor];
  return {
    lower: ticks.times(toTicks(row.minimum, units), share.minimum),
    upper: ticks.times(toTicks(row.maximum, units), share.maximum),
  };
}

function middleStock(diameter: number, material: Material | undefined, units: Units): Ticks {
  const { lower, upper } = stockLimits(diameter, material, units);
  return ticks.dividedBy(ticks.plus(lower, upper), 2);
}
