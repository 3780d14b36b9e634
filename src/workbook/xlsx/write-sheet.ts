// workbook: writes cells into a sheet's part: where the file has the cell its value, its type and, if it is to change,
// its formula; where it has none a new cell. No other character of the part changes.

import { type Box, boxName, cellName, contains } from "./addresses.ts";
import type { CellValue } from "./read-sheet.ts";
import { type SheetCell, type SheetRow, type SheetShape, type Span, walkSheet } from "./walk-sheet.ts";
import { escapeXml, writeCellText } from "./xml-text.ts";

export interface NewFormula {
  /** As a file holds it, without "=". */
  readonly text: string;
  /** For a formula that takes the cells it needs: those that it fills now, and the mark that says so in this file. */
  readonly spill?: { readonly box: Box; readonly mark: string } | undefined;
}

export interface NewCell {
  readonly value: CellValue;
  /** undefined: the formula that the cell has stays. null: it goes. */
  readonly formula?: NewFormula | null;
  /** The cells that the array formula in the file fills from now on. */
  readonly fills?: Box;
  /** Part of another cell's array: a cell that has a formula of its own is left alone. */
  readonly isSpilled?: boolean;
  /** The number of the style that it has from now on. */
  readonly style?: string;
}

const COLUMNS = 16_384;
export const placeOf = (row: number, column: number): number => row * COLUMNS + column;
export const cellAt = (place: number): { row: number; column: number } => ({
  row: Math.floor(place / COLUMNS),
  column: place % COLUMNS,
});

/** The part with these cells, by `placeOf`. */
export function writeCells(
  text: string,
  cells: ReadonlyMap<number, NewCell>,
  shape = walkSheet(text),
  stylesOnly = false,
): string {
  // Nothing is written where a sheet has no rows at all, such as one with a chart.
  const places = [...cells.keys()].filter((place) => !isNothing(cells.get(place)!)).sort((a, b) => a - b);
  const pieces: string[] = [];
  let copied = 0;
  let next = 0;
  let row: SheetRow | undefined;
  let added: Box | undefined;
  if (!shape.data) return text;
  const put = (from: number, to: number, now: string) => {
    pieces.push(text.slice(copied, from), now);
    copied = to;
  };
  /** The new cells before a place, in rows of their own or within the row that is open. */
  const newCells = (before: number): string => {
    let now = "";
    let open = -1;
    for (; next < places.length && places[next] < before; next++) {
      const [at, column] = [Math.floor(places[next] / COLUMNS), places[next] % COLUMNS];
      if (row?.row !== at && open !== at) {
        now += `${open < 0 ? "" : `</${shape.prefix}row>`}<${shape.prefix}row r="${at + 1}">`;
        open = at;
      }
      added = around(added, at, column);
      now += newCell(shape, row?.row === at ? row : undefined, at, column, cells.get(places[next])!);
    }
    return open < 0 ? now : `${now}</${shape.prefix}row>`;
  };
  walkSheet(text, {
    rowStart(opened) {
      const before = newCells(placeOf(opened.row, 0));
      row = opened;
      const { start, open } = opened.span;
      const tag = wideEnough(text.slice(start, open), opened, places, next);
      if (before !== "" || tag !== text.slice(start, open)) put(start, open, before + tag);
    },
    cell(cell) {
      const place = placeOf(cell.row, cell.column);
      const before = newCells(place);
      if (before !== "") put(cell.span.start, cell.span.start, before);
      if (places[next] === place) next++;
      const given = cells.get(place);
      if (!given || (given.isSpilled && cell.formula)) return;
      const { start: from, open } = cell.span;
      if (stylesOnly) return put(from, open, withAttribute(text.slice(from, open), "s", given.style));
      for (const { start, end, now } of changesOf(text, shape.prefix, cell, given)) put(start, end, now);
    },
    rowEnd({ row: at, span }) {
      const now = newCells(placeOf(at + 1, 0));
      row = undefined;
      if (now === "") return;
      if (span.close < span.end) put(span.close, span.close, now);
      else put(span.end, span.end, `${now}</${shape.prefix}row>`);
    },
  });
  const last = newCells(Number.POSITIVE_INFINITY);
  const { close, end } = shape.data;
  if (last !== "" && close < end) put(close, close, last);
  else if (last !== "")
    put(shape.data.start, end, `<${shape.prefix}sheetData>${last}</${shape.prefix}sheetData>`);
  return withDimension(pieces.join("") + text.slice(copied), shape, added);
}

