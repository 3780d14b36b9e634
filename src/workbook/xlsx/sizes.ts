// workbook: widths of columns and heights of rows, written into a sheet's part; no other character of it changes.

import { walkSheet } from "./walk-sheet.ts";
import { withAttribute } from "./write-sheet.ts";
import { attribute, elements } from "./xml-text.ts";

/** Widths in characters and heights in points, by the place of the column or row. */
export interface Sizes {
  readonly widths: ReadonlyMap<number, number>;
  readonly heights: ReadonlyMap<number, number>;
}

export const withSizes = (text: string, { widths, heights }: Sizes): string =>
  withHeights(withWidths(text, widths), heights);

function withWidths(text: string, widths: ReadonlyMap<number, number>): string {
  if (widths.size === 0) return text;
  const { data, prefix } = walkSheet(text);
  if (!data) return text;
  const [list] = elements(text, "cols");
  const columns: { first: number; last: number; tag: string }[] = [];
  for (const { tag } of list ? elements(list.inside, "col") : [])
    columns.push({ first: Number(attribute(tag, "min")) - 1, last: Number(attribute(tag, "max")) - 1, tag });
  for (const [column, width] of widths) {
    const at = columns.findIndex(({ first, last }) => column >= first && column <= last);
    const own = at < 0 ? undefined : columns[at];
    const sized = withAttribute(
      withAttribute(own?.tag ?? `<${prefix}col/>`, "width", String(width)),
      "customWidth",
      "1",
    );
    const pieces = [{ first: column, last: column, tag: sized }];
    if (own && own.first < column) pieces.unshift({ ...own, last: column - 1 });
    if (own && own.last > column) pieces.push({ ...own, first: column + 1 });
    columns.splice(at < 0 ? columns.length : at, at < 0 ? 0 : 1, ...pieces);
  }
  const written = columns
    .sort((a, b) => a.first - b.first)
    .map(({ first, last, tag }) =>
      withAttribute(withAttribute(tag, "min", String(first + 1)), "max", String(last + 1)).replace(
        /([^/])>$/,
        "$1/>",
      ),
    )
    .join("");
  if (!list)
    return `${text.slice(0, data.start)}<${prefix}cols>${written}</${prefix}cols>${text.slice(data.start)}`;
  const open = list.tag.replace(/\s*\/>$/, ">");
  return `${text.slice(0, list.start)}${open}${written}</${prefix}cols>${text.slice(list.end)}`;
}

function withHeights(text: string, heights: ReadonlyMap<number, number>): string {
  if (heights.size === 0) return text;
  const rows = [...heights.keys()].sort((a, b) => a - b);
  const pieces: string[] = [];
  let copied = 0;
  let next = 0;
  let prefix = "";
  const put = (from: number, to: number, now: string) => {
    pieces.push(text.slice(copied, from), now);
    copied = to;
  };
  const sized = (tag: string, row: number) =>
    withAttribute(withAttribute(tag, "ht", String(heights.get(row))), "customHeight", "1");
  const before = (row: number) => {
    let now = "";
    for (; next < rows.length && rows[next] < row; next++)
      now += sized(`<${prefix}row r="${rows[next] + 1}"/>`, rows[next]);
    return now;
  };
  const shape = walkSheet(text);
  prefix = shape.prefix;
  if (!shape.data) return text;
  walkSheet(text, {
    rowStart({ row, span }) {
      const now = before(row);
      if (now !== "") put(span.start, span.start, now);
      if (rows[next] !== row) return;
      next++;
      put(span.start, span.open, sized(text.slice(span.start, span.open), row));
    },
  });
  const last = before(Number.POSITIVE_INFINITY);
  const { start, close, end } = shape.data;
  if (last !== "" && close < end) put(close, close, last);
  else if (last !== "") put(start, end, `<${prefix}sheetData>${last}</${prefix}sheetData>`);
  return pieces.join("") + text.slice(copied);
}
