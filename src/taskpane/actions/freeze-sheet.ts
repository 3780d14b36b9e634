// taskpane: a copy of the sheet with values in place of our formulas, for someone who has no add-in.

import { Refusal, type Workbook } from "../../workbook/workbook.ts";
import { callsOurs } from "./formula-calls.ts";

/** What a cell shows while its function is still at work. */
const UNFINISHED = new Set(["#BUSY!", "#GETTING_DATA", "Loading..."]);

export interface Frozen {
  readonly name: string;
  /** Cells that hold a value now, spilled ones among them. */
  readonly replaced: number;
  /** Formulas of other kinds, which stay formulas. */
  readonly others: number;
}

/** Copies the sheet of the active cell. @throws Refusal, and then there is no copy */
export async function freezeSheet(workbook: Workbook): Promise<Frozen> {
  const { sheet } = await workbook.active();
  const used = await workbook.used(sheet);
  if (!used) throw new Refusal(`The sheet "${sheet}" is empty: there is nothing to copy.`);
  const { formulas, values } = await workbook.read(used);
  const written = formulas
    .flat()
    .filter((cell): cell is string => typeof cell === "string" && cell.startsWith("="));
  const ours = written.filter(callsOurs).length;
  if (ours === 0) throw new Refusal(`The sheet "${sheet}" has no REAM formula: it can be sent as it is.`);
  const unknown = formulas.flatMap((row, r) =>
    row.filter((cell, c) => callsOurs(String(cell)) && values[r][c] === "#NAME?"),
  ).length;
  if (unknown > 0)
    throw new Refusal(
      `${unknown} REAM formulas show #NAME?, so they have no values yet. Enter them again under Check this sheet.`,
    );
  const unfinished = values.flat().filter((value) => UNFINISHED.has(String(value))).length;
  if (unfinished > 0)
    throw new Refusal(
      `${unfinished} cells are still computing: wait until they show a result, then try again.`,
    );
  const { name, replaced } = await workbook.copyAsValues(sheet, callsOurs);
  return { name, replaced, others: written.length - ours };
}
