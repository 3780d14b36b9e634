// fill: the values that a workbook's cells have, as far as formulas read them.

import { Refusal } from "../workbook/workbook.ts";
import type { Package } from "../workbook/xlsx/package.ts";
import { insideOf, type SheetCell, type SheetText, visitCells } from "../workbook/xlsx/sheet-cells.ts";
import { readSharedStrings, richText } from "../workbook/xlsx/workbook-parts.ts";
import { readCellText } from "../workbook/xlsx/xml-text.ts";
import { type Area, CellError, type Scalar } from "./formula/values.ts";
import { Grid, UNVALUED } from "./grid.ts";
import type { LoadedWorkbook } from "./load.ts";

/** The rows of each column that are read, as one span: the least and the greatest. */
type Wanted = Map<number, [top: number, bottom: number]>;

/** The values of the cells in these areas, on each sheet; of all cells if `areas` is undefined. */
export function readValues(
  file: Package,
  { parts, sheets }: LoadedWorkbook,
  areas: Iterable<Area> | undefined,
): Grid[] {
  const wanted = areas && spans(areas, sheets.length);
  let strings: string[] | undefined;
  const sharedString = (place: number): Scalar => {
    strings ??= parts.sharedStrings ? readSharedStrings(file.read(parts.sharedStrings)) : [];
    return strings[place] ?? null;
  };
  return sheets.map(({ source }, sheet) => {
    const grid = new Grid();
    const spans = wanted?.[sheet];
    visitCells(source, (cell) => {
      const { row, column } = cell;
      const hasContent = cell.value || cell.inline || cell.formula;
      if (!hasContent) return;
      grid.reach(row, column);
      if (spans) {
        const span = spans.get(column);
        if (!span || row < span[0] || row > span[1]) return;
      }
      // A date written out is a number in no way that all programs agree on.
      const value = cell.type === "d" ? null : storedValue(source, cell, sharedString);
      if (value !== null) grid.set(row, column, value);
      else if (cell.formula || cell.type === "d") grid.set(row, column, UNVALUED);
    });
    return grid;
  });
}

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

/** What the file holds for a cell; null for nothing. */
function storedValue({ text }: SheetText, cell: SheetCell, sharedString: (place: number) => Scalar): Scalar {
  if (cell.inline && cell.type === "inlineStr")
    return richText(text.slice(cell.inline.open, cell.inline.close));
  if (!cell.value) return null;
  const held = insideOf(text, cell.value);
  switch (cell.type) {
    case "s":
      return sharedString(Number(held));
    case "str":
      return readCellText(text.slice(cell.value.open, cell.value.close));
    case "e":
      return new CellError(held);
    case "b":
      return held.trim() === "1" || held.trim() === "true";
    default:
      return held.trim() === "" ? null : numberIn(held);
  }
}

function numberIn(held: string): Scalar {
  const number = Number(held);
  if (Number.isNaN(number))
    throw new Refusal(
      `the workbook is damaged: a cell holds ${JSON.stringify(held.slice(0, 20))} as a number`,
    );
  return number;
}
