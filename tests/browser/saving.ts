// tests: a file opened in the browser workbook's grid, changed there, and saved as the page saves it.

import { expect } from "vitest";
import { saveChanges } from "../../src/browser/save-changes.ts";
import { storedNames } from "../../src/workbook/xlsx/stored-names.ts";
import { openWorkbook } from "../../src/workbook/xlsx-grid/open-file.ts";
import { keepTables, snapshotOf } from "../../src/workbook/xlsx-grid/snapshot.ts";
import { watchStructure } from "../../src/workbook/xlsx-grid/structure.ts";
import { functions, metadata } from "../support/small-functions.ts";
import { gridLibrary } from "../workbook/xlsx-grid/grid-library.ts";

watchStructure(gridLibrary as never);
export const names = storedNames(metadata.functions.map(({ name }) => name));

export type GridModel = InstanceType<typeof gridLibrary.Model>;

export class Grid {
  constructor(readonly model: GridModel) {}

  private id(sheet: number): string {
    return this.model.getters.getSheetIds()[sheet];
  }

  run(type: string, more: object, sheet = 0): void {
    const sheetId = this.id(sheet);
    const sheetName = this.model.getters.getSheetName(sheetId as never);
    const { isSuccessful, reasons } = this.model.dispatch(
      type as never,
      { sheetId, sheetName, ...more } as never,
    ) as {
      isSuccessful: boolean;
      reasons: readonly string[];
    };
    // What stands in a cell already may be typed again.
    if (!isSuccessful && reasons.some((reason) => reason !== "NoChanges"))
      throw new Error(`${type}: ${JSON.stringify(reasons)}`);
  }

  insert(dimension: "ROW" | "COL", at: number, quantity = 1, sheet = 0): void {
    this.run("ADD_COLUMNS_ROWS", { dimension, base: at, position: "before", quantity }, sheet);
  }

  remove(dimension: "ROW" | "COL", elements: readonly number[], sheet = 0): void {
    this.run("REMOVE_COLUMNS_ROWS", { dimension, elements }, sheet);
  }

  rename(newName: string, sheet = 0): void {
    const oldName = this.model.getters.getSheetName(this.id(sheet) as never);
    this.run("RENAME_SHEET", { oldName, newName }, sheet);
  }

  type(row: number, col: number, content: string, sheet = 0): void {
    this.run("UPDATE_CELL", { row, col, content }, sheet);
  }
}

function openGrid(file: Uint8Array) {
  const opened = openWorkbook(file, gridLibrary, names);
  const { model } = opened;
  keepTables(model);
  return { opened, model, before: snapshotOf(model), grid: new Grid(model) };
}

/** The file after `edit`; undefined if it cannot take what was changed. */
export async function savedAfter(file: Uint8Array, edit: (grid: Grid) => void, valuesOnly = false) {
  const { opened, model, before, grid } = openGrid(file);
  edit(grid);
  const shown = snapshotOf(model);
  const saved = await saveChanges(opened, before, {
    model,
    library: gridLibrary,
    names,
    functions,
    valuesOnly,
  });
  expect(snapshotOf(model), "the workbook that is shown, once it is saved").toEqual(shown);
  return saved;
}
