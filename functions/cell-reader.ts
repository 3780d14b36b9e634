// functions: reads the cells of one argument, one at a time, and says what each is.

import type { Units } from "../src/calc/lengths.ts";
import { errorCell, isBlank, isErrorCell, passedOn, valueError } from "./cells.ts";
import type { CallArgument, Column } from "./columns.ts";
import { isUnitsWord, unitsTooEarly } from "./early-units.ts";

/** A cell that a calculation takes. */
export const VALUE = 0;
export const BLANK = 1;
export const PROBLEM = 2;
/** Beyond the end of a range. */
export const OUTSIDE = 3;

/** Reads single cells of one argument; a text that repeats the one before is not read again. */
export class CellReader {
  /** What the last cell came to: its value, undefined for a blank, an error cell for a problem. */
  value: any;
  private lastCell: unknown;
  private lastUnits: Units | undefined;
  private lastValue: any;

  constructor(
    private readonly stated: CallArgument,
    private readonly unitsColumn: Column | undefined,
    private readonly call: readonly CallArgument[],
  ) {}

  units(i: number): Units {
    const units = this.unitsColumn?.values[i * this.unitsColumn.stride];
    return units === "in" ? "in" : "mm";
  }

  read(cell: unknown, i: number): number {
    const { name, argument } = this.stated;
    if (isBlank(cell) || (cell === 0 && !argument.zeroCounts)) {
      this.value = undefined;
      return BLANK;
    }
    if (isErrorCell(cell)) {
      this.value = passedOn(cell, name);
      return PROBLEM;
    }
    const units = this.units(i);
    if (cell === this.lastCell && units === this.lastUnits) {
      this.value = this.lastValue;
      return VALUE;
    }
    try {
      this.value = argument.read(cell, name, units, this.unitsColumn !== undefined);
    } catch (thrown) {
      this.value =
        this.unitsColumn && isUnitsWord(cell)
          ? valueError(unitsTooEarly(this.stated, String(cell).trim(), this.call))
          : errorCell(thrown);
      return PROBLEM;
    }
    this.lastCell = cell;
    this.lastUnits = units;
    this.lastValue = this.value;
    return VALUE;
  }
}
