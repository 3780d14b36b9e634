// functions: time per hole, per part, per shift and per year.

import * as time from "../src/calc/cutting/time.ts";
import { mapRows, mapToColumns } from "./map-rows.ts";

/**
 * Returns the time to ream a hole, in and out.
 *
 * @customfunction HOLETIME
 * @param depth Useful depth of the hole, mm or in
 * @param feedRate Feed rate, mm/min or in/min
 * @param [leadIn] Approach in air above the hole, mm or in. Default 0.
 * @param [overrun] Travel past the useful depth (chamfer, break-through), mm or in. Default 0.
 * @param [retractRate] Feed rate of the retract, mm/min or in/min, or "rapid" to leave it out. Default feedRate.
 * @param [units] "mm" or "in". Default "mm".
 * @returns Time per hole, s
 * @cell time per hole [s]
 * @remarks HSS reamers retract at the feed rate, turning forward: a rapid retract may leave a drag line. Carbide, heads, and blades often retract at up to three times the feed. Never reverse the spindle.
 * @example =REAM.HOLETIME(1.225, 4.58366, , , , "in") // 32.0704
 * @example =REAM.HOLETIME(1.225, 4.58366, , , "rapid", "in") // 16.0352
 * @see sources: machining-time
 */
export function holeTime(
  depth: any[][],
  feedRate: any[][],
  leadIn?: any[][],
  overrun?: any[][],
  retractRate?: any[][],
  units?: any[][],
): any[][] {
  return mapRows(time.holeTime, { depth, feedRate }, { leadIn, overrun, retractRate, units });
}

/**
 * Returns the time per part from the time per hole.
 *
 * @customfunction CYCLETIME
 * @param holeTime Time per hole, s
 * @param [holes] Number of holes per part. Default 1.
 * @param [moveTime] Time from hole to hole, s. Default 0.
 * @param [toolChange] Chip-to-chip time per part, s, not the change of a worn edge. Default 0.
 * @param [loadTime] Time to load and unload the part, s. Default 0.
 * @returns Time per part, s
 * @cell time per part [s]
 * @example =REAM.CYCLETIME(6, 4, 2, 5, 20) // 55
 * @see sources: machining-time
 */
export function cycleTime(
  holeTime: any[][],
  holes?: any[][],
  moveTime?: any[][],
  toolChange?: any[][],
  loadTime?: any[][],
): any[][] {
  return mapRows(time.cycleTime, { holeTime }, { holes, moveTime, toolChange, loadTime });
}

/**
 * Returns the whole parts made in a shift.
 *
 * @customfunction PARTSPERSHIFT
 * @param cycleTime Time per part, s
 * @param shiftHours Length of the shift, h
 * @param [uptime] Share of the shift that the machine runs (0.85 is 85 %). Default 1.
 * @returns Whole parts per shift
 * @cell parts per shift
 * @example =REAM.PARTSPERSHIFT(60, 8, 0.85) // 408
 * @see sources: derived
 */
export function partsPerShift(cycleTime: any[][], shiftHours: any[][], uptime?: any[][]): any[][] {
  return mapRows(time.partsPerShift, { cycleTime, shiftHours }, { uptime });
}

/**
 * Returns the machines that a yearly quantity needs.
 *
 * @customfunction MACHINESNEEDED
 * @param partsPerYear Good parts per year
 * @param cycleTime Time per part, s
 * @param hoursPerYear Staffed hours of a machine per year, h
 * @param [uptime] Share of those hours that it runs. Default 1.
 * @param [scrapRate] Share of the parts that is scrap, from 0 to under 1. Default 0.
 * @returns Load in machines, and whole machines
 * @row load [machines], whole machines
 * @example =REAM.MACHINESNEEDED(400000, 60, 3800, 0.8, 0.02) // 2.237737, 3
 * @see sources: derived
 */
export function machinesNeeded(
  partsPerYear: any[][],
  cycleTime: any[][],
  hoursPerYear: any[][],
  uptime?: any[][],
  scrapRate?: any[][],
): any[][] {
  return mapToColumns(
    2,
    time.machinesNeeded,
    { partsPerYear, cycleTime, hoursPerYear },
    { uptime, scrapRate },
  );
}

/**
 * Returns the machine hours per year that a shorter cycle saves.
 *
 * @customfunction HOURSSAVED
 * @param presentCycle Present time per part, s
 * @param proposedCycle Proposed time per part, s
 * @param partsPerYear Parts per year
 * @returns Hours saved per year, h. Negative is a loss.
 * @cell hours saved per year [h]
 * @example =REAM.HOURSSAVED(60, 42, 400000) // 2000
 * @see sources: derived
 */
export function hoursSaved(presentCycle: any[][], proposedCycle: any[][], partsPerYear: any[][]): any[][] {
  return mapRows(time.hoursSaved, { presentCycle, proposedCycle, partsPerYear });
}
