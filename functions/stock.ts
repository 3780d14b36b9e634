// functions: stock allowance and the drill before the reamer. All stock is on diameter.

import * as drills from "../src/calc/stock/drill-name.ts";
import * as stocks from "../src/calc/stock/stock.ts";
import { mapRows, mapToColumns } from "./map-rows.ts";

/**
 * Returns the minimum and maximum stock to leave for the reamer, on diameter.
 *
 * @customfunction STOCKRANGE
 * @param diameter Reamed diameter, mm or in
 * @param [material] Material, a key or name as in MATERIALS(). Default medium-carbon steel.
 * @param [units] "mm" or "in". Default "mm".
 * @returns Minimum and maximum stock on diameter, mm or in
 * @row minimum stock [mm|in], maximum stock [mm|in]
 * @remarks The range counts on the drill's nominal diameter, as shop tables do. In soft and tough materials the maximum is half as much again. In hardened steel both are half.
 * @example =REAM.STOCKRANGE(10) // 0.2, 0.3
 * @example =REAM.STOCKRANGE(10, "6061") // 0.2, 0.45
 * @example =REAM.STOCKRANGE(0.5, , "in") // 0.008, 0.016
 * @see sources: stock-practice, stock-metric
 *
 */
export function stockRange(diameter: any[][], material?: any[][], units?: any[][]): any[][] {
  return mapToColumns(2, stocks.stockRange, { diameter }, { material, units });
}

/**
 * Returns the usual stock to leave for the reamer, on diameter: the middle of STOCKRANGE.
 *
 * @customfunction STOCK
 * @param diameter Reamed diameter, mm or in
 * @param [material] Material, a key or name as in MATERIALS(). Default medium-carbon steel.
 * @param [units] "mm" or "in". Default "mm".
 * @returns Stock on diameter, mm or in
 * @cell stock [mm|in]
 * @remarks It counts on the drill's nominal diameter, as shop tables do.
 * @example =REAM.STOCK(10) // 0.25
 * @example =REAM.STOCK(0.5, , "in") // 0.012
 * @see sources: stock-practice, stock-metric
 *
 */
export function stock(diameter: any[][], material?: any[][], units?: any[][]): any[][] {
  return mapRows(stocks.stock, { diameter }, { material, units });
}

/**
 * Returns the drill diameter that leaves the middle of STOCKRANGE for the reamer.
 *
 * @customfunction PREDRILL
 * @param diameter Reamed diameter, mm or in
 * @param [material] Material, a key or name as in MATERIALS(). Default medium-carbon steel.
 * @param [drilledOver] Drill oversize: how much larger than itself the drill cuts, mm or in. Default 0.
 * @param [units] "mm" or "in". Default "mm".
 * @returns Drill diameter, mm or in
 * @cell drill diameter [mm|in]
 * @remarks This is a calculated diameter. DRILLFOR returns the standard drill to use.
 * @example =REAM.PREDRILL(12) // 11.75
 * @example =REAM.PREDRILL(0.5, , , "in") // 0.488
 * @see sources: pre-ream-drill, stock-practice, stock-metric
 *
 */
export function preDrill(
  diameter: any[][],
  material?: any[][],
  drilledOver?: any[][],
  units?: any[][],
): any[][] {
  return mapRows(stocks.preReamDrill, { diameter }, { material, drilledOver, units });
}

/**
 * Returns the standard drill to use before the reamer, with the stock it leaves.
 *
 * @customfunction DRILLFOR
 * @param diameter Reamed diameter, mm or in
 * @param [material] Material, a key or name as in MATERIALS(). Default medium-carbon steel.
 * @param [series] "metric", "fraction", "number", "letter", or "inch" (the last three together). Default "metric" in mm, "inch" in inches.
 * @param [units] "mm" or "in". Default "mm".
 * @returns Drill name such as 11.8 or 31/64, its diameter, and the stock left on diameter, mm or in
 * @row drill, drill diameter [mm|in], stock [mm|in]
 * @remarks The drill whose stock is nearest the middle of STOCKRANGE. Of two as near, the larger drill.
 * @example =REAM.DRILLFOR(12) // "11.8", 11.8, 0.2
 * @example =REAM.DRILLFOR(0.5, , , "in") // "31/64", 0.484375, 0.015625
 * @see sources: stock-practice, stock-metric, drill-sizes, taper-shank-drills
 *
 */
export function drillFor(diameter: any[][], material?: any[][], series?: any[][], units?: any[][]): any[][] {
  return mapToColumns(3, drills.drillFor, { diameter }, { material, series, units });
}

