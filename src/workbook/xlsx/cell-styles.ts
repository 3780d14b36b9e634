// workbook: the styles of cells in a sheet's part, read and written; what the cells have stays.

import { walkSheet } from "./walk-sheet.ts";
import { cellAt, placeOf, writeCells } from "./write-sheet.ts";

/** Numbers of styles, by the places of cells. */
export type Styles = ReadonlyMap<number, string>;

/** The part in which these cells have these styles. */
export const writeStyles = (text: string, styles: Styles): string =>
  writeCells(
    text,
    new Map([...styles].map(([place, style]) => [place, { value: null, style }])),
    undefined,
    true,
  );

/** The styles that cells have, of their own, of their rows or of their columns. */
export function stylesAt(
  text: string,
  places: { has(place: number): boolean; keys(): Iterable<number> },
): Styles {
  const styles = new Map<number, string>();
  const rows = new Map<number, string>();
  const shape = walkSheet(text, {
    rowStart: ({ row, attributes: { s } }) => s !== undefined && rows.set(row, s),
    cell: ({ row, column, attributes }) => {
      const place = placeOf(row, column);
      if (places.has(place)) styles.set(place, attributes.s ?? "0");
    },
  });
  for (const place of places.keys()) {
    const { row, column } = cellAt(place);
    const own =
      rows.get(row) ?? shape.columns.find(({ first, last }) => column >= first && column <= last)?.style;
    if (!styles.has(place) && own !== undefined) styles.set(place, own);
  }
  return styles;
}
