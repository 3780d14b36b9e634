// functions: speeds and feeds.

import * as fluteCounts from "../src/calc/cutting/flutes.ts";
import * as spindle from "../src/calc/cutting/spindle.ts";
import * as startingValues from "../src/calc/cutting/starting-values.ts";
import { eitherUnit } from "./arguments.ts";
import { mapRows, mapToColumns, readAs } from "./map-rows.ts";

/**
 * Returns the spindle speed for a cutting speed, capped at maxRpm.
 *
 * @customfunction RPM
 * @param surfaceSpeed Cutting speed (surface speed), m/min or ft/min
 * @param diameter Reamed diameter, mm or in
 * @param [maxRpm] Highest spindle speed, rev/min. Default no cap.
 * @param [units] "mm" or "in". Default "mm".
 * @returns Spindle speed, rev/min
 * @cell spindle speed [rev/min]
 * @remarks Stay below the limits of the machine, the holder, and a long tool. The machine's manual decides.
 * @example =REAM.RPM(15, 10) // 477.4648
 * @example =REAM.RPM(80, 0.5, , "in") // 611.155
 * @see sources: spindle-speed
 */
export function rpm(surfaceSpeed: any[][], diameter: any[][], maxRpm?: any[][], units?: any[][]): any[][] {
  return mapRows(spindle.spindleSpeed, { surfaceSpeed, diameter }, { maxRpm, units });
}

/**
 * Returns the cutting speed (surface speed) at a spindle speed.
 *
 * @customfunction SURFACESPEED
 * @param rpm Spindle speed, rev/min
 * @param diameter Reamed diameter, mm or in
 * @param [units] "mm" or "in". Default "mm".
 * @returns Cutting speed, m/min or ft/min
 * @cell cutting speed [m/min|ft/min]
 * @example =REAM.SURFACESPEED(477.4648, 10) // 15
 * @see sources: spindle-speed
 */
export function surfaceSpeed(rpm: any[][], diameter: any[][], units?: any[][]): any[][] {
  return mapRows(spindle.surfaceSpeedOf, { rpm, diameter }, { units });
}

/**
 * Returns the feed rate for a feed per revolution.
 *
 * @customfunction FEEDRATE
 * @param feedPerRev Feed per revolution, mm or in
 * @param rpm Spindle speed, rev/min
 * @returns Feed rate, mm/min or in/min, as the feed per revolution is
 * @cell feed rate [mm/min|in/min]
 * @example =REAM.FEEDRATE(0.012, 382) // 4.584
 * @see sources: feed
 */
export function feedRate(feedPerRev: any[][], rpm: any[][]): any[][] {
  return mapRows(spindle.feedRate, { feedPerRev, rpm });
}

/**
 * Returns the feed per revolution for a feed rate.
 *
 * @customfunction FEEDPERREV
 * @param feedRate Feed rate, mm/min or in/min
 * @param rpm Spindle speed, rev/min
 * @returns Feed per revolution, mm or in, as the feed rate is
 * @cell feed per revolution [mm|in]
 * @example =REAM.FEEDPERREV(4.584, 382) // 0.012
 * @see sources: feed
 */
export function feedPerRev(feedRate: any[][], rpm: any[][]): any[][] {
  return mapRows(spindle.feedPerRevolution, { feedRate, rpm });
}

/**
 * Returns the feed per tooth for a feed per revolution.
 *
 * @customfunction FEEDPERTOOTH
 * @param feedPerRev Feed per revolution, mm or in
 * @param flutes Number of flutes
 * @returns Feed per tooth, mm or in, as the feed per revolution is
 * @cell feed per tooth [mm|in]
 * @example =REAM.FEEDPERTOOTH(0.012, 6) // 0.002
 * @see sources: feed
 */
export function feedPerTooth(feedPerRev: any[][], flutes: any[][]): any[][] {
  return mapRows(spindle.feedPerTooth, { feedPerRev, flutes });
}

/**
 * Returns the feed per revolution for a feed per tooth.
 *
 * @customfunction FEEDFROMTOOTH
 * @param feedPerTooth Feed per tooth, mm or in
 * @param flutes Number of flutes
 * @returns Feed per revolution, mm or in, as the feed per tooth is
 * @cell feed per revolution [mm|in]
 * @example =REAM.FEEDFROMTOOTH(0.002, 6) // 0.012
 * @see sources: feed
 */
export function feedFromTooth(feedPerTooth: any[][], flutes: any[][]): any[][] {
  return mapRows(spindle.feedFromTooth, { feedPerTooth, flutes });
}

/**
 * Returns a starting cutting speed for reaming a material.
 *
 * @customfunction STARTSPEED
 * @param material Material, a key or name as in MATERIALS()
 * @param [tool] "HSS", "carbide", "brazed carbide", "coated carbide", "cermet", "PCD", "CBN", or "guided blade". Default "HSS".
 * @param [units] "mm" or "in". Default "mm".
 * @returns Cutting speed, m/min or ft/min
 * @cell cutting speed [m/min|ft/min]
 * @remarks The middle of the usual range, a starting value. The tool's own data and your own trials come first. Hardened steel and austempered iron have no HSS speed.
 * @example =REAM.STARTSPEED("medium-carbon steel", , "in") // 45
 * @see sources: start-speed, start-speed-carbide, modern-tools
 */
