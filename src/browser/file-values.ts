// browser: where the grid computes a formula otherwise than the program that wrote the file, the cell has the value of the
// file, for the formulas that read it too, until something before it changes; then it says that it is not computed here.
// Saving computes it anew.

import type { Model } from "@odoo/o-spreadsheet";
import { dependentsIn, fillParts } from "../fill/fill-workbook.ts";
import type { Functions } from "../fill/formula/evaluate.ts";
import { cellName } from "../workbook/xlsx/addresses.ts";
import { functionsIn } from "../workbook/xlsx/formula-tokens.ts";
import { type CellValue, formulaRoom, readSheet, storedValue } from "../workbook/xlsx/read-sheet.ts";
import { cellAt, placeOf } from "../workbook/xlsx/write-sheet.ts";
import { contentsSince } from "../workbook/xlsx-grid/changes.ts";
import { fileError, gridError } from "../workbook/xlsx-grid/error-codes.ts";
import { DAYS_TO_1904 } from "../workbook/xlsx-grid/imported-cells.ts";
import type { GridLibrary } from "../workbook/xlsx-grid/library.ts";
import type { OpenedWorkbook } from "../workbook/xlsx-grid/open-file.ts";
import { type Snapshot, snapshotOf } from "../workbook/xlsx-grid/snapshot.ts";
import { isUncomputed } from "../workbook/xlsx-grid/uncomputed.ts";
import { evaluatorOf, type Position } from "./grid-evaluator.ts";

/** A cell as the grid evaluates it. */
interface Evaluated {
  readonly value: string | number | boolean | null;
  readonly type: string;
  readonly format?: string;
}

interface Differing {
  readonly formula: string;
  /** What the grid computes from the cells as they were in the file. */
  computed: Evaluated["value"];
  /** Undefined if the value in the file does not hold. */
  readonly value: NonNullable<CellValue> | undefined;
}

/** They give another value every time. */
const volatile = new Set(["NOW", "TODAY", "RAND", "RANDBETWEEN", "RANDARRAY"]);

const NOTE = "The value of the file: the browser workbook would compute it otherwise.";
const STALE =
  "The browser workbook does not compute this as Excel does, and a cell before it has changed. Saving computes it.";
const UNKNOWN =
  "The browser workbook does not compute this as Excel does, and the file has no value that holds. Excel computes it when it opens the file.";

/** Values of formulas, by the place of their sheet in the grid and by `placeOf`. */
export interface FileValues {
  readonly values: readonly ReadonlyMap<number, CellValue>[];
  /** Formulas whose value in the file does not hold. */
  readonly kept: readonly ReadonlySet<number>[];
}

/** The values that the formulas of a file have once ours and what depends on them are computed. */
export function fileValues(opened: OpenedWorkbook, functions: Functions): FileValues {
  const { parts, kept } = fillParts(opened.file, functions, {});
  return valuesIn(opened, opened.parts.asksForAll ? kept : [], parts);
}

/** The values in a file; `parts` are those that are to stand in the place of its own. */
export function valuesIn(
  { file, parts: { sheets }, places }: OpenedWorkbook,
  kept: readonly ReadonlySet<number>[],
  parts: ReadonlyMap<string, string> = new Map(),
): FileValues {
  const values = places.map((place) => {
    const { part } = sheets[place];
    return formulaValues(parts.get(part) ?? file.read(part));
  });
  return { values, kept: places.map((place) => kept[place] ?? new Set<number>()) };
}

function formulaValues(text: string): Map<number, CellValue> {
  const values = new Map<number, CellValue>();
  readSheet(text, formulaRoom(), (cell, formula) => {
    if (formula)
      values.set(
        placeOf(cell.row, cell.column),
        storedValue(text, cell, () => undefined),
      );
  });
  return values;
}

/** From now on a model shows the values of its file where it computes others; gives the cells, `Job 7!B5`. */
export class ShownFileValues {
  constructor(
    private readonly library: GridLibrary,
    private readonly functions: Functions,
  ) {}

  /** `pristine` has the cells as they are in the file, if the model has not. */
  show(
    model: Model,
    opened: OpenedWorkbook,
    before: Snapshot,
    values: FileValues,
    pristine: Model = model,
  ): string[] {
    const evaluator = evaluatorOf(model);
    evaluator.release();
    const differing = this.differing(pristine, opened, values);
    if (differing.size === 0) return [];
    // What depends on such a cell is computed from it, so the results are taken once more.
    let isSettling = true;
    const settle = (position: Position, own: Evaluated) => {
      const found = differing.get(keyOf(position));
      if (found && isSettling) found.computed = own.value;
      return found && this.shown(found, own, opened.parts.from1904);
    };
    evaluatorOf(pristine).take(settle);
    isSettling = false;
    const dependents = dependentsIn(opened.file, this.functions);
    const shapes = new Set([...differing.values()].map(({ formula }) => shapeOf(formula)));
    const { getters } = model as any;
    let stale: ReadonlySet<string> | "moved";
    evaluator.take(
      (position, own) => {
        const formula: string = getters.getCellText(position, { showFormula: true });
        if (stale === "moved") return shapes.has(shapeOf(formula)) ? problem(own, STALE) : undefined;
        const key = keyOf(position);
        const found = differing.get(key);
        if (found?.formula !== formula) return undefined;
        if (stale.has(key) || own.value !== found.computed) return problem(own, STALE);
        return this.shown(found, own, opened.parts.from1904);
      },
      () => {
        stale = staleCells(model, opened, before, dependents);
      },
    );
    return [...differing.keys()].map((key) => nameOf(model, key));
  }

