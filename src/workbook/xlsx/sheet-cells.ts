// workbook: walks over the cells of a sheet's part where they stand in its text, without making a tree of it, so that
// a value can be put into its place and every other sign stays as it is.

import { Refusal } from "../workbook.ts";
import { LAST_COLUMN, LAST_ROW, readCell } from "./addresses.ts";
import { attribute, endTag, escapeXml, tagEnd, unescapeXml } from "./xml-text.ts";

/** From the start of an element to its end in the text of the part; `open` and `close` bound what is inside. */
export interface Span {
  readonly start: number;
  readonly open: number;
  readonly close: number;
  readonly end: number;
}

export interface SheetCell {
  readonly row: number;
  readonly column: number;
  /** `n` (a number, the default), `s` (a shared string), `str`, `inlineStr`, `b`, `e`, `d`. */
  readonly type: string;
  readonly span: Span;
  readonly formula: Span | undefined;
  readonly value: Span | undefined;
  readonly inline: Span | undefined;
}

export interface SheetText {
  readonly text: string;
  /** What stands before the names of the format's elements: "" or, as some writers have it, `x:`. */
  readonly prefix: string;
  /** Where the cells are; empty if the sheet has none. */
  readonly start: number;
  readonly end: number;
}

/** Where in the part the cells are. */
export function sheetText(text: string): SheetText {
  const root = /<((?:[\w.-]+:)?)(worksheet|chartsheet|dialogsheet|macrosheet)[\s>]/.exec(
    text.slice(0, 100_000),
  );
  if (!root) throw new Refusal("the workbook is damaged: a sheet is not one");
  const prefix = root[1];
  const none = { text, prefix, start: text.length, end: text.length };
  if (root[2] !== "worksheet") return none;
  const name = `${prefix}sheetData`;
  for (let at = root.index; ; ) {
    at = text.indexOf("<", at);
    if (at < 0) return none;
    if (text.startsWith("<!--", at)) at = after(text, "-->", at);
    else if (text.startsWith(name, at + 1) && /[\s/>]/.test(text[at + 1 + name.length] ?? "")) {
      const start = tagEnd(text, at);
      if (text[start - 2] === "/") return none;
      const end = text.lastIndexOf(`</${name}`);
      if (end < start) throw new Refusal("the workbook is damaged: sheetData does not end");
      return { text, prefix, start, end };
    } else at++;
  }
}

function after(text: string, mark: string, from: number): number {
  const at = text.indexOf(mark, from);
  if (at < 0) throw new Refusal(`the workbook is damaged: "${mark}" is missing`);
  return at + mark.length;
}

/** Calls `visit` for every cell, in the order of the file. */
export function visitCells(sheet: SheetText, visit: (cell: SheetCell) => void): void {
  const { text, prefix, end } = sheet;
  const rowName = `${prefix}row`;
  const cellElement = `${prefix}c`;
  let row = -1;
  let column = -1;
  for (let at = text.indexOf("<", sheet.start); at >= 0 && at < end; at = text.indexOf("<", at)) {
    if (isNamed(text, at, cellElement)) {
      const open = tagEnd(text, at);
      const tag = text.slice(at, open);
      const place = placeOf(tag, row, column + 1);
      ({ row, column } = place);
      if (row < 0 || row > LAST_ROW || column > LAST_COLUMN)
        throw new Refusal("the workbook is damaged: a cell lies outside its sheet");
      const cell = readContents(text, prefix, tag, { start: at, open }, row, column);
      at = cell.span.end;
      visit(cell);
    } else if (isNamed(text, at, rowName)) {
      const open = tagEnd(text, at);
      const given = attribute(text.slice(at, open), "r");
      row = given === undefined ? row + 1 : Number(given) - 1;
      if (!(Number.isInteger(row) && row >= 0))
        throw new Refusal("the workbook is damaged: a row has no number");
      column = -1;
      at = open;
    } else if (text.startsWith("<!--", at)) at = after(text, "-->", at);
    else if (text.startsWith("<![CDATA[", at)) at = after(text, "]]>", at);
    else at++;
  }
}

function isNamed(text: string, at: number, name: string): boolean {
  if (!text.startsWith(name, at + 1)) return false;
  const next = text.charCodeAt(at + 1 + name.length);
  return next === 0x20 || next === 0x3e || next === 0x2f || next === 0x0a || next === 0x0d || next === 0x09;
}

function placeOf(tag: string, row: number, column: number): { row: number; column: number } {
  const given = attribute(tag, "r");
  if (given === undefined) return { row, column };
  const place = readCell(given);
  if (!place) throw new Refusal(`the workbook is damaged: "${given.slice(0, 20)}" is no cell`);
  return place;
}

function readContents(
  text: string,
  prefix: string,
  tag: string,
  { start, open }: { start: number; open: number },
  row: number,
  column: number,
): SheetCell {
  const type = attribute(tag, "t") ?? "n";
  const found: { f?: Span; v?: Span; is?: Span } = {};
  if (text[open - 2] === "/") {
    const span = { start, open, close: open, end: open };
    return { row, column, type, span, formula: undefined, value: undefined, inline: undefined };
  }
  const endTag = `</${prefix}c`;
  for (let at = text.indexOf("<", open); ; at = text.indexOf("<", at)) {
    if (at < 0) throw new Refusal("the workbook is damaged: a cell does not end");
    if (text.startsWith(endTag, at) && isNamed(text, at + 1, `${prefix}c`)) {
      const span = { start, open, close: at, end: tagEnd(text, at) };
      return { row, column, type, span, formula: found.f, value: found.v, inline: found.is };
    }
    if (text.startsWith("<!--", at)) {
      at = after(text, "-->", at);
      continue;
    }
    const name = (["f", "v", "is"] as const).find((one) => isNamed(text, at, prefix + one));
    if (!name) {
      at = tagEnd(text, at);
      continue;
    }
    const span = spanOf(text, prefix + name, at);
    found[name] ??= span;
    at = span.end;
  }
}

function spanOf(text: string, name: string, start: number): Span {
  const open = tagEnd(text, start);
  if (text[open - 2] === "/") return { start, open, close: open, end: open };
  const close = endTag(text, name, open);
  return { start, open, close, end: tagEnd(text, close) };
}

/** The text inside a formula or a value, without escapes. */
export const insideOf = (text: string, span: Span): string => unescapeXml(text.slice(span.open, span.close));

/** The part with the text of each formula as `replace` gives it; everything else stays as it is. */
export function mapFormulas(text: string, replace: (formula: string) => string): string {
  const pieces: string[] = [];
  let copied = 0;
  visitCells(sheetText(text), ({ formula }) => {
    if (!formula || formula.open === formula.close) return;
    const before = insideOf(text, formula);
    const now = replace(before);
    if (now === before) return;
    pieces.push(text.slice(copied, formula.open), escapeXml(now));
    copied = formula.close;
  });
  return pieces.join("") + text.slice(copied);
}
