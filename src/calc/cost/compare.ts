// calc: the present process beside a proposed one, line by line.

import type { Formula, FormulaStep } from "../formula.ts";
import { shown, wrong } from "../problem.ts";
import { type CostLines, costLines, less } from "./part-cost.ts";

const COLUMN =
  "cycle time, machine rate, edge cost, parts per edge, change time, other cost, scrap rate, in that order";

/**
 * Ten rows of four cells under a header: cost per part by line, saving, parts per hour, cost per year (`""` without
 * `partsPerYear`). `present` and `proposed` hold cycle time (s), machine rate per hour, edge cost, parts per edge,
 * change time (s), other cost and scrap rate.
 */
export function compare(
  present: readonly number[],
  proposed: readonly number[],
  partsPerYear?: number,
): (string | number)[][] {
  const before = linesOf(present, "present");
  const after = linesOf(proposed, "proposed");
  const row = (line: string, from: number, to: number) => [line, from, to, less(from, to)];
  return [
    ["line", "present", "proposed", "saving"],
    row("machine time", before.machine, after.machine),
    row("edge", before.edge, after.edge),
    row("edge change", before.change, after.change),
    row("other operations", before.other, after.other),
    row("scrap", before.scrap, after.scrap),
    row("cost per part", before.total, after.total),
    [
      "saving, % of present",
      "",
      "",
      before.total > 0 ? (100 * less(before.total, after.total)) / before.total : "",
    ],
    ["parts per hour", 3600 / present[0], 3600 / proposed[0], ""],
    partsPerYear === undefined
      ? ["cost per year", "", "", ""]
      : row("cost per year", before.total * partsPerYear, after.total * partsPerYear),
  ];
}

compare.formula = {
  source: "cost",
  given: (present: readonly number[], proposed: readonly number[], partsPerYear?: number) => {
    const named = (values: readonly number[], name: string) =>
      NAMES.map(([symbol, unit], at) => [`${symbol}${name}`, [values[at], unit]] as const);
    return {
      ...Object.fromEntries([...named(present, "Present"), ...named(proposed, "Proposed")]),
      ...(partsPerYear === undefined ? {} : { partsPerYear }),
    };
  },
  steps: (_units, present: readonly number[], proposed: readonly number[], partsPerYear?: number) => {
    const of = (name: string, [, , edge, , change]: readonly number[]): FormulaStep[] => [
      { symbol: `machineTime${name}`, expression: `rate${name} * cycle${name} / 3600`, unit: "money" },
      {
        symbol: `edge${name}`,
        expression: edge === 0 ? "0" : `edgeCost${name} / parts${name}`,
        unit: "money",
      },
      {
        symbol: `edgeChange${name}`,
        expression: change === 0 ? "0" : `rate${name} * change${name} / 3600 / parts${name}`,
        unit: "money",
      },
      {
        symbol: `cost${name}`,
        expression: `(machineTime${name} + edge${name} + edgeChange${name} + other${name}) / (1 - scrap${name})`,
        unit: "money",
      },
    ];
    return [
      ...of("Present", present),
      ...of("Proposed", proposed),
      { symbol: "saving", expression: "costPresent - costProposed", unit: "money" },
      ...(partsPerYear === undefined
        ? []
        : [{ symbol: "savingPerYear", expression: "saving * partsPerYear", unit: "money" }]),
    ];
  },
} satisfies Formula;

/** Symbols and units of the seven values of a column. */
const NAMES = [
  ["cycle", "s"],
  ["rate", "per hour"],
  ["edgeCost", "money"],
  ["parts", "parts"],
  ["change", "s"],
  ["other", "money"],
  ["scrap", ""],
] as const;

function linesOf(column: readonly number[], name: string): CostLines {
  if (column.length !== 7) wrong(`${name} holds ${column.length} values. Enter ${COLUMN}.`);
  const [cycle, rate, edge, parts, change, other, scrap] = column;
  if (!(cycle > 0)) wrong(`${name} has the cycle time ${shown(cycle)}. Enter the seconds per part.`);
  if (!(rate > 0)) wrong(`${name} has the machine rate ${shown(rate)}. Enter the rate per hour.`);
  if (!(parts > 0) && (edge !== 0 || change !== 0)) {
    wrong(
      `${name} has an edge or a change and ${shown(parts)} parts per edge. Enter the parts that one edge makes.`,
    );
  }
  if (!(scrap >= 0 && scrap < 1))
    wrong(
      `${name} has the scrap rate ${shown(scrap)}. Enter a share from 0 to under 1, such as 0.02 for 2 %.`,
    );
  return costLines(cycle, rate, edge, parts, change, other, scrap);
}
