// tests: reads a golden file: line 1 names the published source, line 2 the columns.

import { readFileSync } from "node:fs";

export function readGolden(name: string): Record<string, string>[] {
  const [source, header, ...lines] = readFileSync(new URL(`../../golden/${name}`, import.meta.url), "utf8")
    .trim()
    .split("\n");
  if (!source!.startsWith("# source: ")) throw new Error(`${name} names no source on line 1`);
  const columns = header!.split(",");
  return lines.map((line) => {
    const cells = line.split(",");
    if (cells.length !== columns.length) throw new Error(`${name}: ${line}`);
    return Object.fromEntries(columns.map((column, index) => [column, cells[index]!]));
  });
}
