// fill: which formulas are computed: those that use our functions, and those that depend on them, however far.

import { type Box, contains } from "../workbook/xlsx/addresses.ts";
import { mentionsNamespace } from "../workbook/xlsx/stored-names.ts";
import type { Formula, Scope } from "./formula/nodes.ts";
import { parseFormula } from "./formula/parse.ts";
import { Area } from "./formula/values.ts";
import type { FormulaCell } from "./load.ts";
import { isWorksheetFunction } from "./worksheet-functions.ts";

export interface ParsedCell extends FormulaCell {
  readonly formula: Formula;
  /** The cells that it fills: those that the file has for it, and those that its result needs beside them. */
  filled: Box;
  /** Whether other cells stand where its result would go. */
  isBlocked: boolean;
  /** How far computing it has come. */
  state: "untouched" | "waiting" | "done";
}

/** Areas over this many cells are looked through one by one, smaller ones are found by their cells. */
const FEW = 16;

const placeOf = (row: number, column: number) => row * 16_384 + column;
interface Reading {
  readonly area: Area;
  readonly readers: ParsedCell[];
  isTaken: boolean;
}

/** Who reads a cell: a formula with few cells is found by each of them, one with many by looking through. */
class Readers {
  private readonly byCell = new Map<number, ParsedCell[]>();
  private readonly areas = new Map<string, Reading>();
  /** The areas over a column; those over many columns stand under -1. */
  private readonly byColumn = new Map<number, Reading[]>();

  add(area: Area, reader: ParsedCell): void {
    const { top, left, bottom, right } = area;
    if ((bottom - top + 1) * (right - left + 1) > FEW) {
      this.addArea(area, reader);
      return;
    }
    for (let row = top; row <= bottom; row++)
      for (let column = left; column <= right; column++)
        listIn(this.byCell, placeOf(row, column)).push(reader);
  }

  private addArea(area: Area, reader: ParsedCell): void {
    const { top, left, bottom, right } = area;
    const key = `${top} ${left} ${bottom} ${right}`;
    const found = this.areas.get(key);
    if (found) {
      found.readers.push(reader);
      return;
    }
    const reading = { area, readers: [reader], isTaken: false };
    this.areas.set(key, reading);
    if (right - left >= FEW) listIn(this.byColumn, -1).push(reading);
    else for (let column = left; column <= right; column++) listIn(this.byColumn, column).push(reading);
  }

  /** Takes out what reads one of the cells. */
  take(box: Box): ParsedCell[] {
    const taken: ParsedCell[] = [];
    const isSmall = (box.bottom - box.top + 1) * (box.right - box.left + 1) <= 10_000;
    if (isSmall) {
      for (let row = box.top; row <= box.bottom; row++)
        for (let column = box.left; column <= box.right; column++) this.takeCell(placeOf(row, column), taken);
    } else
      for (const place of [...this.byCell.keys()])
        if (contains(box, Math.floor(place / 16_384), place % 16_384)) this.takeCell(place, taken);
    for (const column of [...this.byColumn.keys()])
      if (column === -1 || (column >= box.left && column <= box.right)) this.takeAreas(column, box, taken);
    return taken;
  }

  private takeCell(place: number, taken: ParsedCell[]): void {
    const readers = this.byCell.get(place);
    if (!readers) return;
    for (const reader of readers) taken.push(reader);
    this.byCell.delete(place);
  }

  private takeAreas(column: number, box: Box, taken: ParsedCell[]): void {
    const left = this.byColumn.get(column)!.filter((reading) => {
      if (reading.isTaken) return false;
      if (!meet(reading.area, box)) return true;
      for (const reader of reading.readers) taken.push(reader);
      reading.isTaken = true;
      return false;
    });
    if (left.length > 0) this.byColumn.set(column, left);
    else this.byColumn.delete(column);
  }
}

function listIn<T>(lists: Map<number, T[]>, key: number): T[] {
  let list = lists.get(key);
  if (!list) {
    list = [];
    lists.set(key, list);
  }
  return list;
}

export const meet = (a: Box, b: Box): boolean =>
  a.top <= b.bottom && b.top <= a.bottom && a.left <= b.right && b.left <= a.right;

/** Every formula parsed. */
export function parseAll(cells: Iterable<FormulaCell>, scopeOf: (cell: FormulaCell) => Scope): ParsedCell[] {
  const parsed: ParsedCell[] = [];
  for (const cell of cells) {
    const { row, column, array } = cell;
    parsed.push({
      ...cell,
      formula: cell.text === undefined ? whatIfTable(cell) : parseFormula(cell.text, scopeOf(cell)),
      filled: array ?? { top: row, left: column, bottom: row, right: column },
      isBlocked: false,
      state: "untouched",
    });
  }
  return parsed;
}

const whatIfTable = ({ sheet, reads }: FormulaCell): Formula => ({
  node: undefined,
  unknown: "a what-if table",
  areas: reads.map(({ top, left, bottom, right }) => new Area(sheet, top, left, bottom, right)),
  calls: new Set(),
  isMoving: false,
});

/** Whether a formula calls one of our functions, or something that is named as if it were one. */
export function usesWorksheetFunctions({ text, formula }: ParsedCell): boolean {
  for (const name of formula.calls) if (isWorksheetFunction(name)) return true;
  return formula.unknown !== undefined && text !== undefined && mentionsNamespace(text);
}

