// workbook: reads ranges of Excel, and what holds their cells. Large ranges are read in slices, since an answer of over
// 5 MB is refused.

import { type Area, type Cells, type Content, type Fixed, Refusal } from "./workbook.ts";

/** More cells than this are not read. */
const MOST_CELLS = 500_000;
/** Cells in the first slice: formula, value and format of each at some 160 bytes stay under 5 MB. */
const SLICE = 10_000;
/** Cells that are asked one by one in one message. */
const SINGLE_CELLS = 4000;
/** Rows of a column that are asked together for spilled results, where there are many cells. */
const BLOCK = 500;
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

/** The used part of a sheet, to be asked for after the next sync; undefined then for an empty sheet. */
export function usedPart(worksheet: Excel.Worksheet): (sheet: string) => Area | undefined {
  const [all, filled] = [false, true].map((valuesOnly) => worksheet.getUsedRangeOrNullObject(valuesOnly));
  for (const range of [all, filled]) range.load(PLACE);
  return (sheet) => {
    if (all.isNullObject) return undefined;
    const area = areaOf(sheet, all);
    // Formats alone, down a whole column, make a part that no one could read.
    return area.rows * area.columns > MOST_CELLS && !filled.isNullObject ? areaOf(sheet, filled) : area;
  };
}

type Loaded = "formulas" | "values" | "numberFormat";

/**
 * Properties of all cells of an area. Where Excel finds an answer too large, it is asked for less at a time.
 * `ask` may ask for more in the same messages.
 */
export async function readSliced<Names extends Loaded>(
  context: Excel.RequestContext,
  { sheet, row, column, rows, columns }: Area,
  names: readonly Names[],
  ask: () => void = () => {},
): Promise<Record<Names, Content[][]>> {
  const read = Object.fromEntries(names.map((name) => [name, []])) as unknown as Record<Names, Content[][]>;
  let height = Math.max(1, Math.floor(SLICE / columns));
  for (let from = 0; from < rows; ) {
    const taken = Math.min(height, rows - from);
    const worksheet = context.workbook.worksheets.getItem(sheet);
    const slice = worksheet.getRangeByIndexes(row + from, column, taken, columns);
    slice.load(names.join(","));
    ask();
    try {
      await context.sync();
    } catch (thrown) {
      if ((thrown as { code?: string }).code !== "ResponsePayloadSizeLimitExceeded" || taken === 1)
        throw thrown;
      height = Math.max(1, Math.floor(taken / 4));
      continue;
    }
    for (const name of names) for (const line of slice[name] as Content[][]) read[name].push(line);
    from += taken;
  }
  return read;
}

/** The cells of an area with the spilled results in it; merged cells only if asked for, since looking for them costs
 * Excel's list of steps to undo. */
export async function readArea(
  context: Excel.RequestContext,
  area: Area,
  looksForMerged = false,
): Promise<Cells> {
  const { sheet, row, column, rows, columns } = area;
  if (rows * columns > MOST_CELLS)
    throw new Refusal(`These are ${rows * columns} cells. Select at most ${MOST_CELLS}.`);
  let range!: Excel.Range;
  const { formulas, values, numberFormat } = await readSliced(
    context,
    area,
    ["formulas", "values", "numberFormat"],
    () => {
      // An object that was first asked for in a message that Excel refused cannot be used any more.
      range = context.workbook.worksheets.getItem(sheet).getRangeByIndexes(row, column, rows, columns);
      range.load("hasSpill");
    },
  );
  const fixed: Fixed[][] = Array.from({ length: rows }, () => new Array(columns).fill(undefined));
  if (looksForMerged) await markMerged(context, range, area, fixed);
  if (range.hasSpill !== false) await markSpilled(context, range, area, formulas, fixed);
  // A text that begins with "=" shows itself.
  const typed = formulas.map((line, down) =>
    line.map((content, across) =>
      typeof content === "string" && content.startsWith("=") && content === values[down][across]
        ? `'${content}`
        : content,
    ),
  );
  const formats = numberFormat as string[][];
  return { sheet, row, column, rows, columns, formulas: typed, values, formats, fixed };
}

async function markMerged(context: Excel.RequestContext, range: Excel.Range, area: Area, fixed: Fixed[][]) {
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
        const marked = fixed[row - area.row];
        const at = column - area.column;
        if (marked && at >= 0 && at < area.columns) marked[at] ??= "merged";
      }
  }
}

type Place = readonly [down: number, across: number];

/** A spilled cell has a parent that is another cell. */
async function markSpilled(
  context: Excel.RequestContext,
  range: Excel.Range,
  { row, column, rows, columns }: Area,
  formulas: readonly (readonly Content[])[],
  fixed: Fixed[][],
) {
  const places =
    rows * columns > SINGLE_CELLS
      ? await doubtful(context, range, formulas, fixed)
      : fixed.flatMap((line, down) => line.map((_, across): Place => [down, across]));
  for (let from = 0; from < places.length; from += SINGLE_CELLS) {
    const parents = places.slice(from, from + SINGLE_CELLS).map(([down, across]) => {
      const parent = range.getCell(down, across).getSpillParentOrNullObject();
      parent.load("rowIndex,columnIndex");
      return { down, across, parent };
    });
    await context.sync();
    for (const { down, across, parent } of parents) {
      if (parent.isNullObject) continue;
      if (parent.rowIndex !== row + down || parent.columnIndex !== column + across)
        fixed[down][across] ??= "spilled";
    }
  }
}

/** The cells that have to be asked one by one; the others are told by the block of their column that they are in. */
async function doubtful(
  context: Excel.RequestContext,
  range: Excel.Range,
  formulas: readonly (readonly Content[])[],
  fixed: Fixed[][],
): Promise<readonly Place[]> {
  const blocks: { top: number; bottom: number; across: number; cells: Excel.Range }[] = [];
  for (let across = 0; across < formulas[0].length; across++)
    for (let top = 0; top < formulas.length; top += BLOCK) {
      const bottom = Math.min(formulas.length, top + BLOCK);
      const cells = range.getCell(top, across).getResizedRange(bottom - top - 1, 0);
      cells.load("hasSpill");
      blocks.push({ top, bottom, across, cells });
    }
  await context.sync();
  const places: Place[] = [];
  for (const { top, bottom, across, cells } of blocks) {
    if (cells.hasSpill === false) continue;
    for (let down = top; down < bottom; down++) {
      const isFormula = String(formulas[down][across]).startsWith("=");
      // In a block that is spilled all over, only a formula may be the one that spills.
      if (cells.hasSpill === true && !isFormula) fixed[down][across] ??= "spilled";
      else places.push([down, across]);
    }
  }
  return places;
}
