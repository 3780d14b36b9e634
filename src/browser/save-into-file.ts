// browser: saving into the file that was opened: the cells that were changed, and what is computed from them, in their
// places; every other byte of the file stays.

import { fillParts } from "../fill/fill-workbook.ts";
import type { Functions } from "../fill/formula/evaluate.ts";
import type { WorkbookReport } from "../fill/report.ts";
import type { WithSheets } from "../workbook/xlsx/add-sheets.ts";
import { stylesAt, writeStyles } from "../workbook/xlsx/cell-styles.ts";
import { canEdit, editSheet } from "../workbook/xlsx/edit-sheet.ts";
import { askForAll, calculatedKey, spillMark, withoutCalculated } from "../workbook/xlsx/edit-workbook.ts";
import { leaveOutPart } from "../workbook/xlsx/leave-out.ts";
import { withMerges } from "../workbook/xlsx/merges.ts";
import { joined, over, type PackageParts } from "../workbook/xlsx/package.ts";
import { withFrozen } from "../workbook/xlsx/panes.ts";
import { restyled } from "../workbook/xlsx/restyle.ts";
import { listed } from "../workbook/xlsx/sheet-list.ts";
import { withHeaders } from "../workbook/xlsx/sizes.ts";
import { withTables } from "../workbook/xlsx/table-cells.ts";
import { walkSheet } from "../workbook/xlsx/walk-sheet.ts";
import { relationsOf } from "../workbook/xlsx/workbook-parts.ts";
import { cellAt, type NewCell, placeOf } from "../workbook/xlsx/write-sheet.ts";
import type { Changes, Looks } from "../workbook/xlsx-grid/changes.ts";
import type { OpenedWorkbook } from "../workbook/xlsx-grid/open-file.ts";
import type { TypedCells } from "../workbook/xlsx-grid/typed-cells.ts";

export interface SavedInto {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly report: WorkbookReport;
  readonly changed: number;
  /** Formulas that no other program has, written as their values. */
  readonly asValues: number;
  /** Formulas that keep a value that no longer holds, by the places of their sheets in the file. */
  readonly kept: readonly ReadonlySet<number>[];
  /** Which sheet of the file each sheet of the grid is now. */
  readonly places: readonly number[];
}

/** What is written beside the cells that were changed. */
export interface Beside {
  /** Sheets that are written whole. */
  readonly made?: WithSheets;
  /** Formulas of the file whose values may be others all the same. */
  readonly others?: readonly ReadonlySet<number>[];
}

export const noSheets: WithSheets = { parts: new Map(), pictures: new Map(), gone: new Set(), added: [] };

export function saveIntoFile(
  opened: OpenedWorkbook,
  changes: Changes,
  typed: TypedCells,
  functions: Functions,
  valuesOnly: boolean,
  { made = noSheets, others = [] }: Beside = {},
): SavedInto | undefined {
  const { file, parts: workbook, places } = opened;
  const parts = new Map(made.parts);
  const gone = new Set(made.gone);
  let mark: string | undefined | null = null;
  const markOf = () => {
    if (mark === null) mark = spillMark(file, workbook.main, parts);
    return mark;
  };
  const changed: Set<number>[] = workbook.sheets.map((_, i) => new Set(others[i]));
  /** Cells that have no formula any more. */
  const plain = new Set<string>();
  for (const [i, contents] of changes.cells.entries()) {
    const { part, id } = workbook.sheets[places[i]];
    const text = file.read(part);
    for (const place of contents.keys()) changed[places[i]].add(place);
    const toPlain = (place: number) => plain.add(calculatedKey(id, cellAt(place).row, cellAt(place).column));
    if (changes.rewritten.includes(i)) {
      const own = withMark(parts.get(part)!, markOf);
      parts.set(part, own);
      const formulas = new Set(formulaPlaces(own));
      for (const place of formulas) changed[places[i]].add(place);
      for (const place of formulaPlaces(text)) if (!formulas.has(place)) toPlain(place);
      continue;
    }
    if (contents.size === 0) continue;
    if (!canEdit(text, new Set(contents.keys()))) return undefined;
    const cells = new Map<number, NewCell>();
    for (const [place, content] of contents) {
      const { row, column } = cellAt(place);
      const cell = typed.cell(changes.sheets[i], row, column, content, markOf);
      if (!cell) return undefined;
      cells.set(place, cell);
    }
    for (const place of formulaPlaces(text))
      if (cells.has(place) && !cells.get(place)!.formula) toPlain(place);
    const tabled = withTables(over(file, parts, gone), workbook, places[i], cells);
    if (!tabled) return undefined;
    for (const [name, table] of tabled.parts) parts.set(name, table);
    const edited = editSheet(text, tabled.cells);
    parts.set(part, edited.text);
    for (const place of edited.blocked) changed[places[i]].add(place);
  }
  const edited = over(file, parts, gone);
  const styled = newStyles(edited, workbook, places, changes.looks);
  if (!styled) return undefined;
  for (const [part, text] of styled) parts.set(part, text);
  changes.looks.forEach((looks, i) => {
    const { part } = workbook.sheets[places[i]];
    const text = parts.get(part) ?? file.read(part);
    const seen = looks.frozen ? withFrozen(text, looks.frozen) : text;
    const laidOut = withMerges(withHeaders(seen, looks), looks.merged, looks.unmerged);
    if (laidOut !== text) parts.set(part, laidOut);
  });
  for (const name of made.added) {
    const text = withMark(parts.get(name)!, markOf);
    parts.set(name, text);
    changed.push(new Set(formulaPlaces(text)));
  }
  const filled = fillParts(edited, functions, { changed, valuesOnly });
  for (const [part, text] of filled.parts) parts.set(part, text);
  const chain = workbook.calculationChain;
  if (chain && plain.size > 0) parts.set(chain, withoutCalculated(edited.read(chain), plain));
  if (chain && !/<(?:[\w.-]+:)?c\s/.test(edited.read(chain))) {
    // A list without a formula is none.
    const left = leaveOutPart(edited, workbook.main, chain);
    for (const [part, text] of left.parts) parts.set(part, text);
    for (const part of left.gone) gone.add(part);
    parts.delete(chain);
  }
  if (filled.report.sheets.some(({ kept }) => kept > 0))
    parts.set(workbook.main, askForAll(edited.read(workbook.main)));
  const now = [...places, ...made.added.map((_, i) => workbook.sheets.length + i)];
  const order = sheetOrder(changes, now, workbook.sheets.length);
  const list = edited.read(workbook.main);
  const isInOrder = order.every((place, i) => place === i);
  // What a sum over sheets takes in depends on their order.
  if (
    !isInOrder &&
    [workbook.main, ...workbook.sheets.map(({ part }) => part)].some((part) => span.test(edited.read(part)))
  )
    return undefined;
  if (!isInOrder) parts.set(workbook.main, listed(list, order));
  const count = changes.cells.reduce(
    (sum, cells, i) => sum + new Set([...cells.keys(), ...changes.looks[i].cells.keys()]).size,
    0,
  );
  return {
    bytes: joined(file.with(new Map<string, string | Uint8Array>([...parts, ...made.pictures]), gone)),
    report: filled.report,
    changed: count,
    asValues: typed.asValues,
    kept: order.map((place) => filled.kept[place]),
    places: changes.order.map((id) => order.indexOf(now[[...changes.sheets, ...changes.added].indexOf(id)])),
  };
}

