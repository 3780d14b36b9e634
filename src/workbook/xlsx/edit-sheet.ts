// workbook: changes cells of a sheet's part together with what hangs on them: formulas that share the text of a changed
// one, and the cells that a changed formula has filled.

import { type Box, contains } from "./addresses.ts";
import { formulaRoom, readSheet, storedValue } from "./read-sheet.ts";
import { cellAt, type NewCell, placeOf, writeCells } from "./write-sheet.ts";

export function editSheet(text: string, edits: ReadonlyMap<number, NewCell>): string {
  const cells = new Map<number, NewCell>();
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
    } else if (array && !formula.isWhatIfTable && hasOther(array, place, edits))
      // Something stands where the result was: it fills its own cell until it is computed.
      cells.set(place, {
        value: ownValue(text, cell),
        fills: { top: row, left: column, bottom: row, right: column },
      });
  });
  for (const [place, cell] of edits) cells.set(place, cell);
  return writeCells(text, cells, shape);
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
