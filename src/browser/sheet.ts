// browser: writes a sheet in the shape that the grid's library reads, from a list of columns.

import type { Units } from "./demo-quote/holes.ts";

/** `size` and `fine` have their decimals by the units of the row, `fine` one more in inches. */
export type FormatName = keyof typeof numberFormats | "size" | "fine";

export interface SheetColumn<Row> {
  /** Its letters. */
  readonly id: string;
  /** The heading over this column and the ones to its right that have none. */
  readonly group?: string;
  readonly header: string;
  readonly width: number;
  readonly format?: FormatName;
  readonly align?: "left" | "center";
  /** What each row holds; */
  readonly value?: (row: Row, index: number) => string | number;
  /** or the one formula in the first row; neither if a formula to the left spills here. */
  readonly formula?: string;
}

export interface SheetData {
  id: string;
  name: string;
  colNumber: number;
  rowNumber: number;
  cells: Record<string, string>;
  styles: Record<string, number>;
  formats: Record<string, number>;
  borders: Record<string, number>;
  merges: string[];
  cols: Record<number, { size: number }>;
  rows: Record<number, { size: number }>;
  panes: { xSplit: number; ySplit: number };
}

/** Ids of the styles below. */
export const styles = {
  title: 1,
  note: 2,
  label: 3,
  setting: 4,
  group: 5,
  header: 6,
  input: 7,
  computed: 8,
  total: 9,
  center: 10,
  inputText: 11,
  shop: 12,
  left: 13,
};

const styleData = {
  1: { bold: true, fontSize: 16, textColor: "#12303f" },
  2: { italic: true, fontSize: 9, textColor: "#566473" },
  3: { textColor: "#33414f", align: "right", fontSize: 9 },
  4: { textColor: "#0b4fa0", fillColor: "#fff8e1", align: "center", bold: true },
  5: { bold: true, textColor: "#ffffff", fillColor: "#1b5e7a", verticalAlign: "middle" },
  6: {
    bold: true,
    fontSize: 9,
    textColor: "#12303f",
    fillColor: "#dcebf2",
    align: "center",
    verticalAlign: "middle",
    wrapping: "wrap",
  },
  7: { textColor: "#0b4fa0" },
  8: { textColor: "#1d2733" },
  9: { bold: true, textColor: "#12303f", fillColor: "#e4f2e7", align: "center" },
  10: { textColor: "#1d2733", align: "center" },
  11: { textColor: "#0b4fa0", align: "left" },
  12: { fontSize: 12, textColor: "#33414f", verticalAlign: "middle" },
  13: { textColor: "#1d2733", align: "left" },
};

/** Ids of the number formats. */
export const numberFormats = { whole: 1, tenth: 2, mm: 3, in: 4, inFine: 5, money: 6 };
const formatData = { 1: "#,##0", 2: "#,##0.0", 3: "0.000", 4: "0.0000", 5: "0.00000", 6: "#,##0.00" };

const borderData = {
  1: { bottom: { style: "thin", color: "#1b5e7a" } },
  2: { left: { style: "thin", color: "#9db4c0" } },
};

function formatId(format: FormatName, units: Units): number {
  if (format === "size") return numberFormats[units];
  if (format === "fine") return units === "mm" ? numberFormats.mm : numberFormats.inFine;
  return numberFormats[format];
}

function columnStyle<Row>(column: SheetColumn<Row>, example: Row): number {
  if (!column.value) return column.align ? styles[column.align] : styles.computed;
  return typeof column.value(example, 0) === "string" ? styles.inputText : styles.input;
}

/** Cells of one row, by column letters. */
export function cells(row: number, texts: Readonly<Record<string, string>>): Record<string, string> {
  return Object.fromEntries(Object.entries(texts).map(([column, text]) => [`${column}${row}`, text]));
}

/** A sheet with groups and headers over a row per entry; the first three columns and the headers stay in sight. */
export function sheetOf<Row extends { units: Units }>(
  name: string,
  columns: readonly SheetColumn<Row>[],
  entries: readonly Row[],
  headerRow: number,
): SheetData {
  const first = headerRow + 1;
  const last = headerRow + entries.length;
  const lastColumn = columns[columns.length - 1].id;
  const sheet: SheetData = {
    id: name.toLowerCase().replaceAll(" ", "-"),
    name,
    colNumber: columns.length + 2,
    rowNumber: last + 20,
    cells: {},
    styles: {
      A1: styles.title,
      D1: styles.shop,
      D2: styles.note,
      [`A${headerRow - 1}:${lastColumn}${headerRow - 1}`]: styles.group,
      [`A${headerRow}:${lastColumn}${headerRow}`]: styles.header,
    },
    formats: {},
    borders: { [`A${last}:${lastColumn}${last}`]: 1 },
    merges: [],
    cols: {},
    rows: { 0: { size: 30 }, 1: { size: 20 }, [headerRow - 1]: { size: 36 } },
    panes: { xSplit: 3, ySplit: headerRow },
  };
  columns.forEach((column, index) => {
    const { id, format } = column;
    sheet.cols[index] = { size: column.width };
    sheet.cells[`${id}${headerRow}`] = column.header;
    sheet.styles[`${id}${first}:${id}${last}`] = columnStyle(column, entries[0]);
    if (column.formula) sheet.cells[`${id}${first}`] = column.formula;
    entries.forEach((entry, row) => {
      if (column.value) sheet.cells[`${id}${first + row}`] = String(column.value(entry, row));
      if (format) sheet.formats[`${id}${first + row}`] = formatId(format, entry.units);
    });
    if (!column.group) return;
    sheet.cells[`${id}${headerRow - 1}`] = column.group;
    sheet.borders[`${id}${headerRow}:${id}${last - 1}`] = 2;
  });
  return sheet;
}

type Looks = Readonly<Record<"styles" | "formats" | "borders", Readonly<Record<number, unknown>>>>;

/** @param more looks that sheets made elsewhere have, under numbers of their own */
export function sheetsWorkbook(sheets: readonly SheetData[], more: Looks) {
  return {
    sheets,
    styles: { ...styleData, ...more.styles },
    formats: { ...formatData, ...more.formats },
    borders: { ...borderData, ...more.borders },
  };
}
