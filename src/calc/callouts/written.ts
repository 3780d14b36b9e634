// calc: the parts of a callout as they are written, before they are joined to a size with its deviations.

import type { Cursor, Quantity } from "./quantities.ts";

export interface WrittenDeviation {
  readonly sign: 1 | -1;
  readonly quantity: Quantity;
}

/** One or two deviations, or ± one. */
export interface WrittenTolerance {
  readonly deviations: readonly WrittenDeviation[];
  readonly plusMinus: boolean;
}

export interface Written {
  size: Quantity | undefined;
  /** The other limit, where two limits are written. */
  limit: Quantity | undefined;
  tolerance: WrittenTolerance | undefined;
  /** The limits beside a class became its deviations. */
  classes: string[];
  count: number | undefined;
  /** A count parted from the size by spaces on both sides (`10 x 20`): the size may be the one before the ×. */
  isCountApart: boolean;
  depth: Quantity | undefined;
  /** A depth behind an × with nothing that says so (`8 H7 x4`): it may be a count. */
  isDepthBare: boolean;
  through: boolean;
  /** The first word that a hole alone has beside it: REAM, BORE, HOLES, THRU. */
  holeWord: string | undefined;
  /** To be reached after plating, anodizing and the like; "perhaps" after something that may be a coating. */
  coated: boolean | "perhaps";
  marks: string[];
  /** Kept words, as places in the text. */
  notes: { start: number; end: number }[];
  /** The same in the other unit, in brackets. */
  second: Written | undefined;
  /** What the next tolerance would belong to, in words, where that is not the size. */
  behind: string | undefined;
}

export const nothingWritten = (): Written => ({
  size: undefined,
  limit: undefined,
  tolerance: undefined,
  classes: [],
  count: undefined,
  isCountApart: false,
  depth: undefined,
  isDepthBare: false,
  through: false,
  holeWord: undefined,
  coated: false,
  marks: [],
  notes: [],
  second: undefined,
  behind: undefined,
});

/** Whether the size has a whole tolerance: from then on other words are a note. */
export function isToleranced({ limit, classes, tolerance }: Written): boolean {
  return (
    limit !== undefined ||
    classes.length > 0 ||
    (tolerance !== undefined && (tolerance.plusMinus || tolerance.deviations.length === 2))
  );
}

/** Keeps the words from one place to another as a note, joined to the note that ends there. */
export function keepNote(written: Written, cursor: Cursor, start: number, end: number): void {
  const last = written.notes[written.notes.length - 1];
  if (last && /^[ \n]?$/.test(cursor.plain.slice(last.end, start))) last.end = end;
  else written.notes.push({ start, end });
}
