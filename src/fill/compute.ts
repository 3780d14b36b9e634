// fill: computes formulas in the order in which they need one another.

import type { Box } from "../workbook/xlsx/addresses.ts";
import { type Chosen, meet, type ParsedCell, Places } from "./dependents.ts";
import { type Cells, type Context, evaluate, type Functions, single } from "./formula/evaluate.ts";
import { parseFormula } from "./formula/parse.ts";
import {
  Area,
  isMatrix,
  type Matrix,
  notAvailable,
  type Scalar,
  Unsupported,
  type Value,
} from "./formula/values.ts";
import type { Grid } from "./grid.ts";
import type { LoadedWorkbook, scopes } from "./load.ts";

export type Outcome =
  /** For a plain cell one value, for an array formula what it gives. */
  | { readonly kind: "computed"; readonly value: Scalar | Matrix }
  /** The cell keeps the value it had, and why. */
  | { readonly kind: "kept"; readonly why: string };

/** The most cells of an array formula. */
const LARGEST_ARRAY = 1_000_000;
const CIRCULAR = "a reference that comes back to the cell itself";

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
  private reading: ParsedCell | undefined;
  private readonly cells: Cells;

  /** Those chosen are written; `helping` have no value yet and are computed only where they are read. */
  constructor(
    workbook: LoadedWorkbook,
    private readonly grids: readonly Grid[],
    private readonly functions: Functions,
    scopeOf: ReturnType<typeof scopes>,
    { certain, possible }: Chosen,
    helping: Iterable<ParsedCell>,
    all: readonly ParsedCell[],
  ) {
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
      hasHiddenRows: (sheet) => workbook.sheets[sheet].hasHiddenRows,
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
    const isWritten = this.chosen.has(cell) && this.isDepending(cell);
    if (isWritten) this.outcomes.set(cell, outcome);
    if (outcome.kind === "computed" && (isWritten || !hasValue(cell))) this.fill(cell, outcome.value);
  }

  private valueOf(cell: ParsedCell): Scalar | Matrix {
    const { formula, array, isSpill } = cell;
    if (!formula.node) throw new Unsupported(formula.unknown);
    if (this.circular.has(cell)) throw new Unsupported(CIRCULAR);
    if (array && sizeOf(array) > LARGEST_ARRAY) throw new Unsupported("an array formula over too many cells");
    const context: Context = {
      cells: this.cells,
      sheet: cell.sheet,
      row: cell.row,
      column: cell.column,
      functions: this.functions,
      variables: new Map(),
      arrays: array !== undefined,
    };
    const value = evaluate(formula.node, context, array ? "array" : "plain");
    if (!array) return single(value) ?? 0;
    return isSpill ? withoutNull(value) : fitted(value, array);
  }

  /** Puts the value where formulas read it; what a smaller result leaves free is empty. */
  private fill({ sheet, row, column, array }: ParsedCell, value: Scalar | Matrix): void {
    const grid = this.grids[sheet];
    if (!array) {
      grid.set(row, column, value as Scalar);
      return;
    }
    const matrix = isMatrix(value) ? value : [[value]];
    for (let i = array.top; i <= array.bottom; i++)
      for (let k = array.left; k <= array.right; k++)
        grid.set(i, k, matrix[i - array.top]?.[k - array.left] ?? null);
  }

  /** Cells about to be read: what fills them is computed first if it could not be foreseen. */
  private read(area: Area): void {
    const reader = this.reading;
    if (!reader?.isMoving) return;
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
    const outcome = anchor && this.outcomes.get(anchor);
    if (!anchor?.array || !anchor.isSpill) return undefined;
    const { top, left, bottom, right } = anchor.array;
    if (outcome?.kind === "computed" && isMatrix(outcome.value)) {
      const [rows, columns] = [outcome.value.length, outcome.value[0].length];
      if (rows !== bottom - top + 1 || columns !== right - left + 1)
        throw new Unsupported("a spilled result that has changed its size");
    }
    return new Area(sheet, top, left, bottom, right);
  }
}

const keyOf = (sheet: number, row: number, column: number) => `${sheet} ${row} ${column}`;
const sizeOf = ({ top, left, bottom, right }: Box) => (bottom - top + 1) * (right - left + 1);

/** Whether the file has a value for a formula; an empty text is one. */
export const hasValue = ({ cell }: ParsedCell): boolean =>
  cell.type === "str"
    ? cell.value !== undefined
    : cell.value !== undefined && cell.value.close > cell.value.open;

function reasonOf(error: unknown): string {
  if (error instanceof Unsupported) return error.message;
  // Nested past what the engine can follow.
  if (error instanceof RangeError) return "a formula too deep to compute";
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