export interface Chosen {
  /** Formulas that are chosen for themselves, and all that depend on them. */
  readonly certain: ReadonlySet<ParsedCell>;
  /** Formulas whose cells can be told only by computing them, and all that depend on them. */
  readonly possible: ReadonlySet<ParsedCell>;
}

/** Cells that others have changed, on one sheet. */
export type Changed = Pick<ParsedCell, "sheet" | "filled">;

/** Those that use our functions and what depends on them and on what has changed; all if the file asks for `everything`. */
export function formulasToCompute(
  all: readonly ParsedCell[],
  sheets: number,
  everything: boolean,
  changed: readonly Changed[] = [],
): Chosen {
  if (everything) return { certain: new Set(all), possible: new Set() };
  return formulasFrom(all, sheets, changed, usesWorksheetFunctions);
}

/** Formulas in cells that have changed and those that `isStart` picks, and what depends on either, however far. */
export function formulasFrom(
  all: readonly ParsedCell[],
  sheets: number,
  changed: readonly Changed[],
  isStart: (cell: ParsedCell) => boolean = () => false,
): Chosen {
  const readers = Array.from({ length: sheets }, () => new Readers());
  const starts: ParsedCell[] = [];
  const isChanged = changedCells(changed);
  const moving: ParsedCell[] = [];
  for (const cell of all) {
    if (isStart(cell) || isChanged(cell)) starts.push(cell);
    else {
      if (cell.formula.isMoving) moving.push(cell);
      for (const area of cell.formula.areas) readers[area.sheet].add(area, cell);
    }
  }
  const certain = new Set(starts);
  const follow = (waiting: Changed[], found: Set<ParsedCell>) => {
    // From the top: a sum over all that stands above is found by its first cell.
    for (const cell of waiting)
      for (const reader of readers[cell.sheet].take(cell.filled)) {
        if (certain.has(reader) || found.has(reader)) continue;
        found.add(reader);
        waiting.push(reader);
      }
  };
  follow([...starts, ...changed], certain);
  const left = moving.filter((cell) => !certain.has(cell));
  const possible = new Set(left);
  follow(left, possible);
  return { certain, possible };
}

/** Whether a formula stands in one of the cells. */
function changedCells(changed: readonly Changed[]): (cell: ParsedCell) => boolean {
  const places = new Set(changed.map(({ sheet, filled }) => `${sheet} ${filled.top} ${filled.left}`));
  return ({ sheet, row, column }) => places.has(`${sheet} ${row} ${column}`);
}

interface Filling {
  readonly row: number;
  readonly cell: ParsedCell;
}

/** The cells of a column that formulas fill, from the top, and how many of the first are computed. */
interface FilledColumn {
  readonly cells: Filling[];
  done: number;
}

/** Formulas by the cells they fill, to be found by an area that reads them. */
export class Places {
  private readonly columns = new Map<number, FilledColumn>();
  private readonly large: { box: Box; cell: ParsedCell }[] = [];

  constructor(cells: Iterable<ParsedCell>) {
    for (const cell of cells) {
      const box = cell.filled;
      if ((box.bottom - box.top + 1) * (box.right - box.left + 1) > 10_000) this.large.push({ box, cell });
      else
        for (let column = box.left; column <= box.right; column++)
          for (let row = box.top; row <= box.bottom; row++) this.add(row, column, cell);
    }
    for (const { cells } of this.columns.values()) cells.sort((a, b) => a.row - b.row);
  }

  private add(row: number, column: number, cell: ParsedCell): void {
    const found = this.columns.get(column);
    if (found) found.cells.push({ row, cell });
    else this.columns.set(column, { cells: [{ row, cell }], done: 0 });
  }

  /** Calls `visit` with every formula that fills a cell of the area, some of them several times. */
  within(area: Box, visit: (cell: ParsedCell) => void): void {
    for (const { box, cell } of this.large) if (meet(box, area)) visit(cell);
    for (const column of this.columnsIn(area)) visitRows(column.cells, area, 0, visit);
  }

  /** The same without those that are computed, as far as that is quick to tell. */
  unfinished(area: Box, visit: (cell: ParsedCell) => void): void {
    for (const { box, cell } of this.large) if (meet(box, area)) visit(cell);
    for (const column of this.columnsIn(area)) {
      const { cells } = column;
      while (column.done < cells.length && cells[column.done].cell.state === "done") column.done++;
      visitRows(cells, area, column.done, visit);
    }
  }

  private *columnsIn({ left, right }: Box): Generator<FilledColumn> {
    if (right - left > this.columns.size) {
      for (const [column, found] of this.columns) if (column >= left && column <= right) yield found;
    } else
      for (let column = left; column <= right; column++) {
        const found = this.columns.get(column);
        if (found) yield found;
      }
  }
}

function visitRows(
  cells: readonly Filling[],
  { top, bottom }: Box,
  from: number,
  visit: (cell: ParsedCell) => void,
): void {
  let low = from;
  for (let high = cells.length; low < high; ) {
    const middle = (low + high) >> 1;
    if (cells[middle].row < top) low = middle + 1;
    else high = middle;
  }
  for (; low < cells.length && cells[low].row <= bottom; low++) visit(cells[low].cell);
}
