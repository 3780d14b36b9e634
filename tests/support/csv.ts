// tests: reads a golden file whose cells may hold commas and quotes: line 1 names the source, line 2 the columns.

import { readFileSync } from "node:fs";

/** The cells of a line: apart by commas, a cell with commas in quotes, a quote in it written twice. */
function readLine(line: string): string[] {
  return [...`${line},`.matchAll(/"((?:[^"]|"")*)",|([^",]*),/g)].map(
    ([, quoted, plain]) => quoted?.replaceAll('""', '"') ?? plain!,
  );
}

export type Row = Readonly<Record<string, string>>;

export function readTable(name: string): Row[] {
  const [source, head, ...lines] = readFileSync(new URL(`../golden/${name}.csv`, import.meta.url), "utf8")
    .trimEnd()
    .split("\n");
  if (!source!.startsWith("# source: ")) throw new Error(`${name} names no source on line 1`);
  const columns = readLine(head!);
  return lines.map((line) => {
    const cells = readLine(line);
    if (cells.length !== columns.length) throw new Error(`${name}: ${line}`);
    return Object.fromEntries(columns.map((column, index) => [column, cells[index]!]));
  });
}
