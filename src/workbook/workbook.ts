// workbook: the one interface to a workbook. Every action of the pane is written once against it; the adapters are
// excel-workbook.ts (Excel) and grid-workbook.ts (the browser workbook).

/** A rectangle of cells; rows and columns count from 0. */
export interface Area {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

export type Content = string | number | boolean;

/** What a cell may not be changed for, or undefined: part of a merge, part of a spilled result. */
export type Fixed = "merged" | "spilled" | undefined;

export interface Cells extends Area {
  /** As typed: a constant, a formula that begins with "=", a text that does with "'=", "" for an empty cell. */
  readonly formulas: readonly (readonly Content[])[];
  /** As computed: numbers, texts, booleans; an error as its code ("#N/A"), "" for an empty cell. */
  readonly values: readonly (readonly Content[])[];
  /** Number formats, "General" where none is set. */
  readonly formats: readonly (readonly string[])[];
  readonly fixed: readonly (readonly Fixed[])[];
  /** Cells that a filter or a hidden row or column keeps out of sight; left out where there are none. */
  readonly hidden?: readonly (readonly boolean[])[];
}

/** A rectangle to write, cells as typed; undefined leaves a cell as it is. */
export interface Change {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly formulas: readonly (readonly (Content | undefined)[])[];
}

export interface NewColumn {
  readonly header: string;
  /** Width in characters. */
  readonly width: number;
  readonly format?: string;
  /** What the first data row holds; a formula that spills fills the column by itself. */
  readonly first?: Content;
  /** A formula for every data row; `{row}` stands for the row's number. */
  readonly each?: string;
  /** Words that the cells of the column may hold. */
  readonly choices?: readonly string[];
  /** Words that the cells of the column are offered; they may hold others. */
  readonly offers?: readonly string[];
  /** Whether a user types into the column. */
  readonly isInput?: boolean;
}

/** How cells look, by what they are for. */
export type Look =
  | "title"
  | "heading"
  | "header"
  | "label"
  | "note"
  | "input"
  | "total"
  | "strong"
  | "big"
  | "shaded"
  | "wrapped"
  /** A ruled line to fill in by hand, and a ruled frame. */
  | "line"
  | "frame"
  /** Text of a page, in the size that it is printed in. */
  | "page";

export interface Painted {
  /** An address such as `A1:B3`. */
  readonly area: string;
  readonly look?: Look;
  readonly format?: string;
  readonly align?: "left" | "center" | "right";
}

/** Words that cells are offered. Where they do not bind, others may stand there too. */
export interface WordList {
  readonly area: string;
  readonly words: readonly string[];
  readonly isBinding?: boolean;
}

/**
 * What lies over merged cells, the first of which tells it in words. The browser workbook draws it from these words
 * when it prints; in Excel it is a picture or a chart.
 */
export interface Picture {
  readonly area: string;
  readonly title: string;
  /** An SVG file, as things are when the sheet is made. */
  readonly svg?: { readonly text: string; readonly width: number; readonly height: number };
  /** Paired bars that follow the cells: their names, and the values of each series, top down. */
  readonly bars?: {
    readonly names: string;
    readonly series: readonly (readonly [name: string, values: string])[];
  };
  /** Lines that follow the cells. Their points stand in cells of their own, from `at` on: a row for each point. */
  readonly lines?: {
    readonly at: string;
    readonly x: readonly string[];
    readonly series: readonly (readonly [name: string, cells: readonly string[]])[];
  };
}

/** One page wide or more, as many long as it takes. */
export interface PrintSetup {
  readonly paper: "A4" | "Letter";
  readonly landscape?: boolean;
  /** Cells that are printed; all of the sheet where none are named. */
  readonly area?: string;
  /** Rows from 0 that every page repeats at its top. */
  readonly repeated?: readonly [first: number, last: number];
  /** Pages side by side, where a sheet is too wide for one; one where it is left out. */
  readonly pagesWide?: number;
  /** So many columns at the left are repeated on each of the pages side by side. */
  readonly repeatedColumns?: number;
  /** The row from 0 that ends what the repeated rows are over: it and those below stay together. */
  readonly tail?: number;
  readonly header?: { readonly left?: string; readonly right?: string };
  /** Left part of the footer; the right one counts the pages. */
  readonly footer?: string;
}

export interface NewSheet {
  /** Wanted name; a taken one gets a number. */
  readonly name: string;
  /** Cells over the table, from the first row: a formula begins with "=", a text in any case with "'". */
  readonly top: readonly (readonly Content[])[];
  readonly columns: readonly NewColumn[];
  /** What the first data rows hold, column by column. */
  readonly data?: readonly (readonly Content[])[];
  /** Data rows that the choices and formats reach over. */
  readonly rows: number;
  /** Rows that the sheet has room for at least. */
  readonly room?: number;
  /** Columns that stay in sight beside the rows down to the headers. */
  readonly frozenColumns?: number;
  readonly painted?: readonly Painted[];
  readonly merges?: readonly string[];
  readonly lists?: readonly WordList[];
  readonly pictures?: readonly Picture[];
  /** Rows from 0 that are so many lines high. */
  readonly heights?: readonly (readonly [row: number, lines: number])[];
  readonly print?: PrintSetup;
}

/** A content of a new sheet as it is typed so that it stays what it is: "31/64" no date, "007" no number. */
export function literal(content: Content): Content {
  if (typeof content !== "string" || /^[='#]/.test(content)) return content;
  return /^[+\-@]|\d|^(?:true|false)$/i.test(content) ? `'${content}` : content;
}

/** What a name stands for in formulas; on all sheets where it is of none. */
export interface DefinedName {
  readonly name: string;
  readonly sheet: string | undefined;
  /** With its equal sign. */
  readonly formula: string;
}

export interface NamedTable {
  readonly name: string;
  /** Its headers and totals among the cells. */
  readonly area: Area;
  readonly headerRows: number;
  readonly totalsRows: number;
  readonly columns: readonly string[];
}

/** Why something was not done, in one sentence for the person; nothing has been changed then. */
export class Refusal extends Error {
  override name = "Refusal";
}

export interface Workbook {
  /**
   * The selected areas, each cut to the used part of its sheet; those wholly outside it are left out.
   * @throws Refusal when no cells are selected
   */
  selected(): Promise<readonly Cells[]>;
  /** The selected areas as they are, without their cells. @throws Refusal when no cells are selected */
  places(): Promise<readonly Area[]>;
  /** The active cell. @throws Refusal when no cells are selected */
  active(): Promise<Area>;
  /**
   * `toWrite`: something will be written there, so that merged cells are looked for. They are not otherwise, as looking
   * for them costs Excel's list of steps to undo.
   */
  read(area: Area, toWrite?: boolean): Promise<Cells>;
  /** Reads cells once nothing is left to compute. @throws Refusal where the host computes only when asked to, or on and on */
  readComputed(area: Area): Promise<Cells>;
  /** The names of all sheets, in their order. */
  sheets(): Promise<readonly string[]>;
  /** The cell whose formula gives a cell its content: itself, or the one that spills into it. */
  homeOf(cell: Area): Promise<Area>;
  /** The cells that the formula of a cell fills: the cell, or all that it spills into. */
  filledFrom(cell: Area): Promise<Area>;
  /** What names and tables stand for in formulas. */
  meanings(): Promise<{ readonly names: readonly DefinedName[]; readonly tables: readonly NamedTable[] }>;
  /** The table that an area lies in or meets: no formula spills there. */
  tableAt(area: Area): Promise<string | undefined>;
  /** Selects an area and brings it into sight. */
  show(area: Area): Promise<void>;
  /** The used part of a sheet; undefined for an empty one. */
  used(sheet: string): Promise<Area | undefined>;
  /**
   * Writes all or nothing. @throws Refusal on a protected sheet, on fixed cells, and where data validation would keep a
   * user from typing a figure or text; formulas are not held against it
   */
  write(changes: readonly Change[]): Promise<void>;
  /** How many steps to undo it takes to write changes. */
  stepsToUndo(changes: readonly Change[]): Promise<number>;
  /** Whether data validation says what may be typed into some of these cells. */
  hasRules(area: Area): Promise<boolean>;
  /** Adds a sheet, shows it and gives its name. */
  addSheet(sheet: NewSheet): Promise<string>;
  /** Opens a file as a workbook of its own; false where the host cannot, and the file is to be downloaded. */
  openNew(file: Uint8Array): Promise<boolean>;
  /** Copies a sheet, in the copy puts values in place of formulas that `replace` picks, and gives its name and how many. */
  copyAsValues(
    sheet: string,
    replace: (formula: string) => boolean,
  ): Promise<{ name: string; replaced: number }>;
  /** Whether the host writes 0,5 for 0.5, and with it `;` between the arguments of a formula. */
  hasDecimalComma(): Promise<boolean>;
  /** What the workbook's numbers for days differ by from those that count from 1900: −1462 where it counts from 1904. */
  dayShift(): Promise<number>;
  /** Calls back after the selection or a cell changed; gives the means to stop. */
  onChange(listener: () => void): () => void;
}

/** The part of an area that lies in another of the same sheet; undefined if there is none. */
export function cutTo(area: Area, bounds: Area): Area | undefined {
  const row = Math.max(area.row, bounds.row);
  const column = Math.max(area.column, bounds.column);
  const rows = Math.min(area.row + area.rows, bounds.row + bounds.rows) - row;
  const columns = Math.min(area.column + area.columns, bounds.column + bounds.columns) - column;
  return rows > 0 && columns > 0 ? { sheet: area.sheet, row, column, rows, columns } : undefined;
}

/** The smallest area with two of the same sheet in it. */
export function areaAround(one: Area, other: Area): Area {
  const row = Math.min(one.row, other.row);
  const column = Math.min(one.column, other.column);
  const rows = Math.max(one.row + one.rows, other.row + other.rows) - row;
  const columns = Math.max(one.column + one.columns, other.column + other.columns) - column;
  return { sheet: one.sheet, row, column, rows, columns };
}

/** Some of the cells that were read; they lie within. */
export function partOf(cells: Cells, area: Area): Cells {
  const cut = <T>(lines: readonly (readonly T[])[]): T[][] => {
    const [top, left] = [area.row - cells.row, area.column - cells.column];
    return lines.slice(top, top + area.rows).map((line) => line.slice(left, left + area.columns));
  };
  const { formulas, values, formats, fixed } = cells;
  return { ...area, formulas: cut(formulas), values: cut(values), formats: cut(formats), fixed: cut(fixed) };
}

/** The first cell that a change would write to and that may not be changed. */
export function fixedCell(
  cells: Cells,
  formulas: Change["formulas"],
): { readonly address: string; readonly fixed: NonNullable<Fixed> } | undefined {
  for (const [row, contents] of formulas.entries()) {
    for (const [column, content] of contents.entries()) {
      const fixed = content === undefined ? undefined : cells.fixed[row][column];
      if (fixed) return { address: cellAddress(cells.row + row, cells.column + column), fixed };
    }
  }
  return undefined;
}

/** Why a fixed cell is not written to. */
export function fixedSentence(address: string, fixed: NonNullable<Fixed>): string {
  return fixed === "merged"
    ? `${address} is part of merged cells: unmerge them first. Nothing was changed.`
    : `${address} shows the result of a formula in another cell: change that formula. Nothing was changed.`;
}

/** `A1`, `$A$1` aside: the address of an area without its sheet. */
export function addressOf({ row, column, rows, columns }: Omit<Area, "sheet">): string {
  const first = cellAddress(row, column);
  return rows === 1 && columns === 1
    ? first
    : `${first}:${cellAddress(row + rows - 1, column + columns - 1)}`;
}

export function cellAddress(row: number, column: number): string {
  return `${columnLetters(column)}${row + 1}`;
}

export function columnLetters(column: number): string {
  const letter = String.fromCharCode(65 + (column % 26));
  return column < 26 ? letter : columnLetters(Math.floor(column / 26) - 1) + letter;
}

/**
 * A sheet's name as a formula writes it: in quotes where it needs them, quotes doubled. Excel wants them around all but
 * letters, digits, "_" and "." behind a letter or "_", and around what reads as a cell in either of its ways (AB12, C,
 * R1C1 and what begins like that) or as TRUE or FALSE; where more are in quotes it reads the same.
 */
export function sheetReference(name: string): string {
  const plain = /^[A-Za-z_][A-Za-z0-9_.]*$/.test(name);
  const likeOther = /^(?:[A-Z]{1,3}\d+|RC?|C|TRUE|FALSE)$|^R?C?\d/i.test(name);
  return plain && !likeOther ? name : `'${name.replaceAll("'", "''")}'`;
}
