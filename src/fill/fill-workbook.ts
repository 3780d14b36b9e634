// fill: a workbook file in, the same file with new values out, and what there is to report.

import { cellName } from "../workbook/xlsx/addresses.ts";
import { openPackage } from "../workbook/xlsx/package.ts";
import { type NewValue, withValues } from "../workbook/xlsx/sheet-values.ts";
import { type StoredNames, storedNames } from "../workbook/xlsx/stored-names.ts";
import { Computer, hasValue, type Outcome } from "./compute.ts";
import { formulasToCompute, type ParsedCell, parseAll } from "./dependents.ts";
import type { Functions } from "./formula/evaluate.ts";
import { CellError, isMatrix, type Matrix, type Scalar } from "./formula/values.ts";
import { loadWorkbook, type Sheet, scopes } from "./load.ts";
import { readValues } from "./read-values.ts";
import { newSheetReport, type SheetReport, type WorkbookReport } from "./report.ts";
import { isWorksheetFunction } from "./worksheet-functions.ts";

export interface Filled {
  /** The file in pieces; undefined if nothing in it changes. */
  readonly pieces: Uint8Array[] | undefined;
  readonly report: WorkbookReport;
}

export type Progress = (done: number, of: number) => void;

export function fillWorkbook(bytes: Uint8Array, functions: Functions, progress: Progress = () => {}): Filled {
  const file = openPackage(bytes);
  const names = namesOf(functions);
  const workbook = loadWorkbook(file, names);
  const scopeOf = scopes(workbook, names);
  const cells = workbook.sheets.flatMap(({ formulas }) => formulas);
  const parsed = parseAll(cells, ({ sheet, row, column }) => scopeOf(sheet, row, column));
  const chosen = formulasToCompute(parsed, workbook.sheets.length);
  const helping = parsed.filter(
    (cell) => !chosen.certain.has(cell) && !chosen.possible.has(cell) && !hasValue(cell),
  );
  const read = areasRead([...chosen.certain, ...chosen.possible, ...helping]);
  const grids = readValues(file, workbook, read);
  const computer = new Computer(workbook, grids, functions, scopeOf, chosen, helping, parsed);
  computer.run((done) => progress(done, chosen.certain.size + chosen.possible.size));

  const parts = new Map<string, string>();
  const sheets = workbook.sheets.map((sheet, i) => {
    const outcomes = [...computer.outcomes]
      .filter(([cell]) => cell.sheet === i)
      .sort(([a], [b]) => a.row - b.row || a.column - b.column);
    return writeSheet(sheet, outcomes, parts);
  });
  const notes =
    workbook.parts.signed && parts.size > 0
      ? ["the workbook is signed, and its signature no longer holds"]
      : [];
  return { pieces: parts.size > 0 ? file.with(parts) : undefined, report: { sheets, notes } };
}

function namesOf(functions: Functions): StoredNames {
  const ours = [...functions.keys()].filter(isWorksheetFunction);
  return storedNames(ours.map((name) => name.slice(name.indexOf(".") + 1)));
}

/** The areas whose values are read; undefined if any cell may be. */
function areasRead(cells: readonly ParsedCell[]) {
  if (cells.some(({ isMoving }) => isMoving)) return undefined;
  return cells.flatMap(({ formula }) => formula.areas);
}

function writeSheet(
  sheet: Sheet,
  outcomes: readonly (readonly [ParsedCell, Outcome])[],
  parts: Map<string, string>,
): SheetReport {
  const report = newSheetReport(sheet.name);
  const values = new Map<number, NewValue>();
  for (const [cell, outcome] of outcomes) {
    const name = cellName(cell.row, cell.column);
    if (outcome.kind === "kept") {
      report.keep(name, outcome.why);
      continue;
    }
    report.compute(name, firstError(outcome.value));
    if (cell.array) report.spill(name, placeArray(cell, outcome.value, values));
    else values.set(placeOf(cell.row, cell.column), { value: outcome.value as Scalar, isSpilled: false });
  }
  if (values.size === 0) return report.done(0);
  const written = withValues(sheet.source, (row, column) => values.get(placeOf(row, column)));
  if (written.text !== sheet.source.text) parts.set(sheet.part, written.text);
  return report.done(values.size - written.found);
}

const placeOf = (row: number, column: number) => row * 16_384 + column;

/** Sets the values of an array's cells; gives the size of the result if it is not that of the array in the file. */
function placeArray(
  cell: ParsedCell,
  value: Scalar | Matrix,
  values: Map<number, NewValue>,
): { rows: number; columns: number } | undefined {
  const { top, left, bottom, right } = cell.array!;
  const matrix = isMatrix(value) ? value : [[value]];
  for (let row = top; row <= bottom; row++)
    for (let column = left; column <= right; column++) {
      const isSpilled = row !== cell.row || column !== cell.column;
      const one = matrix[row - top]?.[column - left] ?? null;
      values.set(placeOf(row, column), { value: one, isSpilled });
    }
  const [rows, columns] = [matrix.length, matrix[0]?.length ?? 0];
  return rows === bottom - top + 1 && columns === right - left + 1 ? undefined : { rows, columns };
}

function firstError(value: Scalar | Matrix): CellError | undefined {
  if (!isMatrix(value)) return value instanceof CellError ? value : undefined;
  for (const line of value) for (const cell of line) if (cell instanceof CellError) return cell;
  return undefined;
}
