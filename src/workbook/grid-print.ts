// workbook: how the sheets of the browser workbook are printed. The grid has no place for it, so it is kept beside the
// model while the workbook is open.

import type { Model } from "@odoo/o-spreadsheet";
import type { PrintSetup } from "./workbook.ts";

const setups = new WeakMap<Model, Map<string, PrintSetup>>();

export function keepPrintSetup(model: Model, sheetId: string, setup: PrintSetup | undefined): void {
  if (!setup) return;
  const own = setups.get(model) ?? new Map<string, PrintSetup>();
  setups.set(model, own.set(sheetId, setup));
}

export const printSetupOf = (model: Model, sheetId: string): PrintSetup | undefined =>
  setups.get(model)?.get(sheetId);
