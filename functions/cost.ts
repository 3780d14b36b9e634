// functions: cost of an edge and of a part, price, and one process against another. Money has no unit.

import * as comparison from "../src/calc/cost/compare.ts";
import * as partCosts from "../src/calc/cost/part-cost.ts";
import * as toolStock from "../src/calc/cost/tool-stock.ts";
import { isBlank } from "./cells.ts";
import { cellsOf } from "./columns.ts";
import { list, mapRows, spill } from "./map-rows.ts";

/**
 * Returns the cost of an edge: one tool life between regrinds.
 *
 * @customfunction EDGECOST
 * @param price Price of the new tool, money
 * @param [edges] Edges used one after the other. Default 1.
 * @param [regrinds] How often the tool is reground. Default 0.
 * @param [regrindCost] Cost of one regrind, money. Default 0.
 * @returns Cost of an edge, money
 * @cell edge cost [money]
 * @remarks A tool that is reground three times has four lives.
 * @example =REAM.EDGECOST(120, , 3, 25) // 48.75
 * @see sources: cost
 */
export function edgeCost(
  price: any[][],
  edges?: any[][],
  regrinds?: any[][],
  regrindCost?: any[][],
): any[][] {
  return mapRows(partCosts.edgeCost, { price }, { edges, regrinds, regrindCost });
}

/**
 * Returns the cost of the edge per part.
 *
 * @customfunction TOOLCOST
 * @param edgeCost Cost of an edge, one tool life between regrinds (EDGECOST), money
 * @param partsPerEdge Parts that one edge makes
 * @returns Cost per part, money
 * @cell edge cost per part [money]
 * @example =REAM.TOOLCOST(48.75, 400) // 0.121875
 * @see sources: cost
 */
export function toolCost(edgeCost: any[][], partsPerEdge: any[][]): any[][] {
  return mapRows(partCosts.toolCost, { edgeCost, partsPerEdge });
}

/**
 * Returns the cost of a good part: machine, edge, edge change, other operations, scrap.
 *
 * @customfunction PARTCOST
 * @param cycleTime Time per part, s
 * @param machineRate Machine rate, money per hour
 * @param [edgeCost] Cost of an edge, one tool life between regrinds (EDGECOST), money. Default 0.
 * @param [partsPerEdge] Parts that one edge makes. Needed with edgeCost or changeTime.
 * @param [changeTime] Time to change a worn edge, s. Default 0.
 * @param [otherCost] Cost of other operations per part, and of material if you like, money. Default 0.
 * @param [scrapRate] Share of the parts that is scrap, from 0 to under 1. Default 0.
 * @returns Cost per good part, money
 * @cell cost per part [money]
 * @example =REAM.PARTCOST(60, 90, 48.75, 400, 300) // 1.640625
 * @example =REAM.PARTCOST(60, 90, 48.75, 400, 300, 40, 0.02) // 42.490434
 * @see sources: cost
 */
export function partCost(
  cycleTime: any[][],
  machineRate: any[][],
  edgeCost?: any[][],
  partsPerEdge?: any[][],
  changeTime?: any[][],
  otherCost?: any[][],
  scrapRate?: any[][],
): any[][] {
  return mapRows(
    partCosts.partCost,
    { cycleTime, machineRate },
    { edgeCost, partsPerEdge, changeTime, otherCost, scrapRate },
  );
}

/**
 * Returns the price of a part from its cost, setup, overhead, and margin.
 *
 * @customfunction PRICE
 * @param cost Cost per part, money
 * @param [setupTime] Time to set up the batch, min. Default 0.
 * @param [setupRate] Setup rate, money per hour. Needed with setupTime.
 * @param [batch] Parts in the batch. Needed with setupTime.
 * @param [overhead] Overhead as a share of the cost (0.15 is 15 %). Default 0.
 * @param [margin] Margin as a share of the price, from 0 to under 1. Default 0.
 * @returns Price per part, money
 * @cell price per part [money]
 * @remarks The margin is on the price, not a markup on the cost. A margin of 20 % is a markup of 25 %.
 * @example =REAM.PRICE(10, , , , , 0.2) // 12.5
 * @example =REAM.PRICE(1.640625, 45, 90, 250, 0.15, 0.2) // 2.746523
 * @see sources: cost
 */
export function price(
  cost: any[][],
  setupTime?: any[][],
  setupRate?: any[][],
  batch?: any[][],
  overhead?: any[][],
  margin?: any[][],
): any[][] {
  return mapRows(partCosts.price, { cost }, { setupTime, setupRate, batch, overhead, margin });
}

/**
 * Returns the saving per part.
 *
 * @customfunction SAVING
 * @param presentCost Present cost per part, money
 * @param proposedCost Proposed cost per part, money
 * @returns Saving per part, money. Negative is a loss.
 * @cell saving per part [money]
 * @example =REAM.SAVING(2.5, 2.2) // 0.3
 * @see sources: cost
 */
