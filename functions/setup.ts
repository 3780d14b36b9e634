// functions: setting up: runout, chips, the shop's own tool list.

import * as choosing from "../src/calc/setup/choosing.ts";
import * as coolantAndBending from "../src/calc/setup/coolant-and-bending.ts";
import * as runouts from "../src/calc/setup/runout.ts";
import { list, mapRows, mapToColumns } from "./map-rows.ts";

/**
 * Returns the runout of a tool from four readings, and how to correct it.
 *
 * @customfunction RUNOUT
 * @param at0 Reading at mark 0, mm or in. Plus is toward the plunger.
 * @param at90 Reading at mark 90, mm or in
 * @param at180 Reading at mark 180, mm or in
 * @param at270 Reading at mark 270, mm or in
 * @param [units] "mm" or "in". Default "mm".
 * @returns Runout (mm or in), angle of the high side (degrees, on the marks), and how far to move the tool toward the low side (mm or in)
 * @row runout [mm|in], high side [°], move [mm|in]
 * @remarks Number the marks on the tool, a quarter turn apart, in the order in which they pass the indicator. The runout is that of the circle that fits the readings, not maximum less minimum. Turn the spindle by hand, with the machine locked out as its manual and local codes require.
 * @example =REAM.RUNOUT(0, 0.003, 0.008, 0.005) // 0.0082462, 194.036, 0.0041231
 * @see sources: runout
 */
export function runout(
  at0: any[][],
  at90: any[][],
  at180: any[][],
  at270: any[][],
  units?: any[][],
): any[][] {
  return mapToColumns(3, runouts.runout, { at0, at90, at180, at270 }, { units });
}

/**
 * Returns the runout at another distance from the spindle nose.
 *
 * @customfunction RUNOUTAT
 * @param reading1 Runout at the first distance, mm or in
 * @param distance1 First distance from the nose, mm or in
 * @param reading2 Runout at the second distance, mm or in. Without angles it is negative if the high side is opposite.
 * @param distance2 Second distance from the nose, mm or in
 * @param distance Distance at which the runout is wanted, such as the tip, mm or in
 * @param [angle1] Angle of the high side at the first distance (RUNOUT), degrees. Default both readings in one plane.
 * @param [angle2] Angle of the high side at the second distance, degrees. Default both readings in one plane.
 * @returns Runout at that distance, mm or in, as the readings are
 * @cell runout [mm|in]
 * @remarks Every length in one unit. With the angles the two readings are taken as vectors.
 * @example =REAM.RUNOUTAT(0.004, 50, 0.01, 150, 200) // 0.013
 * @example =REAM.RUNOUTAT(0.004, 20, 0.004, 120, 160, 0, 90) // 0.0058241
 * @see sources: derived
 */
export function runoutAt(
  reading1: any[][],
  distance1: any[][],
  reading2: any[][],
  distance2: any[][],
  distance: any[][],
  angle1?: any[][],
  angle2?: any[][],
): any[][] {
  return mapRows(
    runouts.runoutAt,
    { reading1, distance1, reading2, distance2, distance },
    { angle1, angle2 },
  );
}

/**
 * Returns how far each of four adjusting screws pushes the tool.
 *
 * @customfunction SCREWMOVES
 * @param at0 Reading at mark 0, mm or in. Plus is toward the plunger.
 * @param at90 Reading at mark 90, mm or in
 * @param at180 Reading at mark 180, mm or in
 * @param at270 Reading at mark 270, mm or in
 * @param [units] "mm" or "in". Default "mm".
 * @returns Move of the screws at 0°, 90°, 180°, and 270°, mm or in. Only the screws on the high side move.
 * @row screw at 0° [mm|in], screw at 90° [mm|in], screw at 180° [mm|in], screw at 270° [mm|in]
 * @remarks Back off the screw opposite first. Tighten to the torque of the shop's own table and read again. Turn the spindle by hand, with the machine locked out as its manual and local codes require.
 * @example =REAM.SCREWMOVES(0, 0.003, 0.008, 0.005) // 0, 0, 0.004, 0.001
 * @see sources: runout
 */
export function screwMoves(
  at0: any[][],
  at90: any[][],
  at180: any[][],
  at270: any[][],
  units?: any[][],
): any[][] {
  return mapToColumns(4, runouts.screwMoves, { at0, at90, at180, at270 }, { units });
}

/**
 * Checks a runout against its limit.
 *
 * @customfunction RUNOUTCHECK
 * @param runout Runout of the tool in the spindle, mm or in
 * @param [limit] Maximum runout, mm or in. Default 0.005 mm or 0.0002 in (common practice).
 * @param [units] "mm" or "in". Default "mm".
 * @returns "ok", or "over by" and the amount, mm or in
 * @cell runout check
 * @example =REAM.RUNOUTCHECK(0.008) // "over by 0.003"
 * @example =REAM.RUNOUTCHECK(0.0002, , "in") // "ok"
 * @see sources: runout-limit
 */
