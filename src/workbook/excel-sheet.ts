// workbook: a new sheet in Excel: texts over the table, headers, formats, widths, and the words a column may hold.

import type { NewSheet } from "./workbook.ts";
import { columnLetters, sheetReference } from "./workbook.ts";

/** Excel takes a list of words in a rule only this long; a longer one is kept in a hidden column. */
const LONGEST_LIST = 255;
const POINTS_PER_CHARACTER = 6;

/** A name that no sheet has: the wanted one, or with a number; cut to the 31 characters that Excel allows. */
export async function freeSheetName(context: Excel.RequestContext, wanted: string): Promise<string> {
  const { worksheets } = context.workbook;
  worksheets.load("items/name");
  await context.sync();
  const taken = new Set(worksheets.items.map(({ name }) => name.toLowerCase()));
  for (let number = 1; ; number++) {
    const end = number === 1 ? "" : ` ${number}`;
    const name = wanted.slice(0, 31 - end.length).trimEnd() + end;
    if (!taken.has(name.toLowerCase())) return name;
  }
}

export function addColumns(sheet: Excel.Worksheet, { name, top, columns, rows }: NewSheet): void {
  top.forEach((row, at) => {
    if (row.length > 0) sheet.getRangeByIndexes(at, 0, 1, row.length).formulas = [[...row]];
  });
  const header = top.length;
  const headers = sheet.getRangeByIndexes(header, 0, 1, columns.length);
  headers.values = [columns.map((column) => column.header)];
  headers.format.font.bold = true;
  sheet.freezePanes.freezeRows(header + 1);
  let listColumn = columns.length + 1;
  columns.forEach((column, at) => {
    const cells = sheet.getRangeByIndexes(header + 1, at, rows, 1);
    cells.format.columnWidth = column.width * POINTS_PER_CHARACTER;
    if (column.format) cells.numberFormat = Array.from({ length: rows }, () => [column.format]);
    if (column.choices) {
      const source = column.choices.join(",");
      const tooLong = source.length > LONGEST_LIST || column.choices.some((word) => word.includes(","));
      cells.dataValidation.rule = {
        list: {
          inCellDropDown: true,
          source: tooLong ? hiddenList(sheet, name, listColumn++, column.choices) : source,
        },
      };
    }
    if (column.first !== undefined) sheet.getCell(header + 1, at).formulas = [[column.first]];
  });
}

function hiddenList(sheet: Excel.Worksheet, name: string, column: number, words: readonly string[]): string {
  const list = sheet.getRangeByIndexes(0, column, words.length, 1);
  list.values = words.map((word) => [word]);
  list.columnHidden = true;
  const letters = columnLetters(column);
  return `=${sheetReference(name)}!$${letters}$1:$${letters}$${words.length}`;
}
