// workbook: what the cells of a sheet in an .xlsx file hold, as they would be typed into the browser workbook's grid.

import { Refusal } from "../workbook.ts";
import { type Box, cellName, contains, readBox } from "../xlsx/addresses.ts";
import { type SharedFormula, sharedFormula } from "../xlsx/formula-shift.ts";
import { insideOf, type SheetCell, type SheetText, visitCells } from "../xlsx/sheet-cells.ts";
import type { CellValue } from "../xlsx/sheet-values.ts";
import type { StoredNames } from "../xlsx/stored-names.ts";
import { richText } from "../xlsx/workbook-parts.ts";
import { attribute, readCellText } from "../xlsx/xml-text.ts";
import { gridFormula, readsOtherWorkbook, readsTable } from "./grid-formulas.ts";

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
  /** The last row and column with content, from 0; -1 on an empty sheet. */
  readonly lastRow: number;
  readonly lastColumn: number;
  readonly links: number;
  readonly whatIfTables: number;
}

/** What the importer needs so as not to take a text for something else. */
export interface Literals {
  /** Whether the grid would read this text, as it stands, as a number or a date. */
  isOther(text: string): boolean;
}

/** Signs of all shared formulas of a sheet written out, and cells with content. */
const MOST_SIGNS = 64 * 2 ** 20;
const MOST_CELLS = 400_000;

export function readSheet(
  source: SheetText,
  names: StoredNames,
  sharedString: (place: number) => string,
  literals: Literals,
): ReadSheet {
  const { text } = source;
  const cells = new Map<string, ReadCell>();
  const shared = new Map<string, { formula: SharedFormula; row: number; column: number }>();
  let arrays: Box[] = [];
  let [lastRow, lastColumn, links, whatIfTables, signs] = [-1, -1, 0, 0, 0];

  const formulaOf = (cell: SheetCell): string | undefined => {
    const { formula: span, row, column } = cell;
    if (!span) return undefined;
    const tag = text.slice(span.start, span.open);
    const kind = attribute(tag, "t");
    const written = insideOf(text, span);
    if (kind === "dataTable") whatIfTables++;
    if (kind === "array") {
      const box = readBox(attribute(tag, "ref") ?? "");
      if (box && (box.bottom > box.top || box.right > box.left)) arrays.push(box);
    }
    if (kind !== "shared") return kind === "dataTable" || written === "" ? undefined : written;
    const group = attribute(tag, "si") ?? "";
    if (written !== "") {
      shared.set(group, { formula: sharedFormula(written), row, column });
      return written;
    }
    const first = shared.get(group);
    return first?.formula.at(row - first.row, column - first.column);
  };

  visitCells(source, (cell) => {
    const { row, column } = cell;
    const formula = formulaOf(cell);
    if (formula === undefined) {
      arrays = arrays.filter(({ bottom }) => bottom >= row);
      // A part of another cell's result: the grid makes it anew.
      if (arrays.some((box) => contains(box, row, column))) return;
    }
    const value = fileValue(text, cell, sharedString);
    if (formula === undefined && (value === null || value === "")) return;
    lastRow = Math.max(lastRow, row);
    lastColumn = Math.max(lastColumn, column);
    const decoded = formula === undefined ? undefined : gridFormula(formula, names);
    signs += decoded?.length ?? 0;
    if (signs > MOST_SIGNS || cells.size >= MOST_CELLS)
      throw new Refusal("the workbook is too large for a browser: fill it with npm run fill instead");
    const isLink = decoded !== undefined && readsOtherWorkbook(decoded);
    if (isLink) links++;
    if (decoded === undefined || isLink) {
      const content = typedValue(value, literals);
      cells.set(cellName(row, column), { content, kind: "value", hasTableName: false, value });
    } else {
      const hasTableName = readsTable(decoded);
      cells.set(cellName(row, column), { content: `=${decoded}`, kind: "formula", hasTableName, value });
    }
  });
  return { cells, lastRow, lastColumn, links, whatIfTables };
}

function fileValue(text: string, cell: SheetCell, sharedString: (place: number) => string): CellValue {
  if (cell.type === "inlineStr")
    return cell.inline ? richText(text.slice(cell.inline.open, cell.inline.close)) : null;
  if (!cell.value) return null;
  const held = insideOf(text, cell.value);
  if (cell.type === "s") return sharedString(Number(held));
  if (cell.type === "str") return readCellText(text.slice(cell.value.open, cell.value.close));
  if (cell.type === "e") return { code: held };
  if (cell.type === "b") return held.trim() === "1" || held.trim() === "true";
  if (cell.type === "d") return held;
  if (held.trim() === "") return null;
  const number = Number(held);
  if (!Number.isFinite(number))
    throw new Refusal(
      `the workbook is damaged: a cell holds ${JSON.stringify(held.slice(0, 20))} as a number`,
    );
  return number;
}

/** A value as it is typed so that it stays what it is: a text 1/4 is no date, 007 no number, =A1 no formula. */
export function typedValue(value: CellValue, literals: Literals): string {
  if (value === null) return "";
  if (typeof value === "number") return String(value);
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  if (typeof value === "object") return value.code === "#REF!" ? "#REF" : value.code;
  const isOther = /^(?:['=+#-]|true$|false$)/i.test(value) || literals.isOther(value);
  return isOther ? `'${value}` : value;
}
