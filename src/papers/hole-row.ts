// papers: what a paper of one hole takes from a row of the quoting sheet. Copied as values: a paper stays what it is when
// the sheet is sorted.

import type { Units } from "./figures.ts";

export interface HoleRow {
  readonly part: string;
  readonly drawing: string;
  readonly callout: string;
  readonly units: Units;
  readonly material: string;
  readonly tool: string;
  /** In `units`; "" where the callout says it or nobody does. */
  readonly depth: number | string;
  readonly holes: number;
}

/** Number formats of lengths on paper. */
export const LENGTH: Readonly<Record<Units, string>> = { mm: "0.000", in: "0.0000" };
/** One decimal more: means, runout, limits to work to in inches. */
export const FINE: Readonly<Record<Units, string>> = { mm: "0.0000", in: "0.00000" };
export const WORK_TO: Readonly<Record<Units, string>> = { mm: "0.000", in: "0.00000" };
export const DEPTH: Readonly<Record<Units, string>> = { mm: "0.0", in: "0.00" };
