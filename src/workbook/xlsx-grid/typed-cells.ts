// workbook: what was typed into a cell of the browser workbook, as the file that it came from is to hold it.

import type { Model } from "@odoo/o-spreadsheet";
import type { CellValue } from "../xlsx/read-sheet.ts";
import type { StoredNames } from "../xlsx/stored-names.ts";
import type { NewCell } from "../xlsx/write-sheet.ts";
import { fileError } from "./error-codes.ts";
import { fileFormula, fillsOneCell, functionsIn } from "./grid-formulas.ts";
import type { GridLibrary } from "./library.ts";
import { isUncomputed } from "./uncomputed.ts";

export class TypedCells {
  constructor(
    private readonly model: Model,
    private readonly library: GridLibrary,
    private readonly names: StoredNames,
  ) {}

  /** `mark` gives the mark of a formula that takes the cells it needs. */
  cell(sheet: number, row: number, column: number, content: string, mark: () => string | undefined): NewCell {
    const { getters } = this.model;
    const position = { sheetId: getters.getSheetIds()[sheet], row, col: column };
    const value = this.value(position);
    const isFormula = getters.getCell(position)?.isFormula === true;
    if (!isFormula || this.isOfGridAlone(content))
      return { value: content === "" ? null : value, formula: null };
    const text = fileFormula(content.slice(1), this.names);
    const known = this.isKnown(content) ? value : null;
    if (fillsOneCell(text)) return { value: known, formula: { text } };
    const box = getters.getSpreadZone(position) ?? { top: row, left: column, bottom: row, right: column };
    const spillMark = mark();
    return { value: known, formula: { text, ...(spillMark ? { spill: { box, mark: spillMark } } : {}) } };
  }

  /** Functions that no other program has. */
  private isOfGridAlone(content: string): boolean {
    const registry = this.library.registries.functionRegistry as any;
    return functionsIn(content).some((name) => registry.contains(name) && !registry.get(name).isExported);
  }

  private isKnown(content: string): boolean {
    const registry = this.library.registries.functionRegistry as any;
    return functionsIn(content).every((name) => registry.contains(name) && !isUncomputed(name));
  }

  private value(position: { sheetId: string; row: number; col: number }): CellValue {
    const { value, type } = this.model.getters.getEvaluatedCell(position) as {
      value: number | string | boolean | null;
      type: string;
    };
    return type === "error" ? { code: fileError(String(value)) } : value;
  }
}
