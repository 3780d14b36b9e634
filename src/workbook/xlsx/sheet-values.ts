// workbook: puts new values into the cells of a sheet's part. Of each such cell the value and its type change, and no
// other sign of the part.

import { type SheetCell, type SheetText, type Span, visitCells } from "./sheet-cells.ts";
import { attribute, writeCellText } from "./xml-text.ts";

/** An error as the code that the cell shows; null for an empty cell. */
export type CellValue = number | string | boolean | { readonly code: string } | null;

export interface NewValue {
  readonly value: CellValue;
  /** Part of another cell's array: a cell that has a formula of its own is left alone. */
  readonly isSpilled: boolean;
}

export interface Written {
  readonly text: string;
  /** Places that got their value, changed or not; the others have no cell in the file. */
  readonly found: number;
}

/** The part with new values; `valueAt` gives that of a cell, or undefined to leave it. */
export function withValues(
  sheet: SheetText,
  valueAt: (row: number, column: number) => NewValue | undefined,
): Written {
  const { text, prefix } = sheet;
  const pieces: string[] = [];
  let copied = 0;
  let found = 0;
  const put = (from: number, to: number, now: string) => {
    pieces.push(text.slice(copied, from), now);
    copied = to;
  };
  visitCells(sheet, (cell) => {
    const given = valueAt(cell.row, cell.column);
    if (!given || (given.isSpilled && cell.formula)) return;
    found++;
    const { type, held } = storedForm(given.value);
    if (isSame(text, cell, type, held)) return;
    const { start, open } = cell.span;
    const value = held === undefined ? "" : valueElement(prefix, held);
    const tag = typed(text.slice(start, open), type);
    if (open === cell.span.end) {
      // An empty cell, written as one tag.
      if (value !== "") put(start, open, `${tag.replace(/\s*\/>$/, ">")}${value}</${prefix}c>`);
      return;
    }
    put(start, open, tag);
    const place = placeOf(cell);
    const places = [{ ...place, now: value }];
    // What stands in the way of a value.
    if (cell.inline && place !== cell.inline) places.push({ ...cell.inline, now: "" });
    for (const { start, end, now } of places.sort((a, b) => a.start - b.start)) put(start, end, now);
  });
  pieces.push(text.slice(copied));
  return { text: pieces.join(""), found };
}

/** Where the value stands, or is to stand: after the formula, before what else there may be. */
function placeOf(cell: SheetCell): { readonly start: number; readonly end: number } {
  if (cell.value) return cell.value;
  if (cell.inline && !cell.formula) return cell.inline;
  const start = cell.formula?.end ?? cell.span.open;
  return { start, end: start };
}

function storedForm(value: CellValue): { type: string | undefined; held: string | undefined } {
  if (value === null) return { type: undefined, held: undefined };
  if (typeof value === "number") return { type: undefined, held: String(value).toUpperCase() };
  if (typeof value === "boolean") return { type: "b", held: value ? "1" : "0" };
  if (typeof value === "string") return { type: "str", held: writeCellText(value) };
  return { type: "e", held: writeCellText(value.code) };
}

function isSame(text: string, cell: SheetCell, type: string | undefined, held: string | undefined): boolean {
  const before = cell.value && inside(text, cell.value);
  if ((type ?? "n") !== cell.type || cell.inline) return false;
  if (type === undefined && held !== undefined && before !== undefined && before !== "")
    return Number(before) === Number(held);
  return before === held;
}

const inside = (text: string, span: Span) => text.slice(span.open, span.close);

function valueElement(prefix: string, held: string): string {
  const space = /^\s|\s$/.test(held) ? ' xml:space="preserve"' : "";
  return `<${prefix}v${space}>${held}</${prefix}v>`;
}

/** The start tag of a cell with another type; a number has none. */
function typed(tag: string, type: string | undefined): string {
  if (attribute(tag, "t") === (type ?? undefined)) return tag;
  const bare = tag.replace(/\st\s*=\s*(?:"[^"]*"|'[^']*')/, "");
  return type === undefined ? bare : bare.replace(/\s*(\/?>)$/, ` t="${type}"$1`);
}
