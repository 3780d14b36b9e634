// functions: tool life by Taylor's law, from the user's own records. An edge is one life, from grind to grind.

import * as toolLife from "../src/calc/cost/tool-life.ts";
import * as toolStock from "../src/calc/cost/tool-stock.ts";
import { list, mapRows, mapToColumns } from "./map-rows.ts";

/**
 * Returns Taylor's n and C (v·Tⁿ = C) fitted to your own tool life records.
 *
 * @customfunction TAYLORFIT
 * @param speeds Cutting speeds of the records, a range, m/min or ft/min
 * @param lives Tool life at each speed, a range, min
 * @list speeds, lives
 * @returns n, C (m/min or ft/min, as the speeds are), and r² (1 is a perfect fit)
 * @row n, C [m/min|ft/min], r²
 * @remarks Two records always fit and prove nothing: enter three or more, at speeds well apart. The n and C of books are for turning and do not hold for reamers.
 * @example =REAM.TAYLORFIT({20;25;30}, {120;50;20}) // 0.227233, 59.80661, 0.994937
 * @see sources: taylor
 */
export function taylorFit(speeds: any[][], lives: any[][]): any[][] {
  return mapToColumns(3, toolLife.taylorFit, { speeds: list(speeds), lives: list(lives) });
}

/**
 * Calculates the tool life at a cutting speed.
 *
 * @customfunction TAYLORLIFE
 * @param surfaceSpeed Cutting speed (surface speed), m/min or ft/min
 * @param n Taylor exponent n from your own records (TAYLORFIT), a number between 0 and 1
 * @param c Taylor constant C from the same records, m/min or ft/min
 * @returns Tool life, min in the cut
 * @cell tool life [min]
 * @remarks Holds between the speeds of your records and with the same tool, material, and coolant. Look at the edge as well.
 * @example =REAM.TAYLORLIFE(18, 0.25, 60) // 123.45679
 * @see sources: taylor
 */
export function taylorLife(surfaceSpeed: any[][], n: any[][], c: any[][]): any[][] {
  return mapRows(toolLife.taylorLife, { surfaceSpeed, n, c });
}

/**
 * Calculates the cutting speed for a tool life.
 *
 * @customfunction TAYLORSPEED
 * @param life Tool life, min in the cut
 * @param n Taylor exponent n from your own records (TAYLORFIT), a number between 0 and 1
 * @param c Taylor constant C from the same records, m/min or ft/min
 * @returns Cutting speed, m/min or ft/min as c
 * @cell cutting speed [m/min|ft/min]
 * @remarks Stay below the limits of the machine, the holder, and a long tool. The machine's manual decides.
 * @example =REAM.TAYLORSPEED(16, 0.25, 60) // 30
 * @see sources: taylor
 */
export function taylorSpeed(life: any[][], n: any[][], c: any[][]): any[][] {
  return mapRows(toolLife.taylorSpeed, { life, n, c });
}

/**
 * Returns the whole parts that an edge makes.
 *
 * @customfunction PARTSPEREDGE
 * @param life Tool life, min in the cut
 * @param cutTime Time in the cut per part, s. Not HOLETIME, which counts air and retract too.
 * @returns Whole parts per edge, rounded down
 * @cell parts per edge [parts]
 * @example =REAM.PARTSPEREDGE(123.45679, 12.566371) // 589
 * @see sources: derived
 */
export function partsPerEdge(life: any[][], cutTime: any[][]): any[][] {
  return mapRows(toolLife.partsPerEdge, { life, cutTime });
}

/**
 * Returns the cutting speed for minimum cost per part.
 *
 * @customfunction ECONOMICSPEED
 * @param n Taylor exponent n from your own records (TAYLORFIT), a number between 0 and 1
 * @param c Taylor constant C from the same records, m/min or ft/min
 * @param changeTime Time to change a worn edge, s
 * @param edgeCost Cost of an edge, one tool life between regrinds, money
 * @param machineRate Machine rate, money per hour
 * @param [timeFactor] Time in the hole ÷ time in the cut: 1 for a rapid retract, 2 for a retract at feed. Default 1.
 * @returns Cutting speed, m/min or ft/min as c
 * @cell cutting speed [m/min|ft/min]
 * @remarks Only as good as your n and C. Stay below the limits of the machine, the holder, and a long tool: the machine's manual decides.
 * @example =REAM.ECONOMICSPEED(0.125, 70, 120, 3, 30) // 42.3228
 * @example =REAM.ECONOMICSPEED(0.125, 70, 120, 3, 30, 2) // 46.153
 * @see sources: economic-speed
 */
export function economicSpeed(
  n: any[][],
  c: any[][],
  changeTime: any[][],
  edgeCost: any[][],
  machineRate: any[][],
  timeFactor?: any[][],
): any[][] {
  return mapRows(toolLife.economicSpeed, { n, c, changeTime, edgeCost, machineRate }, { timeFactor });
}

