// taskpane: references to cells, as a user types them and as a formula writes them.

import { type Area, addressOf, sheetReference } from "../../workbook/workbook.ts";

export interface Reference {
  readonly area: Area;
  /** Written with $: it stays where it is when a formula is filled down. */
  readonly fixed: boolean;
}

const REFERENCE =
  /^(?:(?:'((?:[^']|'')+)'|([\p{L}_][\p{L}\p{N}_.]*))!)?(\$?)([A-Z]{1,3})(\$?)(\d{1,7})(?::\$?([A-Z]{1,3})\$?(\d{1,7}))?$/iu;

/** `B3`, `$B$3`, `B3:C9`, `'Job 7'!B3`; undefined for any other text. */
export function readReference(text: string, sheet: string): Reference | undefined {
  const match = REFERENCE.exec(text.trim());
  if (!match) return undefined;
  const [, quoted, plain, fixedColumn, letters, fixedRow, number, lastLetters, lastNumber] = match;
  const first = { column: columnNumber(letters), row: Number(number) - 1 };
  const last = lastLetters ? { column: columnNumber(lastLetters), row: Number(lastNumber) - 1 } : first;
  const row = Math.min(first.row, last.row);
  const column = Math.min(first.column, last.column);
  if (row < 0) return undefined;
  return {
    area: {
      sheet: quoted?.replaceAll("''", "'") ?? plain ?? sheet,
      row,
      column,
      rows: Math.abs(last.row - first.row) + 1,
      columns: Math.abs(last.column - first.column) + 1,
    },
    fixed: fixedColumn !== "" || fixedRow !== "",
  };
}

/** An area as a formula on `sheet` writes it. */
export function referenceTo(area: Area, sheet: string, fixed = false): string {
  const address = fixed ? addressOf(area).replace(/([A-Z]+)(\d+)/g, "$$$1$$$2") : addressOf(area);
  return area.sheet === sheet ? address : `${sheetReference(area.sheet)}!${address}`;
}

const MOST_NAMED = 4;

/** The first few of some addresses, and how many more: "C2, C3, C4, C5 and 5 more". */
export function someOf(addresses: readonly string[]): string {
  const rest = addresses.length - MOST_NAMED;
  return `${addresses.slice(0, MOST_NAMED).join(", ")}${rest > 0 ? ` and ${rest} more` : ""}`;
}

function columnNumber(letters: string): number {
  let number = 0;
  for (const letter of letters.toUpperCase()) number = number * 26 + letter.charCodeAt(0) - 64;
  return number - 1;
}
