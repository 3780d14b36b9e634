// workbook: cells with the format of texts, in which the grid keeps what is typed as it is, an apostrophe before it as well,
// but computes what begins like a formula and takes the code of an error for one.

import type { CellValue } from "../xlsx/read-sheet.ts";
import { gridError } from "./error-codes.ts";

export const isTextFormat = (format: string | undefined): boolean => format === "@";

/** What is typed so that the cell shows the value of the file. */
export function asTextCell(value: CellValue): string {
  if (value === null) return "";
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  if (typeof value === "object") return gridError(value.code);
  const text = String(value);
  return /^'?[=#]/.test(text) ? `'${text}` : text;
}

/** The text that such a cell is to have in a file. */
export const textOfCell = (shown: string): string => (/^''?[=#]/.test(shown) ? shown.slice(1) : shown);
