// workbook: reads ranges of Excel, and what holds their cells. Large ranges are read in slices, since an answer of over
// 5 MB is refused.

import { type Area, type Cells, type Content, type Hold, Refusal } from "./workbook.ts";

/** More cells than this are not read. */
const MOST_CELLS = 200_000;
/** More cells than this are not looked at one by one for spilled results. */
const MOST_SINGLE_CELLS = 4000;
/** Cells in a slice: formula, value and format of each at some 80 bytes stay well under 5 MB. */
export const SLICE = 20_000;
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

/** Rows of a rectangle in slices of no more cells than Excel gives or takes at once. */
function slices(rows: number, columns: number): readonly { readonly from: number; readonly rows: number }[] {
  const height = Math.max(1, Math.floor(SLICE / Math.max(1, columns)));
  return Array.from({ length: Math.ceil(rows / height) }, (_, at) => ({
    from: at * height,
    rows: Math.min(height, rows - at * height),
  }));
}

/** A range whose place is loaded, with its contents and the spilled results in it; merged cells only if asked for,
 * since looking for them costs Excel's list of steps to undo. */
export async function readRange(
  context: Excel.RequestContext,
  sheet: string,
  range: Excel.Range,
  looksForMerged = false,
): Promise<Cells> {
  const area = areaOf(sheet, range);
  if (area.rows * area.columns > MOST_CELLS)
    throw new Refusal(`These are ${area.rows * area.columns} cells. Select at most ${MOST_CELLS}.`);
  const read = { formulas: [] as Content[][], values: [] as Content[][], formats: [] as string[][] };
  range.load("hasSpill");
  for (const { from, rows } of slices(area.rows, area.columns)) {
    const slice =
      rows === area.rows
        ? range
        : range.worksheet.getRangeByIndexes(area.row + from, area.column, rows, area.columns);
    slice.load("formulas,values,numberFormat");
    await context.sync();
    read.formulas.push(...(slice.formulas as Content[][]));
    read.values.push(...(slice.values as Content[][]));
    read.formats.push(...(slice.numberFormat as string[][]));
  }
  const holds: Hold[][] = Array.from({ length: area.rows }, () => new Array(area.columns).fill(undefined));
  if (looksForMerged) await markMerged(context, range, area, holds);
  if (range.hasSpill !== false) await markSpilled(context, range, area, holds);
  return { ...area, ...read, holds };
}

async function markMerged(context: Excel.RequestContext, range: Excel.Range, area: Area, holds: Hold[][]) {
  const merged = range.getMergedAreasOrNullObject();
  merged.load("isNullObject");
  await context.sync();
  if (merged.isNullObject) return;
  merged.areas.load("items/rowIndex,items/columnIndex,items/rowCount,items/columnCount");
  await context.sync();
  for (const range of merged.areas.items) {
    const part = areaOf(area.sheet, range);
    for (let row = part.row; row < part.row + part.rows; row++)
      for (let column = part.column; column < part.column + part.columns; column++) {
        const marked = holds[row - area.row];
        const at = column - area.column;
        if (marked && at >= 0 && at < area.columns) marked[at] ??= "merged";
      }
  }
}

/** A spilled cell has a parent that is another cell. */
async function markSpilled(context: Excel.RequestContext, range: Excel.Range, area: Area, holds: Hold[][]) {
  if (area.rows * area.columns > MOST_SINGLE_CELLS)
    throw new Refusal(
      `The cells hold spilled results and are more than ${MOST_SINGLE_CELLS}. Select fewer at a time.`,
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
