// workbook: a file as the data of the browser workbook's grid: read by the importer of its library, or, where that fails,
// by less and less of it. What the grid cannot show stays in the file all the same.

import type { Model } from "@odoo/o-spreadsheet";
import { Refusal } from "../workbook.ts";
import type { ImporterFiles } from "./importer-files.ts";
import type { GridLibrary } from "./library.ts";

export interface Made {
  readonly data: any;
  readonly warnings: readonly string[];
  /** The importer's own, if it was read by it. */
  readonly model: any;
}

/** The workbook as the grid's library reads it. Its warnings go nowhere but to the console: they are caught there. */
export function imported(files: ImporterFiles, { Model }: GridLibrary): Made {
  const warnings: string[] = [];
  const { warn } = console;
  console.warn = (text: unknown) => warnings.push(String(text));
  try {
    // A mode in which nothing is computed.
    const model = new Model(files, { mode: "export_verification" } as any, [], undefined, true);
    // Not exportData: its short form of formulas that repeat down a column fails on a running total (SUM(F$1:F2)).
    return { data: (model as any)._exportData(false), warnings, model };
  } finally {
    console.warn = warn;
  }
}

const SPARE = 20;

/** A sheet of the grid without cells and looks. */
export const emptySheet = (id: string, name: string, rowNumber: number, colNumber: number) => ({
  id,
  name,
  rowNumber,
  colNumber,
  cells: {},
  styles: {},
  formats: {},
  borders: {},
  merges: [],
  cols: {},
  rows: {},
});

/** Sheets without any format. */
export function plain(sheets: readonly { name: string; rows: number; columns: number }[]): Made {
  const made = sheets.map(({ name, rows, columns }, i) =>
    emptySheet(`sheet-${i + 1}`, name, rows + SPARE, columns + SPARE),
  );
  const warnings = ["Error when parsing an element <styles>"];
  return { data: { sheets: made, styles: {}, formats: {}, borders: {} }, warnings, model: undefined };
}

/** What `finish` makes of the first of the ways that the grid can show, and the grid's Model of it. @throws Refusal */
export function firstThatShows<T extends { data: any }>(
  library: GridLibrary,
  ways: readonly (() => Made)[],
  finish: (made: Made) => T,
): T & { model: Model } {
  let fault: unknown;
  for (const way of ways) {
    try {
      const result = finish(way());
      return { ...result, model: triedOut(result.data, library) };
    } catch (error) {
      if (error instanceof Refusal) throw error;
      fault = error;
    }
  }
  console.error(fault);
  throw new Refusal(
    "it holds something that the browser workbook cannot show: fill it with npm run fill instead",
  );
}

/** Runs what drawing the sheets will run. Throws whatever the grid throws. */
function triedOut(data: any, { Model }: GridLibrary): Model {
  const model = new Model(data);
  const getters = model.getters as any;
  for (const sheetId of getters.getSheetIds()) {
    for (const position of getters.getEvaluatedCellsPositions(sheetId)) getters.getEvaluatedCell(position);
    for (const { id, tag } of getters.getFigures(sheetId))
      if (tag === "chart") getters.getChartRuntime(getters.getChartIdFromFigureId?.(id) ?? id);
  }
  return model;
}
