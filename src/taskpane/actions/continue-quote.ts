// taskpane: the formulas of a quoting sheet in rows that have none: rows added below, or inserted between.

import { lastIndexOf } from "../../calc/own.ts";
import { type Content, Refusal, type Workbook } from "../../workbook/workbook.ts";
import { quoteColumns } from "./quote-columns.ts";
import { QUOTE_HEADER_ROW, rowFormulas, type ShopTables } from "./quoting-sheet.ts";

const FIRST_ROW = QUOTE_HEADER_ROW + 1;

/** Whether a row of headers is that of a quoting sheet. */
export const isQuoteHeader = (headers: readonly Content[]): boolean =>
  quoteColumns.every(({ header }, column) => headers[column] === header);

/**
 * Writes formulas into every empty computed cell down to the last row with an input, and `more` rows below it.
 * Gives how many rows got some. @throws Refusal where the active sheet is no quoting sheet
 */
export async function continueQuote(workbook: Workbook, more: number, tables: ShopTables): Promise<number> {
  const { sheet } = await workbook.active();
  const columns = quoteColumns.length;
  const used = await workbook.used(sheet);
  const last = used ? used.row + used.rows : 0;
  if (last < FIRST_ROW) throw new Refusal(`"${sheet}" is no quoting sheet: show one, then try again.`);
  const cells = await workbook.read({
    sheet,
    row: QUOTE_HEADER_ROW - 1,
    column: 0,
    rows: last - QUOTE_HEADER_ROW + 1 + more,
    columns,
  });
  const [headers, ...rows] = cells.formulas;
  if (!isQuoteHeader(headers))
    throw new Refusal(
      `Row ${QUOTE_HEADER_ROW} of "${sheet}" does not hold the headers of a quoting sheet: show one, with its columns in their order.`,
    );
  const formulas = rowFormulas(tables);
  const lastInput = lastIndexOf(rows, (row) =>
    quoteColumns.some(({ isInput }, column) => isInput && row[column] !== ""),
  );
  const filled = rows.slice(0, lastInput + 1 + more).map((row, index) =>
    quoteColumns.map(({ key }, column): Content | undefined => {
      const formula = formulas.get(key);
      if (formula === undefined || row[column] !== "") return undefined;
      return formula.replaceAll("{row}", String(FIRST_ROW + index));
    }),
  );
  const count = filled.filter((row) => row.some((content) => content !== undefined)).length;
  if (count > 0) await workbook.write([{ sheet, row: FIRST_ROW - 1, column: 0, formulas: filled }]);
  return count;
}
