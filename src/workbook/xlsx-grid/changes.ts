// workbook: what was changed in the browser workbook since its file was opened: cells and how they look, sizes and merges,
// which can be written into that file, or more, which can not.

import type { Model } from "@odoo/o-spreadsheet";
import { cellName, contains, readBox, readCell } from "../xlsx/addresses.ts";
import type { Frozen } from "../xlsx/panes.ts";
import type { Headers as FileHeaders, HeaderChanges } from "../xlsx/sizes.ts";
import { cellAt, placeOf } from "../xlsx/write-sheet.ts";
import { looksOfCells, type NewLook, type SheetLooks, type Zones } from "./looks.ts";
import { type StructureStep, structureSteps } from "./structure.ts";

/** As the grid's library exports them, as far as they matter here. */
interface SheetData {
  readonly id: string;
  readonly name: string;
  readonly cells: Readonly<Record<string, string>>;
  readonly rowNumber: number;
  readonly colNumber: number;
  readonly rows?: Headers;
  readonly cols?: Headers;
  readonly panes?: { readonly xSplit: number; readonly ySplit: number };
  readonly merges?: readonly string[];
  readonly figures?: readonly Figure[];
  readonly dataValidationRules?: readonly Validation[];
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

export type Headers = Readonly<Record<string, unknown>>;

export interface SheetSnapshot extends SheetLooks {
  readonly id: string;
  readonly cells: SheetData["cells"];
  readonly rows: Headers;
  readonly columns: Headers;
  readonly size: readonly [rows: number, columns: number];
  readonly frozen: Frozen;
  readonly merges: readonly string[];
  readonly figures: readonly Figure[];
  readonly validations: readonly Validation[];
  /** All else that a file would hold of it. */
  readonly around: string;
}

/** A chart or a picture. */
interface Figure {
  readonly id: string;
  readonly width: number;
  readonly height: number;
  readonly offset?: unknown;
}

/** A rule for what may be typed. */
interface Validation {
  readonly id: string;
  readonly ranges: readonly string[];
  readonly criterion: unknown;
}

/** The workbook as it is now. */
export interface Snapshot {
  readonly sheets: readonly SheetSnapshot[];
  readonly names: string;
  /** How rows, columns and sheets had been changed by then. */
  readonly steps: readonly StructureStep[];
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
    steps: structureSteps(model),
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
  const {
    id,
    cells,
    rowNumber,
    colNumber,
    rows,
    cols,
    panes,
    merges = [],
    figures = [],
    dataValidationRules = [],
    ...rest
  } = sheet;
  /** Looks by what they are, not by their numbers. */
  const resolved = <T>(kind: "styles" | "formats" | "borders") =>
    Object.entries(sheet[kind] ?? {}).map(([zone, number]) => [
      zone,
      (data[kind] as any)[number],
    ]) as Zones<T>;
  return {
    id,
    cells,
    rows: rows ?? {},
    columns: cols ?? {},
    size: [rowNumber, colNumber],
    frozen: { rows: panes?.ySplit ?? 0, columns: panes?.xSplit ?? 0 },
    merges,
    figures,
    validations: dataValidationRules,
    formats: resolved("formats"),
    styles: resolved("styles"),
    borders: resolved("borders"),
    around: JSON.stringify({ ...rest, styles: [], formats: [], borders: [] }, withoutIds),
  };
}

/** Rules and figures are told apart by what they are: another opening of the file gives them other numbers. */
const withoutIds = (key: string, value: unknown) => (/^(?:id|chartId|cfId)$/.test(key) ? undefined : value);

/** Whether they are the same but for their numbers. */
const isSame = (before: unknown, now: unknown): boolean =>
  JSON.stringify(before, withoutIds) === JSON.stringify(now, withoutIds);

/** As the importer of the grid's library counts them. */
const CHARACTERS = 0.143;
const POINTS = 0.75;

/** What rows or columns have that is other than before; undefined if a file cannot say it. */
function headersSince(
  before: Headers,
  now: Headers,
  count: number,
  scale: number,
): HeaderChanges | undefined {
  const sizes = new Map<number, number>();
  const hidden = new Map<number, boolean>();
  for (const at of new Set([...Object.keys(before), ...Object.keys(now)])) {
    if (Number(at) >= count) continue;
    const [{ size: was, isHidden: wasHidden = false, ...others }, { size, isHidden = false, ...own }] = [
      before[at] ?? {},
      now[at] ?? {},
    ] as Header[];
    if (JSON.stringify(own) !== JSON.stringify(others)) return undefined;
    if (isHidden !== wasHidden) hidden.set(Number(at), isHidden);
    if (size === was) continue;
    if (size === undefined) return undefined;
    sizes.set(Number(at), Math.round(size * scale * 100) / 100);
  }
  return { sizes, hidden };
}

interface Header {
  readonly size?: number;
  readonly isHidden?: boolean;
}

/** How a sheet looks that looks otherwise than before. */
export interface Looks extends FileHeaders {
  /** By the places of cells. */
  readonly cells: ReadonlyMap<number, NewLook>;
  /** Where other rows or columns stay in sight than before. */
  readonly frozen?: Frozen;
  /** Ranges of cells that are merged now and were not, and the other way round. */
  readonly merged: readonly string[];
  readonly unmerged: readonly string[];
}

function looksSince(before: SheetSnapshot, now: SheetSnapshot): Looks | undefined {
  const hasOther =
    now.around !== before.around ||
    !isSame(before.figures, now.figures) ||
    !isSame(before.validations, now.validations);
  if (now.id !== before.id || hasOther) return undefined;
  const rows = headersSince(before.rows, now.rows, now.size[0], POINTS);
  const columns = headersSince(before.columns, now.columns, now.size[1], CHARACTERS);
  const cells = looksOfCells(before, now);
  if (!rows || !columns || !cells) return undefined;
  return {
    rows,
    columns,
    cells,
    // A draft of an older version does not tell.
    ...(before.frozen && !isSame(before.frozen, now.frozen) ? { frozen: now.frozen } : {}),
    merged: now.merges.filter((range) => !before.merges.includes(range)),
    unmerged: before.merges.filter((range) => !now.merges.includes(range)),
  };
}

export interface Changes {
  /** What is typed into each changed cell, by the place of its sheet and of the cell; "" where nothing is left. */
  readonly cells: readonly ReadonlyMap<number, string>[];
  readonly looks: readonly Looks[];
  /** Sheets that are new, behind the others. */
  readonly added: readonly string[];
  /** Whether there is more than that: other sheets, rows, columns, names. */
  readonly isMore: boolean;
}

export function changesSince(before: Snapshot, model: Model): Changes {
  const now = snapshotOf(model);
  const cells = contentsSince(before, now, model);
  if (!cells) return { cells: [], looks: [], added: [], isMore: true };
  const looks = before.sheets.flatMap((sheet, i) =>
    now.sheets[i] ? (looksSince(sheet, now.sheets[i]) ?? []) : [],
  );
  const hasNewLink = cells.some((own, i) => [...own].some((one) => isNewLink(before.sheets[i].cells, one)));
  const isMore = now.names !== before.names || looks.length < before.sheets.length || hasNewLink;
  if (isMore) return { cells: [], looks: [], added: [], isMore };
  const typed = cells.map((own, i) => withRetyped(own, looks[i], before.sheets[i], now.sheets[i]));
  return { cells: typed, looks, added: now.sheets.slice(before.sheets.length).map(({ id }) => id), isMore };
}

/** Links stand beside the cells of a file, which are all that is written: a text typed over one keeps its link. */
function isNewLink(before: SheetData["cells"], [place, content]: readonly [number, string]): boolean {
  const link = linkIn(content);
  if (link === undefined) return false;
  const { row, column } = cellAt(place);
  return linkIn(before[cellName(row, column)] ?? "") !== link;
}

/** Where the grid's text for a link leads, `[words](address)`. */
const linkIn = (content: string): string | undefined => /^\[.+\]\((.+)\)$/.exec(content)?.[1];

/** A number that got the format of texts is a text in the grid, and the other way round. */
function withRetyped(
  typed: ReadonlyMap<number, string>,
  { cells: looks }: Looks,
  before: SheetSnapshot,
  now: SheetSnapshot,
): ReadonlyMap<number, string> {
  const texts = before.formats.filter(([, format]) => format === "@").map(([range]) => readBox(range)!);
  const all = new Map(typed);
  for (const [place, { change, formatOf }] of looks) {
    const { row, column } = cellAt(place);
    const content = now.cells[cellName(row, column)] ?? "";
    const isRetyped =
      change.format === "@" ||
      ((change.format ?? formatOf) !== undefined && texts.some((box) => contains(box, row, column)));
    if (isRetyped && content !== "" && !content.startsWith("=")) all.set(place, content);
  }
  return all;
}

/** How rows, columns and sheets of before were changed since; undefined if some of what was done by then is undone. */
export function stepsSince({ steps, sheets }: Snapshot, model: Model): readonly StructureStep[] | undefined {
  const now = structureSteps(model);
  // A draft of an older version does not tell.
  if (!steps) return undefined;
  const isFollowed = JSON.stringify(now.slice(0, steps.length)) === JSON.stringify(steps);
  if (!isFollowed) return undefined;
  // What is done to a sheet that is new is no matter of the file.
  return now.slice(steps.length).filter(({ sheetId }) => sheets.some(({ id }) => id === sheetId));
}

/** What is typed into each changed cell; undefined if cells stand elsewhere than before. */
export function contentsSince(
  before: Snapshot,
  now: Snapshot,
  model: Model,
): readonly ReadonlyMap<number, string>[] | undefined {
  const isInPlace =
    before.sheets.every(({ id }, i) => id === now.sheets[i]?.id) &&
    stepsSince(before, model)?.every(({ kind }) => kind === "move") === true;
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
