// workbook: the cells that a formula of the browser workbook fills.

import type { Model } from "@odoo/o-spreadsheet";
import type { Box } from "../xlsx/addresses.ts";

interface Position {
  readonly sheetId: string;
  readonly row: number;
  readonly col: number;
}

export function spreadBox({ getters }: Model, position: Position): Box {
  const { sheetId, row, col } = position;
  const own = { top: row, left: col, bottom: row, right: col };
  const zone = getters.getSpreadZone(position);
  if (!zone || getters.getEvaluatedCell(position).type !== "error") return zone ?? own;
  // Of a result that begins with an error the grid tells the first cell alone: the others are looked for.
  const isFilled = (at: Position) => {
    const from = getters.getArrayFormulaSpreadingOn(at);
    return from?.row === row && from.col === col;
  };
  const { numberOfRows, numberOfCols } = getters.getSheetSize(sheetId);
  for (let at = row + 1; at < numberOfRows; at++) if (isFilled({ sheetId, row: at, col })) own.bottom = at;
  for (let at = col + 1; at < numberOfCols; at++) if (isFilled({ sheetId, row, col: at })) own.right = at;
  return own;
}
