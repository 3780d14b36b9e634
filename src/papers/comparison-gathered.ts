// papers: what COMPARE reads, gathered below the inputs of a before and after: each side as a column of cells, and the
// names of what is missing.

import { cellAddress } from "../workbook/workbook.ts";
import { type ComparisonInputs, INPUT_COLUMNS } from "./comparison-inputs.ts";
import { fixed, type Processes, SIDES } from "./comparison-table.ts";
import type { Layout } from "./layout.ts";

type Side = (typeof SIDES)[number];

/** The seven cells of a side as COMPARE takes them. */
export const seven = (
  side: Side,
  typed: ComparisonInputs,
  { cycle, edgeCost, mean }: Pick<Processes, "cycle" | "edgeCost" | "mean">,
): string[] => [
  cycle[side],
  typed.machineRate,
  edgeCost[side],
  mean[side],
  typed.edgeChange[side],
  typed.otherCost[side],
  typed.scrap[side],
];

const LABELS = [
  "Cycle time, s",
  "Machine rate, per hour",
  "Edge cost",
  "Parts per edge",
  "Edge change, s",
  "Other cost per part",
  "Scrap, share of the parts",
];
/** Rows of a side that may be blank: blank counts as 0, and the paper says so. */
const OPTIONAL = LABELS.slice(4);

/** The row, from 1, that names what is missing; the gathered rows follow it. */
const firstRow = ({ lastRow }: ComparisonInputs) => lastRow + 2;

export const missingCell = (typed: ComparisonInputs): string =>
  fixed(cellAddress(firstRow(typed) - 1, INPUT_COLUMNS.present));

/** The columns of seven cells. */
export function gatheredColumn(side: Side, typed: ComparisonInputs): string {
  const first = firstRow(typed) + 1;
  const at = (row: number) => fixed(cellAddress(row - 1, INPUT_COLUMNS[side]));
  return `${at(first)}:${at(first + LABELS.length - 1)}`;
}

/** The names of what counts as 0 because nobody typed it. */
export function blankNames(typed: ComparisonInputs): string {
  const pairs = [typed.edgeChange, typed.otherCost, typed.scrap];
  const names = OPTIONAL.flatMap((label, at) =>
    SIDES.map((side) => `IF(${pairs[at][side]}="","${label.toLowerCase()} (${side})","")`),
  );
  return `TEXTJOIN(", ",TRUE,${names.join(",")})`;
}

/** Writes the cells, once the rows of the page are there. */
export function gather(layout: Layout, typed: ComparisonInputs, processes: Processes): void {
  const { label, present } = INPUT_COLUMNS;
  const first = firstRow(typed);
  const needed: [cell: string, name: string][] = [
    [typed.partsPerYear, "parts per year"],
    [typed.machineRate, "machine rate"],
    ...SIDES.flatMap((side): [string, string][] => [
      [processes.cycle[side], `operations (${side})`],
      [typed.tool[side], `tool (${side})`],
      [processes.edgeCost[side], `price of the tool (${side})`],
    ]),
  ];
  const names = [
    ...needed.map(([cell, name]) => `IF(${cell}="","${name}","")`),
    ...SIDES.map((side) => `IF(${processes.count[side]}=0,"lives (${side})","")`),
  ];
  layout.beside(first, label, "Missing", "note");
  layout.beside(first, present, `=TEXTJOIN(", ",TRUE,${names.join(",")})`, "note");
  LABELS.forEach((name, at) => {
    layout.beside(first + 1 + at, label, name, "note");
    for (const side of SIDES) {
      const source = seven(side, typed, processes)[at];
      const content = OPTIONAL.includes(name) ? `=IF(${source}="",0,${source})` : `=${source}`;
      layout.beside(first + 1 + at, INPUT_COLUMNS[side], content, "note");
    }
  });
}
