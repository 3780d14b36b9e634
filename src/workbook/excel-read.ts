// workbook: reads ranges of Excel, and what holds their cells.

import { type Area, type Cells, type Content, type Hold, Refusal } from "./workbook.ts";

/** More cells than this are not looked at one by one for merges and spilled results. */
const MOST_CELLS = 200_000;
const MOST_SINGLE_CELLS = 4000;
/** What `areaOf` needs loaded. */
export const PLACE = "rowIndex,columnIndex,rowCount,columnCount";

export function areaOf(sheet: string, range: Excel.Range): Area {
  return {
    sheet,
    row: range.rowIndex,
    column: range.columnIndex,
    rows: range.rowCount,
    columns: range.columnCount,
  };
}

/** A range whose place is loaded, with its contents and what holds its cells. */
export async function readRange(
  context: Excel.RequestContext,
  sheet: string,
  range: Excel.Range,
): Promise<Cells> {
  const area = areaOf(sheet, range);
  if (area.rows * area.columns > MOST_CELLS)
    throw new Refusal(`${area.rows * area.columns} cells are selected: select at most ${MOST_CELLS}.`);
  range.load("formulas,values,numberFormat,hasSpill");
  const merged = range.getMergedAreasOrNullObject();
  await context.sync();
  const holds: Hold[][] = Array.from({ length: area.rows }, () => new Array(area.columns).fill(undefined));
  if (!merged.isNullObject) {
    merged.areas.load(`items/rowIndex,items/columnIndex,items/rowCount,items/columnCount`);
    await context.sync();
    for (const part of merged.areas.items) mark(holds, area, areaOf(sheet, part), "merged");
  }
  if (range.hasSpill !== false) await markSpilled(context, range, area, holds);
  return {
    ...area,
    formulas: range.formulas as Content[][],
    values: range.values as Content[][],
    formats: range.numberFormat as string[][],
    holds,
  };
}

function mark(holds: Hold[][], area: Area, part: Area, hold: Hold): void {
  for (let row = part.row; row < part.row + part.rows; row++)
    for (let column = part.column; column < part.column + part.columns; column++)
      if (holds[row - area.row]?.[column - area.column] === undefined && holds[row - area.row])
        holds[row - area.row][column - area.column] = hold;
}

/** A spilled cell has a parent that is another cell. */
async function markSpilled(context: Excel.RequestContext, range: Excel.Range, area: Area, holds: Hold[][]) {
  if (area.rows * area.columns > MOST_SINGLE_CELLS)
    throw new Refusal(
      `The selection holds spilled results and more than ${MOST_SINGLE_CELLS} cells: select fewer at a time.`,
    );
  const parents = holds.map((row, down) =>
    row.map((_, across) => {
      const parent = range.getCell(down, across).getSpillParentOrNullObject();
      parent.load("rowIndex,columnIndex");
      return parent;
    }),
  );
  await context.sync();
  parents.forEach((row, down) => {
    row.forEach((parent, across) => {
      if (parent.isNullObject) return;
      if (parent.rowIndex !== area.row + down || parent.columnIndex !== area.column + across)
        holds[down][across] ??= "spilled";
    });
  });
}
