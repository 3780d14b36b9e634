// workbook: what was changed in the browser workbook since its file was opened: cells and how they look, sizes, merges,
// names and the sheets themselves.

import { cellName, contains, readBox, readCell } from "../xlsx/addresses.ts";
import type { Frozen } from "../xlsx/panes.ts";
import type { Headers as FileHeaders, HeaderChanges } from "../xlsx/sizes.ts";
import { cellAt, placeOf } from "../xlsx/write-sheet.ts";
import { looksOfCells, type NewLook } from "./looks.ts";
import { type Headers, type SheetData, type SheetSnapshot, type Snapshot, withoutIds } from "./snapshot.ts";
import { isOfLines, type StructureStep } from "./structure.ts";

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
  if (hasOther) return undefined;
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
  /** The sheets that the file has, as the grid knows them. */
  readonly sheets: readonly string[];
  /** What is typed into each changed cell, by the place of its sheet and of the cell; "" where nothing is left. */
  readonly cells: readonly ReadonlyMap<number, string>[];
  readonly looks: readonly Looks[];
  /** Places among them of those of which more was changed than that: they are written whole. */
  readonly rewritten: readonly number[];
  /** Sheets that are new. */
  readonly added: readonly string[];
  /** All sheets in their order. */
  readonly order: readonly string[];
  /** Names of ranges that are new or other, with their ranges, and those that are gone, without. */
  readonly names: ReadonlyMap<string, string | undefined>;
}

const unchanged: Looks = {
  rows: { sizes: new Map(), hidden: new Map() },
  columns: { sizes: new Map(), hidden: new Map() },
  cells: new Map(),
  merged: [],
  unmerged: [],
};

/** Undefined if cells stand elsewhere than before, or sheets are gone. */
export function changesSince(before: Snapshot, now: Snapshot): Changes | undefined {
  const cells = contentsSince(before, now);
  if (!cells) return undefined;
  const sheets = before.sheets.map(({ id }) => now.sheets.find((sheet) => sheet.id === id)!);
  const looks = before.sheets.map((sheet, i) => looksSince(sheet, sheets[i]));
  const hasNewLink = cells.map((own, i) => [...own].some((one) => isNewLink(before.sheets[i].cells, one)));
  const rewritten = looks.flatMap((own, i) => (own && !hasNewLink[i] ? [] : i));
  return {
    sheets: sheets.map(({ id }) => id),
    cells: cells.map((own, i) => (looks[i] ? withRetyped(own, looks[i], before.sheets[i], sheets[i]) : own)),
    looks: looks.map((own, i) => (own && !hasNewLink[i] ? own : unchanged)),
    rewritten,
    added: now.sheets.flatMap(({ id }) => (before.sheets.some((sheet) => sheet.id === id) ? [] : id)),
    order: now.sheets.map(({ id }) => id),
    names: namesSince(before.names, now.names),
  };
}

function namesSince(before: string, now: string): Map<string, string | undefined> {
  const [old, own] = [before, now].map((text) => JSON.parse(text) as Record<string, string>);
  const changed = new Map<string, string | undefined>();
  for (const name of new Set([...Object.keys(old), ...Object.keys(own)]))
    if (old[name] !== own[name]) changed.set(name, own[name]);
  return changed;
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
export function stepsSince(
  { steps, sheets }: Snapshot,
  { steps: now }: Snapshot,
): readonly StructureStep[] | undefined {
  // A draft of an older version does not tell.
  if (!steps) return undefined;
  const isFollowed = JSON.stringify(now.slice(0, steps.length)) === JSON.stringify(steps);
  if (!isFollowed) return undefined;
  // What is done to a sheet that is new is no matter of the file, unless it is a copy of one that is not.
  const known = new Set(sheets.map(({ id }) => id));
  return now.slice(steps.length).filter((step) => {
    const isKnown = known.has(step.sheetId);
    if (isKnown && step.kind === "copy") known.add(step.to);
    return isKnown;
  });
}

/** Sheets that were made from others since. */
export const copiesSince = (before: Snapshot, now: Snapshot) =>
  (stepsSince(before, now) ?? []).flatMap((step) => (step.kind === "copy" ? step : []));

/** What is typed into each changed cell; undefined if cells stand elsewhere than before. */
export function contentsSince(
  before: Snapshot,
  now: Snapshot,
): readonly ReadonlyMap<number, string>[] | undefined {
  const sheets = before.sheets.map(({ id }) => now.sheets.find((sheet) => sheet.id === id));
  const isInPlace = stepsSince(before, now)?.every((step) => !isOfLines(step)) === true;
  if (!isInPlace || !sheets.every((sheet) => sheet !== undefined)) return undefined;
  return before.sheets.map(({ cells }, i) => changedCells(cells, sheets[i].cells));
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
