// calc: stock allowance, on diameter throughout, and the drill before the reamer. Lengths in mm or in.

import type { Material } from "../../data/materials/materials.ts";
import { stockAllowances } from "../../data/stock-allowances.ts";
import type { Formula } from "../formula.ts";
import { fromTicks, lengthText, toTicks, type Units } from "../lengths.ts";
import { findMaterial } from "../materials.ts";
import { wrong } from "../problem.ts";
import type { Tool } from "../tools.ts";

const defaultMaterial = findMaterial();

/** Common practice, no source: how much a drill cuts over its own diameter. */
const DRILLED_OVER = { mm: 0.05, in: 0.002 } as const;

/** Least and greatest stock on diameter. The tool makes no difference in the table. */
export function stockRange(
  diameter: number,
  material: Material = defaultMaterial,
  _tool: Tool = "HSS",
  units: Units = "mm",
): [number, number] {
  const { least, greatest } = stockTicks(diameter, material, units);
  return [fromTicks(least, units), fromTicks(greatest, units)];
}
stockRange.formula = {
  source: "stock",
  given: (diameter: number, material: Material = defaultMaterial, _tool?: Tool, units: Units = "mm") => {
    const row = allowanceFor(diameter, units);
    return { tableLeast: row.least, tableGreatest: row.greatest, stockFactor: material.stockFactor };
  },
  steps: (units) => [
    { symbol: "least", expression: "tableLeast * stockFactor", unit: units },
    { symbol: "greatest", expression: "tableGreatest * stockFactor", unit: units },
  ],
} satisfies Formula;

/** The middle of the stock range. */
export function stock(diameter: number, material?: Material, _tool?: Tool, units: Units = "mm"): number {
  return fromTicks(middleStock(diameter, material, units), units);
}
stock.formula = {
  ...stockRange.formula,
  steps: (units) => [
    { symbol: "stock", expression: "(tableLeast + tableGreatest) / 2 * stockFactor", unit: units },
  ],
} satisfies Formula;

/** Diameter of the drill before the reamer: reamed size − stock − what the drill cuts over. */
export function preReamDrill(
  diameter: number,
  material?: Material,
  _tool?: Tool,
  drilledOver?: number,
  units: Units = "mm",
): number {
  const over = toTicks(drilledOver ?? DRILLED_OVER[units], units);
  const drill = toTicks(diameter, units) - middleStock(diameter, material, units) - over;
  if (drill <= 0) wrong(`diameter ${diameter} is too small: stock and drilledOver leave no drill`);
  return fromTicks(drill, units);
}
preReamDrill.formula = {
  source: "pre-ream-drill",
  given: (diameter: number, material?: Material, tool?: Tool, drilledOver?: number, units: Units = "mm") => ({
    stock: stock(diameter, material, tool, units),
    drilledOver: drilledOver ?? DRILLED_OVER[units],
  }),
  steps: (units) => [{ symbol: "drill", expression: "diameter - stock - drilledOver", unit: units }],
} satisfies Formula;

/** `ok`, or what is wrong with the stock that a drill leaves. */
export function stockCheck(
  diameter: number,
  drill: number,
  material: Material = defaultMaterial,
  _tool?: Tool,
  drilledOver?: number,
  units: Units = "mm",
): string {
  const [reamed, drilled] = [toTicks(diameter, units), toTicks(drill, units)];
  if (drilled >= reamed) wrong(`drill ${drill} is not smaller than the reamer, ${diameter}`);
  const left = reamed - drilled - toTicks(drilledOver ?? DRILLED_OVER[units], units);
  const { least, greatest } = stockTicks(diameter, material, units);
  const says = (ticks: number) => lengthText(ticks, units);
  if (left < least) return `too little: ${says(left)} left, at least ${says(least)}`;
  return left > greatest ? `too much: ${says(left)} left, at most ${says(greatest)}` : "ok";
}

/** Least and greatest stock per side when the drilled hole lies off the reamer's axis; negative is not cleaned up. */
export function cleanUp(stock: number, offset: number, units: Units = "mm"): [number, number] {
  const [perSide, off] = [toTicks(stock, units) / 2, toTicks(offset, units)];
  return [fromTicks(perSide - off, units), fromTicks(perSide + off, units)];
}
cleanUp.formula = {
  source: "derived",
  steps: (units) => [
    { symbol: "least", expression: "stock / 2 - offset", unit: units },
    { symbol: "greatest", expression: "stock / 2 + offset", unit: units },
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
  const full = toTicks(reamedDepth, units) + toTicks(bevelLead, units) + toTicks(chipRoom, units);
  if (drill === undefined) return [fromTicks(full, units), ""];
  const point = (drill / 2) * Math.tan(((90 - pointAngle / 2) * Math.PI) / 180);
  return [fromTicks(full, units), fromTicks(full + toTicks(point, units), units)];
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
  const ticks = toTicks(diameter, units);
  return stockAllowances[units].find((row) => row.upTo === null || ticks <= toTicks(row.upTo, units))!;
}

function stockTicks(diameter: number, material: Material, units: Units): { least: number; greatest: number } {
  const row = allowanceFor(diameter, units);
  return {
    least: toTicks(row.least, units) * material.stockFactor,
    greatest: toTicks(row.greatest, units) * material.stockFactor,
  };
}

function middleStock(diameter: number, material: Material = defaultMaterial, units: Units): number {
  const { least, greatest } = stockTicks(diameter, material, units);
  return (least + greatest) / 2;
}
