// workbook: what the cells of a sheet in an .xlsx file hold: formulas in every form that a file may have them in, and
// the values beside them. The one reader, for filling a file and for showing it.

import { Refusal } from "../workbook.ts";
import { type Box, readBox } from "./addresses.ts";
import { type SharedFormula, sharedFormula } from "./formula-shift.ts";
import { insideOf, type SheetCell, type SheetShape, walkSheet } from "./walk-sheet.ts";
import { richText } from "./workbook-parts.ts";
import { readCellText } from "./xml-text.ts";

/** An error as the code that the cell shows; null for an empty cell. */
export type CellValue = number | string | boolean | { readonly code: string } | null;

export interface CellFormula {
  /** As the file holds it, shared ones written out; undefined for what has no text, such as a what-if table. */
  readonly text: string | undefined;
  /** The cells of an array formula, or of a what-if table. */
  readonly array: Box | undefined;
  /** Whether an array formula takes the size of its result. */
  readonly isSpill: boolean;
  readonly isWhatIfTable: boolean;
  /** Cells that it reads without naming them. */
  readonly reads: readonly Box[];
}

/** Signs of all formulas together, shared ones written out. */
const LARGEST_FORMULAS = 256 * 2 ** 20;

/** What is left for the formulas of a workbook. */
export interface FormulaRoom {
  characters: number;
}
export const formulaRoom = (characters = LARGEST_FORMULAS): FormulaRoom => ({ characters });

/** Calls `visit` for every cell that the file has, in its order. */
export function readSheet(
  text: string,
  room: FormulaRoom,
  visit: (cell: SheetCell, formula: CellFormula | undefined) => void,
): SheetShape {
  const shared = new Map<string, { formula: SharedFormula; row: number; column: number }>();
  return walkSheet(text, {
    cell(cell) {
      if (!cell.formula) return visit(cell, undefined);
      const { row, column, formula: span } = cell;
      const { t: kind, si: group = "", ref = "" } = span.attributes;
      let formula: string | undefined = insideOf(text, span);
      if (kind === "shared") {
        const first = shared.get(group);
        if (formula !== "") shared.set(group, { formula: sharedFormula(formula), row, column });
        else formula = first?.formula.at(row - first.row, column - first.column);
      }
      const isWhatIfTable = kind === "dataTable";
      if (isWhatIfTable || formula === "") formula = undefined;
      room.characters -= formula?.length ?? 0;
      if (room.characters < 0) throw new Refusal("the workbook holds more formulas than are read");
      const array = kind === "array" || isWhatIfTable ? readBox(ref) : undefined;
      visit(cell, {
        text: formula,
        array,
        isSpill: kind === "array" && array !== undefined && cell.attributes.cm !== undefined,
        isWhatIfTable,
        reads: isWhatIfTable && array ? readByTable(array, span.attributes) : [],
      });
    },
  });
}

/** A what-if table reads the row above it and the column before it, and puts values into one or two cells. */
function readByTable(
  { top, left, bottom, right }: Box,
  { r1 = "", r2 = "" }: Readonly<Record<string, string | undefined>>,
): Box[] {
  const above = Math.max(0, top - 1);
  const before = Math.max(0, left - 1);
  return [
    { top: above, left: before, bottom: above, right },
    { top: above, left: before, bottom, right: before },
    ...[r1, r2].flatMap((cell) => readBox(cell) ?? []),
  ];
}

/** What the file holds as the value of a cell; a date that is written out is its text. */
export function storedValue(
  text: string,
  { type, value, inline }: SheetCell,
  sharedString: (place: number) => string | undefined,
): CellValue {
  if (inline && type === "inlineStr") return richText(text.slice(inline.open, inline.close));
  if (!value) return null;
  const stored = insideOf(text, value);
  switch (type) {
    case "s":
      return sharedString(Number(stored)) ?? null;
    case "str":
      return readCellText(text.slice(value.open, value.close));
    case "e":
      return { code: stored };
    case "b":
      return stored.trim() === "1" || stored.trim() === "true";
    case "d":
      return stored;
    default:
      return stored.trim() === "" ? null : numberIn(stored);
  }
}

function numberIn(stored: string): number {
  const number = Number(stored);
  if (Number.isFinite(number)) return number;
  throw new Refusal(
    `the workbook is damaged: a cell holds ${JSON.stringify(stored.slice(0, 20))} as a number`,
  );
}
