// functions: tool life by Taylor's law, from the user's own records. An edge is one life, from grind to grind.

import {
  taylorFit as fitOfLives,
  taylorLife as lifeAtSpeed,
  partsPerEdge as partsOfEdge,
  costAtSpeed as resultsAtSpeed,
  taylorSpeed as speedForLife,
  economicSpeed as speedOfLeastCost,
  fastestSpeed as speedOfMostParts,
} from "../src/calc/cost/tool-life.ts";
import { list, mapRows, mapToColumns } from "./map-rows.ts";

/**
 * Fits Taylor's n and C (v·T^n = C) to your own records of tool life, and says how well they follow it.
 *
 * @customfunction TAYLORFIT
 * @param speeds Surface speeds of the records, a range, m/min or ft/min
 * @param lives Life of an edge at each speed, from grind to grind, a range, min
 * @returns n (no unit), C (m/min or ft/min, as the speeds are), and r² (no unit, 1 is a perfect fit)
 * @row n, C, r²
 * @remarks Two records fit perfectly and prove nothing: take three or more, at speeds well apart. The n and C of books are for turning and say nothing of reamers.
 * @example =REAM.TAYLORFIT({20;25;30}, {120;50;20}) // 0.227233, 59.80661, 0.994937
 * @see sources: taylor
 */
export function taylorFit(speeds: any[][], lives: any[][]): any[][] {
  return mapToColumns(3, fitOfLives, { speeds: list(speeds), lives: list(lives) });
}

/**
 * Gives the life of an edge, from grind to grind, at a surface speed.
 *
 * @customfunction TAYLORLIFE
 * @param surfaceSpeed Surface speed, m/min or ft/min
 * @param n Taylor's exponent from your own records (TAYLORFIT), no unit
 * @param c Taylor's constant from the same records, m/min or ft/min as the speed
 * @returns Life of an edge, min in the cut
 * @remarks Holds between the speeds of your records and with the same tool, material and coolant. A life read off it replaces no look at the edge.
 * @example =REAM.TAYLORLIFE(18, 0.25, 60) // 123.45679
 * @see sources: taylor
 */
export function taylorLife(surfaceSpeed: any[][], n: any[][], c: any[][]): any[][] {
  return mapRows(lifeAtSpeed, { surfaceSpeed, n, c });
}

/**
 * Gives the surface speed at which an edge lasts a given time, from grind to grind.
 *
 * @customfunction TAYLORSPEED
 * @param life Life of an edge, min in the cut
 * @param n Taylor's exponent from your own records (TAYLORFIT), no unit
 * @param c Taylor's constant from the same records, m/min or ft/min
 * @returns Surface speed, m/min or ft/min as c
 * @remarks Stay under the limits of the machine, the holder and a long tool: the machine's manual decides.
 * @example =REAM.TAYLORSPEED(16, 0.25, 60) // 30
 * @see sources: taylor
 */
export function taylorSpeed(life: any[][], n: any[][], c: any[][]): any[][] {
  return mapRows(speedForLife, { life, n, c });
}

/**
 * Gives the whole parts that an edge makes from grind to grind.
 *
 * @customfunction PARTSPEREDGE
 * @param life Life of an edge, min in the cut
 * @param cutTime Time in the cut per part, s; not HOLETIME, which counts the air and the way out too
 * @returns Parts per edge, a whole number, rounded down
 * @example =REAM.PARTSPEREDGE(123.45679, 12.566371) // 589
 * @see sources: derived
 */
export function partsPerEdge(life: any[][], cutTime: any[][]): any[][] {
  return mapRows(partsOfEdge, { life, cutTime });
}

/**
 * Gives the surface speed of least cost per part.
 *
 * @customfunction ECONOMICSPEED
 * @param n Taylor's exponent from your own records (TAYLORFIT), no unit
 * @param c Taylor's constant from the same records, m/min or ft/min
 * @param changeTime Time to change a worn edge, s
 * @param edgeCost Cost of an edge, one life from grind to grind, money
 * @param machineRate Rate of the machine, money per hour
 * @param [timeFactor] Time in the hole over time in the cut, no unit: 1 for a way out at rapid (if omitted), 2 for one at the feed rate
 * @returns Surface speed, m/min or ft/min as c
 * @remarks Only as good as your n and C. Stay under the limits of the machine, the holder and a long tool: the machine's manual decides.
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
  return mapRows(speedOfLeastCost, { n, c, changeTime, edgeCost, machineRate }, { timeFactor });
}

/**
 * Gives the surface speed of most parts per hour, whatever an edge costs.
 *
 * @customfunction FASTESTSPEED
 * @param n Taylor's exponent from your own records (TAYLORFIT), no unit
 * @param c Taylor's constant from the same records, m/min or ft/min
 * @param changeTime Time to change a worn edge, s
 * @param [timeFactor] Time in the hole over time in the cut, no unit: 1 for a way out at rapid (if omitted), 2 for one at the feed rate
 * @returns Surface speed, m/min or ft/min as c
 * @remarks Only as good as your n and C. Stay under the limits of the machine, the holder and a long tool: the machine's manual decides.
 * @example =REAM.FASTESTSPEED(0.125, 70, 120) // 50.3306
 * @example =REAM.FASTESTSPEED(0.125, 70, 120, 2) // 54.886
 * @see sources: economic-speed
 */
export function fastestSpeed(n: any[][], c: any[][], changeTime: any[][], timeFactor?: any[][]): any[][] {
  return mapRows(speedOfMostParts, { n, c, changeTime }, { timeFactor });
}

/**
 * Gives what a hole comes to at a surface speed: time in the cut, life of an edge, parts per edge and cost.
 *
 * @customfunction COSTATSPEED
 * @param surfaceSpeed Surface speed, m/min or ft/min
 * @param n Taylor's exponent from your own records (TAYLORFIT), no unit
 * @param c Taylor's constant from the same records, m/min or ft/min as the speed
 * @param diameter Reamed diameter, mm or in
 * @param feedPerRev Feed per revolution, mm or in
 * @param depth Depth of the hole, mm or in
 * @param changeTime Time to change a worn edge, s
 * @param edgeCost Cost of an edge, one life from grind to grind, money
 * @param machineRate Rate of the machine, money per hour
 * @param [timeFactor] Time in the hole over time in the cut, no unit: 1 for a way out at rapid (if omitted), 2 for one at the feed rate
 * @param [units] "mm" or "in"; "mm" if omitted
 * @returns Time in the cut per hole (s), life of an edge (min), parts per edge (a whole number), cost per hole (money)
 * @row cut time, life, parts per edge, cost per hole
 * @remarks Over a column of speeds it shows how flat the cost is about ECONOMICSPEED.
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
    resultsAtSpeed,
    { surfaceSpeed, n, c, diameter, feedPerRev, depth, changeTime, edgeCost, machineRate },
    { timeFactor, units },
  );
}
