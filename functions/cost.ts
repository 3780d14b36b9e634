// functions: cost of an edge and of a part, price, and one process against another. Money has no unit.

import { compare as linesBeside } from "../src/calc/cost/compare.ts";
import {
  edgeCost as costOfEdge,
  partCost as costOfPart,
  toolCost as edgePerPart,
  payback as monthsToPay,
  price as priceOfPart,
  breakEven as quantityOfEqualCost,
  saving as savingOf,
} from "../src/calc/cost/part-cost.ts";
import { isBlank } from "./cells.ts";
import { cellsOf } from "./columns.ts";
import { list, mapRows, spill } from "./map-rows.ts";

/**
 * Gives the cost of an edge: one life of a reamer, from grind to grind.
 *
 * @customfunction EDGECOST
 * @param price Price of the new tool, money
 * @param [edges] Edges that are used one after the other, as on an insert, a whole number, no unit; 1 if omitted
 * @param [regrinds] How often the tool is reground, a whole number, no unit; 0 if omitted
 * @param [regrindCost] Cost of one regrind, money; 0 if omitted
 * @returns Cost of one life, money
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
  return mapRows(costOfEdge, { price }, { edges, regrinds, regrindCost });
}

/**
 * Gives the cost of the edge per part.
 *
 * @customfunction TOOLCOST
 * @param edgeCost Cost of an edge, one life from grind to grind (EDGECOST), money
 * @param partsPerEdge Parts that one edge makes, a number
 * @returns Cost per part, money
 * @example =REAM.TOOLCOST(48.75, 400) // 0.121875
 * @see sources: cost
 */
export function toolCost(edgeCost: any[][], partsPerEdge: any[][]): any[][] {
  return mapRows(edgePerPart, { edgeCost, partsPerEdge });
}

/**
 * Gives the cost of a good part: machine time, edge, change of the edge, other operations, and scrap.
 *
 * @customfunction PARTCOST
 * @param cycleTime Time per part, s
 * @param machineRate Rate of the machine, money per hour
 * @param [edgeCost] Cost of an edge, one life from grind to grind (EDGECOST), money; 0 if omitted
 * @param [partsPerEdge] Parts that one edge makes, a number; needed with edgeCost or changeTime
 * @param [changeTime] Time to change a worn edge, s; 0 if omitted
 * @param [otherCost] Cost of the other operations per part, material too if you like, money; 0 if omitted
 * @param [scrapRate] Share of the parts that is scrap, no unit, from 0 to under 1; 0 if omitted
 * @returns Cost per good part, money
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
    costOfPart,
    { cycleTime, machineRate },
    { edgeCost, partsPerEdge, changeTime, otherCost, scrapRate },
  );
}

/**
 * Gives the price of a part from its cost, the set-up shared over the batch, overhead and margin.
 *
 * @customfunction PRICE
 * @param cost Cost per part, money
 * @param [setupTime] Time to set up the batch, min; 0 if omitted
 * @param [setupRate] Rate of setting up, money per hour; needed with setupTime
 * @param [batch] Parts of the batch, a number; needed with setupTime
 * @param [overhead] Overhead as a share of the cost, no unit (0.15 is 15 %); 0 if omitted
 * @param [margin] Margin as a share of the price, no unit, from 0 to under 1; 0 if omitted
 * @returns Price per part, money
 * @remarks The margin is on the price, not a markup on the cost: a margin of 20 % is a markup of 25 %.
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
  return mapRows(priceOfPart, { cost }, { setupTime, setupRate, batch, overhead, margin });
}

/**
 * Gives the saving per part; negative is a loss.
 *
 * @customfunction SAVING
 * @param presentCost Present cost per part, money
 * @param proposedCost Proposed cost per part, money
 * @returns Saving per part, money
 * @example =REAM.SAVING(2.5, 2.2) // 0.3
 * @see sources: cost
 */
export function saving(presentCost: any[][], proposedCost: any[][]): any[][] {
  return mapRows(savingOf, { presentCost, proposedCost });
}

/**
 * Gives the months until a saving has paid for an investment.
 *
 * @customfunction PAYBACK
 * @param investment What the change costs at once, money
 * @param savingPerPart Saving per part (SAVING), money
 * @param partsPerYear Parts per year, a number
 * @returns Months
 * @remarks Without interest.
 * @example =REAM.PAYBACK(6000, 0.3, 40000) // 6
 * @example =REAM.PAYBACK(6000, -0.1, 40000) // #N/A
 * @see sources: cost
 */
export function payback(investment: any[][], savingPerPart: any[][], partsPerYear: any[][]): any[][] {
  return mapRows(monthsToPay, { investment, savingPerPart, partsPerYear });
}

/**
 * Gives the quantity at which a proposal with more fixed cost and less cost per part comes to the same as the present process.
 *
 * @customfunction BREAKEVEN
 * @param presentFixed Present fixed cost, such as fixtures, tools and set-up, money
 * @param presentCost Present cost per part, money
 * @param proposedFixed Proposed fixed cost, money
 * @param proposedCost Proposed cost per part, money
 * @returns Quantity, parts, not rounded; 0 if the proposal is no dearer in either and cheaper in one
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
  return mapRows(quantityOfEqualCost, { presentFixed, presentCost, proposedFixed, proposedCost });
}

/**
 * Sets the present process beside a proposed one, line by line: cost per part, saving, parts per hour and cost per year.
 *
 * @customfunction COMPARE
 * @param present Seven cells in this order: cycle time (s), machine rate (per hour), edge cost, parts per edge, change time (s), other cost, scrap rate (a share); a blank counts as 0
 * @param proposed The same seven cells (s, money, a share) of the proposal
 * @param [partsPerYear] Parts per year, a number; without it the last line is blank
 * @returns A table with a header: line, present, proposed, saving; money per part, per cent, parts per hour, money per year
 * @remarks An edge is one life from grind to grind. Parts per edge may be blank where neither an edge nor a change costs anything.
 * @example =REAM.COMPARE({60;90;0;0;0;0;0}, {48;90;0;0;0;0;0}, 1000) // "line", "present", "proposed", "saving"; "machine time", 1.5, 1.2, 0.3; "edge", 0, 0, 0; "edge change", 0, 0, 0; "other operations", 0, 0, 0; "scrap", 0, 0, 0; "cost per part", 1.5, 1.2, 0.3; "saving, % of present", "", "", 20; "parts per hour", 60, 75, ""; "cost per year", 1500, 1200, 300
 * @see sources: cost
 */
export function compare(present: any[][], proposed: any[][], partsPerYear?: any[][]): any[][] {
  return spill(
    linesBeside,
    { present: list(blanksAsZero(present)), proposed: list(blanksAsZero(proposed)) },
    { partsPerYear },
  );
}

/** In these columns the position counts, so a blank must keep its place; a wholly blank one stays blank. */
function blanksAsZero(column: any[][]): any[][] {
  const cells = cellsOf(column);
  if (cells.every((row) => row.every(isBlank))) return cells;
  return cells.map((row) => row.map((cell) => (isBlank(cell) ? 0 : cell)));
}
