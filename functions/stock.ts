// functions: stock allowance and the drill before the reamer. All stock is on diameter.

import { drillName as standardDrill } from "../src/calc/stock/drill-name.ts";
import {
  stockCheck as checkStock,
  drillDepth as depthsOfDrill,
  stock as middleStock,
  preReamDrill,
  stockRange as rangeOfStock,
  cleanUp as stockPerSide,
} from "../src/calc/stock/stock.ts";
import { mapRows, mapToColumns } from "./map-rows.ts";

/**
 * Gives the least and greatest stock, on diameter, to leave for the reamer.
 *
 * @customfunction STOCKRANGE
 * @param diameter Reamed diameter, mm or in
 * @param [material] Material key or name as in MATERIALS(), no unit; medium-carbon steel if omitted
 * @param [tool] "HSS" or "carbide", no unit; HSS if omitted (the table is the same for both)
 * @param [units] "mm" or "in"; "mm" if omitted
 * @returns Least and greatest stock on diameter, mm or in
 * @row least stock, greatest stock
 * @remarks Half as much again in aluminum, cast aluminum, magnesium, copper, plastic, austenitic stainless, titanium and nickel alloy (common practice).
 * @example =REAM.STOCKRANGE(10) // 0.2, 0.3
 * @example =REAM.STOCKRANGE(10, "6061") // 0.3, 0.45
 * @see sources: stock
 */
export function stockRange(diameter: any[][], material?: any[][], tool?: any[][], units?: any[][]): any[][] {
  return mapToColumns(2, rangeOfStock, { diameter }, { material, tool, units });
}

/**
 * Gives the stock, on diameter, to leave for the reamer: the middle of the usual range.
 *
 * @customfunction STOCK
 * @param diameter Reamed diameter, mm or in
 * @param [material] Material key or name as in MATERIALS(), no unit; medium-carbon steel if omitted
 * @param [tool] "HSS" or "carbide", no unit; HSS if omitted (the table is the same for both)
 * @param [units] "mm" or "in"; "mm" if omitted
 * @returns Stock on diameter, mm or in
 * @example =REAM.STOCK(10) // 0.25
 * @see sources: stock
 */
export function stock(diameter: any[][], material?: any[][], tool?: any[][], units?: any[][]): any[][] {
  return mapRows(middleStock, { diameter }, { material, tool, units });
}

/**
 * Gives the diameter of the drill before the reamer: reamed size less stock less what the drill cuts over.
 *
 * @customfunction PREDRILL
 * @param diameter Reamed diameter, mm or in
 * @param [material] Material key or name as in MATERIALS(), no unit; medium-carbon steel if omitted
 * @param [tool] "HSS" or "carbide", no unit; HSS if omitted (the table is the same for both)
 * @param [drilledOver] How much larger than itself the drill cuts, mm or in; 0.05 mm or 0.002 in if omitted
 * @param [units] "mm" or "in"; "mm" if omitted
 * @returns Diameter of the drill, mm or in; DRILLNAME gives the standard drill at or under it
 * @example =REAM.PREDRILL(12) // 11.7
 * @see sources: pre-ream-drill, stock
 */
export function preDrill(
  diameter: any[][],
  material?: any[][],
  tool?: any[][],
  drilledOver?: any[][],
  units?: any[][],
): any[][] {
  return mapRows(preReamDrill, { diameter }, { material, tool, drilledOver, units });
}

/**
 * Gives the largest standard drill at or under a diameter: its name and its diameter.
 *
 * @customfunction DRILLNAME
 * @param diameter Greatest diameter of the drill, mm or in
 * @param [series] "metric", "fraction", "number", "letter" or "inch" (those three together), no unit; metric or inch by units if omitted
 * @param [units] "mm" or "in"; "mm" if omitted
 * @returns Name of the drill such as 11.7, 31/64, #69 or E, and its diameter, mm or in
 * @row name, diameter
 * @example =REAM.DRILLNAME(11.73) // "11.7", 11.7
 * @example =REAM.DRILLNAME(0.49, , "in") // "31/64", 0.484375
 * @see sources: drill-sizes
 */
export function drillName(diameter: any[][], series?: any[][], units?: any[][]): any[][] {
  return mapToColumns(2, standardDrill, { diameter }, { series, units });
}

/**
 * Tells whether a drill leaves the reamer the right stock: ok, or what is wrong.
 *
 * @customfunction STOCKCHECK
 * @param diameter Reamed diameter, mm or in
 * @param drill Diameter of the drill, mm or in
 * @param [material] Material key or name as in MATERIALS(), no unit; medium-carbon steel if omitted
 * @param [tool] "HSS" or "carbide", no unit; HSS if omitted (the table is the same for both)
 * @param [drilledOver] How much larger than itself the drill cuts, mm or in; 0.05 mm or 0.002 in if omitted
 * @param [units] "mm" or "in"; "mm" if omitted
 * @returns ok, or too little or too much with the stock left and the limit, mm or in
 * @example =REAM.STOCKCHECK(12, 11.7) // "ok"
 * @example =REAM.STOCKCHECK(12, 11.9) // "too little: 0.05 left, at least 0.2"
 * @see sources: stock, pre-ream-drill
 */
export function stockCheck(
  diameter: any[][],
  drill: any[][],
  material?: any[][],
  tool?: any[][],
  drilledOver?: any[][],
  units?: any[][],
): any[][] {
  return mapRows(checkStock, { diameter, drill }, { material, tool, drilledOver, units });
}

/**
 * Gives the least and greatest stock per side when the drilled hole lies off the reamer's axis.
 *
 * @customfunction CLEANUP
 * @param stock Stock on diameter, mm or in
 * @param offset Distance of the drilled hole's axis from the reamer's, mm or in
 * @param [units] "mm" or "in"; "mm" if omitted
 * @returns Least and greatest stock per side, mm or in; a negative least is a side not cleaned up
 * @row least per side, greatest per side
 * @remarks A reamer follows the drilled hole: it does not correct its position.
 * @example =REAM.CLEANUP(0.25, 0.05) // 0.075, 0.175
 * @see sources: derived
 */
export function cleanUp(stock: any[][], offset: any[][], units?: any[][]): any[][] {
  return mapToColumns(2, stockPerSide, { stock, offset }, { units });
}

/**
 * Gives how deep to drill for a blind reamed hole: at full diameter, and to the drill's point.
 *
 * @customfunction DRILLDEPTH
 * @param reamedDepth Depth that must be reamed to size, mm or in
 * @param bevelLead Length of the reamer's bevel lead, mm or in
 * @param [chipRoom] Room for chips under the reamer, mm or in; 0 if omitted
 * @param [drill] Diameter of the drill, mm or in; without it only the first depth is given
 * @param [pointAngle] Point angle of the drill, degrees; 118 if omitted
 * @param [units] "mm" or "in"; "mm" if omitted
 * @returns Drill depth at full diameter and to the point, mm or in
 * @row depth at full diameter, depth to the point
 * @example =REAM.DRILLDEPTH(30, 2, 3, 11.7) // 35, 38.515035
 * @see sources: drill-point
 */
export function drillDepth(
  reamedDepth: any[][],
  bevelLead: any[][],
  chipRoom?: any[][],
  drill?: any[][],
  pointAngle?: any[][],
  units?: any[][],
): any[][] {
  return mapToColumns(2, depthsOfDrill, { reamedDepth, bevelLead }, { chipRoom, drill, pointAngle, units });
}
