// workbook: walks over the rows and cells of a sheet's part where they stand in its text, without making a tree of it,
// so that a cell can be written in its place and every other character stays as it is.

import { SaxesParser, type SaxesTagPlain } from "saxes";
import { Refusal } from "../workbook.ts";
import { type Box, LAST_COLUMN, LAST_ROW, readBox, readCell } from "./addresses.ts";
import { unescapeXml } from "./xml-text.ts";

/** From the start of an element to its end in the text of the part; `open` and `close` bound what is inside. */
export interface Span {
  readonly start: number;
  readonly open: number;
  readonly close: number;
  readonly end: number;
}

type Attributes = Readonly<Record<string, string | undefined>>;

export interface SheetCell {
  readonly row: number;
  readonly column: number;
  /** `n` (a number, the default), `s` (a shared string), `str`, `inlineStr`, `b`, `e`, `d`. */
  readonly type: string;
  readonly attributes: Attributes;
  readonly span: Span;
  readonly formula: (Span & { readonly attributes: Attributes }) | undefined;
  readonly value: Span | undefined;
  readonly inline: Span | undefined;
}

export interface SheetRow {
  readonly row: number;
  readonly attributes: Attributes;
  readonly span: Span;
}

export interface SheetShape {
  /** What stands before the names of the format's elements: "" or, as some writers have it, `x:`. */
  readonly prefix: string;
  /** Whether it is a sheet of cells, and none of a chart or of old macros. */
  readonly isWorksheet: boolean;
  /** Where the rows are; undefined if the part has no place for them. */
  readonly data: Span | undefined;
  readonly dimension: { readonly span: Span; readonly box: Box | undefined } | undefined;
  readonly hasHiddenRows: boolean;
  readonly merges: readonly Box[];
  /** Styles of whole columns. */
  readonly columns: readonly { readonly first: number; readonly last: number; readonly style: string }[];
}

export interface SheetVisitor {
  /** At the start of a row; the end of its span is not known yet. */
  rowStart?(row: SheetRow): void;
  cell?(cell: SheetCell): void;
  rowEnd?(row: SheetRow): void;
}

const damaged = (what: string): Refusal => new Refusal(`the workbook is damaged: ${what}`);

const isTrue = (value: string | undefined): boolean => value === "1" || value === "true";

/** Calls the visitor for every row and cell, in the order of the file. */
export function walkSheet(text: string, visitor: SheetVisitor = {}): SheetShape {
  return new Walk(text, visitor).run();
}

type Open<T> = { -readonly [K in keyof T]: T[K] };

class Walk {
  private readonly parser = new SaxesParser({ position: true });
  private depth = 0;
  private isWorksheet = false;
  private prefix = "";
  private at = { row: -1, column: -1 };
  private row: Open<SheetRow> | undefined;
  private cell: Open<SheetCell> | undefined;
  private list = "";
  /** Where each element that is open starts, and where its start tag ends. */
  private readonly starts: number[] = [];
  private readonly opens: number[] = [];
  private readonly shape: Open<SheetShape> & { merges: Box[]; columns: SheetShape["columns"][number][] } = {
    prefix: "",
    isWorksheet: false,
    data: undefined,
    dimension: undefined,
    hasHiddenRows: false,
    merges: [],
    columns: [],
  };

  constructor(
    private readonly text: string,
    private readonly visitor: SheetVisitor,
  ) {}

  run(): SheetShape {
    this.parser.on("error", ({ message }) => {
      if (/entity/.test(message))
        throw new Refusal("the workbook uses an entity of its own, which no workbook needs");
      throw damaged(`a sheet is no XML (${message.slice(0, 80)})`);
    });
    this.parser.on("opentag", (tag) => this.open(tag as SaxesTagPlain));
    this.parser.on("closetag", (tag) => this.close(tag as SaxesTagPlain));
    this.parser.write(this.text).close();
    return this.shape;
  }

