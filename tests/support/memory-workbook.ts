// tests: a workbook in memory, for what the pane does with one. Cells hold what they are given; nothing is computed.

import { readReference } from "../../src/taskpane/actions/references.ts";
import {
  type Area,
  type Cells,
  type Change,
  type Content,
  cellAddress,
  cutTo,
  type DefinedName,
  type Fixed,
  fixedCell,
  fixedSentence,
  type NamedTable,
  type NewSheet,
  Refusal,
  type Workbook,
} from "../../src/workbook/workbook.ts";

export interface MemoryCell {
  /** As typed; the value where only that is given. */
  readonly formula?: Content;
  readonly value?: Content;
  readonly format?: string;
  readonly fixed?: Fixed;
}

type Sheet = Record<string, Content | MemoryCell>;

export class MemoryWorkbook implements Workbook {
  readonly content = new Map<string, Map<string, MemoryCell>>();
  readonly added: NewSheet[] = [];
  readonly locked = new Set<string>();
  readonly shown: Area[] = [];
  /** Rows that a filter hides, counted from 0. */
  readonly hiddenRows = new Set<number>();
  /** The table that every cell lies in, if any. */
  table: string | undefined;
  /** Cells with data validation. */
  readonly ruled: Area[] = [];
  readonly names: DefinedName[] = [];
  readonly tables: NamedTable[] = [];
  /** Whether the host is never done computing. */
  isComputing = false;
  /** One entry for each step that could be undone. */
  readonly steps: (readonly Change[])[] = [];
  private selection: readonly Area[] = [];
  private activeCell: Area | undefined;

