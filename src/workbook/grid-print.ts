// workbook: how the sheets of the browser workbook are printed. The grid has no place for it, so it is kept beside the
// model while the workbook is open.

import type { Model } from "@odoo/o-spreadsheet";
import { cellAddress, type PrintSetup } from "./workbook.ts";
import { readBox } from "./xlsx/addresses.ts";

const setups = new WeakMap<Model, Map<string, PrintSetup>>();

export function keepPrintSetup(model: Model, sheetId: string, setup: PrintSetup | undefined): void {
  if (!setup) return;
  const own = setups.get(model) ?? new Map<string, PrintSetup>();
  setups.set(model, own.set(sheetId, setup));
}

export const printSetupOf = (model: Model, sheetId: string): PrintSetup | undefined =>
  setups.get(model)?.get(sheetId);

/** Setups by the ids of their sheets, as they are kept and given back. */
export type PrintSetups = readonly (readonly [sheetId: string, setup: PrintSetup])[];

export const printSetupsOf = (model: Model): PrintSetups => [...(setups.get(model) ?? [])];

/** The used part of a sheet from its first cell on, within some columns; undefined where they are empty. */
export function usedPart(
  { getters }: Model,
  sheetId: string,
  left = 0,
  right = Number.POSITIVE_INFINITY,
): { top: number; left: number; bottom: number; right: number } | undefined {
  const box = { top: 0, left, bottom: -1, right: -1 };
  for (const position of getters.getEvaluatedCellsPositions(sheetId)) {
    const { row, col } = position;
    if (col < left || col > right || (row <= box.bottom && col <= box.right)) continue;
    if (getters.getEvaluatedCell(position).formattedValue === "") continue;
    box.bottom = Math.max(box.bottom, row);
    box.right = Math.max(box.right, col);
  }
  return box.bottom < 0 ? undefined : box;
}

/** The setup of a sheet with the cells that are printed now: rows that were inserted or added below belong to them. */
export function printSetupNow(model: Model, sheetId: string): PrintSetup | undefined {
  const setup = printSetupOf(model, sheetId);
  const area = setup?.area === undefined ? undefined : readBox(setup.area);
  const used = area && usedPart(model, sheetId, area.left, area.right);
  if (!setup || !area || !used) return setup;
  const { top, left, right } = area;
  return { ...setup, area: `${cellAddress(top, left)}:${cellAddress(Math.max(top, used.bottom), right)}` };
}
