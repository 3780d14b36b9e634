// workbook: what becomes of rows or columns, and of references to them, where some are inserted or taken out.

import { type Box, boxName, type Corner, columnName, LAST_COLUMN, LAST_ROW, readBox } from "./addresses.ts";
import { firstFrom } from "./ascending.ts";
import { NotCertain } from "./map-elements.ts";

export type Axis = "row" | "column";

export interface LineShift {
  readonly axis: Axis;
  readonly last: number;
  /** Where a line is now; undefined if it is gone. */
  line(at: number): number | undefined;
  /** Where it is now, or where the line is that stands in its place. */
  nearest(at: number): number;
  /** Where a run of lines is now, as far as it is left. */
  run(first: number, last: number): readonly [number, number] | undefined;
  /** Whether lines are taken out or put in within a run. */
  isWithin(first: number, last: number): boolean;
}

const lastOf = (axis: Axis) => (axis === "row" ? LAST_ROW : LAST_COLUMN);

export function insertion(axis: Axis, at: number, count: number): LineShift {
  const end = lastOf(axis);
  const line = (place: number) => {
    const now = place >= at ? place + count : place;
    return now > end ? undefined : now;
  };
  return {
    axis,
    last: end,
    line,
    nearest: (place) => line(place) ?? end,
    run(first, last) {
      if (first === 0 && last === end) return [first, last];
      const start = line(first);
      return start === undefined ? undefined : [start, line(last) ?? end];
    },
    isWithin: (first, last) => at > first && at <= last,
  };
}

/** @param gone in ascending order */
export function removal(axis: Axis, gone: readonly number[]): LineShift {
  const end = lastOf(axis);
  /** How many are gone before a line. */
  const before = (place: number) => firstFrom(gone, place);
  const isGone = (place: number) => gone[before(place)] === place;
  return {
    axis,
    last: end,
    line: (place) => (isGone(place) ? undefined : place - before(place)),
    nearest: (place) => place - before(place),
    run(first, last) {
      if (first === 0 && last === end) return [first, last];
      const start = first - before(first);
      // As many as are left from the first line that stays.
      const left = last - first + 1 - (before(last + 1) - before(first));
      return left === 0 ? undefined : [start, start + left - 1];
    },
    isWithin: (first, last) => before(last + 1) > before(first),
  };
}

/** A rectangle where it is now. */
export function shiftedBox(box: Box, shift: LineShift): Box | undefined {
  if (shift.axis === "row") {
    const run = shift.run(box.top, box.bottom);
    return run && { ...box, top: run[0], bottom: run[1] };
  }
  const run = shift.run(box.left, box.right);
  return run && { ...box, left: run[0], right: run[1] };
}

/** `B7` or `B7:D9` where it is now; undefined if nothing of it is left. @throws NotCertain if it is no range */
export function shiftedRef(ref: string, shift: LineShift): string | undefined {
  const box = readBox(ref);
  if (!box) throw new NotCertain(ref);
  const now = shiftedBox(box, shift);
  return now && boxName(now);
}

/** Several ranges with spaces between them; what is left of ranges that are gone stays. @throws NotCertain */
export const shiftedRefs = (refs: string, shift: LineShift): string =>
  refs
    .trim()
    .split(/\s+/)
    .filter((ref) => ref !== "")
    .flatMap((ref) => (ref === "#REF!" ? ref : (shiftedRef(ref, shift) ?? [])))
    .join(" ");

export const lineOf = (corner: Corner, axis: Axis): number | undefined =>
  axis === "row" ? corner.row : corner.column;

export const isFixed = (corner: Corner, axis: Axis): boolean =>
  axis === "row" ? corner.fixedRow : corner.fixedColumn;

/** The text of a corner whose row or column is another. */
export function cornerAt(corner: Corner, axis: Axis, line: number): string {
  const { row, column, fixedRow, fixedColumn } =
    axis === "row" ? { ...corner, row: line } : { ...corner, column: line };
  const letters = column === undefined ? "" : (fixedColumn ? "$" : "") + columnName(column);
  return letters + (row === undefined ? "" : `${fixedRow ? "$" : ""}${row + 1}`);
}
