// fill: a workbook file in, the same file with new values out, and what there is to report.

import { type Box, cellName, contains } from "../workbook/xlsx/addresses.ts";
import { openPackage, over, type PackageParts } from "../workbook/xlsx/package.ts";
import { type StoredNames, storedNames } from "../workbook/xlsx/stored-names.ts";
import { cellAt, type NewCell, placeOf, writeCells } from "../workbook/xlsx/write-sheet.ts";
import { Computer, type Outcome, sizeOfResult } from "./compute.ts";
import {
  type Changed,
  formulasFrom,
  formulasToCompute,
  meet,
  type ParsedCell,
  parseAll,
  usesWorksheetFunctions,
} from "./dependents.ts";
import type { Functions } from "./formula/evaluate.ts";
import { CellError, isMatrix, type Matrix, type Scalar } from "./formula/values.ts";
import { type LoadedWorkbook, loadWorkbook, type Sheet, scopes } from "./load.ts";
import { withoutFunctions } from "./own-formulas.ts";
import { readValues } from "./read-values.ts";
import { newSheetReport, type SheetReport, type WorkbookReport } from "./report.ts";
import { hasContent } from "./room.ts";
import { isWorksheetFunction } from "./worksheet-functions.ts";

export interface Filled {
  /** The file in pieces; undefined if nothing in it changes. */
  readonly pieces: Uint8Array[] | undefined;
  readonly report: WorkbookReport;
}

export type Progress = (done: number, of: number) => void;

export function fillWorkbook(
  bytes: Uint8Array,
  functions: Functions,
  progress: Progress = () => {},
  ownFormulas = false,
): Filled {
  const file = openPackage(bytes);
  const { parts, report, kept } = fillParts(file, functions, { progress });
  if (!ownFormulas) return { pieces: parts.size > 0 ? file.with(parts) : undefined, report };
  const own = withoutFunctions(
    over(file, parts),
    namesOf(functions),
    kept,
    (copy, changed) => fillParts(copy, functions, { changed }).parts,
  );
  for (const [part, text] of own.parts) parts.set(part, text);
  return { pieces: parts.size > 0 ? file.with(parts) : undefined, report: { ...report, own: own.report } };
}

export interface FillOptions {
  readonly progress?: Progress;
  /** Cells that have changed since the file was filled, by the place of their sheet and by `placeOf`. */
  readonly changed?: readonly ReadonlySet<number>[];
  /** Values in place of formulas with functions of ours. */
  readonly valuesOnly?: boolean;
}

export interface FilledParts {
  /** The parts that get new values. */
  readonly parts: Map<string, string>;
  readonly report: WorkbookReport;
  /** Formulas that keep a value that may no longer hold, by the place of their sheet and by `placeOf`. */
  readonly kept: readonly ReadonlySet<number>[];
}

export function fillParts(
  file: PackageParts,
  functions: Functions,
  { progress = () => {}, changed = [], valuesOnly = false }: FillOptions,
): FilledParts {
  const workbook = loadWorkbook(file, namesOf(functions));
  const outcomes = computeWorkbook(file, workbook, functions, progress, changedIn(changed));
  const parts = new Map<string, string>();
  const sheets = workbook.sheets.map((sheet, i) => {
    const own = [...outcomes].filter(([cell]) => cell.sheet === i);
    return writeSheet(
      sheet,
      own.sort(([a], [b]) => a.row - b.row || a.column - b.column),
      parts,
      valuesOnly,
    );
  });
  const notes =
    workbook.parts.signed && parts.size > 0
      ? ["the workbook is signed, and its signature no longer holds"]
      : [];
  const kept = workbook.sheets.map(() => new Set<number>());
  for (const [{ sheet, row, column }, { kind }] of outcomes)
    if (kind === "kept") kept[sheet].add(placeOf(row, column));
  return { parts, report: { sheets, notes }, kept };
}

/** Reads a workbook once; then tells of changed cells which formulas depend on them, or may, by their places. */
export function dependentsIn(
  file: PackageParts,
  functions: Functions,
): (changed: readonly ReadonlySet<number>[]) => ReadonlySet<number>[] {
  const names = namesOf(functions);
  const workbook = loadWorkbook(file, names);
  const parsed = parsedIn(workbook, names);
  return (changed) => {
    const { certain, possible } = formulasFrom(parsed, workbook.sheets.length, changedIn(changed));
    const places = workbook.sheets.map(() => new Set<number>());
    for (const { sheet, row, column } of [...certain, ...possible]) places[sheet].add(placeOf(row, column));
    return places;
  };
}

function parsedIn(workbook: LoadedWorkbook, names: StoredNames): ParsedCell[] {
  const scopeOf = scopes(workbook, names);
  const cells = workbook.sheets.flatMap(({ formulas }) => formulas);
  return parseAll(cells, ({ sheet, row, column }) => scopeOf(sheet, row, column));
}

const changedIn = (places: readonly ReadonlySet<number>[]): Changed[] =>
  places.flatMap((own, sheet) =>
    [...own].map((place) => {
      const { row, column } = cellAt(place);
      return { sheet, filled: { top: row, left: column, bottom: row, right: column } };
    }),
  );

/** Results that outgrow the cells they had may outgrow one another. */
const MOST_PASSES = 6;

