// workbook: what stands in the way of writing into cells of Excel that it would let an add-in write over: data validation,
// which Excel applies only to what a user types, and PivotTables, where it refuses halfway.

import { areaOf, PLACE } from "./excel-read.ts";
import { type Area, addressOf, type Change, type Content, cellAddress, cutTo, Refusal } from "./workbook.ts";

const rangeOf = (context: Excel.RequestContext, { sheet, row, column, rows, columns }: Area) =>
  context.workbook.worksheets.getItem(sheet).getRangeByIndexes(row, column, rows, columns);

/** Asks, to be known after the next sync, whether data validation is set in any cell of an area. */
export function asksForRules(context: Excel.RequestContext, area: Area): () => boolean {
  const { dataValidation } = rangeOf(context, area);
  dataValidation.load("type");
  return () => dataValidation.type !== "None";
}

/** Asks for the PivotTables that areas meet. */
export function asksForPivots(context: Excel.RequestContext, areas: readonly Area[]) {
  const found = areas.map((area) => {
    const pivots = rangeOf(context, area).getPivotTables(false);
    pivots.load("items/name");
    return { area, pivots };
  });
  return () =>
    found.flatMap(({ area, pivots }) =>
      pivots.items.map(({ name }) => ({ name, sheet: area.sheet, table: pivots.getItem(name) })),
    );
}

/** @throws Refusal where a cell that is to be written lies in one of the PivotTables */
export async function refusePivots(
  context: Excel.RequestContext,
  changes: readonly Change[],
  pivots: ReturnType<ReturnType<typeof asksForPivots>>,
): Promise<void> {
  if (pivots.length === 0) return;
  const placed = pivots.map(({ name, sheet, table }) => {
    const range = table.layout.getRange();
    range.load(PLACE);
    return { name, sheet, range };
  });
  await context.sync();
  for (const { name, sheet, range } of placed) {
    const area = areaOf(sheet, range);
    const cell = writtenCells(changes).find((one) => cutTo(one, area));
    if (cell)
      throw new Refusal(
        `${addressOf(cell)} lies in the PivotTable ${name} (${addressOf(area)}). Select cells outside it. Nothing was changed.`,
      );
  }
}

/** The cells that changes write to, one by one. */
const writtenCells = (changes: readonly Change[]): (Area & { content: Content })[] =>
  changes.flatMap(({ sheet, row, column, formulas }) =>
    formulas.flatMap((line, down) =>
      line.flatMap((content, across) =>
        content === undefined
          ? []
          : [{ sheet, row: row + down, column: column + across, rows: 1, columns: 1, content }],
      ),
    ),
  );

/** The cells of areas that hold what their data validation would not have let a user type. */
export async function invalidCells(
  context: Excel.RequestContext,
  areas: readonly Area[],
): Promise<ReadonlySet<string>> {
  const found = areas.map((area) => {
    const invalid = rangeOf(context, area).dataValidation.getInvalidCellsOrNullObject();
    invalid.load("isNullObject");
    return { sheet: area.sheet, invalid };
  });
  await context.sync();
  const some = found.filter(({ invalid }) => !invalid.isNullObject);
  for (const { invalid } of some)
    invalid.areas.load("items/rowIndex,items/columnIndex,items/rowCount,items/columnCount");
  if (some.length > 0) await context.sync();
  const keys = new Set<string>();
  for (const { sheet, invalid } of some)
    for (const range of invalid.areas.items) {
      const { row, column, rows, columns } = areaOf(sheet, range);
      for (let down = 0; down < rows; down++)
        for (let across = 0; across < columns; across++)
          keys.add(keyOf({ sheet, row: row + down, column: column + across }));
    }
  return keys;
}

/** So many cells are asked what their rule says to a user. */
const MOST_ASKED = 500;

/**
 * Excel lets an add-in write what it would keep a user from typing.
 * @param before the cells that their rules did not allow before it was written
 * @throws Refusal where a figure or text that was written now is one that a user could not have typed
 */
export async function refuseInvalid(
  context: Excel.RequestContext,
  changes: readonly Change[],
  areas: readonly Area[],
  before: ReadonlySet<string>,
): Promise<void> {
  const now = await invalidCells(context, areas);
  const broken = writtenCells(changes).filter(
    (cell) => !isFormula(cell.content) && now.has(keyOf(cell)) && !before.has(keyOf(cell)),
  );
  if (broken.length === 0) return;
  const asked = broken.slice(0, MOST_ASKED).map((cell) => {
    const { dataValidation } = rangeOf(context, cell);
    dataValidation.load("errorAlert");
    return { cell, dataValidation };
  });
  await context.sync();
  const kept = asked.filter(({ dataValidation }) => !isLenient(dataValidation.errorAlert));
  if (kept.length === 0 && broken.length <= MOST_ASKED) return;
  const [{ cell }] = kept.length > 0 ? kept : asked;
  throw new Refusal(
    `The data validation of ${addressOf(cell)} does not allow ${cell.content}. Change the rule under Data > Data Validation first.`,
  );
}

const isFormula = (content: Content) => typeof content === "string" && content.startsWith("=");

const keyOf = ({ sheet, row, column }: Pick<Area, "sheet" | "row" | "column">) =>
  `${sheet}!${cellAddress(row, column)}`;

/** Whether a rule only asks, or says nothing, where a user types against it. */
const isLenient = (alert: Excel.DataValidationErrorAlert | undefined): boolean =>
  alert?.showAlert === false || alert?.style === "Warning" || alert?.style === "Information";
