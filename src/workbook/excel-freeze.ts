// workbook: a copy of a sheet of Excel with values in place of formulas, made once Excel has nothing left to compute.

import { readArea, readSliced, usedPart } from "./excel-read.ts";
import { newSheetName } from "./excel-sheet.ts";
import { putChanges } from "./excel-write.ts";
import { type Area, type Cells, type Content, Refusal } from "./workbook.ts";

/** How often Excel is asked whether it is done, and how long that goes on, in ms. */
const PAUSE = 250;
const LONGEST_WAIT = 20_000;

/** Waits until Excel is done computing. Values may still be old ones under a loading mark, so that two looks at them
 * must agree as well. @throws Refusal where it stays busy */
export async function settledValues(
  context: Excel.RequestContext,
  area: Area,
): Promise<readonly (readonly Content[])[]> {
  const { application } = context.workbook;
  let before: string | undefined;
  for (const end = Date.now() + LONGEST_WAIT; Date.now() < end; ) {
    const { values } = await readSliced(context, area, ["values"], () =>
      application.load("calculationState,calculationMode"),
    );
    const isDone = application.calculationState === "Done";
    if (!isDone && application.calculationMode === "Manual")
      throw new Refusal("Excel computes only when asked to here. Press F9, then try again.");
    const now = isDone ? JSON.stringify(values) : undefined;
    if (now !== undefined && now === before) return values;
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
  const part = usedPart(original);
  const name = await newSheetName(context, `${sheet} (values)`);
  const used = part(sheet);
  if (!used) throw new Refusal(`The sheet "${sheet}" is empty. There is nothing to copy.`);
  const cells = await readArea(context, used);
  // Values are those of the original: in the copy the functions have yet to be computed.
  const values = await settledValues(context, used);
  const kept = await keptValues(context, original, cells, values, replace);

  const copy = original.copy("After", original);
  copy.load("id");
  await context.sync();
  try {
    const { formulas } = await readSliced(context, { ...used, sheet: copy.id }, ["formulas"]);
    if (!isSameSheet(formulas, cells.formulas))
      throw new Refusal("The sheet has changed while it was copied. Try again.");
    copy.name = name;
    await putChanges(context, [{ ...used, formulas: kept }], "values", copy);
    copy.activate();
    await context.sync();
    return { name, replaced: kept.flat().filter((content) => content !== undefined).length };
  } catch (thrown) {
    copy.delete();
    await context.sync().catch(() => {});
    throw thrown;
  }
}

/** Whether a copy is of the sheet as it was read: someone else may have typed, or put in a row. */
const isSameSheet = (
  copied: readonly (readonly Content[])[],
  read: readonly (readonly Content[])[],
): boolean =>
  copied.every((line, down) =>
    line.every((content, across) => kindOf(content) === kindOf(read[down][across])),
  );

/** A formula of a copy may name its own sheet and tables in another way. */
const kindOf = (content: Content): Content =>
  typeof content === "string" && /^'?=/.test(content) ? "=" : content;

/** The values that take the place of formulas and of what they spill; undefined for all other cells. */
async function keptValues(
  context: Excel.RequestContext,
  original: Excel.Worksheet,
  cells: Cells,
  values: readonly (readonly Content[])[],
  replace: (formula: string) => boolean,
): Promise<(Content | undefined)[][]> {
  const kept: (Content | undefined)[][] = values.map((line) => line.map(() => undefined));
  const spilling: { down: number; across: number; spill: Excel.Range }[] = [];
  const isSpilled = (down: number, across: number) => cells.fixed[down]?.[across] === "spilled";
  cells.formulas.forEach((line, down) => {
    line.forEach((content, across) => {
      if (typeof content !== "string" || !content.startsWith("=") || isSpilled(down, across)) return;
      if (!replace(content)) return;
      kept[down][across] = asTyped(values[down][across]);
      if (!isSpilled(down + 1, across) && !isSpilled(down, across + 1)) return;
      const spill = original
        .getCell(cells.row + down, cells.column + across)
        .getSpillingToRangeOrNullObject();
      spill.load("rowCount,columnCount");
      spilling.push({ down, across, spill });
    });
  });
  if (spilling.length > 0) await context.sync();
  for (const { down, across, spill } of spilling) {
    if (spill.isNullObject) continue;
    for (let row = down; row < down + spill.rowCount; row++)
      for (let column = across; column < across + spill.columnCount; column++)
        if (values[row]?.[column] !== undefined) kept[row][column] = asTyped(values[row][column]);
  }
  return kept;
}

/** A text as one types it, so that it stays a text: "=x" and "'x" would become something else, and "1/2" a date. */
function asTyped(value: Content): Content {
  return typeof value === "string" && value !== "" && !value.startsWith("#") ? `'${value}` : value;
}
