// fill: which formulas are computed: those that use our functions, and those that depend on them, however far.

import { type Box, contains } from "../workbook/xlsx/addresses.ts";
import { mentionsNamespace } from "../workbook/xlsx/stored-names.ts";
import type { Formula, Scope } from "./formula/nodes.ts";
import { parseFormula } from "./formula/parse.ts";
import type { Area } from "./formula/values.ts";
import type { FormulaCell } from "./load.ts";
import { isWorksheetFunction } from "./worksheet-functions.ts";

export interface ParsedCell extends FormulaCell {
  readonly formula: Formula;
  /** Which cells it reads can be told only when it is computed. */
  readonly isMoving: boolean;
}

/** Areas over this many cells are looked through one by one, smaller ones are found by their cells. */
const FEW = 16;

const placeOf = (row: number, column: number) => row * 16_384 + column;
const boxOf = ({ row, column, array }: FormulaCell): Box =>
  array ?? { top: row, left: column, bottom: row, right: column };

/** Who reads a cell: a formula with few cells is found by each of them, one with many by looking through. */
class Readers {
  private readonly byCell = new Map<number, ParsedCell[]>();
  private readonly byArea = new Map<string, { area: Area; readers: ParsedCell[] }>();

  add(area: Area, reader: ParsedCell): void {
    const { top, left, bottom, right } = area;
    if ((bottom - top + 1) * (right - left + 1) > FEW) {
      const key = `${top} ${left} ${bottom} ${right}`;
      const found = this.byArea.get(key);
      if (found) found.readers.push(reader);
      else this.byArea.set(key, { area, readers: [reader] });
      return;
    }
    for (let row = top; row <= bottom; row++)
      for (let column = left; column <= right; column++) {
        const place = placeOf(row, column);
        const readers = this.byCell.get(place);
        if (readers) readers.push(reader);
        else this.byCell.set(place, [reader]);
      }
  }

  /** Takes out whoever reads one of the cells. */
  take(box: Box): ParsedCell[] {
    const taken: ParsedCell[] = [];
    const isSmall = (box.bottom - box.top + 1) * (box.right - box.left + 1) <= 10_000;
    if (isSmall) {
      for (let row = box.top; row <= box.bottom; row++)
        for (let column = box.left; column <= box.right; column++) this.takeCell(placeOf(row, column), taken);
    } else
      for (const place of [...this.byCell.keys()])
        if (contains(box, Math.floor(place / 16_384), place % 16_384)) this.takeCell(place, taken);
    for (const [key, { area, readers }] of this.byArea) {
      if (!meet(area, box)) continue;
      taken.push(...readers);
      this.byArea.delete(key);
    }
    return taken;
  }

  private takeCell(place: number, taken: ParsedCell[]): void {
    const readers = this.byCell.get(place);
    if (!readers) return;
    for (const reader of readers) taken.push(reader);
    this.byCell.delete(place);
  }
}

export const meet = (a: Box, b: Box): boolean =>
  a.top <= b.bottom && b.top <= a.bottom && a.left <= b.right && b.left <= a.right;

const movingFunctions = ["INDIRECT", "OFFSET"];

/** Every formula taken apart. */
export function parseAll(cells: Iterable<FormulaCell>, scopeOf: (cell: FormulaCell) => Scope): ParsedCell[] {
  const parsed: ParsedCell[] = [];
  for (const cell of cells) {
    const formula =
      cell.text === undefined
        ? { node: undefined, unknown: "a what-if table", areas: [], calls: new Set<string>() }
        : parseFormula(cell.text, scopeOf(cell));
    parsed.push({ ...cell, formula, isMoving: movingFunctions.some((name) => formula.calls.has(name)) });
  }
  return parsed;
}

/** Whether a formula calls one of our functions, or something that is named as if it were one. */
function usesWorksheetFunctions({ text, formula }: ParsedCell): boolean {
  for (const name of formula.calls) if (isWorksheetFunction(name)) return true;
  return formula.unknown !== undefined && text !== undefined && mentionsNamespace(text);
}

export interface Chosen {
  /** Formulas that use our functions, and all that depend on them. */
  readonly certain: ReadonlySet<ParsedCell>;
  /** Formulas whose cells can be told only by computing them, and all that depend on them. */
  readonly possible: ReadonlySet<ParsedCell>;
}

export function formulasToCompute(all: readonly ParsedCell[], sheets: number): Chosen {
  const readers = Array.from({ length: sheets }, () => new Readers());
  const ours: ParsedCell[] = [];
  const moving: ParsedCell[] = [];
  for (const cell of all) {
    if (usesWorksheetFunctions(cell)) ours.push(cell);
    else {
      if (cell.isMoving) moving.push(cell);
      for (const area of cell.formula.areas) readers[area.sheet]!.add(area, cell);
    }
  }
  const certain = new Set(ours);
  const follow = (waiting: ParsedCell[], found: Set<ParsedCell>) => {
    for (let cell = waiting.pop(); cell; cell = waiting.pop())
      for (const reader of readers[cell.sheet]!.take(boxOf(cell))) {
        if (certain.has(reader) || found.has(reader)) continue;
        found.add(reader);
        waiting.push(reader);
      }
  };
  follow(ours, certain);
  const left = moving.filter((cell) => !certain.has(cell));
  const possible = new Set(left);
  follow(left, possible);
  return { certain, possible };
}

/** Formulas by the cells they fill, to be found by an area that reads them. */
export class Places {
  private readonly columns = new Map<number, { row: number; cell: ParsedCell }[]>();
  private readonly large: { box: Box; cell: ParsedCell }[] = [];

  constructor(cells: Iterable<ParsedCell>) {
    for (const cell of cells) {
      const box = boxOf(cell);
      if ((box.bottom - box.top + 1) * (box.right - box.left + 1) > 10_000) this.large.push({ box, cell });
      else
        for (let column = box.left; column <= box.right; column++)
          for (let row = box.top; row <= box.bottom; row++) this.add(row, column, cell);
    }
    for (const entries of this.columns.values()) entries.sort((a, b) => a.row - b.row);
  }

  private add(row: number, column: number, cell: ParsedCell): void {
    const entries = this.columns.get(column);
    if (entries) entries.push({ row, cell });
    else this.columns.set(column, [{ row, cell }]);
  }

  /** Calls `visit` with every formula that fills a cell of the area, some of them several times. */
  within(area: Box, visit: (cell: ParsedCell) => void): void {
    for (const { box, cell } of this.large) if (meet(box, area)) visit(cell);
    if (area.right - area.left > this.columns.size) {
      for (const [column, entries] of this.columns)
        if (column >= area.left && column <= area.right) visitRows(entries, area, visit);
    } else
      for (let column = area.left; column <= area.right; column++) {
        const entries = this.columns.get(column);
        if (entries) visitRows(entries, area, visit);
      }
  }
}

function visitRows(
  entries: readonly { row: number; cell: ParsedCell }[],
  { top, bottom }: Box,
  visit: (cell: ParsedCell) => void,
): void {
  let low = 0;
  for (let high = entries.length; low < high; ) {
    const middle = (low + high) >> 1;
    if (entries[middle]!.row < top) low = middle + 1;
    else high = middle;
  }
  for (; low < entries.length && entries[low]!.row <= bottom; low++) visit(entries[low]!.cell);
}
