// workbook: functions of a file that the browser workbook's grid does not have. A stand-in for each makes the grid read
// their formulas, so that references in them follow what is inserted and moved; what they give is an error, and the
// value in the file stays beside the formula.

import type { Model } from "@odoo/o-spreadsheet";
import { functionsIn } from "../xlsx/formula-tokens.ts";

import type { GridLibrary } from "./library.ts";

export interface Uncomputed {
  readonly cells: number;
  /** In alphabetical order. */
  readonly functions: readonly string[];
}

const MOST_STAND_INS = 300;
const standIns = new Set<string>();

export const isUncomputed = (name: string): boolean => standIns.has(name);

/** Adds a stand-in for each of these functions that the grid lacks. */
export function standInFor(names: Iterable<string>, { registries }: Pick<GridLibrary, "registries">): void {
  const registry = registries.functionRegistry as any;
  for (const name of names) {
    if (registry.contains(name) || standIns.size >= MOST_STAND_INS) continue;
    if (!/^[A-Z_][A-Z0-9_.]{0,60}$/.test(name)) continue;
    standIns.add(name);
    registry.add(name, {
      description: "Not computed in the browser workbook.",
      category: "Not computed here",
      isExported: true,
      hidden: true,
      args: [
        {
          name: "values",
          description: "Anything",
          type: ["ANY", "RANGE<ANY>"],
          optional: true,
          repeating: true,
          acceptMatrix: true,
          acceptErrors: true,
        },
      ],
      compute: () => ({
        value: "#NAME?",
        message: `The browser workbook does not compute ${name}: the formula stays, and the value that the file has for it.`,
      }),
    });
  }
}

/** The formulas of a workbook that call stand-ins. */
export function uncomputedFormulas(model: Model): Uncomputed {
  const { getters } = model;
  const called = new Set<string>();
  let cells = 0;
  if (standIns.size === 0) return { cells, functions: [] };
  for (const sheetId of getters.getSheetIds()) {
    for (const position of getters.getEvaluatedCellsPositions(sheetId)) {
      if (!getters.getCell(position)?.isFormula) continue;
      const names = functionsIn(getters.getCellText(position, { showFormula: true })).filter(isUncomputed);
      if (names.length > 0) cells++;
      for (const name of names) called.add(name);
    }
  }
  return { cells, functions: [...called].sort() };
}
