// functions: plans, the shop's own data, and the headers of results.

import * as plans from "../src/calc/plans/plan.ts";
import { remediesFor } from "../src/calc/plans/remedies.ts";
import * as shopTable from "../src/calc/plans/shop-table.ts";
import { knownMaterial, knownTool, shopMaterial, shopTool } from "./arguments.ts";
import { headersOf } from "./headers.ts";
import { mapRows, mapToColumns, readAs, spill, wholeRange } from "./map-rows.ts";

/**
 * Looks up an entry of your own cutting data table by material, tool, and diameter.
 *
 * @customfunction DATAFOR
 * @param table Your table, a range with a header row, taken whole
 * @param column Header of the column to return, any case, such as "speed"
 * @param material Material as in the table, or any name of the same material
 * @param [tool] Tool as in the table, or any name of the same kind. Default "HSS".
 * @param [diameter] Reamed diameter, mm or in. Leave it empty only where all rows of the material and tool agree.
 * @param [units] "mm" or "in". Default "mm".
 * @list table
 * @returns The entry, a number or text. Empty text where it is blank.
 * @cell entry
 * @remarks Headers in any order: material, tool, over, up to, speed, feed (or feed per tooth), flutes, stock, max rpm. Columns of your own may follow. Speed may also be speed low and speed high. A blank tool is any tool, a blank up to is open. The first row that matches counts, the same text before the same material. A size is covered over "over", up to and including "up to".
 * @example =REAM.DATAFOR({"material","tool","over","up to","speed";"gray iron","HSS",0,20,22;"gray iron","HSS",20,50,18}, "speed", "GG25", , 12) // 22
 * @see sources: shop-table
 */
export function dataFor(
  table: any[][],
  column: any[][],
  material: any[][],
  tool?: any[][],
  diameter?: any[][],
  units?: any[][],
): any[][] {
  return mapRows(
    shopTable.dataFor,
    { table: wholeRange(table), column, material: readAs(shopMaterial, material) },
    { tool: readAs(shopTool, tool), diameter, units },
  );
}

/**
 * Returns the whole plan for a hole: limits, reamer, drill, speed, feed, time, warnings.
 *
 * @customfunction PLAN
 * @param callout Callout of the hole as on the drawing, in mm or in
 * @param material Material, a key or name as in MATERIALS()
 * @param [depth] Depth of the hole, mm or in. Default the callout's own.
 * @param [tool] "HSS", "carbide", "brazed carbide", "coated carbide", "cermet", "PCD", "CBN", or "guided blade". Default "HSS".
 * @param [maxRpm] Highest spindle speed, rev/min. Default no cap.
 * @param [table] Your own cutting data as in DATAFOR, a range with a header row, taken whole. Default the built-in data.
 * @param [units] "mm" or "in". Default "mm".
 * @list table
 * @returns Limits, reamer minimum, maximum, and size, drill, drill diameter and stock (mm or in), cutting speed (m/min or ft/min), rev/min, feed per revolution (mm or in), feed rate (mm/min or in/min), time per hole (s), depth ratio, and warnings as text
 * @row lower limit [mm|in], upper limit [mm|in], reamer minimum [mm|in], reamer maximum [mm|in], reamer size [mm|in], drill, drill diameter [mm|in], stock [mm|in], cutting speed [m/min|ft/min], spindle speed [rev/min], feed per revolution [mm|in], feed rate [mm/min|in/min], time per hole [s], depth ratio, warnings
 * @remarks Your table wins over the built-in data for the columns it has. A cell without an answer shows #N/A by itself. The time has an approach of 2 mm (0.08 in). A through hole has an overrun of 3 mm (0.12 in). HSS retracts at feed, other tools at three times the feed (common practice). Starting values: your own trials and the limits of tool and machine decide.
 * @example =REAM.PLAN("12 H7 THRU", "gray iron", 30) // 12, 12.018, 12.008, 12.015, 12.01, "11.8", 11.8, 0.2, 25.908, 687.231, 0.4224, 290.286, 14.4685, 2.5, ""
 * @see sources: iso-286-1, ansi-b4.1, reamer-limits, reamer-nominal-band, stock-practice, start-speed, start-feed, modern-tools, machining-time, practice
 */
export function plan(
  callout: any[][],
  material: any[][],
  depth?: any[][],
  tool?: any[][],
  maxRpm?: any[][],
  table?: any[][],
  units?: any[][],
): any[][] {
  return mapToColumns(
    15,
    plans.plan,
    { callout, material: readAs(knownMaterial, material) },
    { depth, tool: readAs(knownTool, tool), maxRpm, table: wholeRange(table), units },
  );
}

/**
 * Lists the headers of the cells that a function returns, with their units.
 *
 * @customfunction HEADERS
 * @param functionName Name of the function in quotes, such as "PLAN"
 * @param [units] "mm" or "in". Default "mm".
 * @returns One row of text, to stand above the function's column
 * @example =REAM.HEADERS("LIMITS") // "lower limit, mm", "upper limit, mm"
 * @see sources: derived
 */
export function headers(functionName: any[][], units?: any[][]): any[][] {
  return spill(headersOf, { functionName }, { units });
}

/**
 * Lists the causes of a bad hole, how to check each, and the remedy, in order.
 *
 * @customfunction REMEDIES
 * @param symptom "oversize", "undersize", "bell-mouth", "taper", "rough", "drag line", "chatter", "out of position", "not round", "short life", "built-up edge", or "chips jam"
 * @returns Rows of text: cause, how to check, remedy
 * @cell cause, how to check, remedy
 * @remarks Work from the top. Change one thing, then measure again. Stop the spindle and lock out the drive before you look or touch; chips with a hook, never by hand. The machine's manual and local codes come first.
 * @example =REAM.REMEDIES("oversize") // "Gauge not zeroed, or part still warm"
 * @see sources: remedies
 */
export function remedies(symptom: any[][]): any[][] {
  return spill(remediesFor, { symptom });
}