export function startSpeed(material: any[][], tool?: any[][], units?: any[][]): any[][] {
  return mapRows(startingValues.startingSpeed, { material }, { tool, units });
}

/**
 * Returns a starting feed per revolution for reaming a material.
 *
 * @customfunction STARTFEED
 * @param material Material, a key or name as in MATERIALS()
 * @param diameter Reamed diameter, mm or in
 * @param [tool] "HSS", "carbide", "brazed carbide", "coated carbide", "cermet", "PCD", "CBN", or "guided blade". Default "HSS".
 * @param [flutes] Number of flutes. Default the usual number (FLUTES).
 * @param [units] "mm" or "in". Default "mm".
 * @returns Feed per revolution, mm or in
 * @cell feed per revolution [mm|in]
 * @remarks A starting value. HSS and carbide: twice the usual drilling feed, shared over the flutes. Other tools: feed per tooth from wide shop ranges, so the tool's own data and your own table come first.
 * @example =REAM.STARTFEED("low-carbon steel", 0.5, , 6, "in") // 0.011
 * @see sources: start-feed, start-feed-practice, reamer-teeth, modern-tools
 */
export function startFeed(
  material: any[][],
  diameter: any[][],
  tool?: any[][],
  flutes?: any[][],
  units?: any[][],
): any[][] {
  return mapRows(startingValues.startingFeed, { material, diameter }, { tool, flutes, units });
}

/**
 * Returns starting cutting speed, spindle speed, feed per revolution, and feed rate.
 *
 * @customfunction CUTTINGDATA
 * @param material Material, a key or name as in MATERIALS()
 * @param diameter Reamed diameter, mm or in
 * @param [tool] "HSS", "carbide", "brazed carbide", "coated carbide", "cermet", "PCD", "CBN", or "guided blade". Default "HSS".
 * @param [flutes] Number of flutes. Default the usual number (FLUTES).
 * @param [maxRpm] Highest spindle speed, rev/min. Default no cap.
 * @param [units] "mm" or "in". Default "mm".
 * @returns Cutting speed after the cap (m/min or ft/min), rev/min, feed per revolution (mm or in), feed rate (mm/min or in/min)
 * @row cutting speed [m/min|ft/min], spindle speed [rev/min], feed per revolution [mm|in], feed rate [mm/min|in/min]
 * @remarks Starting values. Your own trials and the limits of tool and machine decide.
 * @example =REAM.CUTTINGDATA("low-carbon steel", 0.5, , 6, , "in") // 60, 458.3662, 0.011, 5.0420
 * @see sources: start-speed, start-speed-carbide, start-feed, start-feed-practice, modern-tools, spindle-speed
 */
export function cuttingData(
  material: any[][],
  diameter: any[][],
  tool?: any[][],
  flutes?: any[][],
  maxRpm?: any[][],
  units?: any[][],
): any[][] {
  return mapToColumns(4, startingValues.cuttingData, { material, diameter }, { tool, flutes, maxRpm, units });
}

/**
 * Returns the usual number of flutes of a reamer.
 *
 * @customfunction FLUTES
 * @param diameter Reamed diameter, mm or in
 * @param [tool] "HSS", "carbide", "brazed carbide", "coated carbide", "cermet", "PCD", "CBN", or "guided blade". Default "HSS".
 * @param [units] "mm" or "in". Default "mm".
 * @returns Number of flutes
 * @cell flutes
 * @remarks The even number nearest 1.5·√D + 2. At most 12 in coated carbide heads, cermet, PCD, and CBN. A guided blade has one. It is the default wherever flutes may be left empty.
 * @example =REAM.FLUTES(10) // 6
 * @example =REAM.FLUTES(60, "coated carbide") // 12
 * @see sources: reamer-teeth, flutes-practice
 */
export function flutes(diameter: any[][], tool?: any[][], units?: any[][]): any[][] {
  return mapRows(fluteCounts.defaultFlutes, { diameter }, { tool, units });
}

/**
 * Returns the depth of a hole in diameters.
 *
 * @customfunction DEPTHRATIO
 * @param depth Depth of the hole, mm or in
 * @param diameter Diameter of the hole, in the unit of the depth (mm or in). A cell with a unit is converted.
 * @returns Depth ÷ diameter, a number
 * @cell depth ratio
 * @example =REAM.DEPTHRATIO(30, 12) // 2.5
 * @example =REAM.DEPTHRATIO("1 in", "10 mm") // 2.54
 * @see sources: derived
 */
export function depthRatio(depth: any[][], diameter: any[][]): any[][] {
  return mapRows(spindle.depthRatio, {
    depth: readAs(eitherUnit, depth),
    diameter: readAs(eitherUnit, diameter),
  });
}
