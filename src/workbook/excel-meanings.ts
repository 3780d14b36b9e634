// workbook: what names and tables stand for in the formulas of a workbook of Excel.

import { areaOf, PLACE } from "./excel-read.ts";
import type { DefinedName, NamedTable } from "./workbook.ts";

export async function readMeanings(
  context: Excel.RequestContext,
): Promise<{ names: DefinedName[]; tables: NamedTable[] }> {
  const { names, worksheets, tables } = context.workbook;
  names.load("items/name,items/formula");
  worksheets.load("items/name");
  tables.load("items/name,items/showHeaders,items/showTotals");
  await context.sync();
  const ofSheets = worksheets.items.map(({ name: sheet }) => {
    const own = worksheets.getItem(sheet).names;
    own.load("items/name,items/formula");
    return { sheet, names: own };
  });
  const shaped = tables.items.map(({ name, showHeaders, showTotals }) => {
    const table = tables.getItem(name);
    const range = table.getRange();
    range.load(PLACE);
    table.worksheet.load("name");
    table.columns.load("items/name");
    const [headerRows, totalsRows] = [showHeaders, showTotals].map(Number);
    return { name, headerRows, totalsRows, table, range };
  });
  await context.sync();
  return {
    names: [
      ...ofSheets.flatMap((one) => one.names.items.map((item) => nameOf(item, one.sheet))),
      ...names.items.map((item) => nameOf(item, undefined)),
    ],
    tables: shaped.map(({ name, headerRows, totalsRows, table, range }) => ({
      name,
      area: areaOf(table.worksheet.name, range),
      headerRows,
      totalsRows,
      columns: table.columns.items.map(({ name }) => name),
    })),
  };
}

/** A name of a sheet goes by its sheet as well, "Job!Speed". */
const nameOf = ({ name, formula }: Excel.NamedItem, sheet: string | undefined): DefinedName => ({
  name: name.slice(name.lastIndexOf("!") + 1),
  sheet,
  formula: String(formula),
});
