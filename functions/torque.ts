// functions: torque and power, an order of magnitude.

import { torque as momentOf, power as powerOf } from "../src/calc/cutting/torque.ts";
import { mapRows } from "./map-rows.ts";

/**
 * Estimates the torque of a reamer: an order of magnitude, not a value to run a machine at its limit by.
 *
 * @customfunction TORQUE
 * @param material Material key or name as in MATERIALS(), no unit
 * @param diameter Reamed diameter, mm or in
 * @param drill Diameter of the drilled hole, mm or in
 * @param feedPerRev Feed per revolution, mm or in
 * @param flutes Number of flutes, a whole number, no unit
 * @param [chamferAngle] Angle of the bevel lead to the axis, degrees; 45 if omitted
 * @param [units] "mm" or "in"; "mm" if omitted
 * @returns Torque, N·m or lbf·in
 * @remarks Chips this thin lie outside the range that specific cutting forces were fitted to, and the rubbing of the margins is left out: the real torque is often higher, most of all with a worn edge. Whether tool, holder and clamping bear it is for the machine's manual, local codes and qualified people to say.
 * @example =REAM.TORQUE("C45", 10, 9.8, 0.24, 6) // 0.43446
 * @example =REAM.TORQUE("C45", 10, 9.8, 0.24, 6, 30) // 0.456063
 * @see sources: kienzle
 */
export function torque(
  material: any[][],
  diameter: any[][],
  drill: any[][],
  feedPerRev: any[][],
  flutes: any[][],
  chamferAngle?: any[][],
  units?: any[][],
): any[][] {
  return mapRows(momentOf, { material, diameter, drill, feedPerRev, flutes }, { chamferAngle, units });
}

/**
 * Gives the power that a torque takes at a spindle speed; from TORQUE it is an order of magnitude as that is.
 *
 * @customfunction POWER
 * @param torque Torque, N·m or lbf·in
 * @param rpm Spindle speed, rev/min
 * @param [efficiency] Share of the motor's power that reaches the spindle, no unit (0.8 is 80 %); 1 if omitted, which gives the power at the spindle
 * @param [units] "mm" (N·m, kW) or "in" (lbf·in, hp of 550 ft·lbf/s); "mm" if omitted
 * @returns Power, kW or hp
 * @remarks The efficiency divides: a motor must give more than the spindle takes. The limits of the machine are in its manual.
 * @example =REAM.POWER(100, 955) // 10.0007
 * @example =REAM.POWER(1.25, 800) // 0.10472
 * @see sources: torque-power
 */
export function power(torque: any[][], rpm: any[][], efficiency?: any[][], units?: any[][]): any[][] {
  return mapRows(powerOf, { torque, rpm }, { efficiency, units });
}
