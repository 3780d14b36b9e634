// workbook: what was changed in the browser workbook since its file was opened: cells, sizes and number formats, which can
// be written into that file, or more, which can not.

import type { Model } from "@odoo/o-spreadsheet";
import { cellName, contains, readBox, readCell } from "../xlsx/addresses.ts";
import type { Sizes } from "../xlsx/sizes.ts";
import { cellAt, placeOf } from "../xlsx/write-sheet.ts";

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
  /** Number formats by the ranges that have them. */
  readonly formats: readonly (readonly [range: string, format: string])[];
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
  const around = JSON.stringify({
    ...rest,
    styles: resolved("styles"),
    formats: [],
    borders: resolved("borders"),
  });
  const formats = resolved("formats") as [string, string][];
  return { id, cells, rows: rows ?? {}, columns: cols ?? {}, size: [rowNumber, colNumber], formats, around };
}

/** The sizes of rows or columns that are other than before; undefined if more of them is. */
function sizesSince(before: Headers, now: Headers): ReadonlyMap<number, number> | undefined {
  const sizes = new Map<number, number>();
  for (const at of new Set([...Object.keys(before), ...Object.keys(now)])) {
    const [{ size: was, ...others }, { size, ...own }] = [before[at] ?? {}, now[at] ?? {}] as Header[];
    if (JSON.stringify(own) !== JSON.stringify(others)) return undefined;
    if (size === was) continue;
    if (size === undefined) return undefined;
    sizes.set(Number(at), size);
  }
  return sizes;
}

interface Header {
  readonly size?: number;
}

/** The number formats that cells have now and had not before; undefined if a spreadsheet program may read one otherwise. */
function formatsSince(before: SheetSnapshot, now: SheetSnapshot): ReadonlyMap<number, string> | undefined {
  const was = new Map(before.formats);
  const is = new Map(now.formats);
  const changed = new Map<number, string>();
  const visit = (range: string, set: (place: number) => void) => {
    const { top, left, bottom, right } = readBox(range)!;
    for (let row = top; row <= bottom; row++)
      for (let column = left; column <= right; column++) set(placeOf(row, column));
  };
  for (const [range, format] of was)
    if (is.get(range) !== format) visit(range, (place) => changed.set(place, "General"));
  for (const [range, format] of is)
    if (was.get(range) !== format) visit(range, (place) => changed.set(place, format));
  // Ranges are cut otherwise where one of their cells changes.
  for (const [range, format] of was)
    if (is.get(range) !== format)
      visit(range, (place) => changed.get(place) === format && changed.delete(place));
  return [...changed.values()].every((format) => format === "General" || isCommon(format))
    ? changed
    : undefined;
}

/** Figures with decimals, percentages, money, dates, times and texts, which are written alike in all programs. */
const isCommon = (format: string): boolean =>
  /^(?:\[\$[^\]"\\]{1,5}\])?(?:#,##)?0(?:\.0{1,15})?%?(?:\[\$[^\]"\\]{1,5}\])?$/.test(format) ||
  /^(?:d{1,4}|m{1,4}|yyyy|yy|[-/ ,.]){1,12}$/.test(format) ||
  /^hh?:mm(?::ss)?$/.test(format) ||
  format === "@";

/** As the importer of the grid's library counts them. */
const CHARACTERS = 0.143;
const POINTS = 0.75;

function looksSince(before: SheetSnapshot, now: SheetSnapshot): Looks | undefined {
  if (now.id !== before.id || now.around !== before.around) return undefined;
  const [heights, widths] = [sizesSince(before.rows, now.rows), sizesSince(before.columns, now.columns)];
  const formats = formatsSince(before, now);
  if (!heights || !widths || !formats) return undefined;
  const scaled = (sizes: ReadonlyMap<number, number>, by: number) =>
    new Map([...sizes].map(([at, size]) => [at, Math.round(size * by * 100) / 100]));
  return { heights: scaled(heights, POINTS), widths: scaled(widths, CHARACTERS), formats };
}

/** Sizes and number formats of a sheet that are other than before. */
export interface Looks extends Sizes {
  /** By the place of the cell. */
  readonly formats: ReadonlyMap<number, string>;
}

export interface Changes {
  /** What is typed into each changed cell, by the place of its sheet and of the cell; "" where nothing is left. */
  readonly cells: readonly ReadonlyMap<number, string>[];
  readonly looks: readonly Looks[];
  /** Sheets that are new, behind the others. */
  readonly added: readonly string[];
  /** Whether there is more than that: other sheets, rows, columns, formats, names. */
  readonly isMore: boolean;
}

export function changesSince(before: Snapshot, model: Model): Changes {
  const now = snapshotOf(model);
  const cells = contentsSince(before, now, model);
  const looks = before.sheets.flatMap((sheet, i) =>
    now.sheets[i] ? (looksSince(sheet, now.sheets[i]) ?? []) : [],
  );
  const isMore = cells === undefined || now.names !== before.names || looks.length < before.sheets.length;
  if (isMore) return { cells: [], looks: [], added: [], isMore };
  const typed = cells.map((own, i) => withRetyped(own, looks[i], before.sheets[i], now.sheets[i]));
  return { cells: typed, looks, added: now.sheets.slice(before.sheets.length).map(({ id }) => id), isMore };
}

/** A number that got the format of texts is a text in the grid, and the other way round. */
function withRetyped(
  typed: ReadonlyMap<number, string>,
  { formats }: Looks,
  before: SheetSnapshot,
  now: SheetSnapshot,
): ReadonlyMap<number, string> {
  const texts = before.formats.filter(([, format]) => format === "@").map(([range]) => readBox(range)!);
  const all = new Map(typed);
  for (const [place, format] of formats) {
    const { row, column } = cellAt(place);
    const content = now.cells[cellName(row, column)] ?? "";
    const isRetyped = format === "@" || texts.some((box) => contains(box, row, column));
    if (isRetyped && content !== "" && !content.startsWith("=")) all.set(place, content);
  }
  return all;
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