const isNothing = ({ value, formula, style }: NewCell): boolean =>
  value === null && !formula && style === undefined;

const around = (box: Box | undefined, row: number, column: number): Box => ({
  top: Math.min(box?.top ?? row, row),
  left: Math.min(box?.left ?? column, column),
  bottom: Math.max(box?.bottom ?? row, row),
  right: Math.max(box?.right ?? column, column),
});

/** The start tag of a row that is about to get cells: open, and without the span of its columns if they are outside. */
function wideEnough(
  tag: string,
  { row, attributes }: SheetRow,
  places: readonly number[],
  next: number,
): string {
  if (!(places[next] < placeOf(row + 1, 0))) return tag;
  let wide = tag.replace(/\s*\/>$/, ">");
  const [first, last] = (attributes.spans ?? "").split(":").map(Number);
  const isOutside = (place: number) => place % COLUMNS < first - 1 || place % COLUMNS > last - 1;
  for (let i = next; places[i] < placeOf(row + 1, 0); i++)
    if (isOutside(places[i])) wide = wide.replace(/\sspans\s*=\s*(?:"[^"]*"|'[^']*')/, "");
  return wide;
}

/** The part whose dimension, if it says one, holds the new cells too. */
function withDimension(text: string, { dimension }: SheetShape, added: Box | undefined): string {
  if (!dimension?.box || !added) return text;
  const { box, span } = dimension;
  if (contains(box, added.top, added.left) && contains(box, added.bottom, added.right)) return text;
  const { top, left } = around(box, added.top, added.left);
  const { bottom, right } = around(box, added.bottom, added.right);
  const tag = withAttribute(text.slice(span.start, span.open), "ref", boxName({ top, left, bottom, right }));
  return text.slice(0, span.start) + tag + text.slice(span.open);
}

function newCell(
  { prefix, columns }: SheetShape,
  row: SheetRow | undefined,
  at: number,
  column: number,
  given: NewCell,
): string {
  const style =
    given.style ??
    row?.attributes.s ??
    columns.find(({ first, last }) => column >= first && column <= last)?.style;
  const tag = `<${prefix}c r="${cellName(at, column)}"${style === undefined ? "" : ` s="${style}"`}>`;
  return wholeCell(prefix, tag, given.formula ? formulaElement(prefix, given.formula) : "", given);
}

function wholeCell(prefix: string, tag: string, formula: string, given: NewCell): string {
  const { type, element } = storedForm(prefix, given.value, formula !== "" || given.isSpilled === true);
  const start = withAttribute(withAttribute(plainValue(tag), "cm", given.formula?.spill?.mark), "t", type);
  return `${start}${formula}${element}</${prefix}c>`;
}

interface Replacement {
  readonly start: number;
  readonly end: number;
  readonly now: string;
}

/** What changes in the text of a cell that the file has. */
function changesOf(text: string, prefix: string, cell: SheetCell, given: NewCell): Replacement[] {
  const { span, formula } = cell;
  const tag = text.slice(span.start, span.open);
  if (given.formula !== undefined) {
    const written = given.formula ? formulaElement(prefix, given.formula) : "";
    return [{ ...span, now: wholeCell(prefix, tag.replace(/\s*\/>$/, ">"), written, given) }];
  }
  const changes = valueChanges(text, prefix, cell, tag, given);
  const ref = given.fills && boxName(given.fills);
  if (formula && ref !== undefined && ref !== formula.attributes.ref) {
    const now = withAttribute(text.slice(formula.start, formula.open), "ref", ref);
    changes.push({ start: formula.start, end: formula.open, now });
  }
  return changes.sort((a, b) => a.start - b.start || a.end - b.end);
}

function valueChanges(
  text: string,
  prefix: string,
  cell: SheetCell,
  tag: string,
  { value, isSpilled = false }: NewCell,
): Replacement[] {
  const { span, inline } = cell;
  const { type, stored, element } = storedForm(prefix, value, isSpilled || cell.formula !== undefined);
  if (isSame(text, cell, type, stored)) return [];
  const start = withAttribute(plainValue(tag), "t", type);
  if (span.open === span.end) {
    // An empty cell, written as one tag.
    if (element === "") return [];
    return [{ ...span, now: `${start.replace(/\s*\/>$/, ">")}${element}</${prefix}c>` }];
  }
  const place = placeOfValue(cell);
  const changes = [
    { start: span.start, end: span.open, now: start },
    { start: place.start, end: place.end, now: element },
  ];
  // What stands in the way of a value.
  if (inline && place !== inline) changes.push({ start: inline.start, end: inline.end, now: "" });
  return changes;
}

/** A cell may have more than a value, such as a picture or why there is an error: that belongs to the value of before. */
const plainValue = (tag: string): string => withAttribute(tag, "vm", undefined);

/** Where the value stands, or is to stand: after the formula, before what else there may be. */
function placeOfValue({ value, inline, formula, span }: SheetCell): {
  readonly start: number;
  readonly end: number;
} {
  if (value) return value;
  if (inline && !formula) return inline;
  const start = formula?.end ?? span.open;
  return { start, end: start };
}

interface StoredForm {
  readonly type: string | undefined;
  /** What stands inside the element. */
  readonly stored: string | undefined;
  readonly element: string;
}

function storedForm(prefix: string, value: CellValue, isComputed: boolean): StoredForm {
  const form = (type: string | undefined, stored: string): StoredForm => ({
    type,
    stored,
    element: `<${prefix}v${spaced(stored)}>${stored}</${prefix}v>`,
  });
  if (value === null) return { type: undefined, stored: undefined, element: "" };
  if (typeof value === "number") return form(undefined, String(value).toUpperCase());
  if (typeof value === "boolean") return form("b", value ? "1" : "0");
  if (typeof value === "object") return form("e", writeCellText(value.code));
  const stored = writeCellText(value);
  if (isComputed) return form("str", stored);
  const element = `<${prefix}is><${prefix}t${spaced(stored)}>${stored}</${prefix}t></${prefix}is>`;
  return { type: "inlineStr", stored, element };
}

const spaced = (stored: string): string => (/^\s|\s$|\n/.test(stored) ? ' xml:space="preserve"' : "");

function isSame(
  text: string,
  cell: SheetCell,
  type: string | undefined,
  stored: string | undefined,
): boolean {
  const inside = (span: Span) => text.slice(span.open, span.close);
  const before = cell.value && inside(cell.value);
  if ((type ?? "n") !== cell.type || cell.inline) return false;
  if (type === undefined && stored !== undefined && before !== undefined && before !== "")
    return Number(before) === Number(stored);
  return before === stored;
}

function formulaElement(prefix: string, { text, spill }: NewFormula): string {
  const attributes = spill ? ` t="array" ref="${boxName(spill.box)}"` : "";
  return `<${prefix}f${attributes}>${escapeXml(text)}</${prefix}f>`;
}

/** The start tag with that attribute, or without it. */
export function withAttribute(tag: string, name: string, value: string | undefined): string {
  attributes.lastIndex = 0;
  let found = attributes.exec(tag);
  while (found && found[1] !== name) found = attributes.exec(tag);
  if ((found?.[2] ?? found?.[3]) === value) return tag;
  const bare = found ? tag.slice(0, found.index) + tag.slice(found.index + found[0].length) : tag;
  return value === undefined ? bare : bare.replace(/\s*(\/?>)$/, (end) => ` ${name}="${value}"${end.trim()}`);
}

/** One after the other, so that what stands within the quotes of one is never taken for another. */
const attributes = /\s([\w:.-]+)\s*=\s*(?:"([^"]*)"|'([^']*)')/g;
