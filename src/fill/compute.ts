// fill: computes formulas in the order in which they need one another.

import type { Box } from "../workbook/xlsx/addresses.ts";
import { type Chosen, meet, type ParsedCell, Places } from "./dependents.ts";
import { type Cells, type Context, evaluate, type Functions, single } from "./formula/evaluate.ts";
import { parseFormula } from "./formula/parse.ts";
import {
  Area,
  fitsCell,
  isMatrix,
  type Matrix,
  notAvailable,
  type Scalar,
  Unsupported,
  type Value,
} from "./formula/values.ts";
import { type Grid, UNVALUED } from "./grid.ts";
import type { LoadedWorkbook, scopes } from "./load.ts";

export type Outcome =
  /** For a plain cell one value, for an array formula what it gives. */
  | { readonly kind: "computed"; readonly value: Scalar | Matrix }
  /** The cell keeps the value it had, and why. */
  | { readonly kind: "kept"; readonly why: string };

/** The most cells of an array formula. */
const LARGEST_ARRAY = 1_000_000;
const CIRCULAR = "a reference that comes back to the cell itself";

export interface ToCompute {
  readonly workbook: LoadedWorkbook;
  readonly grids: readonly Grid[];
  readonly functions: Functions;
  readonly scopeOf: ReturnType<typeof scopes>;
  /** They are written. */
  readonly chosen: Chosen;
  /** They have no value yet and are computed only where they are read. */
  readonly helping: readonly ParsedCell[];
  readonly all: readonly ParsedCell[];
}

export class Computer {
  /** Of the cells that are to have a new value. */
  readonly outcomes = new Map<ParsedCell, Outcome>();
  private readonly places: Places[];
  private readonly subtotals: Box[][];
  /** Formulas that use our functions or depend on a cell that does. */
  private readonly depending: Set<ParsedCell>;
  private readonly chosen: ReadonlySet<ParsedCell>;
  private readonly circular = new Set<ParsedCell>();
  private readonly arrays = new Map<string, ParsedCell>();
  private readonly roundsAsShown: boolean;
  private reading: ParsedCell | undefined;
  private readonly cells: Cells;

  private readonly grids: readonly Grid[];
  private readonly functions: Functions;

  constructor({ workbook, grids, functions, scopeOf, chosen, helping, all }: ToCompute) {
    const { certain, possible } = chosen;
    this.grids = grids;
    this.functions = functions;
    this.roundsAsShown = workbook.parts.roundsAsShown;
    for (const cell of all) cell.state = "untouched";
    const sheets = workbook.sheets.map((_, i) => i);
    this.depending = new Set(certain);
    this.chosen = new Set([...certain, ...possible]);
    const computed = [...new Set([...this.chosen, ...helping])];
    this.places = sheets.map((sheet) => new Places(computed.filter((cell) => cell.sheet === sheet)));
    this.subtotals = sheets.map((sheet) =>
      all
        .filter(
          (cell) =>
            cell.sheet === sheet &&
            (cell.formula.calls.has("SUBTOTAL") || cell.formula.calls.has("AGGREGATE")),
        )
        .map(({ row, column }) => ({ top: row, bottom: row, left: column, right: column })),
    );
    for (const cell of all) if (cell.array) this.arrays.set(keyOf(cell.sheet, cell.row, cell.column), cell);
    this.cells = {
      cell: (sheet, row, column) => {
        this.read(new Area(sheet, row, column, row, column));
        return this.grids[sheet].get(row, column);
      },
      matrix: (area) => {
        this.read(area);
        return this.grids[area.sheet].matrix(area);
      },
      each: (area, visit) => {
        this.read(area);
        this.grids[area.sheet].each(area, visit);
      },
      cut: (area) => {
        this.read(area);
        return this.grids[area.sheet].cut(area);
      },
      mark: (sheet) => this.grids[sheet].mark(),
      isChangedSince: (area, mark) => this.grids[area.sheet].isChangedSince(area, mark),
      hasHiddenRows: (sheet) => workbook.sheets[sheet].shape.hasHiddenRows,
      hasSubtotal: (area) => this.subtotals[area.sheet].some((box) => meet(box, area)),
      spilledArea: (sheet, row, column) => this.spilledArea(sheet, row, column),
      area: (text, sheet) => {
        const { node } = parseFormula(text, scopeOf(sheet, 0, 0));
        return node?.kind === "area" ? node.area : undefined;
      },
      from1904: workbook.parts.from1904,
    };
  }

  run(progress: (done: number) => void): void {
    let done = 0;
    for (const cell of this.chosen) {
      this.computeInOrder(cell);
      if (++done % 500 === 0) progress(done);
    }
    progress(done);
  }

  /** A cell after the cells it needs, without a call inside a call: a chain may be as long as the sheet. */
  private computeInOrder(first: ParsedCell): void {
    const stack = [first];
    while (stack.length > 0) {
      const cell = stack.at(-1)!;
      if (cell.state === "done") {
        stack.pop();
        continue;
      }
      if (cell.state === "waiting") {
        stack.pop();
        this.finish(cell);
        continue;
      }
      cell.state = "waiting";
      for (const area of cell.formula.areas)
        this.places[area.sheet].unfinished(area, (needed) => {
          const state = needed.state;
          if (state === "untouched") stack.push(needed);
          // Whatever waits is waiting for this cell.
          else if (state === "waiting") this.markCircle(stack, needed);
        });
    }
  }

  private markCircle(stack: readonly ParsedCell[], from: ParsedCell): void {
    for (let i = stack.length - 1; i >= 0; i--) {
      const cell = stack[i];
      if (cell.state === "waiting") this.circular.add(cell);
      if (cell === from) return;
    }
  }

