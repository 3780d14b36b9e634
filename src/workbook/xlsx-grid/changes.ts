// workbook: what was changed in the browser workbook since its file was opened: cells, which can be written into that
// file, or more, which can not.

import type { Model } from "@odoo/o-spreadsheet";
import { readCell } from "../xlsx/addresses.ts";
import { placeOf } from "../xlsx/write-sheet.ts";

/** As the grid's library exports them, as far as they matter here. */
interface SheetData {
  readonly id: string;
  readonly name: string;
  readonly cells: Readonly<Record<string, string>>;
  readonly rowNumber: number;
  readonly colNumber: number;
  readonly rows?: Headers;
  readonly cols?: Headers;
  readonly panes?: unknown;
  readonly styles?: Readonly<Record<string, number>>;
  readonly formats?: Readonly<Record<string, number>>;
  readonly borders?: Readonly<Record<string, number>>;
}

interface WorkbookData {
  readonly sheets: readonly SheetData[];
  readonly styles: object;
  readonly formats: object;
  readonly borders: object;
  readonly namedRanges: object;
}

type Headers = Readonly<Record<string, unknown>>;

interface SheetSnapshot {
  readonly id: string;
  readonly cells: SheetData["cells"];
  readonly rows: Headers;
  readonly columns: Headers;
  readonly size: readonly [rows: number, columns: number];
  /** All else that a file would hold of it. */
  readonly around: string;
}

/** The workbook as it is now. */
export interface Snapshot {
  readonly sheets: readonly SheetSnapshot[];
  readonly names: string;
}

export function snapshotOf(model: Model): Snapshot {
  // The grid leaves out the alignment that the content of a cell has anyway, which changes with the content.
  const cells = handlerWith(model, "extractCustomStyle");
  cells.extractCustomStyle = ({ style }: { style?: object }) => ({ ...style });
  // Not exportData: its short form of formulas that repeat down a column fails on a running total (SUM(F$1:F2)).
  const data = (model as any)._exportData(false) as WorkbookData;
  delete cells.extractCustomStyle;
  return {
    sheets: data.sheets.map((sheet) => sheetSnapshot(sheet, data)),
    names: JSON.stringify(data.namedRanges ?? {}),
  };
}

/** The part of the grid that has a method; these are none of its published interface. */
const handlerWith = (model: Model, method: string): any =>
  (model as any).handlers.find((handler: any) => typeof handler[method] === "function");

/** From now on tables stay as they are when something is typed beside them: a file's cells can be written, its tables not. */
export function keepTables(model: Model): void {
  handlerWith(model, "canUpdateCellCmdExtendTable").canUpdateCellCmdExtendTable = () => "none";
}

function sheetSnapshot(sheet: SheetData, data: WorkbookData): SheetSnapshot {
  // Where the sheet is looked at is no matter of the file.
  const { id, cells, rowNumber, colNumber, rows, cols, panes: _, ...rest } = sheet;
  /** Formats by what they are, not by their numbers. */
  const resolved = (kind: "styles" | "formats" | "borders") =>
    Object.entries(sheet[kind] ?? {}).map(([zone, number]) => [zone, (data[kind] as any)[number]]);
  const formats = { styles: resolved("styles"), formats: resolved("formats"), borders: resolved("borders") };
  const around = JSON.stringify({ ...rest, ...formats });
  return { id, cells, rows: rows ?? {}, columns: cols ?? {}, size: [rowNumber, colNumber], around };
}

/** Sizes of the rows or columns that were there before. */
function isSameHeaders(before: Headers, now: Headers, size: number): boolean {
  const own = (headers: Headers) => Object.entries(headers).filter(([at]) => Number(at) < size);
  return JSON.stringify(own(before)) === JSON.stringify(own(now));
}

const isSameSheet = (before: SheetSnapshot, now: SheetSnapshot): boolean =>
  now.id === before.id &&
  now.around === before.around &&
  isSameHeaders(before.rows, now.rows, before.size[0]) &&
  isSameHeaders(before.columns, now.columns, before.size[1]);

export interface Changes {
  /** What is typed into each changed cell, by the place of its sheet and of the cell; "" where nothing is left. */
  readonly cells: readonly ReadonlyMap<number, string>[];
  /** Sheets that are new, behind the others. */
  readonly added: readonly string[];
  /** Whether there is more than that: other sheets, rows, columns, formats, names. */
  readonly isMore: boolean;
}

export function changesSince(before: Snapshot, model: Model): Changes {
  const now = snapshotOf(model);
  const cells = contentsSince(before, now, model);
  const isMore =
    cells === undefined ||
    now.names !== before.names ||
    !before.sheets.every((sheet, i) => isSameSheet(sheet, now.sheets[i]));
  if (isMore) return { cells: [], added: [], isMore };
  return { cells, added: now.sheets.slice(before.sheets.length).map(({ id }) => id), isMore };
}

/** What is typed into each changed cell; undefined if cells stand elsewhere than before. */
export function contentsSince(
  before: Snapshot,
  now: Snapshot,
  model: Model,
): readonly ReadonlyMap<number, string>[] | undefined {
  const isInPlace =
    before.sheets.every(({ id }, i) => id === now.sheets[i]?.id) && !hasMovedCells(model, before);
  if (!isInPlace) return undefined;
  return before.sheets.map((sheet, i) => changedCells(sheet.cells, now.sheets[i].cells));
}

function changedCells(before: SheetData["cells"], now: SheetData["cells"]): Map<number, string> {
  const changed = new Map<number, string>();
  for (const address of new Set([...Object.keys(before), ...Object.keys(now)])) {
    const content = now[address] ?? "";
    if (content === (before[address] ?? "")) continue;
    const { row, column } = readCell(address)!;
    changed.set(placeOf(row, column), content);
  }
  return changed;
}

/** Sheets whose rows or columns were inserted among others or taken out, by the getters of their workbook. */
const movedCells = new WeakMap<object, Set<string>>();

function noteMoved(getters: object, sheetId: string): void {
  movedCells.set(getters, (movedCells.get(getters) ?? new Set()).add(sheetId));
}

/** Says so of a workbook of which it is known otherwise. */
export function noteMovedCells(model: Model): void {
  for (const sheetId of model.getters.getSheetIds()) noteMoved(model.getters as object, sheetId);
}

const hasMovedCells = (model: Model, { sheets }: Snapshot): boolean =>
  sheets.some(({ id }) => movedCells.get(model.getters as object)?.has(id));

const PLUGIN = "reamwright_moved_cells";

type PluginLibrary = Pick<typeof import("@odoo/o-spreadsheet"), "UIPlugin" | "registries">;

/** Must run before the Model is made. */
export function watchMovedCells({ UIPlugin, registries }: PluginLibrary): void {
  class MovedCellsPlugin extends UIPlugin {
    override handle(command: any): void {
      if (command.type === "REMOVE_COLUMNS_ROWS" || command.type === "MOVE_COLUMNS_ROWS")
        this.note(command.sheetId);
      if (command.type !== "ADD_COLUMNS_ROWS") return;
      const { numberOfRows, numberOfCols } = this.getters.getSheetSize(command.sheetId);
      const size = command.dimension === "ROW" ? numberOfRows : numberOfCols;
      if (command.position === "before" || command.base + command.quantity + 1 < size)
        this.note(command.sheetId);
    }
    private note(sheetId: string): void {
      noteMoved(this.getters as object, sheetId);
    }
  }
  if (!registries.featurePluginRegistry.contains(PLUGIN))
    registries.featurePluginRegistry.add(PLUGIN, MovedCellsPlugin as any);
}
