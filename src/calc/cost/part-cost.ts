// calc: cost of an edge, of a part, and the price of a part. Times in s, rates per hour, money without a unit.

import type { Formula } from "../formula.ts";
import { none, shown, wrong } from "../problem.ts";

/** Cost of one tool life: (price + regrinds·regrindCost)/(edges·(regrinds + 1)). */
export function edgeCost(price: number, edges = 1, regrinds = 0, regrindCost = 0): number {
  return (price + regrinds * regrindCost) / (edges * (regrinds + 1));
}
edgeCost.formula = {
  source: "cost",
  defaults: { edges: 1, regrinds: 0, regrindCost: 0 },
  steps: () => [
    {
      symbol: "edgeCost",
      expression: "(price + regrinds * regrindCost) / (edges * (regrinds + 1))",
      unit: "money",
    },
  ],
} satisfies Formula;

/** Cost of the edge per part. */
export function toolCost(edgeCost: number, partsPerEdge: number): number {
  return edgeCost / partsPerEdge;
}
toolCost.formula = {
  source: "cost",
  steps: () => [{ symbol: "toolCost", expression: "edgeCost / partsPerEdge", unit: "money" }],
} satisfies Formula;

/** The lines of a part's cost before scrap. */
export interface CostLines {
  readonly machine: number;
  readonly edge: number;
  readonly change: number;
  readonly other: number;
  readonly scrap: number;
  readonly total: number;
}

export function costLines(
  cycleTime: number,
  machineRate: number,
  edgeCost: number,
  partsPerEdge: number,
  changeTime: number,
  otherCost: number,
  scrapRate: number,
): CostLines {
  const machine = (machineRate * cycleTime) / 3600;
  const edge = edgeCost === 0 ? 0 : edgeCost / partsPerEdge;
  const change = changeTime === 0 ? 0 : (machineRate * changeTime) / 3600 / partsPerEdge;
  const sum = machine + edge + change + otherCost;
  const total = sum / (1 - scrapRate);
  return { machine, edge, change, other: otherCost, scrap: total - sum, total };
}

/**
 * Cost of a good part: (rate·cycleTime/3600 + (edgeCost + rate·changeTime/3600)/partsPerEdge + otherCost)
 * over (1 − scrapRate).
 */
export function partCost(
  cycleTime: number,
  machineRate: number,
  edgeCost = 0,
  partsPerEdge?: number,
  changeTime = 0,
  otherCost = 0,
  scrapRate = 0,
): number {
  if (partsPerEdge === undefined && (edgeCost !== 0 || changeTime !== 0)) {
    const given = edgeCost !== 0 ? `edgeCost is ${shown(edgeCost)}` : `changeTime is ${shown(changeTime)}`;
    wrong(`partsPerEdge is empty or 0 and ${given}. Enter the parts that one edge makes.`);
  }
  return costLines(cycleTime, machineRate, edgeCost, partsPerEdge!, changeTime, otherCost, scrapRate).total;
}
partCost.formula = {
  source: "cost",
  defaults: { edgeCost: 0, changeTime: 0, otherCost: 0, scrapRate: 0 },
  steps: (_units, _cycleTime, _machineRate, _edgeCost?: number, partsPerEdge?: number) => {
    const edge =
      partsPerEdge === undefined ? "" : " + (edgeCost + machineRate * changeTime / 3600) / partsPerEdge";
    return [
      {
        symbol: "cost",
        expression: `(machineRate * cycleTime / 3600${edge} + otherCost) / (1 - scrapRate)`,
        unit: "money",
      },
    ];
  },
} satisfies Formula;

/** Price of a part: (cost + setup per part)·(1 + overhead)/(1 − margin); setup in minutes; margin is on the price. */
export function price(
  cost: number,
  setupTime = 0,
  setupRate?: number,
  batch?: number,
  overhead = 0,
  margin = 0,
): number {
  let setup = 0;
  if (setupTime !== 0) {
    if (setupRate === undefined)
      wrong("setupRate is empty or 0 and setupTime is not. Enter the rate per hour of setting up.");
    if (batch === undefined)
      wrong("batch is empty or 0 and setupTime is not. Enter the parts that one set-up makes.");
    setup = ((setupTime / 60) * setupRate) / batch;
  }
  return ((cost + setup) * (1 + overhead)) / (1 - margin);
}
price.formula = {
  source: "cost",
  defaults: { setupTime: 0, overhead: 0, margin: 0 },
  steps: (_units, _cost, setupTime: number = 0) => [
    {
      symbol: "price",
      expression: `(cost${setupTime === 0 ? "" : " + setupTime / 60 * setupRate / batch"}) * (1 + overhead) / (1 - margin)`,
      unit: "money",
    },
  ],
} satisfies Formula;

/** A difference of money without the floating-point hair of 2.3 − 2.2. */
export function less(first: number, second: number): number {
  const difference = first - second;
  return Math.abs(difference) < 1e5 ? Math.round(difference * 1e10) / 1e10 + 0 : difference;
}

/** Saving per part; negative is a loss. */
export function saving(presentCost: number, proposedCost: number): number {
  return less(presentCost, proposedCost);
}
saving.formula = {
  source: "cost",
  steps: () => [{ symbol: "saving", expression: "presentCost - proposedCost", unit: "money" }],
} satisfies Formula;

/** Months until the saving has paid for the investment; no saving is `none`. */
export function payback(investment: number, savingPerPart: number, partsPerYear: number): number {
  if (savingPerPart <= 0)
    none(`savingPerPart is ${shown(savingPerPart)}. Without a saving there is no payback.`);
  return (12 * investment) / (savingPerPart * partsPerYear);
}
payback.formula = {
  source: "cost",
  steps: () => [
    { symbol: "payback", expression: "12 * investment / (savingPerPart * partsPerYear)", unit: "months" },
  ],
} satisfies Formula;

/** The quantity at which both cost the same, not rounded; 0 where the proposal is no more expensive in either and cheaper in one. */
export function breakEven(
  presentFixed: number,
  presentCost: number,
  proposedFixed: number,
  proposedCost: number,
): number {
  const fixed = less(proposedFixed, presentFixed);
  const perPart = less(presentCost, proposedCost);
  if (fixed > 0 && perPart > 0) return fixed / perPart;
  if (perPart >= 0 && (fixed < 0 || perPart > 0)) return 0;
  if (fixed < 0) {
    const quantity = Number((fixed / perPart).toPrecision(6));
    return none(
      `proposedCost is more per part and proposedFixed is less. The proposal is cheaper only below ${quantity} parts.`,
    );
  }
  if (fixed === 0 && perPart === 0)
    return none("proposedFixed and proposedCost equal the present costs. No quantity separates them.");
  return none(
    perPart === 0
      ? "proposedCost equals presentCost and proposedFixed is more. The proposal costs more at every quantity."
      : "proposedCost is more per part and proposedFixed is not less. The proposal costs more at every quantity.",
  );
}
breakEven.formula = {
  source: "break-even",
  steps: (_units, presentFixed: number, _presentCost, proposedFixed: number) => [
    {
      symbol: "quantity",
      expression:
        less(proposedFixed, presentFixed) > 0
          ? "(proposedFixed - presentFixed) / (presentCost - proposedCost)"
          : "0",
      unit: "parts",
    },
  ],
} satisfies Formula;
