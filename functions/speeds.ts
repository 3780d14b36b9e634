// functions: speeds and feeds.

import {
  feedFromTooth as feedOfTeeth,
  feedPerTooth as feedOfTooth,
  feedPerRevolution,
  feedRate as rateOfFeed,
  depthRatio as ratioOfDepth,
  spindleSpeed,
  surfaceSpeedOf,
} from "../src/calc/cutting/spindle.ts";
import {
  cuttingData as startingData,
  startingFeed,
  startingSpeed,
} from "../src/calc/cutting/starting-values.ts";
import { eitherUnit } from "./arguments.ts";
import { mapRows, mapToColumns, readAs } from "./map-rows.ts";

/**
 * Gives the spindle speed for a surface speed, not above the highest speed of the spindle.
 *
 * @customfunction RPM
 * @param surfaceSpeed Surface speed, m/min or ft/min
 * @param diameter Reamed diameter, mm or in
 * @param [maxRpm] Highest speed of the spindle, rev/min; no cap if omitted
 * @param [units] "mm" or "in"; "mm" if omitted
 * @returns Spindle speed, rev/min
 * @remarks Stay under the limits of the machine, the holder and a long tool: the machine's manual decides.
 * @example =REAM.RPM(15, 10) // 477.4648
 * @example =REAM.RPM(80, 0.5, , "in") // 611.155
 * @see sources: spindle-speed
 */
export function rpm(surfaceSpeed: any[][], diameter: any[][], maxRpm?: any[][], units?: any[][]): any[][] {
  return mapRows(spindleSpeed, { surfaceSpeed, diameter }, { maxRpm, units });
}

/**
 * Gives the surface speed of a reamer at a spindle speed.
 *
 * @customfunction SURFACESPEED
 * @param rpm Spindle speed, rev/min
 * @param diameter Reamed diameter, mm or in
 * @param [units] "mm" or "in"; "mm" if omitted
 * @returns Surface speed, m/min or ft/min
 * @example =REAM.SURFACESPEED(477.4648, 10) // 15
 * @see sources: spindle-speed
 */
export function surfaceSpeed(rpm: any[][], diameter: any[][], units?: any[][]): any[][] {
  return mapRows(surfaceSpeedOf, { rpm, diameter }, { units });
}

/**
 * Gives the feed rate per minute from the feed per revolution.
 *
 * @customfunction FEEDRATE
 * @param feedPerRev Feed per revolution, mm or in
 * @param rpm Spindle speed, rev/min
 * @returns Feed rate, mm/min or in/min, as the feed per revolution is
 * @example =REAM.FEEDRATE(0.012, 382) // 4.584
 * @see sources: feed
 */
export function feedRate(feedPerRev: any[][], rpm: any[][]): any[][] {
  return mapRows(rateOfFeed, { feedPerRev, rpm });
}

/**
 * Gives the feed per revolution from the feed rate per minute.
 *
 * @customfunction FEEDPERREV
 * @param feedRate Feed rate, mm/min or in/min
 * @param rpm Spindle speed, rev/min
 * @returns Feed per revolution, mm or in, as the feed rate is
 * @example =REAM.FEEDPERREV(4.584, 382) // 0.012
 * @see sources: feed
 */
export function feedPerRev(feedRate: any[][], rpm: any[][]): any[][] {
  return mapRows(feedPerRevolution, { feedRate, rpm });
}

/**
 * Gives the feed per tooth from the feed per revolution.
 *
 * @customfunction FEEDPERTOOTH
 * @param feedPerRev Feed per revolution, mm or in
 * @param flutes Number of flutes, a whole number, no unit
 * @returns Feed per tooth, mm or in, as the feed per revolution is
 * @example =REAM.FEEDPERTOOTH(0.012, 6) // 0.002
 * @see sources: feed
 */
export function feedPerTooth(feedPerRev: any[][], flutes: any[][]): any[][] {
  return mapRows(feedOfTooth, { feedPerRev, flutes });
}

/**
 * Gives the feed per revolution from the feed per tooth.
 *
 * @customfunction FEEDFROMTOOTH
 * @param feedPerTooth Feed per tooth, mm or in
 * @param flutes Number of flutes, a whole number, no unit
 * @returns Feed per revolution, mm or in, as the feed per tooth is
 * @example =REAM.FEEDFROMTOOTH(0.002, 6) // 0.012
 * @see sources: feed
 */