export function saving(presentCost: any[][], proposedCost: any[][]): any[][] {
  return mapRows(partCosts.saving, { presentCost, proposedCost });
}

/**
 * Returns the months until a saving has paid for an investment.
 *
 * @customfunction PAYBACK
 * @param investment One-time cost of the change, money
 * @param savingPerPart Saving per part (SAVING), money
 * @param partsPerYear Parts per year
 * @returns Payback, months
 * @cell payback [months]
 * @remarks Without interest.
 * @example =REAM.PAYBACK(6000, 0.3, 40000) // 6
 * @example =REAM.PAYBACK(6000, -0.1, 40000) // #N/A
 * @see sources: cost
 */
export function payback(investment: any[][], savingPerPart: any[][], partsPerYear: any[][]): any[][] {
  return mapRows(partCosts.payback, { investment, savingPerPart, partsPerYear });
}

/**
 * Returns the quantity at which a proposal costs as much as the present process.
 *
 * @customfunction BREAKEVEN
 * @param presentFixed Present fixed cost, such as fixtures, tools, and setup, money
 * @param presentCost Present cost per part, money
 * @param proposedFixed Proposed fixed cost, money
 * @param proposedCost Proposed cost per part, money
 * @returns Break-even quantity in parts, not rounded. 0 if the proposal costs no more in either and less in one.
 * @cell break-even quantity [parts]
 * @remarks Where no quantity separates the two, the message says why.
 * @example =REAM.BREAKEVEN(0, 200, 2000000, 100) // 20000
 * @example =REAM.BREAKEVEN(500, 1, 0, 2) // #N/A
 * @see sources: break-even
 */
export function breakEven(
  presentFixed: any[][],
  presentCost: any[][],
  proposedFixed: any[][],
  proposedCost: any[][],
): any[][] {
  return mapRows(partCosts.breakEven, { presentFixed, presentCost, proposedFixed, proposedCost });
}

/**
 * Lists the cost of the present process and a proposal, item by item.
 *
 * @customfunction COMPARE
 * @param present Seven cells in this order: cycle time (s), machine rate (per hour), edge cost, parts per edge, change time (s), other cost, scrap rate (a share). A blank counts as 0.
 * @param proposed The same seven cells of the proposal (s, money, a share)
 * @param [partsPerYear] Parts per year. Without it the last row is empty.
 * @list present, proposed
 * @returns A table with a header: line, present, proposed, saving. Money per part, percent, parts per hour, money per year.
 * @remarks Parts per edge may be blank where neither an edge nor a change costs anything.
 * @example =REAM.COMPARE({60;90;0;0;0;0;0}, {48;90;0;0;0;0;0}, 1000) // "line", "present", "proposed", "saving"; "machine time", 1.5, 1.2, 0.3; "edge", 0, 0, 0; "edge change", 0, 0, 0; "other operations", 0, 0, 0; "scrap", 0, 0, 0; "cost per part", 1.5, 1.2, 0.3; "saving, % of present", "", "", 20; "parts per hour", 60, 75, ""; "cost per year", 1500, 1200, 300
 * @see sources: cost
 */
export function compare(present: any[][], proposed: any[][], partsPerYear?: any[][]): any[][] {
  return spill(
    comparison.compare,
    { present: list(blanksAsZero(present)), proposed: list(blanksAsZero(proposed)) },
    { partsPerYear },
  );
}

/**
 * Returns the hourly rate of a machine from its costs.
 *
 * @customfunction MACHINERATE
 * @param price Price of the machine, money
 * @param years Years in which it is written off, a number
 * @param hours Staffed hours per year, h
 * @param [interest] Interest per year as a share (0.06 is 6 %). Default 0.
 * @param [space] Cost of floor space per year, money. Default 0.
 * @param [energy] Cost of energy per year, money. Default 0.
 * @param [upkeep] Cost of upkeep per year, money. Default 0.
 * @param [uptime] Share of the hours that it runs (0.85 is 85 %). Default 1.
 * @returns Machine rate, money per hour
 * @cell machine rate [per hour]
 * @remarks Interest counts on half the price. Wages are not in it.
 * @example =REAM.MACHINERATE(250000, 8, 4000, 0.06, 3000, 4800, 10000) // 14.1375
 * @see sources: cost
 */
export function machineRate(
  price: any[][],
  years: any[][],
  hours: any[][],
  interest?: any[][],
  space?: any[][],
  energy?: any[][],
  upkeep?: any[][],
  uptime?: any[][],
): any[][] {
  return mapRows(toolStock.machineRate, { price, years, hours }, { interest, space, energy, upkeep, uptime });
}

/** In these columns the position counts, so a blank must keep its place; a wholly blank one stays blank. */
function blanksAsZero(column: any[][]): any[][] {
  const cells = cellsOf(column);
  if (cells.every((row) => row.every(isBlank))) return cells;
  return cells.map((row) => row.map((cell) => (isBlank(cell) ? 0 : cell)));
}
