// workbook: the cells of a sheet as the grid's library has exported it, with formulas in the form that a spreadsheet
// program stores them in, and with every value beside its formula.

import { cellName } from "../xlsx/addresses.ts";
import type { CellValue } from "../xlsx/read-sheet.ts";
import { type SheetCell, walkSheet } from "../xlsx/walk-sheet.ts";
import { escapeXml, writeCellText } from "../xlsx/xml-text.ts";

export interface SavedCell {
  /** As a file holds it, without "="; undefined for a constant. */
  readonly formula?: string;
  /** The cells that the formula fills, `A2:B9`; undefined for a formula that never fills more than its own. */
  readonly array?: string;
  /** Undefined if it is not known. */
  readonly value: CellValue | undefined;
}

/** The part with each cell as `cellAt` has it; undefined leaves a cell as it was exported. */
export function withSavedCells(
  part: string,
  cellAt: (row: number, column: number) => SavedCell | undefined,
): { text: string; arrays: number } {
  const pieces: string[] = [];
  let copied = 0;
  let arrays = 0;
  walkSheet(part, {
    cell(cell) {
      const saved = cellAt(cell.row, cell.column);
      if (!saved) return;
      if (saved.array) arrays++;
      pieces.push(part.slice(copied, cell.span.start), cellElement(cell, saved));
      copied = cell.span.end;
    },
  });
  pieces.push(part.slice(copied));
  return { text: pieces.join(""), arrays };
}

function cellElement({ row, column, attributes: { s: style } }: SheetCell, saved: SavedCell): string {
  const { type, inside } = valueElement(saved.value, saved.formula !== undefined);
  const attributes = [
    `r="${cellName(row, column)}"`,
    style === undefined ? "" : `s="${style}"`,
    saved.array ? 'cm="1"' : "",
    type === "" ? "" : `t="${type}"`,
  ];
  const start = `<c ${attributes.filter((one) => one !== "").join(" ")}`;
  const formula = formulaElement(saved);
  return formula + inside === "" ? `${start}/>` : `${start}>${formula}${inside}</c>`;
}

function formulaElement({ formula, array }: SavedCell): string {
  if (formula === undefined) return "";
  return array ? `<f t="array" ref="${array}">${escapeXml(formula)}</f>` : `<f>${escapeXml(formula)}</f>`;
}

function valueElement(value: CellValue | undefined, isComputed: boolean): { type: string; inside: string } {
  if (value === undefined || value === null) return { type: "", inside: "" };
  if (typeof value === "number") return { type: "", inside: `<v>${String(value).toUpperCase()}</v>` };
  if (typeof value === "boolean") return { type: "b", inside: `<v>${value ? 1 : 0}</v>` };
  if (typeof value === "object") return { type: "e", inside: `<v>${writeCellText(value.code)}</v>` };
  const space = /^\s|\s$|\n/.test(value) ? ' xml:space="preserve"' : "";
  const text = writeCellText(value);
  return isComputed
    ? { type: "str", inside: `<v${space}>${text}</v>` }
    : { type: "inlineStr", inside: `<is><t${space}>${text}</t></is>` };
}
