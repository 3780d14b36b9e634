// workbook: what the cells of a sheet in an .xlsx file hold, as they would be typed into the browser workbook's grid.

import { Refusal } from "../workbook.ts";
import { type Box, cellName, contains } from "../xlsx/addresses.ts";
import { type CellValue, type FormulaRoom, readSheet, storedValue } from "../xlsx/read-sheet.ts";
import type { StoredNames } from "../xlsx/stored-names.ts";
import type { SheetShape } from "../xlsx/walk-sheet.ts";
import { gridError } from "./error-codes.ts";
import { gridFormula, readsOtherWorkbook, readsTable } from "./grid-formulas.ts";
import { isTooLarge } from "./importer-files.ts";

export interface ReadCell {
  /** As typed. */
  readonly content: string;
  readonly kind: "value" | "formula";
  /** The formula names cells of a table: the importer writes them out. */
  readonly hasTableName: boolean;
  /** What the file shows in the cell. */
  readonly value: CellValue;
}

export interface ReadSheet {
  /** By address. */
  readonly cells: ReadonlyMap<string, ReadCell>;
  readonly shape: SheetShape;
  /** The last row and column with content, from 0; -1 on an empty sheet. */
  readonly lastRow: number;
  readonly lastColumn: number;
  readonly links: number;
  readonly whatIfTables: number;
  /** Formulas that fill more cells than are followed. */
  readonly unread: number;
}

/** What the importer needs so as not to take a text for something else. */
export interface Literals {
  /** Whether the grid would read this text, as it stands, as a number or a date. */
  isOther(text: string): boolean;
}

/** Cells with content. */
const MOST_CELLS = 400_000;

export function readCells(
  text: string,
  room: FormulaRoom,
  names: StoredNames,
  sharedString: (place: number) => string | undefined,
  literals: Literals,
): ReadSheet {
  const cells = new Map<string, ReadCell>();
  let arrays: Box[] = [];
  let [lastRow, lastColumn, links, whatIfTables, unread] = [-1, -1, 0, 0, 0];
  const shape = readSheet(text, room, (cell, formula) => {
    const { row, column } = cell;
    const isLarge = isTooLarge(formula?.array);
    if (formula?.isWhatIfTable) whatIfTables++;
    else if (isLarge) unread++;
    else if (formula?.array) arrays.push(formula.array);
    const written = isLarge ? undefined : formula?.text;
    if (written === undefined) {
      arrays = arrays.filter(({ bottom }) => bottom >= row);
      // A part of another cell's result: the grid makes it anew.
      if (arrays.some((box) => contains(box, row, column))) return;
    }
    const value = storedValue(text, cell, sharedString);
    if (written === undefined && (value === null || value === "")) return;
    lastRow = Math.max(lastRow, row);
    lastColumn = Math.max(lastColumn, column);
    if (cells.size >= MOST_CELLS)
      throw new Refusal("the workbook is too large for a browser: fill it with npm run fill instead");
    const decoded = written === undefined ? undefined : gridFormula(written, names);
    const isLink = decoded !== undefined && readsOtherWorkbook(decoded);
    if (isLink) links++;
    if (decoded === undefined || isLink) {
      const content = asUserInput(value, literals);
      cells.set(cellName(row, column), { content, kind: "value", hasTableName: false, value });
    } else {
      const hasTableName = readsTable(decoded);
      cells.set(cellName(row, column), { content: `=${decoded}`, kind: "formula", hasTableName, value });
    }
  });
  return { cells, shape, lastRow, lastColumn, links, whatIfTables, unread };
}

/** A value as it is typed so that it stays what it is: a text 1/4 is no date, 007 no number, =A1 no formula. */
export function asUserInput(value: CellValue, literals: Literals): string {
  if (value === null) return "";
  if (typeof value === "number") return String(value);
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  if (typeof value === "object") return gridError(value.code);
  const isOther = /^(?:['=+#-]|true$|false$)/i.test(value) || literals.isOther(value);
  return isOther ? `'${value}` : value;
}