  private open({ name, attributes }: SaxesTagPlain): void {
    const open = this.parser.position;
    const start = this.text.lastIndexOf("<", open - 1);
    this.depth++;
    this.starts.push(start);
    this.opens.push(open);
    if (this.depth === 1) this.root(name);
    if (!this.isWorksheet) return;
    const local = name.startsWith(this.prefix) ? name.slice(this.prefix.length) : "";
    if (this.depth === 2) {
      this.list = local;
      if (local === "sheetFormatPr" && isTrue(attributes.zeroHeight)) this.shape.hasHiddenRows = true;
    } else if (this.depth === 3) {
      if (this.list === "sheetData" && local === "row") this.openRow(attributes, start, open);
      else if (this.list === "sheetData" && local === "c") throw damaged("a cell lies in no row");
      else if (this.list === "mergeCells" && local === "mergeCell") this.merge(attributes.ref);
      else if (this.list === "cols" && local === "col") this.columns(attributes);
    } else if (this.depth === 4 && this.row && local === "c") this.openCell(attributes, start, open);
  }

  private root(name: string): void {
    const [, prefix, kind] = /^((?:[^:]+:)?)(worksheet|chartsheet|dialogsheet|macrosheet)$/.exec(name) ?? [];
    if (kind === undefined) throw damaged("a sheet is not one");
    this.prefix = this.shape.prefix = prefix;
    this.isWorksheet = this.shape.isWorksheet = kind === "worksheet";
  }

  private merge(ref = ""): void {
    const box = readBox(ref);
    if (box) this.shape.merges.push(box);
  }

  private columns({ min, max, style }: Attributes): void {
    if (style !== undefined)
      this.shape.columns.push({ first: Number(min) - 1, last: Number(max) - 1, style });
  }

  private openRow(attributes: Attributes, start: number, open: number): void {
    const given = attributes.r;
    const row = given === undefined ? this.at.row + 1 : Number(given) - 1;
    if (!(Number.isInteger(row) && row >= 0)) throw damaged("a row has no number");
    if (isTrue(attributes.hidden)) this.shape.hasHiddenRows = true;
    this.at = { row, column: -1 };
    this.row = { row, attributes, span: { start, open, close: open, end: open } };
    this.visitor.rowStart?.(this.row);
  }

  private openCell(attributes: Attributes, start: number, open: number): void {
    const given = attributes.r;
    const place = given === undefined ? { row: this.at.row, column: this.at.column + 1 } : readCell(given);
    if (!place) throw damaged(`"${given!.slice(0, 20)}" is no cell`);
    const { row, column } = place;
    if (row < 0 || row > LAST_ROW || column > LAST_COLUMN) throw damaged("a cell lies outside its sheet");
    this.at = place;
    this.cell = {
      row,
      column,
      type: attributes.t ?? "n",
      attributes,
      span: { start, open, close: open, end: open },
      formula: undefined,
      value: undefined,
      inline: undefined,
    };
  }

  private close({ name, attributes, isSelfClosing }: SaxesTagPlain): void {
    const end = this.parser.position;
    const close = isSelfClosing ? end : this.text.lastIndexOf("<", end - 1);
    const span: Span = { start: this.starts.pop()!, open: this.opens.pop()!, close, end };
    const depth = this.depth--;
    if (!this.isWorksheet || !name.startsWith(this.prefix)) return;
    const local = name.slice(this.prefix.length);
    if (depth === 5 && this.cell) {
      if (local === "v") this.cell.value ??= span;
      else if (local === "f") this.cell.formula ??= Object.assign(span, { attributes });
      else if (local === "is") this.cell.inline ??= span;
    } else if (depth === 4 && this.cell) {
      this.cell.span = span;
      this.visitor.cell?.(this.cell);
      this.cell = undefined;
    } else if (depth === 3 && this.row) {
      this.row.span = span;
      this.visitor.rowEnd?.(this.row);
      this.row = undefined;
    } else if (depth === 2) {
      if (local === "sheetData") this.shape.data ??= span;
      if (local === "dimension") this.shape.dimension ??= { span, box: readBox(attributes.ref ?? "") };
    }
  }
}

/** The text inside a formula or a value, without escapes. */
export const insideOf = (text: string, span: Span): string => unescapeXml(text.slice(span.open, span.close));
