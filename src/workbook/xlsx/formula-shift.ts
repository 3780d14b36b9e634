// workbook: a shared formula, written once in a file, as it stands in another of its cells.

import { type Corner, columnName, LAST_COLUMN, LAST_ROW, readCorner } from "./addresses.ts";
import { type Token, tokensOf } from "./formula-tokens.ts";

/** A formula that many cells share: its pieces between references, and the references. */
export interface SharedFormula {
  /** The text in the cell that lies so many rows and columns from the one that holds it. */
  at(rows: number, columns: number): string;
}

export function sharedFormula(formula: string): SharedFormula {
  const tokens = tokensOf(formula);
  const pieces: (string | Corner)[] = [];
  tokens.forEach((token, i) => {
    const corner = isReference(tokens, i) ? readCorner(token.text) : undefined;
    const last = pieces.length - 1;
    if (corner) pieces.push(corner);
    else if (typeof pieces[last] === "string") pieces[last] += token.text;
    else pieces.push(token.text);
  });
  return {
    at: (rows, columns) =>
      pieces.map((piece) => (typeof piece === "string" ? piece : moved(piece, rows, columns))).join(""),
  };
}

/** A cell anywhere; a column or a row only beside a colon. */
function isReference(tokens: readonly Token[], i: number): boolean {
  const { kind, text } = tokens[i];
  if (kind !== "name" && kind !== "number") return false;
  if (tokens[i + 1]?.text === "(" || tokens[i + 1]?.text === "!") return false;
  const whole = kind === "number" || !/^\$?[A-Za-z]+\$?\d+$/.test(text);
  return !whole || tokens[i - 1]?.text === ":" || tokens[i + 1]?.text === ":";
}

/** References go round the edge of the sheet, as Excel's do. */
function moved({ row, column, fixedRow, fixedColumn }: Corner, rows: number, columns: number): string {
  const around = (number: number, by: number, last: number) =>
    (((number + by) % (last + 1)) + last + 1) % (last + 1);
  const letters =
    column === undefined
      ? ""
      : (fixedColumn ? "$" : "") + columnName(fixedColumn ? column : around(column, columns, LAST_COLUMN));
  const digits =
    row === undefined ? "" : (fixedRow ? "$" : "") + ((fixedRow ? row : around(row, rows, LAST_ROW)) + 1);
  return letters + digits;
}
