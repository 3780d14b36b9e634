// fill: whether the cells that a result would need are free.

import type { Box } from "../workbook/xlsx/addresses.ts";
import { contains } from "../workbook/xlsx/addresses.ts";
import { walkSheet } from "../workbook/xlsx/walk-sheet.ts";

/** Whether the file has something in the cells of a box, those of another aside. */
export function hasContent(text: string, box: Box, aside: Box): boolean {
  let isFound = false;
  walkSheet(text, {
    cell({ row, column, value, inline, formula }) {
      if (value || inline || formula) isFound ||= contains(box, row, column) && !contains(aside, row, column);
    },
  });
  return isFound;
}
