// fill: references to tables, `Holes[[#This Row],[Callout]]`, as cells.

import type { Table } from "../../workbook/xlsx/workbook-parts.ts";
import { Area } from "./values.ts";

const pieces = /\[((?:'[\s\S]|[^\]'])*)\]|([,:])|\s+|([^[\],:\s]+)/g;
const unescapeColumn = (text: string) => text.replace(/'([\s\S])/g, "$1");

/** The cells of `table` that `inside`, the text between its brackets, means in a row; undefined if it means none. */
export function tableArea(table: Table, inside: string, row: number): Area | undefined {
  const wanted = readInside(inside);
  if (!wanted) return undefined;
  const { box, sheet, headerRows, totalsRows } = table;
  const first = box.top + headerRows;
  const last = box.bottom - totalsRows;
  const rows = new Set(wanted.rows);
  let span: readonly [number, number] | undefined;
  if (rows.size === 0 || (rows.size === 1 && rows.has("#data"))) span = [first, last];
  else if (rows.has("#this row")) span = row >= first && row <= last ? [row, row] : undefined;
  else if (rows.has("#all")) span = [box.top, box.bottom];
  else if (rows.has("#headers")) span = [box.top, rows.has("#data") ? last : box.top];
  else if (rows.has("#totals")) span = [rows.has("#data") ? first : box.bottom, box.bottom];
  if (rows.has("#headers") && headerRows === 0) return undefined;
  if (rows.has("#totals") && totalsRows === 0) return undefined;
  const columns = wanted.columns.map((name) =>
    table.columns.findIndex((column) => column.toLowerCase() === name.toLowerCase()),
  );
  if (!span || span[0] > span[1] || columns.includes(-1)) return undefined;
  const left = columns.length === 0 ? box.left : box.left + Math.min(...columns);
  const right = columns.length === 0 ? box.right : box.left + Math.max(...columns);
  return new Area(sheet, span[0], left, span[1], right);
}

interface Wanted {
  readonly rows: readonly string[];
  /** None for all, one, or the first and last. */
  readonly columns: readonly string[];
}

function readInside(inside: string): Wanted | undefined {
  const text = inside.trim();
  if (text.startsWith("@")) {
    const rest = readInside(text.slice(1));
    return rest && { rows: ["#this row"], columns: rest.columns };
  }
  if (!text.includes("[")) {
    if (text === "") return { rows: [], columns: [] };
    return text.startsWith("#")
      ? { rows: [text.toLowerCase()], columns: [] }
      : { rows: [], columns: [unescapeColumn(text)] };
  }
  const rows: string[] = [];
  const columns: string[] = [];
  let end = 0;
  for (const found of text.matchAll(pieces)) {
    if (found.index !== end || found[3] !== undefined) return undefined;
    end = found.index + found[0].length;
    const item = found[1];
    if (item === undefined) continue;
    if (item.startsWith("#")) rows.push(item.toLowerCase());
    else columns.push(unescapeColumn(item));
  }
  return end === text.length && columns.length <= 2 ? { rows, columns } : undefined;
}