export function feedFromTooth(feedPerTooth: any[][], flutes: any[][]): any[][] {
  return mapRows(feedOfTeeth, { feedPerTooth, flutes });
}

/**
 * Gives a surface speed to start reaming a material with: the middle of the table's range.
 *
 * @customfunction STARTSPEED
 * @param material Material key or name as in MATERIALS(), no unit
 * @param [tool] "HSS" or "carbide", no unit; HSS if omitted
 * @param [units] "mm" or "in"; "mm" if omitted
 * @returns Surface speed, m/min or ft/min
 * @remarks A starting value: your own trials, the tool's and the machine's limits decide. Hardened steel has no speed in HSS.
 * @example =REAM.STARTSPEED("medium-carbon steel", , "in") // 45
 * @see sources: start-speed
 */
export function startSpeed(material: any[][], tool?: any[][], units?: any[][]): any[][] {
  return mapRows(startingSpeed, { material }, { tool, units });
}

/**
 * Gives a feed per revolution to start reaming a material with.
 *
 * @customfunction STARTFEED
 * @param material Material key or name as in MATERIALS(), no unit
 * @param diameter Reamed diameter, mm or in
 * @param [tool] "HSS" or "carbide", no unit; HSS if omitted (the table is the same for both)
 * @param [flutes] Number of flutes, a whole number, no unit; the even number nearest 1.5·√D + 2 if omitted
 * @param [units] "mm" or "in"; "mm" if omitted
 * @returns Feed per revolution, mm or in
 * @remarks Twice the usual drilling feed, shared over the flutes: a starting value, common practice.
 * @example =REAM.STARTFEED("low-carbon steel", 0.5, , 6, "in") // 0.011
 * @see sources: start-feed, reamer-teeth
 */
export function startFeed(
  material: any[][],
  diameter: any[][],
  tool?: any[][],
  flutes?: any[][],
  units?: any[][],
): any[][] {
  return mapRows(startingFeed, { material, diameter }, { tool, flutes, units });
}

/**
 * Gives everything to start a reamer with: surface speed, spindle speed, feed per revolution and feed rate.
 *
 * @customfunction CUTTINGDATA
 * @param material Material key or name as in MATERIALS(), no unit
 * @param diameter Reamed diameter, mm or in
 * @param [tool] "HSS" or "carbide", no unit; HSS if omitted
 * @param [flutes] Number of flutes, a whole number, no unit; the even number nearest 1.5·√D + 2 if omitted
 * @param [maxRpm] Highest speed of the spindle, rev/min; no cap if omitted
 * @param [units] "mm" or "in"; "mm" if omitted
 * @returns Surface speed after the cap (m/min or ft/min), rev/min, feed per revolution (mm or in), feed rate (mm/min or in/min)
 * @row surface speed, rpm, feed per revolution, feed rate
 * @remarks Starting values: your own trials, the tool's and the machine's limits decide.
 * @example =REAM.CUTTINGDATA("low-carbon steel", 0.5, , 6, , "in") // 60, 458.3662, 0.011, 5.0420
 * @see sources: start-speed, start-feed, spindle-speed
 */
export function cuttingData(
  material: any[][],
  diameter: any[][],
  tool?: any[][],
  flutes?: any[][],
  maxRpm?: any[][],
  units?: any[][],
): any[][] {
  return mapToColumns(4, startingData, { material, diameter }, { tool, flutes, maxRpm, units });
}

/**
 * Gives the depth of a hole in diameters.
 *
 * @customfunction DEPTHRATIO
 * @param depth Depth of the hole, mm or in
 * @param diameter Diameter of the hole, in the unit of the depth unless a unit (mm or in) is written in the cell
 * @returns Depth divided by diameter, no unit
 * @example =REAM.DEPTHRATIO(30, 12) // 2.5
 * @example =REAM.DEPTHRATIO("1 in", "10 mm") // 2.54
 * @see sources: derived
 */
export function depthRatio(depth: any[][], diameter: any[][]): any[][] {
  return mapRows(ratioOfDepth, { depth: readAs(eitherUnit, depth), diameter: readAs(eitherUnit, diameter) });
}
