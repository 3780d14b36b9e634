// fill: the values that a workbook's cells have, as far as formulas read them.

import type { PackageParts } from "../workbook/xlsx/package.ts";
import { type CellValue, storedValue } from "../workbook/xlsx/read-sheet.ts";
import { walkSheet } from "../workbook/xlsx/walk-sheet.ts";
import { readSharedStrings } from "../workbook/xlsx/workbook-parts.ts";
import { type Area, CellError, type Scalar } from "./formula/values.ts";
import { Grid, UNVALUED } from "./grid.ts";
import type { LoadedWorkbook } from "./load.ts";

/** The rows of each column that are read, as one span: the least and the greatest. */
type Wanted = Map<number, [top: number, bottom: number]>;

/** The values of the cells in these areas, on each sheet; of all cells if `areas` is undefined. */
export function readValues(
  file: PackageParts,
  { parts, sheets }: LoadedWorkbook,
  areas: Iterable<Area> | undefined,
): Grid[] {
  const wanted = areas && spans(areas, sheets.length);
  let strings: string[] | undefined;
  const sharedString = (place: number): string | undefined => {
    strings ??= parts.sharedStrings ? readSharedStrings(file.read(parts.sharedStrings)) : [];
    return strings[place];
  };
  return sheets.map(({ text }, sheet) => {
    const grid = new Grid();
    const spans = wanted?.[sheet];
    walkSheet(text, {
      cell(cell) {
        const { row, column } = cell;
        if (!cell.value && !cell.inline && !cell.formula) return;
        grid.reach(row, column);
        if (spans) {
          const span = spans.get(column);
          if (!span || row < span[0] || row > span[1]) return;
        }
        // A date written out is a number in no way that all programs agree on.
        const value = cell.type === "d" ? null : storedValue(text, cell, sharedString);
        if (value !== null) grid.set(row, column, scalarOf(value));
        else if (cell.formula || cell.type === "d") grid.set(row, column, UNVALUED);
      },
    });
    return grid;
  });
}

const scalarOf = (value: CellValue): Scalar =>
  typeof value === "object" && value !== null ? new CellError(value.code) : value;

function spans(areas: Iterable<Area>, sheets: number): Wanted[] {
  const wanted: Wanted[] = Array.from({ length: sheets }, () => new Map());
  const seen = new Set<string>();
  for (const { sheet, top, left, bottom, right } of areas) {
    const columns = wanted[sheet];
    const key = `${sheet} ${left} ${right} ${top} ${bottom}`;
    if (right - left > 100) {
      // Whole rows come in many copies.
      if (seen.has(key)) continue;
      seen.add(key);
    }
    for (let column = left; column <= right; column++) {
      const span = columns.get(column);
      if (!span) columns.set(column, [top, bottom]);
      else {
        span[0] = Math.min(span[0], top);
        span[1] = Math.max(span[1], bottom);
      }
    }
  }
  return wanted;
}
