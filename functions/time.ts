// functions: time per hole, per part, per shift and per year.

import {
  hoursSaved as hoursAYear,
  machinesNeeded as machines,
  partsPerShift as parts,
  holeTime as timeInHole,
  cycleTime as timePerPart,
} from "../src/calc/cutting/time.ts";
import { mapRows, mapToColumns } from "./map-rows.ts";

/**
 * Gives the time to ream a hole, there and back.
 *
 * @customfunction HOLETIME
 * @param depth Useful depth of the hole, mm or in
 * @param feedRate Feed rate, mm/min or in/min
 * @param [leadIn] Air above the hole that is fed through, mm or in; 0 if omitted
 * @param [overrun] How far the tool goes past the useful depth (bevel lead, break-through), mm or in; 0 if omitted
 * @param [retractRate] Feed rate of the return, mm/min or in/min; as feedRate if omitted; "rapid" leaves the return out (a drag line may stay in the hole)
 * @param [units] "mm" or "in"; "mm" if omitted
 * @returns Time, s
 * @remarks A reamer is fed out, turning forward: drawn out at rapid it may leave a drag line in the hole. Never reverse the spindle.
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
  return mapRows(timeInHole, { depth, feedRate }, { leadIn, overrun, retractRate, units });
}

/**
 * Gives the time per part from the time per hole.
 *
 * @customfunction CYCLETIME
 * @param holeTime Time per hole, s
 * @param [holes] Number of holes per part, no unit; 1 if omitted
 * @param [moveTime] Time from hole to hole, s; 0 if omitted
 * @param [toolChange] Chip to chip time per part, s, not the change of a worn edge; 0 if omitted
 * @param [loadTime] Time to load and unload the part, s; 0 if omitted
 * @returns Time per part, s
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
  return mapRows(timePerPart, { holeTime }, { holes, moveTime, toolChange, loadTime });
}

/**
 * Gives the whole parts that a shift yields.
 *
 * @customfunction PARTSPERSHIFT
 * @param cycleTime Time per part, s
 * @param shiftHours Length of the shift, h
 * @param [uptime] Share of the shift that the machine runs, no unit (0.85 is 85 %); 1 if omitted
 * @returns Parts per shift, a whole number
 * @example =REAM.PARTSPERSHIFT(60, 8, 0.85) // 408
 * @see sources: derived
 */
export function partsPerShift(cycleTime: any[][], shiftHours: any[][], uptime?: any[][]): any[][] {
  return mapRows(parts, { cycleTime, shiftHours }, { uptime });
}

/**
 * Gives how many machines a yearly quantity needs: the load, and whole machines.
 *
 * @customfunction MACHINESNEEDED
 * @param partsPerYear Good parts per year, a number
 * @param cycleTime Time per part, s
 * @param hoursPerYear Hours that a machine is manned in a year, h
 * @param [uptime] Share of those hours that it runs, no unit; 1 if omitted
 * @param [scrapRate] Share of the parts that is scrap, no unit, from 0 to under 1; 0 if omitted
 * @returns Load in machines, and whole machines, numbers
 * @row load, whole machines
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
  return mapToColumns(2, machines, { partsPerYear, cycleTime, hoursPerYear }, { uptime, scrapRate });
}

/**
 * Gives the machine hours that a shorter cycle saves in a year.
 *
 * @customfunction HOURSSAVED
 * @param presentCycle Present time per part, s
 * @param proposedCycle Proposed time per part, s
 * @param partsPerYear Parts per year, a number
 * @returns Hours saved per year, h; negative is a loss
 * @example =REAM.HOURSSAVED(60, 42, 400000) // 2000
 * @see sources: derived
 */
export function hoursSaved(presentCycle: any[][], proposedCycle: any[][], partsPerYear: any[][]): any[][] {
  return mapRows(hoursAYear, { presentCycle, proposedCycle, partsPerYear });
}