/**
 * Returns the name and diameter of the largest standard drill up to a diameter.
 *
 * @customfunction DRILLNAME
 * @param diameter Largest diameter allowed, mm or in
 * @param [series] "metric", "fraction", "number", "letter", or "inch" (the last three together). Default "metric" in mm, "inch" in inches.
 * @param [units] "mm" or "in". Default "mm".
 * @returns Drill name such as 11.7, 31/64, #69, E, or 1-7/32, and its diameter, mm or in
 * @row drill, drill diameter [mm|in]
 * @remarks For the drill before a reamer use DRILLFOR: the largest drill under a calculated diameter may leave too much stock.
 * @example =REAM.DRILLNAME(11.73) // "11.7", 11.7
 * @example =REAM.DRILLNAME(0.49, , "in") // "31/64", 0.484375
 * @see sources: drill-sizes, taper-shank-drills
 *
 */
export function drillName(diameter: any[][], series?: any[][], units?: any[][]): any[][] {
  return mapToColumns(2, drills.drillName, { diameter }, { series, units });
}

/**
 * Checks the stock a drill leaves for the reamer.
 *
 * @customfunction STOCKCHECK
 * @param diameter Reamed diameter, mm or in
 * @param drill Drill, a diameter, mm or in, or an inch drill's name such as "31/64", "#15", or "E"
 * @param [material] Material, a key or name as in MATERIALS(). Default medium-carbon steel.
 * @param [drilledOver] Drill oversize: how much larger than itself the drill cuts, mm or in. Default 0.
 * @param [units] "mm" or "in". Default "mm".
 * @returns "ok", or "too little" or "too much" with the stock left and the limit, mm or in
 * @cell stock check
 * @remarks STOCKRANGE counts on the drill's nominal diameter. Enter a drill oversize only to see what the reamer meets.
 * @example =REAM.STOCKCHECK(12, 11.8) // "ok"
 * @example =REAM.STOCKCHECK(12, 11.9) // "too little: 0.1 left, at least 0.2"
 * @example =REAM.STOCKCHECK(0.5, "31/64", , , "in") // "ok"
 * @see sources: stock-practice, stock-metric
 *
 */
export function stockCheck(
  diameter: any[][],
  drill: any[][],
  material?: any[][],
  drilledOver?: any[][],
  units?: any[][],
): any[][] {
  return mapRows(stocks.stockCheck, { diameter, drill }, { material, drilledOver, units });
}

/**
 * Returns the minimum and maximum stock per side where the drilled hole is off-center.
 *
 * @customfunction CLEANUP
 * @param stock Stock on diameter, mm or in
 * @param offset Distance between the axes of the drilled hole and the reamer, mm or in
 * @param [units] "mm" or "in". Default "mm".
 * @returns Minimum and maximum stock per side, mm or in. A negative minimum is a side that does not clean up.
 * @row minimum per side [mm|in], maximum per side [mm|in]
 * @remarks A reamer follows the drilled hole. It does not correct its position.
 * @example =REAM.CLEANUP(0.25, 0.05) // 0.075, 0.175
 * @see sources: derived
 *
 */
export function cleanUp(stock: any[][], offset: any[][], units?: any[][]): any[][] {
  return mapToColumns(2, stocks.cleanUp, { stock, offset }, { units });
}

/**
 * Returns how deep to drill for a blind reamed hole.
 *
 * @customfunction DRILLDEPTH
 * @param reamedDepth Depth reamed to size, mm or in
 * @param bevelLead Length of the reamer's chamfer (bevel lead), mm or in
 * @param [chipRoom] Room for chips below the reamer, mm or in. Default 0.
 * @param [drill] Drill, a diameter, mm or in, or an inch drill's name. Without it the second depth stays empty.
 * @param [pointAngle] Point angle of the drill, degrees. Default 118.
 * @param [units] "mm" or "in". Default "mm".
 * @returns Drill depth at full diameter, and to the point, mm or in
 * @row depth at full diameter [mm|in], depth to the point [mm|in]
 * @example =REAM.DRILLDEPTH(30, 2, 3, 11.7) // 35, 38.515035
 * @see sources: drill-point
 *
 */
export function drillDepth(
  reamedDepth: any[][],
  bevelLead: any[][],
  chipRoom?: any[][],
  drill?: any[][],
  pointAngle?: any[][],
  units?: any[][],
): any[][] {
  return mapToColumns(
    2,
    stocks.drillDepth,
    { reamedDepth, bevelLead },
    { chipRoom, drill, pointAngle, units },
  );
}
