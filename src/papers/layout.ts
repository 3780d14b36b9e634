// papers: a sheet that is written row by row, in a grid of narrow columns that its cells span.

import {
  type Content,
  cellAddress,
  columnLetters,
  type NewSheet,
  type Painted,
  type Picture,
  type PrintSetup,
  type WordList,
} from "../workbook/workbook.ts";
import { readBox } from "../workbook/xlsx/addresses.ts";

export interface PaperCell {
  readonly content: Content;
  /** Columns that it spans. */
  readonly span: number;
  readonly look?: Painted["look"];
  readonly format?: string;
  readonly align?: Painted["align"];
}

/** Columns of an upright page. */
export const COLUMNS = 12;
const COLUMN_WIDTH = 7.4;

/** Height of an empty row, in lines. */
const GAP = 0.6;

/** In place of a format: what a user typed, a text whatever it reads like. */
const TEXT = "@";

export const cell = (
  content: Content,
  span: number,
  look?: PaperCell["look"],
  format?: string,
  align?: PaperCell["align"],
): PaperCell => ({ content, span, look, format, align });

export class Layout {
  private readonly rows: Content[][] = [];
  private readonly painted: Painted[] = [];
  private readonly merges: string[] = [];
  private readonly heights: [row: number, lines: number][] = [];
  private readonly lists: WordList[] = [];
  private readonly pictures: Picture[] = [];

  /** The number, from 1, of the row that comes next. */
  get next(): number {
    return this.rows.length + 1;
  }

  /** Writes a row of cells side by side; gives the address of each. `lines` is its height in lines of text. */
  row(cells: readonly PaperCell[], lines = 1): string[] {
    const row = this.rows.length;
    const contents: Content[] = [];
    const addresses: string[] = [];
    for (const { content, span, look, format, align } of cells) {
      const column = contents.length;
      const address = cellAddress(row, column);
      const area = span === 1 ? address : `${address}:${cellAddress(row, column + span - 1)}`;
      addresses.push(address);
      contents.push(format === TEXT ? asText(content) : content, ...new Array<Content>(span - 1).fill(""));
      if (span > 1) this.merges.push(area);
      const shown = format === TEXT ? undefined : format;
      if (look || shown || align) this.painted.push({ area, look, format: shown, align });
    }
    this.rows.push(contents);
    // Every row has its height: a program would make one too high for a text that its merged cells hold.
    this.heights.push([row, lines]);
    return addresses;
  }

  gap(): void {
    this.heights.push([this.rows.length, GAP]);
    this.rows.push([]);
  }

  /** A picture over cells that rows have left free: their first one tells it in words. */
  picture(picture: Picture, words: string): void {
    const { top, left } = readBox(picture.area)!;
    const row = this.rows[top];
    while (row.length <= left) row.push("");
    row[left] = words;
    this.merges.push(picture.area);
    this.painted.push({ area: picture.area, look: "wrapped" });
    this.pictures.push(picture);
  }

  /** Words that the cells of an area are offered. */
  list(area: string, words: readonly string[], isBinding = true): void {
    this.lists.push({ area: area.replaceAll("$", ""), words, isBinding });
  }

  heading(text: string, span = COLUMNS): void {
    this.row([cell(text, span, "heading")]);
  }

  /** A sentence over the whole width, as many lines high as it needs. */
  sentence(text: Content, look: PaperCell["look"] = "wrapped", lines = linesOf(String(text))): string {
    return this.row([cell(text, COLUMNS, look)], lines)[0];
  }

  /** Writes a cell beside the page, column from 0; gives its address. */
  beside(row: number, column: number, content: Content, look?: PaperCell["look"], format?: string): string {
    while (this.rows.length < row) this.rows.push([]);
    const contents = this.rows[row - 1];
    while (contents.length < column) contents.push("");
    contents[column] = format === TEXT ? asText(content) : content;
    const address = cellAddress(row - 1, column);
    const shown = format === TEXT ? undefined : format;
    if (look || shown) this.painted.push({ area: address, look, format: shown });
    return address;
  }

  /** Paints cells once more, such as a frame round a table. */
  paint(painted: Painted): void {
    this.painted.push(painted);
  }

  /** @param lastRow of the page, where cells beside it go on below */
  sheet(
    name: string,
    print: PrintSetup,
    beside: readonly number[] = [],
    lastRow = this.rows.length,
  ): NewSheet {
    const widths = [...new Array<number>(COLUMNS).fill(COLUMN_WIDTH), ...beside];
    return {
      name,
      top: this.rows,
      columns: widths.map((width) => ({ header: "", width })),
      rows: 0,
      painted: [
        { area: `A1:${columnLetters(widths.length - 1)}${this.rows.length}`, look: "page" },
        ...this.painted,
      ],
      merges: this.merges,
      heights: this.heights,
      lists: this.lists,
      pictures: this.pictures,
      print: { area: `A1:${columnLetters(COLUMNS - 1)}${lastRow}`, ...print },
    };
  }
}

/** What a user typed stays a text even if it reads like a formula. */
const asText = (content: Content): Content => (/^['=]/.test(String(content)) ? `'${content}` : content);

const CHARACTERS_PER_LINE = 104;
/** Lines that a text takes over the whole width. */
export const linesOf = (text: string) => Math.max(1, Math.ceil(text.length / CHARACTERS_PER_LINE));