  private differing(model: Model, opened: OpenedWorkbook, { values, kept }: FileValues) {
    const getters = model.getters as any;
    const differing = new Map<string, Differing>();
    for (const [sheet, sheetId] of (getters.getSheetIds() as string[]).entries())
      for (const position of getters.getEvaluatedCellsPositions(sheetId) as Position[]) {
        if (!getters.getCell(position)?.isFormula) continue;
        const formula: string = getters.getCellText(position, { showFormula: true });
        const place = placeOf(position.row, position.col);
        const value = values[sheet]?.get(place);
        const computed: Evaluated = getters.getEvaluatedCell(position);
        if (value === undefined || value === null || isLeft(formula)) continue;
        if (isAlike(this.from1900(value, computed, opened.parts.from1904), computed)) continue;
        const holds = !kept[sheet].has(place);
        differing.set(keyOf(position), {
          formula,
          computed: computed.value,
          value: holds ? value : undefined,
        });
      }
    return differing;
  }

  /** A date of a file that counts from 1904 as the grid counts it. */
  private from1900<T extends CellValue>(value: T, { format }: Evaluated, isFrom1904: boolean): T | number {
    const isDate =
      isFrom1904 && typeof value === "number" && format && this.library.helpers.isDateTimeFormat(format);
    return isDate ? value + DAYS_TO_1904 : value;
  }

  private shown({ value: given }: Differing, own: Evaluated, isFrom1904: boolean): object {
    if (given === undefined) return problem(own, UNKNOWN);
    const value = this.from1900(given, own, isFrom1904);
    const note = { note: NOTE, message: NOTE };
    if (typeof value === "object") return { ...problem(own, NOTE, gridError(value.code)), ...note };
    if (typeof value === "number") {
      const { helpers, constants } = this.library as any;
      const written = helpers.formatValue(value, { format: own.format, locale: constants.DEFAULT_LOCALE });
      return { ...own, ...note, type: "number", value, formattedValue: written };
    }
    const isTruth = typeof value === "boolean";
    const written = isTruth ? String(value).toUpperCase() : value;
    return { ...own, ...note, type: isTruth ? "boolean" : "text", value, formattedValue: written };
  }
}

const problem = (own: Evaluated, message: string, code = "#N/A") => ({
  ...own,
  type: "error",
  value: code,
  formattedValue: code,
  message,
});

/** The formulas of the file that depend on cells that were changed since, as they stand in the grid. */
function staleCells(
  model: Model,
  { parts, places }: OpenedWorkbook,
  before: Snapshot,
  dependents: ReturnType<typeof dependentsIn>,
): ReadonlySet<string> | "moved" {
  const now = snapshotOf(model);
  const contents = now.names === before.names ? contentsSince(before, now) : undefined;
  if (!contents) return "moved";
  const stale = new Set<string>();
  if (contents.every(({ size }) => size === 0)) return stale;
  const changed = parts.sheets.map(() => new Set<number>());
  contents.forEach((own, i) => {
    for (const place of own.keys()) changed[places[i]].add(place);
  });
  const found = dependents(changed);
  before.sheets.forEach(({ id: sheetId }, i) => {
    for (const place of found[places[i]]) {
      const { row, column } = cellAt(place);
      stale.add(keyOf({ sheetId, row, col: column }));
    }
  });
  return stale;
}

const keyOf = ({ sheetId, row, col }: Position): string => `${sheetId} ${row} ${col}`;

function nameOf({ getters }: Model, key: string): string {
  const [, sheetId = "", row, column] = /^(.*) (\d+) (\d+)$/s.exec(key)!;
  return `${getters.getSheetName(sheetId as never)}!${cellName(Number(row), Number(column))}`;
}

/** A formula without the cells that it reads. */
const shapeOf = (formula: string): string =>
  formula.replace(/\$?[A-Z]{1,3}\$?\d+|#REF|\$?\d+:\$?\d+/g, "").replaceAll(" ", "");

/** What gives another value every time; what is not computed at all says so itself. */
const isLeft = (formula: string): boolean =>
  functionsIn(formula).some((name) => volatile.has(name) || isUncomputed(name));

function isAlike(value: CellValue, { value: computed, type }: Evaluated): boolean {
  if (typeof value === "object" && value !== null)
    return type === "error" && fileError(String(computed)) === value.code;
  if (typeof value === "number" && typeof computed === "number")
    return Math.abs(value - computed) <= 1e-9 * Math.max(1, Math.abs(value));
  return value === computed || (value === "" && computed === null);
}
