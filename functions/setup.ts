// functions: setting up: run-out, chips, the shop's own tool list.

import { chipPath as adviceOn, toolFor as entryFor } from "../src/calc/setup/choosing.ts";
import {
  runoutCheck as checkRunout,
  runout as runoutOf,
  runoutAt as runoutOnLine,
} from "../src/calc/setup/runout.ts";
import { list, mapRows, mapToColumns } from "./map-rows.ts";

/**
 * Gives the run-out of a tool from four readings, where its high side is, and how far to move it.
 *
 * @customfunction RUNOUT
 * @param at0 Reading at mark 0, mm or in; plus is toward the plunger
 * @param at90 Reading at mark 90, mm or in
 * @param at180 Reading at mark 180, mm or in
 * @param at270 Reading at mark 270, mm or in
 * @param [units] "mm" or "in"; "mm" if omitted
 * @returns Run-out (mm or in), angle of the high side (degrees, on the marks), and how far to move the tool toward the low side (mm or in)
 * @row run-out, high side, move
 * @remarks Number the marks on the tool, a quarter turn apart, in the order in which they pass the indicator. The run-out is that of the circle that fits the readings, not the greatest less the least. Readings that no round surface can give are refused. Turn the spindle by hand, machine locked out as its manual and local codes ask.
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
  return mapToColumns(3, runoutOf, { at0, at90, at180, at270 }, { units });
}

/**
 * Gives the run-out at another distance from the nose of the spindle, from two readings in one plane.
 *
 * @customfunction RUNOUTAT
 * @param reading1 Run-out at the first distance, mm or in
 * @param distance1 First distance from the nose, mm or in
 * @param reading2 Run-out at the second distance, mm or in, the high side in the same plane; negative if it is opposite
 * @param distance2 Second distance from the nose, mm or in
 * @param distance Distance at which the run-out is wanted, such as the tip, mm or in
 * @returns Run-out at that distance, mm or in, as the readings are
 * @remarks Every argument in one unit.
 * @example =REAM.RUNOUTAT(0.004, 50, 0.01, 150, 200) // 0.013
 * @see sources: derived
 */
export function runoutAt(
  reading1: any[][],
  distance1: any[][],
  reading2: any[][],
  distance2: any[][],
  distance: any[][],
): any[][] {
  return mapRows(runoutOnLine, { reading1, distance1, reading2, distance2, distance });
}

/**
 * Tells whether a run-out is within its limit: ok, or by how much it is over.
 *
 * @customfunction RUNOUTCHECK
 * @param runout Run-out of the tool in the spindle, mm or in
 * @param [limit] Greatest run-out, mm or in; 0.005 mm or 0.0002 in if omitted (common practice)
 * @param [units] "mm" or "in"; "mm" if omitted
 * @returns ok, or over by so much, mm or in
 * @example =REAM.RUNOUTCHECK(0.008) // "over by 0.003"
 * @example =REAM.RUNOUTCHECK(0.0002, , "in") // "ok"
 * @see sources: runout-limit
 */
export function runoutCheck(runout: any[][], limit?: any[][], units?: any[][]): any[][] {
  return mapRows(checkRunout, { runout }, { limit, units });
}

/**
 * Advises which flutes and which way of the coolant take the chips out of a hole.
 *
 * @customfunction CHIPPATH
 * @param holeKind "through" or "blind"; TRUE for through and FALSE for blind, as CALLOUT returns it
 * @param [blocked] TRUE if the way out of a through hole is blocked, no unit; FALSE if omitted
 * @param [interrupted] TRUE if a keyway or a cross hole breaks the wall, no unit; FALSE if omitted
 * @returns Advice in words (common practice, no source)
 * @remarks A through hole whose way out is blocked is treated as a blind one. Pressure and mist of the coolant are for the machine's manual and local codes to limit.
 * @example =REAM.CHIPPATH("through") // "flush forward: left-hand helix (right-hand cut), or straight flutes in short-chipping material"
 * @example =REAM.CHIPPATH("blind") // "flush from the centre and back along the flutes: right-hand helix or straight flutes with coolant through, never left-hand helix"
 * @see sources: chip-path
 */
export function chipPath(holeKind: any[][], blocked?: any[][], interrupted?: any[][]): any[][] {
  return mapRows(adviceOn, { holeKind }, { blocked, interrupted });
}

/**
 * Gives the entry of your own tool list whose range covers a size.
 *
 * @customfunction TOOLFOR
 * @param size Size to cover, mm or in, in the unit of the list
 * @param over Lower ends of the ranges, themselves not covered except the lowest, a range, mm or in
 * @param upTo Upper ends of the ranges, covered, a range of the same length, mm or in
 * @param entries What to give for each range: a tool's number, name or price, a range of the same length, no unit
 * @returns The first entry whose range covers the size, a number or a text
 * @example =REAM.TOOLFOR(12, {0;6;12}, {6;12;20}, {"R6";"R12";"R20"}) // "R12"
 * @see sources: derived
 */
export function toolFor(size: any[][], over: any[][], upTo: any[][], entries: any[][]): any[][] {
  return mapRows(entryFor, { size, over: list(over), upTo: list(upTo), entries: list(entries) });
}
