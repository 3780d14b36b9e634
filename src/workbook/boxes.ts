// workbook: an area by the corners of its box, and the other way round.

import type { Area } from "./workbook.ts";
import type { Box } from "./xlsx/addresses.ts";

export const areaOfBox = (sheet: string, { left, right, top, bottom }: Box): Area => ({
  sheet,
  row: top,
  column: left,
  rows: bottom - top + 1,
  columns: right - left + 1,
});

export const boxOfArea = ({ row, column, rows, columns }: Area): Box => ({
  top: row,
  left: column,
  bottom: row + rows - 1,
  right: column + columns - 1,
});