/**
 * The places that all sheets have in the file, in their order: what the grid does not show stays behind what it stood behind.
 * @param places of the sheets that the grid has, those that the file had first
 */
function sheetOrder({ sheets, added, order }: Changes, places: readonly number[], inFile: number): number[] {
  const ids = [...sheets, ...added];
  const shown = order.map((id) => places[ids.indexOf(id)]);
  const isShown = new Set(shown);
  const now: number[] = [];
  const withFollowers = (place: number) => {
    if (place >= 0) now.push(place);
    for (let next = place + 1; next < inFile && !isShown.has(next); next++) now.push(next);
  };
  withFollowers(-1);
  for (const place of shown) withFollowers(place);
  return now;
}

/** The first and the last of several sheets, before their cells. */
const span = /'(?:[^'<>]|'')*:(?:[^'<>]|'')*'!|[\p{L}\p{N}_.]+:[\p{L}_.][\p{L}\p{N}_.]*!/u;

/** The parts with the looks that cells have now; undefined if the styles are written as nobody writes them. */
function newStyles(
  file: PackageParts,
  { main, sheets }: OpenedWorkbook["parts"],
  places: readonly number[],
  looks: readonly Looks[],
): ReadonlyMap<string, string> | undefined {
  const changed = looks.flatMap(({ cells }, i) => {
    if (cells.size === 0) return [];
    const { part } = sheets[places[i]];
    const text = file.read(part);
    const others = [...cells.values()].flatMap(({ formatOf, like }) => formatOf ?? like ?? []);
    const before = stylesAt(text, new Set([...cells.keys(), ...others]));
    const wanted = [...cells].map(([place, { change, formatOf, like: other }]) => {
      if (other !== undefined) return [place, { like: before.get(other) ?? "0", change }] as const;
      const like = { like: before.get(place) ?? "0", change };
      const own = formatOf === undefined ? like : { ...like, formatLike: before.get(formatOf) ?? "0" };
      return [place, own] as const;
    });
    return { part, text, wanted };
  });
  if (changed.length === 0) return new Map();
  const styles = relationsOf(file, main).find(({ kind, part }) => kind === "styles" && file.has(part))?.part;
  const made =
    styles === undefined
      ? undefined
      : restyled(
          file.read(styles),
          changed.flatMap(({ wanted }) => wanted.map(([, one]) => one)),
        );
  if (styles === undefined || !made) return undefined;
  const written = changed.map(({ part, text, wanted }) => {
    const own = new Map(wanted.map(([place, one]) => [place, made.style(one)] as const));
    return [part, writeStyles(text, own)] as const;
  });
  return new Map([[styles, made.text], ...written]);
}

/** A new sheet with the mark that this file has for formulas which take the cells they need. */
const withMark = (text: string, markOf: () => string | undefined): string =>
  text.replace(/<c\s[^>]*>/g, (tag) =>
    tag.replace(/ cm="1"/, () => {
      const mark = markOf();
      return mark === undefined ? "" : ` cm="${mark}"`;
    }),
  );

/** Where a sheet has formulas. */
function formulaPlaces(text: string): number[] {
  const places: number[] = [];
  walkSheet(text, { cell: ({ row, column, formula }) => formula && places.push(placeOf(row, column)) });
  return places;
}
