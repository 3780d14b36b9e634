// papers: what the blocks of a card share: labels beside values, and addresses of cells.

import { cell, type PaperCell } from "./layout.ts";

/** Addresses of what others read. */
export interface CardCells {
  readonly callout: string;
  readonly units: string;
  readonly lower: string;
  readonly upper: string;
  readonly measured: string;
  readonly depth: string;
  readonly plan: (part: number) => string;
  /** Where the cross-section goes. */
  readonly picture: string;
}

/** Label and value over half the width. */
export const fact = (
  label: string,
  content: PaperCell["content"],
  format?: string,
  look?: PaperCell["look"],
): PaperCell[] => [cell(label, 4, "label"), cell(content, 2, look, format, "left")];
/** Label and value over a third of the width. */
export const third = (
  label: string,
  content: PaperCell["content"],
  format?: string,
  look?: PaperCell["look"],
): PaperCell[] => [cell(label, 3, "label"), cell(content, 1, look, format, "left")];
/** A fact that a user writes, on a ruled line. */
export const typed = (label: string, content: PaperCell["content"] = "", format?: string): PaperCell[] =>
  fact(label, content, format, "line");
