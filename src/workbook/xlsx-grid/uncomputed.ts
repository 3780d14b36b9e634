// workbook: the formulas of the browser workbook that its grid cannot compute: they stay, and keep their last values
// when they are saved.

import type { Model } from "@odoo/o-spreadsheet";
import { functionsIn } from "./grid-formulas.ts";
import type { GridLibrary } from "./open-file.ts";

export interface Uncomputed {
  readonly cells: number;
  /** Functions that the grid does not have, in alphabetical order. */
  readonly functions: readonly string[];
}

export const BAD_EXPRESSION = "#BAD_EXPR";

export function uncomputedFormulas(model: Model, { registries }: GridLibrary): Uncomputed {
  const { getters } = model;
  const unknown = new Set<string>();
  let cells = 0;
  for (const sheetId of getters.getSheetIds()) {
    for (const position of getters.getEvaluatedCellsPositions(sheetId)) {
      const cell = getters.getCell(position);
      if (!cell?.isFormula) continue;
      const called = functionsIn(getters.getCellText(position, { showFormula: true }));
      const missing = called.filter((name) => !(registries.functionRegistry as any).contains(name));
      for (const name of missing) unknown.add(name);
      if (missing.length > 0 || getters.getEvaluatedCell(position).value === BAD_EXPRESSION) cells++;
    }
  }
  return { cells, functions: [...unknown].sort() };
}
