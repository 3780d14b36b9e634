// functions: the reamer for the hole.

import {
  beforePlating,
  cuttingOversize,
  reamerLimits as newReamer,
  wearAllowance as wearLeft,
} from "../src/calc/reamers/reamer-limits.ts";
import { sharedReamers as fewestReamers } from "../src/calc/reamers/shared-reamers.ts";
import { reamerSize as steppedReamer } from "../src/calc/reamers/stepped-series.ts";
import { list, mapRows, mapToColumns, spill } from "./map-rows.ts";

/**
 * Gives the least and greatest diameter of a new reamer for a hole.
 *
 * @customfunction REAMERLIMITS
 * @param callout Callout of the hole as on the drawing, in mm or in
 * @param [cutsOver] How much larger than itself the reamer cuts, mm or in, from your own trials; negative if the hole closes in; 0 if omitted
 * @param [units] "mm" or "in", for sizes without a unit and for the result; "mm" if omitted
 * @returns Least and greatest diameter of a new reamer, mm or in
 * @row least diameter, greatest diameter
 * @remarks Greatest is the hole's maximum less 15 % of the tolerance, least is 35 % below that; each share is rounded up to 0.001 mm (0.00005 in).
 * @example =REAM.REAMERLIMITS("20 H7") // 20.009, 20.017
 * @see sources: reamer-limits
 */
export function reamerLimits(callout: any[][], cutsOver?: any[][], units?: any[][]): any[][] {
  return mapToColumns(2, newReamer, { callout }, { cutsOver, units });
}

/**
 * Gives the nominal diameter of a reamer from a stepped series that suits a hole: the largest whose own band lies in the window of a new reamer.
 *
 * @customfunction REAMERSIZE
 * @param callout Callout of the hole as on the drawing, in mm or in
 * @param [cutsOver] How much larger than itself the reamer cuts, mm or in, from your own trials; 0 if omitted
 * @param [step] Step of the series, mm or in; 0.01 mm or 0.0005 in if omitted
 * @param [units] "mm" or "in", for sizes without a unit and for the result; "mm" if omitted
 * @returns Nominal diameter of the reamer, mm or in
 * @remarks The band of a stepped reamer is +0.004 mm to 5.5 mm, +0.005 mm above, +0.0002 in: common practice, no source. Where no step fits, the message gives the limits to grind to.
 * @example =REAM.REAMERSIZE("12 H7") // 12.01
 * @example =REAM.REAMERSIZE("10 H7") // #N/A
 * @see sources: reamer-limits, reamer-nominal-band
 */
export function reamerSize(callout: any[][], cutsOver?: any[][], step?: any[][], units?: any[][]): any[][] {
  return mapRows(steppedReamer, { callout }, { cutsOver, step, units });
}

/**
 * Gives how much a reamer's diameter may wear before the hole falls under its minimum.
 *
 * @customfunction WEARALLOWANCE
 * @param callout Callout of the hole as on the drawing, in mm or in
 * @param reamer Measured diameter of the reamer, mm or in
 * @param [cutsOver] How much larger than itself the reamer cuts, mm or in, from your own trials; 0 if omitted
 * @param [units] "mm" or "in", for sizes without a unit and for the result; "mm" if omitted
 * @returns Wear left on the diameter, mm or in; negative if the hole is already under its minimum
 * @example =REAM.WEARALLOWANCE("20 H7", 20.015) // 0.015
 * @see sources: derived
 */
export function wearAllowance(
  callout: any[][],
  reamer: any[][],
  cutsOver?: any[][],
  units?: any[][],
): any[][] {
  return mapRows(wearLeft, { callout, reamer }, { cutsOver, units });
}

/**
 * Gives how much larger than itself a reamer cuts, from trial holes: their mean less the reamer, and their spread.
 *
 * @customfunction CUTSOVER
 * @param measured Measured diameters of the trial holes, a range, mm or in
 * @param reamer Measured diameter of the reamer, mm or in
 * @param [units] "mm" or "in"; "mm" if omitted
 * @returns Mean cutting oversize, and greatest less least hole, mm or in
 * @row cuts over, spread
 * @example =REAM.CUTSOVER({12.014;12.015;12.016}, 12.011) // 0.004, 0.002
 * @see sources: derived
 */
export function cutsOver(measured: any[][], reamer: any[][], units?: any[][]): any[][] {
  return mapToColumns(2, cuttingOversize, { measured: list(measured), reamer }, { units });
}

/**
 * Gives the limits of a hole before plating or anodizing, so that it is in tolerance after.
 *
 * @customfunction PREPLATE
 * @param callout Callout of the finished hole as on the drawing, in mm or in
 * @param thickness Thickness of the coating per side, mm or in
 * @param [thicknessTolerance] Plus or minus on the thickness, mm or in; 0 if omitted
 * @param [buildUp] Share of the thickness that stands on the wall: 1 for plating (if omitted), 0.5 for hard anodizing, no unit
 * @param [units] "mm" or "in", for sizes without a unit and for the result; "mm" if omitted
 * @returns Least and greatest size before coating, mm or in
 * @row least before coating, greatest before coating
 * @example =REAM.PREPLATE("10 H7", 0.01, 0.002) // 10.024, 10.031
 * @see sources: derived
 */
export function prePlate(
  callout: any[][],
  thickness: any[][],
  thicknessTolerance?: any[][],
  buildUp?: any[][],
  units?: any[][],
): any[][] {
  return mapToColumns(2, beforePlating, { callout, thickness }, { thicknessTolerance, buildUp, units });
}

/**
 * Gives the fewest new reamers that serve a family of holes: a line for each, with its window and its holes.
 *
 * @customfunction SHAREDREAMERS
 * @param callouts Callouts of the holes, a range, in mm or in
 * @param [cutsOver] How much larger than itself a reamer cuts, mm or in, from your own trials; 0 if omitted
 * @param [units] "mm" or "in", for sizes without a unit and for the result; "mm" if omitted
 * @returns Lines of least and greatest diameter (mm or in), number of holes, and the callouts
 * @remarks Holes share a reamer only if their windows have 0.004 mm (0.00015 in) in common, or the whole of the narrowest.
 * @example =REAM.SHAREDREAMERS({"12 H7";"12 H8"}) // 12.008, 12.015, 1, "12 H7"; 12.012, 12.022, 1, "12 H8"
 * @see sources: reamer-limits, derived
 */
export function sharedReamers(callouts: any[][], cutsOver?: any[][], units?: any[][]): any[][] {
  return spill(fewestReamers, { callouts: list(callouts) }, { cutsOver, units });
}
