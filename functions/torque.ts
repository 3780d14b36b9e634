// functions: torque and power, an order of magnitude.

import * as torques from "../src/calc/cutting/torque.ts";
import { mapRows } from "./map-rows.ts";

/**
 * Calculates the torque of a reamer, as an order of magnitude.
 *
 * @customfunction TORQUE
 * @param material Material, a key or name as in MATERIALS()
 * @param diameter Reamed diameter, mm or in
 * @param drill Drill, a diameter, mm or in, or an inch drill's name
 * @param feedPerRev Feed per revolution, mm or in
 * @param flutes Number of flutes
 * @param [chamferAngle] Angle of the chamfer (bevel lead) to the axis, degrees. Default 45.
 * @param [units] "mm" or "in". Default "mm".
 * @returns Torque, N·m or lbf·in
 * @cell torque [N·m|lbf·in]
 * @remarks An order of magnitude. Chips this thin lie outside the fitted range, and the rubbing of the margins is left out. The real torque is often higher, most of all with a worn edge. The machine's manual, local codes, and qualified people decide what tool, holder, and clamping can take.
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
  return mapRows(torques.torque, { material, diameter, drill, feedPerRev, flutes }, { chamferAngle, units });
}

/**
 * Calculates the power that a torque takes at a spindle speed.
 *
 * @customfunction POWER
 * @param torque Torque, N·m or lbf·in
 * @param rpm Spindle speed, rev/min
 * @param [efficiency] Share of the motor's power that reaches the spindle (0.8 is 80 %). Default 1, the power at the spindle.
 * @param [units] "mm" or "in". Default "mm".
 * @returns Power, kW or hp
 * @cell power [kW|hp]
 * @remarks From TORQUE it is an order of magnitude. hp is 550 ft·lbf/s. The limits of the machine are in its manual.
 * @example =REAM.POWER(100, 955) // 10.0007
 * @example =REAM.POWER(1.25, 800) // 0.10472
 * @see sources: torque-power
 */
export function power(torque: any[][], rpm: any[][], efficiency?: any[][], units?: any[][]): any[][] {
  return mapRows(torques.power, { torque, rpm }, { efficiency, units });
}
