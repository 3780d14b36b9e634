// workbook: a new sheet in Excel: texts over the table, headers, formats, widths, and the words a column may hold.

import { dress } from "./excel-looks.ts";
import { sendsInTime } from "./excel-write.ts";
import type { NewColumn, NewSheet } from "./workbook.ts";
import { columnLetters, literal, Refusal, sheetReference } from "./workbook.ts";

/** Excel takes a list of words in a rule only this long; a longer one is kept in a hidden column. */
const LONGEST_LIST = 255;
const POINTS_PER_CHARACTER = 6;
const INPUT_COLOR = "#0b4fa0";

/**
 * A name that no sheet has: the wanted one, or with a number; cut to the 31 characters that Excel allows.
 * @throws Refusal where no sheet can be added
 */
export async function newSheetName(context: Excel.RequestContext, wanted: string): Promise<string> {
  const { worksheets, protection } = context.workbook;
  worksheets.load("items/name");
  protection.load("protected");
  await context.sync();
  if (protection.protected)
    throw new Refusal(
      "The structure of the workbook is protected, so no sheet can be added. Unprotect it under Review > Protect Workbook, then try again.",
    );
  const taken = new Set(worksheets.items.map(({ name }) => name.toLowerCase()));
  for (let number = 1; ; number++) {
    const end = number === 1 ? "" : ` ${number}`;
    const name = wanted.slice(0, 31 - end.length).trimEnd() + end;
    if (!taken.has(name.toLowerCase())) return name;
  }
}

/** A formula of every row, in the row with this number. */
const eachRow = (formula: string, row: number): string => formula.replaceAll("{row}", String(row));

export async function addColumns(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  plan: NewSheet,
): Promise<void> {
  const { name, top, columns, rows } = plan;
  const inTime = sendsInTime(context);
  top.forEach((row, at) => {
    if (row.length > 0) sheet.getRangeByIndexes(at, 0, 1, row.length).formulas = [row.map(literal)];
  });
  const header = top.length;
  if (columns.some((column) => column.header !== "")) {
    const headers = sheet.getRangeByIndexes(header, 0, 1, columns.length);
    headers.values = [columns.map((column) => column.header)];
    headers.format.font.bold = true;
    headers.format.wrapText = true;
    headers.format.verticalAlignment = "Center";
    freeze(sheet, header + 1, plan.frozenColumns ?? 0);
  }
  /** Formats and lists reach as far as the sheet has room. */
  const reach = Math.max(rows, (plan.room ?? 0) - header - 1, 1);
  let listColumn = columns.length + 1;
  for (const [at, column] of columns.entries()) {
    const cells = sheet.getRangeByIndexes(header + 1, at, reach, 1);
    cells.format.columnWidth = column.width * POINTS_PER_CHARACTER;
    if (rows === 0) continue;
    // One text for all cells of the range.
    if (column.format) cells.numberFormat = column.format as never;
    if (column.isInput) cells.format.font.color = INPUT_COLOR;
    if (column.each) {
      const formulas = Array.from({ length: rows }, (_, row) => [eachRow(column.each!, header + 2 + row)]);
      await inTime(formulas);
      sheet.getRangeByIndexes(header + 1, at, rows, 1).formulas = formulas;
    }
    if (column.choices ?? column.offers) listColumn = addList(sheet, name, cells, column, listColumn);
    if (column.first !== undefined) sheet.getCell(header + 1, at).formulas = [[literal(column.first)]];
  }
  (plan.data ?? []).forEach((line, row) => {
    sheet.getRangeByIndexes(header + 1 + row, 0, 1, line.length).formulas = [line.map(literal)];
  });
  for (const { area, words, isBinding } of plan.lists ?? []) {
    const offered = isBinding ? { choices: words } : { offers: words };
    listColumn = addList(sheet, name, sheet.getRange(area), offered, listColumn);
  }
  dress(sheet, plan);
}

function freeze(sheet: Excel.Worksheet, rows: number, columns: number): void {
  if (columns === 0) sheet.freezePanes.freezeRows(rows);
  else sheet.freezePanes.freezeAt(sheet.getRangeByIndexes(0, 0, rows, columns));
}

/** Gives the column that the next hidden list may use. */
function addList(
  sheet: Excel.Worksheet,
  name: string,
  cells: Excel.Range,
  { choices, offers }: Pick<NewColumn, "choices" | "offers">,
  listColumn: number,
): number {
  const words = (choices ?? offers)!;
  const source = words.join(",");
  const tooLong = source.length > LONGEST_LIST || words.some((word) => word.includes(","));
  cells.dataValidation.rule = {
    list: { inCellDropDown: true, source: tooLong ? hiddenList(sheet, name, listColumn, words) : source },
  };
  if (!choices)
    cells.dataValidation.errorAlert = { message: "", showAlert: false, style: "Information", title: "" };
  return tooLong ? listColumn + 1 : listColumn;
}

function hiddenList(sheet: Excel.Worksheet, name: string, column: number, words: readonly string[]): string {
  const list = sheet.getRangeByIndexes(0, column, words.length, 1);
  list.values = words.map((word) => [word]);
  list.columnHidden = true;
  const letters = columnLetters(column);
  return `=${sheetReference(name)}!$${letters}$1:$${letters}$${words.length}`;
}
