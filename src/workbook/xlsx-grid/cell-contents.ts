// workbook: the contents of a sheet in a file as the browser workbook's grid takes them.

import type { GridLibrary } from "./library.ts";
import { asUserInput, type Literals, type ReadSheet } from "./read-cells.ts";
import { asTextCell } from "./text-cells.ts";

export function literalsOf({ helpers, constants }: GridLibrary): Literals {
  const { DEFAULT_LOCALE } = constants as any;
  const { isNumber, isDateTime } = helpers as any;
  return {
    isOther: (text) => isNumber(text, DEFAULT_LOCALE) || isDateTime(text, DEFAULT_LOCALE),
  };
}

/** A number in a cell with the format of texts, which is a text in the grid. */
export interface NumberAsText {
  readonly sheetId: string;
  readonly address: string;
  readonly content: string;
}

/**
 * What was read, except that a link stays as the importer wrote it, with its address, and that a formula which the grid
 * makes no sense of becomes its value: its references would not follow what is inserted and moved.
 */
export function contentsOf(
  made: any,
  { cells }: ReadSheet,
  library: GridLibrary,
  isTextCell: (address: string) => boolean,
): { cells: Record<string, string>; unread: number; numbers: readonly string[] } {
  const contents: Record<string, string> = {};
  const numbers: string[] = [];
  const literals = literalsOf(library);
  let unread = 0;
  for (const [address, { content, kind, value }] of cells) {
    if (kind === "formula") {
      const isUnread = library.CompiledFormula.IsBadExpression(content);
      if (isUnread) unread++;
      contents[address] = isUnread ? asUserInput(value, literals) : content;
      continue;
    }
    const before = made.cells[address];
    const isLink = typeof before === "string" && before !== value && library.links.isMarkdownLink(before);
    const isText = !isLink && isTextCell(address);
    contents[address] = isLink ? before : isText ? asTextCell(value) : content;
    if (isText && typeof value === "number") numbers.push(address);
  }
  return { cells: contents, unread, numbers };
}
