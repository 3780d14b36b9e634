// workbook: what the grid's importer made of cells that are read here: formulas with names of tables, dates and texts.

import { readCell } from "../xlsx/addresses.ts";
import type { StoredNames } from "../xlsx/stored-names.ts";
import { gridFormula } from "./grid-formulas.ts";
import type { GridLibrary } from "./library.ts";
import type { ReadSheet } from "./read-cells.ts";
import { isTextFormat } from "./text-cells.ts";

/** The days from the one count of dates to the other. */
export const DAYS_TO_1904 = 1462;

/** Whether a cell has the format of texts, in which the grid shows what is typed as it is. */
export const textCellsOf = (model: any, name: string) => (address: string) => {
  if (!model) return false;
  const { row, column } = readCell(address)!;
  const position = { sheetId: model.getters.getSheetIdByName(name), row, col: column };
  return isTextFormat(model.getters.getCell(position)?.format);
};

/** Dates that count from 1904 as the grid counts them. */
export function countFrom1900(model: any, name: string, sheet: ReadSheet, { helpers }: GridLibrary): void {
  const sheetId = model.getters.getSheetIdByName(name);
  for (const [address, cell] of sheet.cells) {
    if (cell.kind === "formula" || typeof cell.value !== "number") continue;
    const { row, column } = readCell(address)!;
    const format = model.getters.getCell({ sheetId, row, col: column })?.format;
    if (format && (helpers as any).isDateTimeFormat(format))
      (sheet.cells as Map<string, typeof cell>).set(address, {
        ...cell,
        content: String(cell.value + DAYS_TO_1904),
      });
  }
}

/** Formulas with names of tables, which the importer has written out as ranges, in place of those that were read. */
export function writeTableFormulas(model: any, name: string, sheet: ReadSheet, names: StoredNames): void {
  const sheetId = model.getters.getSheetIdByName(name);
  for (const [address, cell] of sheet.cells) {
    if (!cell.hasTableName) continue;
    const { row, column } = readCell(address)!;
    const position = { sheetId, row, col: column };
    const written: string = model.getters.getCellText(position, { showFormula: true });
    if (written.startsWith("="))
      (sheet.cells as Map<string, typeof cell>).set(address, {
        ...cell,
        content: `=${gridFormula(written.slice(1), names)}`,
      });
  }
}