  constructor(sheets: Readonly<Record<string, Sheet>>) {
    for (const [name, cells] of Object.entries(sheets)) {
      const entries = Object.entries(cells).map(([address, cell]): [string, MemoryCell] => [
        address,
        typeof cell === "object" ? cell : { formula: cell },
      ]);
      this.content.set(name, new Map(entries));
    }
    this.select(`${[...this.content.keys()].map((name) => `'${name.replaceAll("'", "''")}'`)[0]}!A1`);
  }

  /** Selects areas; the first cell of the last one is active. `undefined` selects a chart. */
  select(...references: string[]): this {
    const [sheet] = this.content.keys();
    this.selection = references.map((reference) => readReference(reference, sheet)!.area);
    const last = this.selection.at(-1);
    this.activeCell = last && { ...last, rows: 1, columns: 1 };
    return this;
  }

  private sheet(name: string): Map<string, MemoryCell> {
    const sheet = this.content.get(name);
    if (!sheet) throw new Refusal(`There is no sheet "${name}" any more.`);
    return sheet;
  }

  /** What a cell holds, "" if nothing. */
  at(address: string, sheet = [...this.content.keys()][0]): Content {
    return this.sheet(sheet).get(address)?.formula ?? "";
  }

  async selected(): Promise<readonly Cells[]> {
    if (!this.activeCell) throw new Refusal("A chart or picture is selected: select cells instead.");
    const used = await this.used(this.activeCell.sheet);
    const areas = this.selection
      .map((area) => used && cutTo(area, used))
      .filter((area) => area !== undefined);
    return Promise.all(
      areas.map(async (area) => ({ ...(await this.read(area)), hidden: this.hiddenIn(area) })),
    );
  }

  private hiddenIn({ row, rows, columns }: Area): boolean[][] | undefined {
    if (this.hiddenRows.size === 0) return undefined;
    return Array.from({ length: rows }, (_, at) => new Array(columns).fill(this.hiddenRows.has(row + at)));
  }

  async places(): Promise<readonly Area[]> {
    if (!this.activeCell) throw new Refusal("A chart or picture is selected: select cells instead.");
    return this.selection;
  }

  async active(): Promise<Area> {
    if (!this.activeCell) throw new Refusal("A chart or picture is selected: select cells instead.");
    return this.activeCell;
  }

  async read(area: Area): Promise<Cells> {
    const sheet = this.sheet(area.sheet);
    const grid = <T>(of: (cell: MemoryCell) => T): T[][] =>
      Array.from({ length: area.rows }, (_, row) =>
        Array.from({ length: area.columns }, (_, column) =>
          of(sheet.get(cellAddress(area.row + row, area.column + column)) ?? {}),
        ),
      );
    return {
      sheet: area.sheet,
      row: area.row,
      column: area.column,
      rows: area.rows,
      columns: area.columns,
      formulas: grid(({ formula, value, fixed }) => formula ?? (fixed === "spilled" ? "" : (value ?? ""))),
      values: grid(({ formula, value }) => value ?? formula ?? ""),
      formats: grid(({ format }) => format ?? "General"),
      fixed: grid(({ fixed }) => fixed),
    };
  }

  async readComputed(area: Area): Promise<Cells> {
    if (this.isComputing)
      throw new Refusal("Excel is still computing. Wait until it is done, then try again.");
    return this.read(area);
  }

  async sheets(): Promise<readonly string[]> {
    return [...this.content.keys()];
  }

  /** A result spills downward and to the right: its formula is the nearest one above or to the left. */
  async homeOf(cell: Area): Promise<Area> {
    const { formulas, fixed } = await this.read({
      sheet: cell.sheet,
      row: 0,
      column: 0,
      rows: cell.row + 1,
      columns: cell.column + 1,
    });
    if (fixed[cell.row][cell.column] !== "spilled") return cell;
    for (let column = cell.column; column >= 0; column--)
      for (let row = cell.row; row >= 0; row--)
        if (String(formulas[row][column]).startsWith("=")) return { ...cell, row, column };
    return cell;
  }

  async filledFrom(cell: Area): Promise<Area> {
    const { fixed } = await this.read({ ...cell, rows: 200, columns: 20 });
    let [rows, columns] = [1, 1];
    while (fixed[rows]?.[0] === "spilled") rows++;
    while (fixed[0][columns] === "spilled") columns++;
    return { ...cell, rows, columns };
  }

  async meanings() {
    return { names: this.names, tables: this.tables };
  }

  async tableAt(): Promise<string | undefined> {
    return this.table;
  }

  async show(area: Area): Promise<void> {
    this.shown.push(area);
  }

  async used(name: string): Promise<Area | undefined> {
    const areas = [...this.sheet(name).keys()].map((address) => readReference(address, name)!.area);
    if (areas.length === 0) return undefined;
    const row = Math.min(...areas.map((area) => area.row));
    const column = Math.min(...areas.map((area) => area.column));
    return {
      sheet: name,
      row,
      column,
      rows: Math.max(...areas.map((area) => area.row)) - row + 1,
      columns: Math.max(...areas.map((area) => area.column)) - column + 1,
    };
  }

  async write(changes: readonly Change[]): Promise<void> {
    for (const { sheet, row, column, formulas } of changes) {
      if (this.locked.has(sheet)) throw new Refusal(`The sheet "${sheet}" is locked: unlock it first.`);
      const columns = Math.max(...formulas.map((cells) => cells.length));
      const cells = await this.read({ sheet, row, column, rows: formulas.length, columns });
      const unwritable = fixedCell(cells, formulas);
      if (unwritable) throw new Refusal(fixedSentence(unwritable.address, unwritable.fixed));
    }
    for (const { sheet, row, column, formulas } of changes) {
      formulas.forEach((cells, down) => {
        cells.forEach((formula, across) => {
          const address = cellAddress(row + down, column + across);
          const { format } = this.sheet(sheet).get(address) ?? {};
          if (formula !== undefined) this.sheet(sheet).set(address, { formula, format });
        });
      });
    }
    this.steps.push(changes);
  }

  async stepsToUndo(): Promise<number> {
    return 1;
  }

  async hasRules(area: Area): Promise<boolean> {
    return this.ruled.some((one) => one.sheet === area.sheet && cutTo(one, area) !== undefined);
  }

  async addSheet(sheet: NewSheet): Promise<string> {
    this.added.push(sheet);
    this.content.set(sheet.name, new Map());
    return sheet.name;
  }

  async openNew(): Promise<boolean> {
    return false;
  }

  async copyAsValues(
    sheet: string,
    replace: (formula: string) => boolean,
  ): Promise<{ name: string; replaced: number }> {
    let replaced = 0;
    const copy = [...this.sheet(sheet)].map(([address, cell]): [string, MemoryCell] => {
      if (!replace(String(cell.formula ?? ""))) return [address, cell];
      replaced++;
      return [address, { formula: cell.value ?? "" }];
    });
    const name = `${sheet} (values)`;
    this.content.set(name, new Map(copy));
    return { name, replaced };
  }

  async hasDecimalComma(): Promise<boolean> {
    return false;
  }

  async dayShift(): Promise<number> {
    return 0;
  }

  onChange(): () => void {
    return () => {};
  }
}

/** The sentence with which an action was refused; fails if it was not. */
export async function refusal(action: Promise<unknown> | (() => unknown)): Promise<string> {
  try {
    await (typeof action === "function" ? action() : action);
  } catch (thrown) {
    if (thrown instanceof Refusal) return thrown.message;
    throw thrown;
  }
  throw new Error("it was not refused");
}
