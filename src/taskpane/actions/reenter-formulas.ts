// taskpane: enters all formulas of ours again. A cell that shows #NAME? because its formula came before the add-in stays
// so until it is entered anew; computing everything again does not help.

import { type Change, type Content, Refusal, type Workbook } from "../../workbook/workbook.ts";
import { storedNames } from "../../workbook/xlsx/stored-names.ts";
import { callsOurs } from "./formula-calls.ts";

export interface Reentered {
  readonly formulas: number;
  readonly sheets: number;
  /** Steps to undo. */
  readonly steps: number;
}

/** Writes every formula of ours as a user writes it, in all sheets. @throws Refusal */
export async function reenterFormulas(workbook: Workbook, ids: readonly string[]): Promise<Reentered> {
  const names = storedNames(ids);
  const changes: Change[] = [];
  let formulas = 0;
  for (const sheet of await workbook.sheets()) {
    const used = await workbook.used(sheet);
    if (!used) continue;
    const cells = await workbook.read(used);
    let found = 0;
    const written = cells.formulas.map((row) =>
      row.map((content): Content | undefined => {
        const formula = String(content);
        if (!callsOurs(formula)) return undefined;
        found++;
        return `=${names.decode(formula.slice(1))}`;
      }),
    );
    if (found > 0) changes.push({ sheet, row: used.row, column: used.column, formulas: written });
    formulas += found;
  }
  if (formulas === 0) throw new Refusal("The workbook has no REAM formula. There is nothing to enter again.");
  const steps = await workbook.stepsToUndo(changes);
  await workbook.write(changes);
  return { formulas, sheets: changes.length, steps };
}