export function runoutCheck(runout: any[][], limit?: any[][], units?: any[][]): any[][] {
  return mapRows(runouts.runoutCheck, { runout }, { limit, units });
}

/**
 * Returns advice on flutes and coolant for getting the chips out of a hole.
 *
 * @customfunction CHIPPATH
 * @param holeKind "through" or "blind", TRUE or FALSE, "THRU", or what CALLOUT returns for "through"
 * @param [blocked] TRUE if chips cannot leave a through hole ahead. Default FALSE.
 * @param [interrupted] TRUE if a keyway or cross hole breaks the wall. Default FALSE.
 * @returns Advice in words (common practice)
 * @cell chip path
 * @remarks A through hole that is blocked ahead is treated as a blind one. The machine's manual and local codes limit pressure and mist of the coolant.
 * @example =REAM.CHIPPATH("through") // "flush forward: left-hand helix (right-hand cut), or straight flutes in short-chipping material"
 * @example =REAM.CHIPPATH("blind") // "flush from the center and back along the flutes: right-hand helix or straight flutes with coolant through, never left-hand helix"
 * @see sources: chip-path
 */
export function chipPath(holeKind: any[][], blocked?: any[][], interrupted?: any[][]): any[][] {
  return mapRows(choosing.chipPath, { holeKind }, { blocked, interrupted });
}

/**
 * Looks up the entry of your own tool list whose range covers a size.
 *
 * @customfunction TOOLFOR
 * @param size Size to cover, mm or in, in the unit of the list
 * @param over Lower ends of the ranges, not covered except the lowest, a range, mm or in
 * @param upTo Upper ends of the ranges, covered, a range of the same length, mm or in
 * @param entries What to return for each range: a tool's number, name, or price, a range of the same length
 * @list over, upTo, entries
 * @returns The first entry whose range covers the size, a number or text
 * @cell entry
 * @example =REAM.TOOLFOR(12, {0;6;12}, {6;12;20}, {"R6";"R12";"R20"}) // "R12"
 * @see sources: derived
 */
export function toolFor(size: any[][], over: any[][], upTo: any[][], entries: any[][]): any[][] {
  return mapRows(choosing.toolFor, { size, over: list(over), upTo: list(upTo), entries: list(entries) });
}

/**
 * Calculates the coolant flow through the bores of a tool.
 *
 * @customfunction COOLANTFLOW
 * @param bore Diameter of a coolant bore, mm or in
 * @param pressure Coolant pressure, bar or psi
 * @param [bores] Number of bores. Default 1.
 * @param [coefficient] Discharge coefficient, a number over 0, up to 1. Default 0.7.
 * @param [units] "mm" or "in". Default "mm".
 * @returns Flow, L/min or US gpm
 * @cell coolant flow [L/min|US gpm]
 * @remarks Water at 1000 kg/m³. The machine's manual limits pressure and flow. Keep the guard closed: a jet at pressure cuts skin.
 * @example =REAM.COOLANTFLOW(1.5, 40) // 6.63845
 * @example =REAM.COOLANTFLOW(0.06, 580, , , "in") // 1.810025
 * @see sources: coolant-flow, coolant-flow-practice
 */
export function coolantFlow(
  bore: any[][],
  pressure: any[][],
  bores?: any[][],
  coefficient?: any[][],
  units?: any[][],
): any[][] {
  return mapRows(coolantAndBending.coolantFlow, { bore, pressure }, { bores, coefficient, units });
}

/**
 * Calculates how far a projecting tool bends under a side force.
 *
 * @customfunction DEFLECTION
 * @param force Side force at the free end, N or lbf
 * @param length Projection, mm or in
 * @param diameter Diameter of the tool, mm or in
 * @param [toolMaterial] "steel" or "carbide". Default "steel".
 * @param [units] "mm" or "in". Default "mm".
 * @returns Bending at the free end, mm or in
 * @cell deflection [mm|in]
 * @remarks A round bar held rigidly. Flutes, a neck, and the holder make it bend more.
 * @example =REAM.DEFLECTION(10, 80, 12) // 0.007984257
 * @see sources: deflection, elastic-modulus
 */
export function deflection(
  force: any[][],
  length: any[][],
  diameter: any[][],
  toolMaterial?: any[][],
  units?: any[][],
): any[][] {
  return mapRows(coolantAndBending.deflection, { force, length, diameter }, { toolMaterial, units });
}
