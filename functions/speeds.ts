// functions: speeds and feeds.

import { spindleSpeed } from "../src/calc/cutting/spindle.ts";
import { mapRows } from "./map-rows.ts";

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