  private finish(cell: ParsedCell): void {
    const before = this.reading;
    this.reading = cell;
    let outcome: Outcome;
    try {
      outcome = { kind: "computed", value: this.valueOf(cell) };
    } catch (error) {
      outcome = { kind: "kept", why: reasonOf(error) };
    }
    this.reading = before;
    cell.state = "done";
    const isTraced = outcome.kind === "computed" || !cell.formula.isMoving;
    const isWritten = this.chosen.has(cell) && (!isTraced || this.isDepending(cell));
    if (isWritten) {
      this.outcomes.set(cell, outcome);
      this.depending.add(cell);
    }
    if (outcome.kind === "computed") {
      if (isWritten || !cell.hasValue) this.fill(cell, outcome.value);
    } else if (isWritten) this.fillWith(cell, UNVALUED);
  }

  private valueOf(cell: ParsedCell): Scalar | Matrix {
    const { formula, array, isSpill } = cell;
    if (!formula.node) throw new Unsupported(formula.unknown);
    if (this.roundsAsShown) throw new Unsupported("the workbook rounds results to what their cells show");
    if (this.circular.has(cell)) throw new Unsupported(CIRCULAR);
    if (cell.isBlocked) throw new Unsupported("other cells stand where the result would go");
    if (array && sizeOf(array) > LARGEST_ARRAY) throw new Unsupported("an array formula over too many cells");
    const context: Context = {
      cells: this.cells,
      sheet: cell.sheet,
      row: cell.row,
      column: cell.column,
      functions: this.functions,
      variables: new Map(),
      isArrayFormula: array !== undefined,
    };
    const value = evaluate(formula.node, context, array ? "array" : "plain");
    const result = !array ? (single(value) ?? 0) : isSpill ? withoutNull(value) : fitted(value, array);
    const fits = isMatrix(result) ? result.every((line) => line.every(fitsCell)) : fitsCell(result);
    if (!fits) throw new Unsupported("a result that no cell can hold");
    return result;
  }

  /** Puts the value where formulas read it; what a smaller result leaves free is empty. */
  private fill(cell: ParsedCell, value: Scalar | Matrix): void {
    this.fillWith(cell, null);
    const matrix = isMatrix(value) ? value : [[value]];
    const { top, left, bottom, right } = cell.filled;
    matrix.slice(0, bottom - top + 1).forEach((line, row) => {
      line.slice(0, right - left + 1).forEach((one, column) => {
        this.grids[cell.sheet].set(top + row, left + column, one);
      });
    });
  }

  private fillWith({ sheet, filled }: ParsedCell, value: Scalar | typeof UNVALUED): void {
    const { top, left, bottom, right } = filled;
    if (sizeOf(filled) > LARGEST_ARRAY) return;
    for (let row = top; row <= bottom; row++)
      for (let column = left; column <= right; column++) this.grids[sheet].set(row, column, value);
  }

  /** Cells about to be read: what fills them is computed first if it could not be foreseen. */
  private read(area: Area): void {
    const reader = this.reading;
    if (!reader?.formula.isMoving) return;
    const needed = new Set<ParsedCell>();
    this.places[area.sheet].within(area, (cell) => needed.add(cell));
    for (const cell of needed) {
      if (cell.state === "waiting") throw new Unsupported(CIRCULAR);
      if (cell.state !== "done") this.computeInOrder(cell);
      if (this.depending.has(cell)) this.depending.add(reader);
    }
  }

  private isDepending(cell: ParsedCell): boolean {
    if (this.depending.has(cell)) return true;
    for (const area of cell.formula.areas)
      this.places[area.sheet].within(area, (needed) => {
        if (this.depending.has(needed)) this.depending.add(cell);
      });
    return this.depending.has(cell);
  }

  private spilledArea(sheet: number, row: number, column: number): Area | undefined {
    const anchor = this.arrays.get(keyOf(sheet, row, column));
    if (!anchor?.array || !anchor.isSpill) return undefined;
    const outcome = this.outcomes.get(anchor);
    if (outcome?.kind !== "computed")
      return new Area(sheet, row, column, anchor.array.bottom, anchor.array.right);
    const { rows, columns } = sizeOfResult(outcome.value);
    return new Area(sheet, row, column, row + rows - 1, column + columns - 1);
  }
}

export function sizeOfResult(value: Scalar | Matrix): { rows: number; columns: number } {
  return isMatrix(value) ? { rows: value.length, columns: value[0]?.length ?? 0 } : { rows: 1, columns: 1 };
}

const keyOf = (sheet: number, row: number, column: number) => `${sheet} ${row} ${column}`;
const sizeOf = ({ top, left, bottom, right }: Box) => (bottom - top + 1) * (right - left + 1);

function reasonOf(error: unknown): string {
  if (error instanceof Unsupported) return error.message;
  // Nested past what the engine can follow; other range errors are faults.
  if (error instanceof RangeError && /call stack/i.test(error.message))
    return "a formula too deep to compute";
  throw error;
}

const withoutNull = (value: Value): Scalar | Matrix =>
  isMatrix(value) ? value.map((line) => line.map((cell) => cell ?? 0)) : ((value as Scalar) ?? 0);

/** A fixed array formula cuts what is too much, repeats a single row or column, and shows #N/A where nothing comes. */
function fitted(value: Value, { top, left, bottom, right }: Box): Matrix {
  const rows = bottom - top + 1;
  const columns = right - left + 1;
  const matrix = isMatrix(value) ? value : [[value as Scalar]];
  return Array.from({ length: rows }, (_, row) => {
    const line = matrix.length === 1 ? matrix[0] : matrix[row];
    return Array.from({ length: columns }, (_, column) => {
      const one = line?.length === 1 ? line[0] : line?.[column];
      return one === undefined ? notAvailable() : (one ?? 0);
    });
  });
}
