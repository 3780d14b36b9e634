// fill: the values of a sheet, column by column.

import { LAST_COLUMN, LAST_ROW } from "../workbook/xlsx/addresses.ts";
import { type Area, type Matrix, NotKnown, type Scalar } from "./formula/values.ts";

/** The most cells that are taken out of a sheet at once. */
const LARGEST_RANGE = 8_000_000;

/** Stands where a formula has no value yet. */
export const UNVALUED = Symbol("a formula without a value");
type Kept = Scalar | typeof UNVALUED;

export class Grid {
  private readonly columns = new Map<number, Kept[]>();
  private rows = 0;
  private width = 0;

  /** Makes the sheet at least so large, so that areas that reach to its end are cut there. */
  reach(row: number, column: number): void {
    if (row >= this.rows) this.rows = row + 1;
    if (column >= this.width) this.width = column + 1;
  }

  set(row: number, column: number, value: Kept): void {
    let cells = this.columns.get(column);
    if (!cells) {
      cells = [];
      this.columns.set(column, cells);
    }
    cells[row] = value;
    this.reach(row, column);
  }

  get(row: number, column: number): Scalar {
    const value = this.columns.get(column)?.[row] ?? null;
    if (value === UNVALUED) throw new NotKnown("a cell that has no value yet");
    return value as Scalar;
  }

  matrix(area: Area): Matrix {
    const bottom = area.bottom === LAST_ROW ? Math.max(area.top, this.rows - 1) : area.bottom;
    const right = area.right === LAST_COLUMN ? Math.max(area.left, this.width - 1) : area.right;
    const height = bottom - area.top + 1;
    const width = right - area.left + 1;
    if (height * width > LARGEST_RANGE) throw new NotKnown("a range of too many cells");
    const lines: Matrix = new Array(height);
    for (let row = 0; row < height; row++) lines[row] = new Array(width).fill(null);
    for (let i = 0; i < width; i++) {
      const cells = this.columns.get(area.left + i);
      if (!cells) continue;
      const end = Math.min(bottom + 1, cells.length);
      for (let row = area.top; row < end; row++) {
        const value = cells[row];
        if (value === undefined) continue;
        if (value === UNVALUED) throw new NotKnown("a cell that has no value yet");
        lines[row - area.top]![i] = value as Scalar;
      }
    }
    return lines;
  }
}
