// tests: the browser workbook's grid without a browser, with every worksheet function: formulas are computed as there.

import type { Model } from "@odoo/o-spreadsheet";
import { registerFunctions } from "../../src/browser/register-functions.ts";
import { Looks, sheetOfSteps } from "../../src/browser/sheet-of-steps.ts";
import { buildMetadata } from "../../src/build/metadata.ts";
import { keepPrintSetup } from "../../src/workbook/grid-print.ts";
import { registerSteps, runSteps, type Step } from "../../src/workbook/grid-steps.ts";
import { GridWorkbook } from "../../src/workbook/grid-workbook.ts";
import type { NewSheet } from "../../src/workbook/workbook.ts";
import { readCell } from "../../src/workbook/xlsx/addresses.ts";
import { associated } from "./custom-functions.ts";
import { library } from "./grid.ts";
import "./sheet.ts";

const { CustomFunctions } = globalThis as any;
registerFunctions(await buildMetadata(), associated, library.registries as any, CustomFunctions.Error);
registerSteps(library);

function position(address: string): { row: number; col: number } {
  const { row, column } = readCell(address)!;
  return { row, col: column };
}

export interface FunctionGrid {
  readonly model: Model;
  readonly workbook: GridWorkbook;
  /** What a cell shows, formatted. */
  shown(address: string, sheet?: string): string;
  value(address: string, sheet?: string): unknown;
  message(address: string, sheet?: string): string | undefined;
  /** What is typed is computed, all at once, when something is next asked of the grid. */
  type(address: string, content: string | number, sheet?: string): void;
}

/** A workbook of data as the page opens it. */
export const modelOfData = (data: object): Model => new library.Model(data as never);

/** A workbook that begins with one empty sheet. */
export const functionGrid = (): FunctionGrid => gridOver(modelOfData({ sheets: [FIRST] }));

const FIRST = { id: "first", name: "First", colNumber: 5, rowNumber: 5, cells: {} };

function gridOver(model: Model): FunctionGrid {
  const { getters } = model;
  const at = (address: string, sheet?: string) => ({
    sheetId: sheet === undefined ? getters.getActiveSheetId() : getters.getSheetIdByName(sheet)!,
    ...position(address),
  });
  const workbook = new GridWorkbook(model);
  let typed: Step[] = [];
  const compute = () => {
    const steps = typed;
    typed = [];
    if (steps.length > 0) runSteps(model, steps);
  };
  const cell = (address: string, sheet?: string) => {
    compute();
    return getters.getEvaluatedCell(at(address, sheet));
  };
  return {
    get model() {
      compute();
      return model;
    },
    get workbook() {
      compute();
      return workbook;
    },
    shown: (address, sheet) => cell(address, sheet).formattedValue,
    value: (address, sheet) => cell(address, sheet).value,
    message: (address, sheet) => (cell(address, sheet) as any).message,
    type: (address, content, sheet) => {
      typed.push({ type: "UPDATE_CELL", ...at(address, sheet), content: String(content) });
    },
  };
}

/** A workbook that opens with these sheets, the last one shown. */
export function gridOf(...sheets: readonly NewSheet[]): FunctionGrid {
  const looks = new Looks();
  const idOf = (index: number) => `reamwright-${index + 1}`;
  const grid = gridOver(
    modelOfData({
      sheets: [FIRST, ...sheets.map((sheet, index) => sheetOfSteps(sheet, idOf(index), looks))],
      ...looks.all,
    }),
  );
  for (const [index, { print }] of sheets.entries()) keepPrintSetup(grid.model, idOf(index), print);
  grid.model.dispatch("ACTIVATE_SHEET", { sheetIdFrom: "first", sheetIdTo: idOf(sheets.length - 1) });
  return grid;
}
