// workbook: widths of columns and heights of rows, and which of them are hidden, written into a sheet's part; no other
// character of it changes.

import { walkSheet } from "./walk-sheet.ts";
import { withAttribute } from "./write-sheet.ts";
import { attribute, elements } from "./xml-text.ts";

/** What is other than before of rows or of columns, by their places: widths in characters, heights in points. */
export interface HeaderChanges {
  readonly sizes: ReadonlyMap<number, number>;
  readonly hidden: ReadonlyMap<number, boolean>;
}

export interface Headers {
  readonly rows: HeaderChanges;
  readonly columns: HeaderChanges;
}

export const withHeaders = (text: string, { rows, columns }: Headers): string =>
  withRows(withColumns(text, columns), rows);

const placesIn = ({ sizes, hidden }: HeaderChanges): number[] =>
  [...new Set([...sizes.keys(), ...hidden.keys()])].sort((a, b) => a - b);

/** The start tag of a row or column as it is now. */
function changed(
  tag: string,
  { sizes, hidden }: HeaderChanges,
  at: number,
  [size, custom]: readonly [string, string],
) {
  const [own, isHidden] = [sizes.get(at), hidden.get(at)];
  const sized = own === undefined ? tag : withAttribute(withAttribute(tag, size, String(own)), custom, "1");
  return isHidden === undefined ? sized : withAttribute(sized, "hidden", isHidden ? "1" : undefined);
}

function withColumns(text: string, changes: HeaderChanges): string {
  const places = placesIn(changes);
  if (places.length === 0) return text;
  const { data, prefix } = walkSheet(text);
  if (!data) return text;
  const [list] = elements(text, "cols");
  const columns: { first: number; last: number; tag: string }[] = [];
  for (const { tag } of list ? elements(list.inside, "col") : [])
    columns.push({ first: Number(attribute(tag, "min")) - 1, last: Number(attribute(tag, "max")) - 1, tag });
  for (const column of places) {
    const at = columns.findIndex(({ first, last }) => column >= first && column <= last);
    const own = at < 0 ? undefined : columns[at];
    const sized = changed(own?.tag ?? `<${prefix}col/>`, changes, column, ["width", "customWidth"]);
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

function withRows(text: string, changes: HeaderChanges): string {
  const rows = placesIn(changes);
  if (rows.length === 0) return text;
  const pieces: string[] = [];
  let copied = 0;
  let next = 0;
  let prefix = "";
  const put = (from: number, to: number, now: string) => {
    pieces.push(text.slice(copied, from), now);
    copied = to;
  };
  const sized = (tag: string, row: number) => changed(tag, changes, row, ["ht", "customHeight"]);
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
