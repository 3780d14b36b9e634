// calc: the present process beside a proposed one, line by line.

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

function linesOf(column: readonly number[], name: string): CostLines {
  if (column.length !== 7) wrong(`${name} holds ${column.length} values: give ${COLUMN}`);
  const [cycle, rate, edge, parts, change, other, scrap] = column;
  if (!(cycle > 0)) wrong(`${name} has the cycle time ${shown(cycle)}: give the seconds per part`);
  if (!(rate > 0)) wrong(`${name} has the machine rate ${shown(rate)}: give the rate per hour`);
  if (!(parts > 0) && (edge !== 0 || change !== 0)) {
    wrong(
      `${name} has an edge or a change and ${shown(parts)} parts per edge: give the parts that one edge makes`,
    );
  }
  if (!(scrap >= 0 && scrap < 1))
    wrong(`${name} has the scrap rate ${shown(scrap)}: give a share from 0 to under 1`);
  return costLines(cycle, rate, edge, parts, change, other, scrap);
}
