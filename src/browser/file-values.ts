// browser: where the grid computes a formula otherwise than the program that wrote the file, the cell shows the value of
// the file, until something before it changes; then it says that it is not computed here. Saving computes it anew.

import type { Model } from "@odoo/o-spreadsheet";
import { fillParts } from "../fill/fill-workbook.ts";
import type { Functions } from "../fill/formula/evaluate.ts";
import { cellName } from "../workbook/xlsx/addresses.ts";
import { type CellValue, formulaRoom, readSheet, storedValue } from "../workbook/xlsx/read-sheet.ts";
import { placeOf } from "../workbook/xlsx/write-sheet.ts";
import { fileError, gridError } from "../workbook/xlsx-grid/error-codes.ts";
import { functionsIn } from "../workbook/xlsx-grid/grid-formulas.ts";
import type { GridLibrary } from "../workbook/xlsx-grid/library.ts";
import type { OpenedWorkbook } from "../workbook/xlsx-grid/open-file.ts";
import { isUncomputed } from "../workbook/xlsx-grid/uncomputed.ts";

interface Position {
  readonly sheetId: string;
  readonly row: number;
  readonly col: number;
}

/** A cell as the grid evaluates it. */
interface Evaluated {
  readonly value: string | number | boolean | null;
  readonly type: string;
  readonly format?: string;
}

interface Differing {
  readonly formula: string;
  /** What the grid has computed from the cells as they were in the file. */
  readonly computed: Evaluated["value"];
  readonly shown: object;
}

/** They give another value every time. */
const volatile = new Set(["NOW", "TODAY", "RAND", "RANDBETWEEN", "RANDARRAY"]);

const NOTE = "The value of the file: the browser workbook would compute it otherwise.";
const STALE =
  "The browser workbook does not compute this as Excel does, and a cell before it has changed. Saving computes it.";

/** From now on this model shows such values; gives the cells, `Job 7!B5`. */
export function showFileValues(
  model: Model,
  values: FileValues,
  { helpers, constants }: GridLibrary,
): string[] {
  const getters = model.getters as any;
  const evaluate: (position: Position) => Evaluated = getters.getEvaluatedCell.bind(getters);
  const differing = new Map<string, Differing>();
  const names: string[] = [];
  for (const [sheet, sheetId] of (getters.getSheetIds() as string[]).entries())
    for (const position of getters.getEvaluatedCellsPositions(sheetId) as Position[]) {
      if (!getters.getCell(position)?.isFormula) continue;
      const formula: string = getters.getCellText(position, { showFormula: true });
      const address = cellName(position.row, position.col);
      const value = values[sheet]?.get(placeOf(position.row, position.col));
      const computed = evaluate(position);
      if (value === undefined || value === null || isAlike(value, computed) || isLeft(formula)) continue;
      const shown = shownValue(value, computed, (number, format) =>
        (helpers as any).formatValue(number, { format, locale: (constants as any).DEFAULT_LOCALE }),
      );
      differing.set(keyOf(position), { formula, computed: computed.value, shown });
      names.push(`${getters.getSheetName(sheetId)}!${address}`);
    }
  if (differing.size > 0)
    getters.getEvaluatedCell = (position: Position) => {
      const computed = evaluate(position);
      const found = differing.get(keyOf(position));
      if (!found || getters.getCellText(position, { showFormula: true }) !== found.formula) return computed;
      if (computed.value === found.computed) return found.shown;
      return { ...computed, type: "error", value: "#N/A", formattedValue: "#N/A", message: STALE };
    };
  return names;
}

/** Values of formulas, by the place of their sheet in the grid and by `placeOf`. */
export type FileValues = readonly ReadonlyMap<number, CellValue>[];

/** The values that the formulas of a file have once ours and what depends on them are computed. */
export function fileValues({ file, parts, places }: OpenedWorkbook, functions: Functions): FileValues {
  const filled = fillParts(file, functions, {}).parts;
  return places.map((place) => {
    const { part } = parts.sheets[place];
    const text = filled.get(part) ?? file.read(part);
    const values = new Map<number, CellValue>();
    readSheet(text, formulaRoom(), (cell, formula) => {
      if (formula)
        values.set(
          placeOf(cell.row, cell.column),
          storedValue(text, cell, () => undefined),
        );
    });
    return values;
  });
}

const keyOf = ({ sheetId, row, col }: Position): string => `${sheetId} ${row} ${col}`;

/** Our own functions are computed here as everywhere; what is not computed at all says so itself. */
const isLeft = (formula: string): boolean =>
  functionsIn(formula).some((name) => name.startsWith("REAM.") || volatile.has(name) || isUncomputed(name));

function isAlike(value: CellValue, { value: computed, type }: Evaluated): boolean {
  if (typeof value === "object" && value !== null)
    return type === "error" && fileError(String(computed)) === value.code;
  if (typeof value === "number" && typeof computed === "number")
    return Math.abs(value - computed) <= 1e-9 * Math.max(1, Math.abs(value));
  return value === computed || (value === "" && computed === null);
}

function shownValue(
  value: NonNullable<CellValue>,
  computed: Evaluated,
  write: (number: number, format: string | undefined) => string,
): object {
  const note = { note: NOTE, message: NOTE };
  if (typeof value === "object") {
    const code = gridError(value.code);
    return { ...computed, ...note, type: "error", value: code, formattedValue: code };
  }
  if (typeof value === "number")
    return { ...computed, ...note, type: "number", value, formattedValue: write(value, computed.format) };
  const text = typeof value === "boolean" ? String(value).toUpperCase() : value;
  return {
    ...computed,
    ...note,
    type: typeof value === "boolean" ? "boolean" : "text",
    value,
    formattedValue: text,
  };
}
