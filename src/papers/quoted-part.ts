// papers: a part as the quoting sheet has it.

import type { Units } from "./figures.ts";

/** What a row of the quoting sheet says. `rowNumber` is what a message names. */
export interface QuotedPart {
  readonly rowNumber: number;
  readonly part: string;
  readonly drawing: string;
  readonly callout: string;
  readonly units: Units;
  readonly lower: number;
  readonly upper: number;
  readonly depth: number | undefined;
  readonly holes: number;
  readonly material: string;
  readonly quantity: number;
  readonly breaks: readonly number[];
  /** Cost per part, not rounded. */
  readonly cost: number;
  readonly drill: string;
  readonly stock: number | undefined;
}
