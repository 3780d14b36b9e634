// fill: the values of a sheet, column by column.

import { LAST_COLUMN, LAST_ROW } from "../workbook/xlsx/addresses.ts";
import { cellAt, placeOf } from "../workbook/xlsx/write-sheet.ts";
import { Area, type Matrix, type Scalar, Unsupported } from "./formula/values.ts";

/** The most cells that are taken out of a sheet at once. */
const LARGEST_RANGE = 8_000_000;

/** Stands where a formula has no value yet, or one that no longer holds. */
export const UNVALUED = Symbol("a formula without a value");
type Stored = Scalar | typeof UNVALUED;

export class Grid {
  private readonly columns = new Map<number, Stored[]>();
  /** The cells written to, in order, since somebody asked. */
  private written: number[] | undefined;
  private rows = 0;
  private width = 0;

  /** Makes the sheet at least so large, so that areas that reach to its end are cut there. */
  reach(row: number, column: number): void {
    if (row >= this.rows) this.rows = row + 1;
    if (column >= this.width) this.width = column + 1;
  }

  set(row: number, column: number, value: Stored): void {
    let cells = this.columns.get(column);
    if (!cells) {
      cells = [];
      this.columns.set(column, cells);
    }
    cells[row] = value;
    this.written?.push(placeOf(row, column));
    this.reach(row, column);
  }

  /** A point in time, to ask from. */
  mark(): number {
    this.written ??= [];
    return this.written.length;
  }

  isChangedSince({ top, left, bottom, right }: Area, mark: number): boolean {
    for (let i = mark; i < this.written!.length; i++) {
      const { row, column } = cellAt(this.written![i]);
      if (row >= top && row <= bottom && column >= left && column <= right) return true;
    }
    return false;
  }

  get(row: number, column: number): Scalar {
    return valued(this.columns.get(column)?.[row] ?? null);
  }

  matrix(area: Area): Matrix {
    const { top, left, height, width } = this.measured(area);
    if (height * width > LARGEST_RANGE) throw new Unsupported("a range of too many cells");
    const lines: Matrix = new Array(height);
    for (let row = 0; row < height; row++) lines[row] = new Array(width).fill(null);
    for (let i = 0; i < width; i++) {
      const cells = this.columns.get(left + i);
      if (!cells) continue;
      const end = Math.min(top + height, cells.length);
      for (let row = top; row < end; row++) {
        const value = cells[row];
        if (value !== undefined) lines[row - top][i] = valued(value);
      }
    }
    return lines;
  }

  each(area: Area, visit: (value: Scalar) => void): void {
    const { top, left, height, width } = this.measured(area);
    if (height * width > LARGEST_RANGE) throw new Unsupported("a range of too many cells");
    const columns = Array.from({ length: width }, (_, i) => this.columns.get(left + i));
    for (let row = top; row < top + height; row++)
      for (let i = 0; i < width; i++) visit(valued(columns[i]?.[row] ?? null));
  }

  private measured(area: Area) {
    const { top, left, bottom, right } = this.cut(area);
    return { top, left, height: bottom - top + 1, width: right - left + 1 };
  }

  /** An area that reaches to the end of the sheet ends where the cells do. */
  cut({ sheet, top, left, bottom, right }: Area): Area {
    const last = bottom === LAST_ROW ? Math.max(top, this.rows - 1) : bottom;
    const end = right === LAST_COLUMN ? Math.max(left, this.width - 1) : right;
    return new Area(sheet, top, left, last, end);
  }
}

function valued(value: Stored): Scalar {
  if (value === UNVALUED) throw new Unsupported("a cell whose value is not known");
  return value;
}
