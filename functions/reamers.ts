// functions: the reamer for the hole.

import * as reamerWindows from "../src/calc/reamers/reamer-limits.ts";
import * as sharing from "../src/calc/reamers/shared-reamers.ts";
import * as steppedSeries from "../src/calc/reamers/stepped-series.ts";
import { list, mapRows, mapToColumns, spill } from "./map-rows.ts";

/**
 * Returns the minimum and maximum diameter of a new reamer for a hole.
 *
 * @customfunction REAMERLIMITS
 * @param callout Callout of the hole as on the drawing, in mm or in
 * @param [cutsOver] Cutting oversize: how much larger than itself the reamer cuts, mm or in, from your own trials. Negative if the hole closes in. Default 0.
 * @param [units] "mm" or "in". Default "mm".
 * @returns Minimum and maximum diameter of a new reamer, mm or in
 * @row minimum diameter [mm|in], maximum diameter [mm|in]
 * @remarks The top 15 % of the tolerance is the oversize allowance, the next 35 % the reamer's tolerance. Each share is rounded up to 0.001 mm (0.00005 in). The wear allowance lies below.
 * @example =REAM.REAMERLIMITS("20 H7") // 20.009, 20.017
 * @example =REAM.REAMERLIMITS(".5000 +.0005/-.0000", , "in") // 0.5002, 0.5004
 * @see sources: reamer-limits, reamer-rounding
 *
 */
export function reamerLimits(callout: any[][], cutsOver?: any[][], units?: any[][]): any[][] {
  return mapToColumns(2, reamerWindows.reamerLimits, { callout }, { cutsOver, units });
}

/**
 * Returns the stepped-series reamer size to order for a hole.
 *
 * @customfunction REAMERSIZE
 * @param callout Callout of the hole as on the drawing, in mm or in
 * @param [cutsOver] Cutting oversize: how much larger than itself the reamer cuts, mm or in, from your own trials. Default 0.
 * @param [step] Step of the series, mm or in. Default the coarsest of 0.01, 0.005, 0.001 mm (0.0005, 0.0001 in) that has a size.
 * @param [units] "mm" or "in". Default "mm".
 * @returns Nominal diameter of the reamer, mm or in
 * @cell reamer size [mm|in]
 * @remarks The largest size whose own band lies in the window of REAMERLIMITS. The band is +0.004 mm to 5.5 mm, +0.005 mm above, or +0.0002 in. A coarser step gives away wear: up to 2 µm in H7, 9 µm in H9. The 15 % above the window is the oversize allowance, for a hole larger than the reamer. The wear allowance lies below the window.
 * @example =REAM.REAMERSIZE("10 H7") // 10.007
 * @example =REAM.REAMERSIZE(".5000 +.0005/-.0000", , , "in") // 0.5002
 * @see sources: reamer-limits, reamer-rounding, reamer-nominal-band
 *
 */
export function reamerSize(callout: any[][], cutsOver?: any[][], step?: any[][], units?: any[][]): any[][] {
  return mapRows(steppedSeries.reamerSize, { callout }, { cutsOver, step, units });
}

/**
 * Returns how much diameter a reamer can still lose before the hole goes undersize.
 *
 * @customfunction WEARALLOWANCE
 * @param callout Callout of the hole as on the drawing, in mm or in
 * @param reamer Measured diameter of the reamer, mm or in
 * @param [cutsOver] Cutting oversize: how much larger than itself the reamer cuts, mm or in, from your own trials. Default 0.
 * @param [units] "mm" or "in". Default "mm".
 * @returns Wear allowance on diameter, mm or in. Negative if the hole is already undersize.
 * @cell wear allowance [mm|in]
 * @example =REAM.WEARALLOWANCE("20 H7", 20.015) // 0.015
 * @see sources: derived
 *
 */
export function wearAllowance(
  callout: any[][],
  reamer: any[][],
  cutsOver?: any[][],
  units?: any[][],
): any[][] {
  return mapRows(reamerWindows.wearAllowance, { callout, reamer }, { cutsOver, units });
}

/**
 * Returns the cutting oversize from trial holes: their mean less the reamer, and their spread.
 *
 * @customfunction CUTSOVER
 * @param measured Measured diameters of the trial holes, a range, mm or in
 * @param reamer Measured diameter of the reamer, mm or in
 * @param [units] "mm" or "in". Default "mm".
 * @list measured
 * @returns Mean cutting oversize, and largest less smallest hole, mm or in
 * @row cutting oversize [mm|in], spread [mm|in]
 * @example =REAM.CUTSOVER({12.014;12.015;12.016}, 12.011) // 0.004, 0.002
 * @see sources: derived
 *
 */
export function cutsOver(measured: any[][], reamer: any[][], units?: any[][]): any[][] {
  return mapToColumns(2, reamerWindows.cuttingOversize, { measured: list(measured), reamer }, { units });
}

/**
 * Returns the limits of a hole before plating or anodizing.
 *
 * @customfunction PREPLATE
 * @param callout Callout of the finished hole as on the drawing, in mm or in
 * @param thickness Thickness of the coating per side, mm or in
 * @param [thicknessTolerance] Plus or minus on the thickness, mm or in. Default 0.
 * @param [buildUp] Share of the thickness that builds up on the wall: 1 for plating, 0.5 for hard anodizing. Default 1.
 * @param [units] "mm" or "in". Default "mm".
 * @returns Minimum and maximum size before coating, mm or in
 * @row minimum before coating [mm|in], maximum before coating [mm|in]
 * @example =REAM.PREPLATE("10 H7", 0.01, 0.002) // 10.024, 10.031
 * @see sources: derived
 *
 */
export function prePlate(
  callout: any[][],
  thickness: any[][],
  thicknessTolerance?: any[][],
  buildUp?: any[][],
  units?: any[][],
): any[][] {
  return mapToColumns(
    2,
    reamerWindows.beforePlating,
    { callout, thickness },
    { thicknessTolerance, buildUp, units },
  );
}

/**
 * Lists the fewest new reamers that serve a family of holes, each with its window and holes.
 *
 * @customfunction SHAREDREAMERS
 * @param callouts Callouts of the holes, a range, in mm or in
 * @param [cutsOver] Cutting oversize: how much larger than itself a reamer cuts, mm or in, from your own trials. Default 0.
 * @param [units] "mm" or "in". Default "mm".
 * @list callouts
 * @returns Rows of minimum and maximum diameter (mm or in), number of holes, and the callouts
 * @remarks Holes share a reamer only if their windows have 0.004 mm (0.00015 in) in common. The whole of the narrowest also counts.
 * @example =REAM.SHAREDREAMERS({"12 H7";"12 H8"}) // 12.008, 12.015, 1, "12 H7"; 12.012, 12.022, 1, "12 H8"
 * @see sources: reamer-limits, reamer-rounding, derived
 *
 */
export function sharedReamers(callouts: any[][], cutsOver?: any[][], units?: any[][]): any[][] {
  return spill(sharing.sharedReamers, { callouts: list(callouts) }, { cutsOver, units });
}
