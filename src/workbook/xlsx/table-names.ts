// workbook: names and numbers for tables that come into a workbook: no two of a workbook have the same.

import { readBox } from "./addresses.ts";
import { mapTags } from "./map-elements.ts";
import type { PackageParts } from "./package.ts";
import { partsWithFormulas } from "./workbook-parts.ts";
import { withAttribute } from "./write-sheet.ts";
import { attribute, elements } from "./xml-text.ts";

/** Where tables have their first cells, as `tableKey` has it, and their names. */
export type TablePlaces = ReadonlyMap<string, string>;

export const tableKey = ({ top, left }: { readonly top: number; readonly left: number }): string =>
  `${top} ${left}`;

export class TableNames {
  private readonly names: Set<string>;
  private readonly numbers: Set<number>;

  /** @param taken names of the tables and ranges that the workbook has */
  constructor(file: PackageParts, taken: readonly string[]) {
    this.names = new Set(taken.map((name) => name.toUpperCase()));
    const parts = file.names.filter((name) => /(?:^|\/)tables\/[^/]+\.xml$/i.test(name));
    const tables = parts.flatMap((name) => [...elements(file.read(name), "table")]);
    this.numbers = new Set(tables.map(({ tag }) => Number(attribute(tag, "id"))));
  }

  has(name: string): boolean {
    return this.names.has(name.toUpperCase());
  }

  /** The part of a table with a name and a number of its own; that name, if there was a table at its place. */
  given(text: string, before: TablePlaces): string {
    return mapTags(text, "table", (tag) => {
      const box = readBox(attribute(tag, "ref") ?? "");
      const wanted = box && before.get(tableKey(box));
      const name = wanted !== undefined && !this.has(wanted) ? wanted : this.freeName();
      this.names.add(name.toUpperCase());
      let number = 1;
      while (this.numbers.has(number)) number++;
      this.numbers.add(number);
      const numbered = withAttribute(tag, "id", String(number));
      return withAttribute(withAttribute(numbered, "name", name), "displayName", name);
    });
  }

  /** A name for the copy of a table. */
  nameOfCopy(name: string): string {
    for (let number = 2; ; number++) if (!this.has(`${name}${number}`)) return `${name}${number}`;
  }

  private freeName(): string {
    for (let number = 1; ; number++) if (!this.has(`Table${number}`)) return `Table${number}`;
  }
}

/** Whether a formula anywhere in the file calls a table by its name. */
export function isTableNamed(file: PackageParts, main: string, table: string): boolean {
  const word = new RegExp(`(?:^|[^\\w.])${table.replace(/[\\.?]/g, "\\$&")}(?![\\w.])`, "i");
  return partsWithFormulas(file, main).some((name) => word.test(file.read(name)));
}