function computeWorkbook(
  file: PackageParts,
  workbook: LoadedWorkbook,
  functions: Functions,
  progress: Progress,
  changed: readonly Changed[],
): ReadonlyMap<ParsedCell, Outcome> {
  const names = namesOf(functions);
  const scopeOf = scopes(workbook, names);
  const parsed = parsedIn(workbook, names);
  for (let pass = 1; ; pass++) {
    const chosen = formulasToCompute(parsed, workbook.sheets.length, workbook.parts.asksForAll, changed);
    const { certain, possible } = chosen;
    const helping = parsed.filter((cell) => !certain.has(cell) && !possible.has(cell) && !cell.hasValue);
    const grids = readValues(file, workbook, areasRead([...certain, ...possible, ...helping]));
    const computer = new Computer({ workbook, grids, functions, scopeOf, chosen, helping, all: parsed });
    computer.run((done) => progress(done, certain.size + possible.size));
    if (!grow(workbook, parsed, computer.outcomes, pass === MOST_PASSES)) return computer.outcomes;
  }
}

/**
 * Gives results that need more cells than they have the cells they need, or says that others stand in their way.
 * Whether any of them did: all is computed anew then, for others read those cells.
 */
function grow(
  { sheets, parts }: LoadedWorkbook,
  all: readonly ParsedCell[],
  outcomes: ReadonlyMap<ParsedCell, Outcome>,
  isLast: boolean,
): boolean {
  const grown = [...outcomes].flatMap(([cell, outcome]) => {
    const box = outcome.kind === "computed" && cell.isSpill ? boxOf(cell, outcome.value) : undefined;
    return box && !contains(cell.filled, box.bottom, box.right) ? [{ cell, box }] : [];
  });
  for (const { cell, box } of grown) {
    const { shape, text } = sheets[cell.sheet];
    const others = [
      ...shape.merges,
      ...parts.tables.filter(({ sheet }) => sheet === cell.sheet).map(({ box }) => box),
      ...all.filter((other) => other !== cell && other.sheet === cell.sheet).map(({ filled }) => filled),
    ];
    const { filled } = cell;
    const wide: Box = {
      ...filled,
      bottom: Math.max(filled.bottom, box.bottom),
      right: Math.max(filled.right, box.right),
    };
    cell.isBlocked = isLast || others.some((other) => meet(other, box)) || hasContent(text, box, filled);
    if (!cell.isBlocked) cell.filled = wide;
  }
  return grown.length > 0;
}

const boxOf = ({ row, column }: ParsedCell, value: Scalar | Matrix): Box => {
  const { rows, columns } = sizeOfResult(value);
  return { top: row, left: column, bottom: row + rows - 1, right: column + columns - 1 };
};

function namesOf(functions: Functions): StoredNames {
  const ours = [...functions.keys()].filter(isWorksheetFunction);
  return storedNames(ours.map((name) => name.slice(name.indexOf(".") + 1)));
}

/** The areas whose values are read; undefined if any cell may be. */
function areasRead(cells: readonly ParsedCell[]) {
  if (cells.some(({ formula }) => formula.isMoving)) return undefined;
  return cells.flatMap(({ formula }) => formula.areas);
}

function writeSheet(
  sheet: Sheet,
  outcomes: readonly (readonly [ParsedCell, Outcome])[],
  parts: Map<string, string>,
  valuesOnly: boolean,
): SheetReport {
  const report = newSheetReport(sheet.name);
  const cells = new Map<number, NewCell>();
  for (const [cell, outcome] of outcomes) {
    const name = cellName(cell.row, cell.column);
    if (outcome.kind === "kept") {
      report.keep(name, outcome.why);
      continue;
    }
    report.compute(name, firstError(outcome.value));
    if (!cell.array) cells.set(placeOf(cell.row, cell.column), { value: outcome.value as Scalar });
    else report.spill(name, placeArray(cell, outcome.value, cells));
    if (valuesOnly && usesWorksheetFunctions(cell)) dropFormula(cell, cells);
  }
  const written = cells.size === 0 ? sheet.text : writeCells(sheet.text, cells, sheet.shape);
  if (written !== sheet.text) parts.set(sheet.part, written);
  return report.done();
}

/** Sets the values of an array's cells; gives the size of the result if it is not that of the array in the file. */
function placeArray(
  cell: ParsedCell,
  value: Scalar | Matrix,
  cells: Map<number, NewCell>,
): { rows: number; columns: number } | undefined {
  const { top, left, bottom, right } = cell.filled;
  const matrix = isMatrix(value) ? value : [[value]];
  for (let row = top; row <= bottom; row++)
    for (let column = left; column <= right; column++) {
      const one = matrix[row - top]?.[column - left] ?? null;
      cells.set(placeOf(row, column), { value: one, isSpilled: true });
    }
  const box = boxOf(cell, value);
  const first = matrix[0]?.[0] ?? null;
  cells.set(placeOf(top, left), cell.isSpill ? { value: first, fills: box } : { value: first });
  const size = sizeOfResult(value);
  return box.bottom === cell.array!.bottom && box.right === cell.array!.right ? undefined : size;
}

/** Leaves the values of a formula as constants. */
function dropFormula({ filled }: ParsedCell, cells: Map<number, NewCell>): void {
  for (let row = filled.top; row <= filled.bottom; row++)
    for (let column = filled.left; column <= filled.right; column++) {
      const { value } = cells.get(placeOf(row, column))!;
      cells.set(placeOf(row, column), { value, formula: null });
    }
}

function firstError(value: Scalar | Matrix): CellError | undefined {
  if (!isMatrix(value)) return value instanceof CellError ? value : undefined;
  for (const line of value) for (const cell of line) if (cell instanceof CellError) return cell;
  return undefined;
}
