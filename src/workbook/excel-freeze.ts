// workbook: a copy of a sheet of Excel with values in place of formulas, made once Excel has nothing left to compute.

import { PLACE } from "./excel-read.ts";
import { freeSheetName } from "./excel-sheet.ts";
import { type Content, Refusal } from "./workbook.ts";

/** How often Excel is asked whether it is done, and how long that goes on, in ms. */
const PAUSE = 250;
const LONGEST_WAIT = 20_000;

/** Waits until Excel is done computing. Values may still be old ones under a loading mark, so that two looks at them
 * must agree as well. @throws Refusal where it stays busy */
async function settledValues(
  context: Excel.RequestContext,
  range: Excel.Range,
): Promise<readonly (readonly Content[])[]> {
  const { application } = context.workbook;
  let before: string | undefined;
  for (const end = Date.now() + LONGEST_WAIT; Date.now() < end; ) {
    application.load("calculationState,calculationMode");
    range.load("values");
    await context.sync();
    const isDone = application.calculationState === "Done";
    if (!isDone && application.calculationMode === "Manual")
      throw new Refusal("Excel computes only when asked to here. Press F9, then try again.");
    const now = isDone ? JSON.stringify(range.values) : undefined;
    if (now !== undefined && now === before) return range.values as Content[][];
    before = now;
    await new Promise((resolve) => setTimeout(resolve, PAUSE));
  }
  throw new Refusal("Excel is still computing. Wait until it is done, then try again.");
}

/** @throws Refusal, and then there is no copy */
export async function copySheetAsValues(
  context: Excel.RequestContext,
  sheet: string,
  replace: (formula: string) => boolean,
): Promise<{ name: string; replaced: number }> {
  const original = context.workbook.worksheets.getItem(sheet);
  const used = original.getUsedRangeOrNullObject(false);
  used.load(`${PLACE},formulas`);
  const name = await freeSheetName(context, `${sheet} (values)`);
  if (used.isNullObject) throw new Refusal(`The sheet "${sheet}" is empty. There is nothing to copy.`);
  const values = await settledValues(context, used);
  // Values are those of the original: in the copy the functions have yet to be computed.
  const picked = used.formulas.flatMap((contents, row) =>
    contents.flatMap((content, column) => {
      if (typeof content !== "string" || !content.startsWith("=") || !replace(content)) return [];
      const spill = original
        .getCell(used.rowIndex + row, used.columnIndex + column)
        .getSpillingToRangeOrNullObject();
      spill.load(`${PLACE},values`);
      return [{ row, column, spill }];
    }),
  );
  await context.sync();

  const copy = original.copy("After", original);
  copy.load("id");
  await context.sync();
  try {
    copy.name = name;
    let replaced = 0;
    for (const { row, column, spill } of picked) {
      const kept = spill.isNullObject ? [[values[row][column]]] : (spill.values as Content[][]);
      const place = [used.rowIndex + row, used.columnIndex + column] as const;
      copy.getRangeByIndexes(...place, kept.length, kept[0].length).values = kept.map((cells) =>
        cells.map(asTyped),
      );
      replaced += kept.length * kept[0].length;
    }
    copy.activate();
    await context.sync();
    return { name, replaced };
  } catch (thrown) {
    copy.delete();
    await context.sync().catch(() => {});
    throw thrown;
  }
}

/** A text as one types it, so that it stays a text: "=x" and "'x" would become something else, and "1/2" a date. */
function asTyped(value: Content): Content {
  return typeof value === "string" && value !== "" && !value.startsWith("#") ? `'${value}` : value;
}
