// workbook: what was typed into a cell of the browser workbook, as the file that it came from is to hold it.

import type { Model } from "@odoo/o-spreadsheet";
import { functionsIn } from "../xlsx/formula-tokens.ts";
import type { CellValue } from "../xlsx/read-sheet.ts";
import type { StoredNames } from "../xlsx/stored-names.ts";
import type { NewCell } from "../xlsx/write-sheet.ts";
import { fileError } from "./error-codes.ts";
import { fileFormula, fillsOneCell, isForOthers } from "./grid-formulas.ts";
import { DAYS_TO_1904 } from "./imported-cells.ts";
import type { GridLibrary } from "./library.ts";
import { spreadBox } from "./spread-box.ts";
import { isTextFormat, textOfCell } from "./text-cells.ts";
import { isUncomputed } from "./uncomputed.ts";

export class TypedCells {
  /** Formulas that no other program has, which were given as their values. */
  asValues = 0;

  constructor(
    private readonly model: Model,
    private readonly library: GridLibrary,
    private readonly names: StoredNames,
    /** Whether the file counts dates from 1904. */
    private readonly from1904: boolean,
  ) {}

  /**
   * Undefined if the file cannot hold it: the value alone of a formula that fills more cells, or one without a mark.
   * @param mark gives the mark of a formula that takes the cells it needs
   */
  cell(
    sheetId: string,
    row: number,
    column: number,
    content: string,
    mark: () => string | undefined,
  ): NewCell | undefined {
    const { getters } = this.model;
    const position = { sheetId, row, col: column };
    const value = this.value(position);
    const isFormula = getters.getCell(position)?.isFormula === true;
    if (!isFormula) return { value: content === "" ? null : value, formula: null };
    if (!isForOthers(content, this.library)) {
      const { top, left, bottom, right } = spreadBox(this.model, position);
      this.asValues++;
      return top === bottom && left === right ? { value, formula: null } : undefined;
    }
    const text = fileFormula(content.slice(1), this.names);
    const known = this.isKnown(content) ? value : null;
    if (fillsOneCell(text)) return { value: known, formula: { text } };
    const box = spreadBox(this.model, position);
    const spillMark = mark();
    // Without it a program takes one cell of a range for the whole.
    return spillMark ? { value: known, formula: { text, spill: { box, mark: spillMark } } } : undefined;
  }

  private isKnown(content: string): boolean {
    const registry = this.library.registries.functionRegistry as any;
    return functionsIn(content).every((name) => registry.contains(name) && !isUncomputed(name));
  }

  private value(position: { sheetId: string; row: number; col: number }): CellValue {
    const { value, type, format } = this.model.getters.getEvaluatedCell(position) as {
      value: number | string | boolean | null;
      type: string;
      format?: string;
    };
    const isDate = format !== undefined && this.library.helpers.isDateTimeFormat(format);
    if (this.from1904 && isDate && typeof value === "number") return value - DAYS_TO_1904;
    if (type === "error") return { code: fileError(String(value)) };
    return typeof value === "string" && isTextFormat(format) ? textOfCell(value) : value;
  }
}
