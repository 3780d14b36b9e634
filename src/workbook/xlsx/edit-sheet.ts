// workbook: changes cells of a sheet's part together with what hangs on them: formulas that share the text of a changed
// one, and the cells that a changed formula has filled.

import { type Box, contains } from "./addresses.ts";
import { formulaRoom, readSheet, storedValue } from "./read-sheet.ts";
import { cellAt, type NewCell, placeOf, writeCells } from "./write-sheet.ts";

export interface EditedSheet {
  readonly text: string;
  /** Where formulas stand that had filled cells which were written over. */
  readonly blocked: readonly number[];
}

export function editSheet(text: string, edits: ReadonlyMap<number, NewCell>): EditedSheet {
  const cells = new Map<number, NewCell>();
  const blocked: number[] = [];
  /** Shared formulas whose text stands in a changed cell. */
  const left = new Set<string>();
  const shape = readSheet(text, formulaRoom(), (cell, formula) => {
    if (!formula) return;
    const { row, column } = cell;
    const place = placeOf(row, column);
    const { t: kind, si: group = "" } = cell.formula!.attributes;
    const isChanged = edits.has(place);
    const { array } = formula;
    if (kind === "shared" && isChanged && cell.formula!.close > cell.formula!.open) left.add(group);
    else if (kind === "shared" && left.has(group) && formula.text !== undefined)
      cells.set(place, { value: ownValue(text, cell), formula: { text: formula.text } });
    else if (array && isChanged) {
      for (const other of placesIn(array)) if (other !== place) cells.set(other, { value: null });
    } else if (array && !formula.isWhatIfTable && hasOther(array, place, edits)) {
      // Something stands where the result was: it fills its own cell until it is computed.
      blocked.push(place);
      for (const other of placesIn(array)) cells.set(other, { value: null, isSpilled: true });
      cells.set(place, {
        value: ownValue(text, cell),
        fills: { top: row, left: column, bottom: row, right: column },
      });
    }
  });
  for (const [place, cell] of edits) cells.set(place, cell);
  return { text: writeCells(text, cells, shape), blocked };
}

/**
 * Whether cells can be written without a part of what belongs together being written over: a what-if table, or a formula
 * that fills several cells whatever stands in them.
 */
export function canEdit(text: string, places: ReadonlySet<number>): boolean {
  let can = true;
  readSheet(text, formulaRoom(), ({ row, column }, formula) => {
    if (!formula?.array || formula.isSpill) return;
    const { array, isWhatIfTable } = formula;
    if (!isWhatIfTable && places.has(placeOf(row, column))) return;
    for (const place of places) {
      const at = cellAt(place);
      if (contains(array, at.row, at.column)) can = false;
    }
  });
  return can;
}

/** What stands beside a formula: never a shared text. */
const ownValue = (text: string, cell: Parameters<typeof storedValue>[1]) =>
  storedValue(text, cell, () => undefined);

/** More cells than these are no result that was in a file. */
const MOST = 1_000_000;

function* placesIn({ top, left, bottom, right }: Box): Generator<number> {
  if ((bottom - top + 1) * (right - left + 1) > MOST) return;
  for (let row = top; row <= bottom; row++)
    for (let column = left; column <= right; column++) yield placeOf(row, column);
}

function hasOther(box: Box, anchor: number, edits: ReadonlyMap<number, NewCell>): boolean {
  for (const [place, { value, formula }] of edits) {
    const { row, column } = cellAt(place);
    if (place !== anchor && (value !== null || formula) && contains(box, row, column)) return true;
  }
  return false;
}
