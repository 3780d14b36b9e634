// workbook: what names stand for in the formulas of the browser workbook. Its formulas know no tables.

import type { Model } from "@odoo/o-spreadsheet";
import { areaOfBox } from "./boxes.ts";
import { addressOf, type DefinedName, sheetReference } from "./workbook.ts";

export function gridMeanings({ getters }: Model): { names: DefinedName[]; tables: [] } {
  const names = getters.getNamedRanges().map(({ name, range: { sheetId, zone } }): DefinedName => {
    const area = areaOfBox(getters.getSheetName(sheetId), zone);
    const address = addressOf(area).replace(/([A-Z]+)(\d+)/g, "$$$1$$$2");
    return { name, sheet: undefined, formula: `=${sheetReference(area.sheet)}!${address}` };
  });
  return { names, tables: [] };
}
