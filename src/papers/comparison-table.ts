// papers: tables of a before and after: a label, the present process, the proposed one.

import type { Pair } from "./comparison-inputs.ts";
import { cell, type Layout, type PaperCell } from "./layout.ts";

/** What the page computes once and reads in several places. */
export interface Processes {
  readonly cycle: Pair;
  readonly edgeCost: Pair;
  readonly mean: Pair;
  readonly low: Pair;
  readonly high: Pair;
  readonly count: Pair;
  readonly callout: string;
  /** The cell that names what is missing, "" if nothing is. */
  readonly missing: string;
}

export const SIDES = ["present", "proposed"] as const;

/** A row of a table with its label and one cell for each side, and something behind. */
export function sides(
  layout: Layout,
  label: string,
  of: (side: (typeof SIDES)[number]) => string,
  format?: string,
  behind = "",
  look?: PaperCell["look"],
): Pair {
  const [, present, proposed] = layout.row([
    cell(label, 4, "label"),
    cell(of("present"), 2, look, format, "center"),
    cell(of("proposed"), 2, look, format, "center"),
    cell(behind, 4),
  ]);
  return { present: fixed(present), proposed: fixed(proposed), basis: "" };
}

/** With `$` signs, so that the cell may be moved. */
export const fixed = (address: string): string => address.replace(/^([A-Z]+)(\d+)$/, "$$$1$$$2");

export function tableHead(layout: Layout, title: string, behind = ""): void {
  layout.row([
    cell(title, 4, "header"),
    cell("Present", 2, "header", undefined, "center"),
    cell("Proposed", 2, "header", undefined, "center"),
    cell(behind, 4, "header"),
  ]);
}
