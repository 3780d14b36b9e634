// tests: reads a golden file: line 1 names the published source, line 2 the columns.

import { readFileSync } from "node:fs";
import { parse } from "csv-parse/sync";

/** The columns' names, then the rows. */
export function readRows(name: string): [names: string[], ...rows: string[][]] {
  const text = readFileSync(new URL(`../golden/${name}.csv`, import.meta.url), "utf8");
  if (!text.startsWith("# source: ")) throw new Error(`${name} names no source on line 1`);
  return parse(text, { from_line: 2 }) as [string[], ...string[][]];
}

export type Row = Readonly<Record<string, string>>;

export function readTable(name: string): Row[] {
  const [names, ...rows] = readRows(name);
  return rows.map((cells) => Object.fromEntries(names.map((column, index) => [column, cells[index]])));
}
