// taskpane: looks through a sheet for what makes a quote wrong without a word: numbers typed over formulas, formulas unlike
// their neighbors, columns of unequal length, units that disagree, errors, and texts that look like numbers. It changes
// nothing.

import { type Area, addressOf, type Cells, Refusal, type Workbook } from "../../workbook/workbook.ts";
import type { Help } from "../help.ts";
import { oddCalls } from "./check-calls.ts";
import { type Odd, oddFormulas, oddTexts } from "./check-columns.ts";
import { oddErrors } from "./check-errors.ts";

export interface Finding {
  readonly area: Area;
  readonly address: string;
  readonly what: string;
}

/** What is found on the sheet of the active cell, in the order of its cells. @throws Refusal */
export async function checkSheet(workbook: Workbook, help: Help): Promise<readonly Finding[]> {
  const { sheet } = await workbook.active();
  const used = await workbook.used(sheet);
  if (!used) throw new Refusal(`The sheet "${sheet}" is empty. There is nothing to check.`);
  const cells = await workbook.read(used);
  return findingsOf(cells, [
    ...oddFormulas(cells),
    ...(await oddErrors(workbook, cells, help)),
    ...oddTexts(cells),
    ...oddCalls(cells, help),
  ]);
}

/** The same of cells below one another is one finding. */
function findingsOf({ sheet, row, column }: Cells, found: readonly Odd[]): Finding[] {
  const inOrder = [...found].sort(
    (a, b) => a.what.localeCompare(b.what) || a.across - b.across || a.down - b.down,
  );
  const joined: (Odd & { rows: number })[] = [];
  for (const odd of inOrder) {
    const last = joined[joined.length - 1];
    if (last?.what === odd.what && last.across === odd.across && last.down + last.rows === odd.down)
      last.rows++;
    else joined.push({ ...odd, rows: 1 });
  }
  return joined
    .sort((a, b) => a.down - b.down || a.across - b.across)
    .map(({ down, across, rows, what }) => {
      const area = { sheet, row: row + down, column: column + across, rows, columns: 1 };
      return { area, address: addressOf(area), what };
    });
}