/**
 * Returns the cutting speed for maximum parts per hour.
 *
 * @customfunction FASTESTSPEED
 * @param n Taylor exponent n from your own records (TAYLORFIT), a number between 0 and 1
 * @param c Taylor constant C from the same records, m/min or ft/min
 * @param changeTime Time to change a worn edge, s
 * @param [timeFactor] Time in the hole ÷ time in the cut: 1 for a rapid retract, 2 for a retract at feed. Default 1.
 * @returns Cutting speed, m/min or ft/min as c
 * @cell cutting speed [m/min|ft/min]
 * @remarks It takes no account of what an edge costs. Stay below the limits of the machine, the holder, and a long tool: the machine's manual decides.
 * @example =REAM.FASTESTSPEED(0.125, 70, 120) // 50.3306
 * @example =REAM.FASTESTSPEED(0.125, 70, 120, 2) // 54.886
 * @see sources: economic-speed
 */
export function fastestSpeed(n: any[][], c: any[][], changeTime: any[][], timeFactor?: any[][]): any[][] {
  return mapRows(toolLife.fastestSpeed, { n, c, changeTime }, { timeFactor });
}

/**
 * Calculates cut time, tool life, parts per edge, and cost per hole at a cutting speed.
 *
 * @customfunction COSTATSPEED
 * @param surfaceSpeed Cutting speed (surface speed), m/min or ft/min
 * @param n Taylor exponent n from your own records (TAYLORFIT), a number between 0 and 1
 * @param c Taylor constant C from the same records, m/min or ft/min
 * @param diameter Reamed diameter, mm or in
 * @param feedPerRev Feed per revolution, mm or in
 * @param depth Depth of the hole, mm or in
 * @param changeTime Time to change a worn edge, s
 * @param edgeCost Cost of an edge, one tool life between regrinds, money
 * @param machineRate Machine rate, money per hour
 * @param [timeFactor] Time in the hole ÷ time in the cut: 1 for a rapid retract, 2 for a retract at feed. Default 1.
 * @param [units] "mm" or "in". Default "mm".
 * @returns Time in the cut per hole (s), tool life (min), whole parts per edge, cost per hole (money)
 * @row cut time [s], tool life [min], parts per edge [parts], cost per hole [money]
 * @remarks Over a column of speeds it shows how flat the cost is around ECONOMICSPEED.
 * @example =REAM.COSTATSPEED(18, 0.25, 60, 12, 0.3, 30, 120, 40, 90, 2) // 12.566371, 123.45679, 589, 0.701324
 * @see sources: economic-speed, taylor
 */
export function costAtSpeed(
  surfaceSpeed: any[][],
  n: any[][],
  c: any[][],
  diameter: any[][],
  feedPerRev: any[][],
  depth: any[][],
  changeTime: any[][],
  edgeCost: any[][],
  machineRate: any[][],
  timeFactor?: any[][],
  units?: any[][],
): any[][] {
  return mapToColumns(
    4,
    toolLife.costAtSpeed,
    { surfaceSpeed, n, c, diameter, feedPerRev, depth, changeTime, edgeCost, machineRate },
    { timeFactor, units },
  );
}

/**
 * Calculates the range of the mean tool life from recorded lives.
 *
 * @customfunction LIFERANGE
 * @param lives Recorded lives of edges, a range, min or parts. The result is in the same unit.
 * @param [confidence] Two-sided confidence, a share (0.95 is 95 %). Default 0.95.
 * @list lives
 * @returns Mean, low, and high of the mean life, in the unit of the lives
 * @row mean life, low, high
 * @remarks The range of the mean, not of single lives: change an edge by the shortest life recorded, not by this.
 * @example =REAM.LIFERANGE({720;760;790}) // 756.666667, 669.426617, 843.906716
 * @see sources: student
 */
export function lifeRange(lives: any[][], confidence?: any[][]): any[][] {
  return mapToColumns(3, toolStock.lifeRange, { lives: list(lives) }, { confidence });
}

/**
 * Returns the edges and tools that a quantity of parts needs.
 *
 * @customfunction TOOLSNEEDED
 * @param parts Parts to make
 * @param partsPerEdge Parts that one edge makes
 * @param [edges] Edges used one after the other. Default 1.
 * @param [regrinds] How often the tool is reground. Default 0.
 * @returns Whole edges and whole tools
 * @row edges, tools
 * @example =REAM.TOOLSNEEDED(250000, 750, 1, 3) // 334, 84
 * @see sources: derived
 */
export function toolsNeeded(
  parts: any[][],
  partsPerEdge: any[][],
  edges?: any[][],
  regrinds?: any[][],
): any[][] {
  return mapToColumns(2, toolStock.toolsNeeded, { parts, partsPerEdge }, { edges, regrinds });
}
