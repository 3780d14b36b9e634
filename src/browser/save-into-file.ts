// browser: saving into the file that was opened: the cells that were changed, and what is computed from them, in their
// places; every other byte of the file stays.

import { fillParts } from "../fill/fill-workbook.ts";
import type { Functions } from "../fill/formula/evaluate.ts";
import type { WorkbookReport } from "../fill/report.ts";
import type { WithSheets } from "../workbook/xlsx/add-sheets.ts";
import { stylesAt, writeStyles } from "../workbook/xlsx/cell-styles.ts";
import { canEdit, editSheet } from "../workbook/xlsx/edit-sheet.ts";
import { askForAll, calculatedKey, spillMark, withoutCalculated } from "../workbook/xlsx/edit-workbook.ts";
import { withMerges } from "../workbook/xlsx/merges.ts";
import { over, type PackageParts } from "../workbook/xlsx/package.ts";
import { withFrozen } from "../workbook/xlsx/panes.ts";
import { restyled } from "../workbook/xlsx/restyle.ts";
import { withHeaders } from "../workbook/xlsx/sizes.ts";
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

export function saveIntoFile(
  { file, parts: workbook, places }: OpenedWorkbook,
  changes: Changes,
  typed: TypedCells,
  functions: Functions,
  valuesOnly: boolean,
  added: WithSheets = { parts: new Map(), sheets: [] },
  /** Formulas of the file whose values may be others all the same. */
  others: readonly ReadonlySet<number>[] = [],
): SavedInto | undefined {
  const parts = new Map(added.parts);
  let mark: string | undefined | null = null;
  const markOf = () => {
    if (mark === null) mark = spillMark(file, workbook.main, parts);
    return mark;
  };
  const changed: Set<number>[] = workbook.sheets.map((_, i) => new Set(others[i]));
  const gone = new Set<string>();
  for (const [i, contents] of changes.cells.entries()) {
    if (contents.size === 0) continue;
    const { part, id } = workbook.sheets[places[i]];
    const text = file.read(part);
    if (!canEdit(text, new Set(contents.keys()))) return undefined;
    const cells = new Map<number, NewCell>();
    for (const [place, content] of contents) {
      const { row, column } = cellAt(place);
      const cell = typed.cell(i, row, column, content, markOf);
      if (!cell) return undefined;
      cells.set(place, cell);
      changed[places[i]].add(place);
    }
    for (const place of formulaPlaces(text)) {
      const { row, column } = cellAt(place);
      if (cells.has(place) && !cells.get(place)!.formula) gone.add(calculatedKey(id, row, column));
    }
    const edited = editSheet(text, cells);
    parts.set(part, edited.text);
    for (const place of edited.blocked) changed[places[i]].add(place);
  }
  const styled = newStyles(over(file, parts), workbook, places, changes.looks);
  if (!styled) return undefined;
  for (const [part, text] of styled) parts.set(part, text);
  changes.looks.forEach((looks, i) => {
    const { part } = workbook.sheets[places[i]];
    const text = parts.get(part) ?? file.read(part);
    const seen = looks.frozen ? withFrozen(text, looks.frozen) : text;
    const laidOut = withMerges(withHeaders(seen, looks), looks.merged, looks.unmerged);
    if (laidOut !== text) parts.set(part, laidOut);
  });
  for (const name of added.sheets) {
    const text = withMark(parts.get(name)!, markOf);
    parts.set(name, text);
    changed.push(new Set(formulaPlaces(text)));
  }
  const edited = over(file, parts);
  const filled = fillParts(edited, functions, { changed, valuesOnly });
  for (const [part, text] of filled.parts) parts.set(part, text);
  const chain = workbook.calculationChain;
  if (chain && gone.size > 0) parts.set(chain, withoutCalculated(file.read(chain), gone));
  if (filled.report.sheets.some(({ kept }) => kept > 0))
    parts.set(workbook.main, askForAll(edited.read(workbook.main)));
  const count = changes.cells.reduce(
    (sum, cells, i) => sum + new Set([...cells.keys(), ...changes.looks[i].cells.keys()]).size,
    0,
  );
  return {
    bytes: joined(file.with(parts)),
    report: filled.report,
    changed: count,
    asValues: typed.asValues,
    kept: filled.kept,
    places: [...places, ...added.sheets.map((_, i) => workbook.sheets.length + i)],
  };
}

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

export function joined(pieces: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(pieces.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const piece of pieces) {
    bytes.set(piece, at);
    at += piece.length;
  }
  return bytes;
}
