// browser: what was changed since a file was opened, saved into that file: its rows, columns and the names of its sheets
// first, then its cells and how they look.

import type { Model } from "@odoo/o-spreadsheet";
import type { Functions } from "../fill/formula/evaluate.ts";
import { addSheets } from "../workbook/xlsx/add-sheets.ts";
import type { CellValue } from "../workbook/xlsx/read-sheet.ts";
import { type Restructuring, restructured } from "../workbook/xlsx/restructure.ts";
import type { StoredNames } from "../workbook/xlsx/stored-names.ts";
import { changesSince, type Snapshot, snapshotOf, stepsSince } from "../workbook/xlsx-grid/changes.ts";
import { followedSheet } from "../workbook/xlsx-grid/followed-sheet.ts";
import type { GridLibrary } from "../workbook/xlsx-grid/library.ts";
import { isNamedElsewhere } from "../workbook/xlsx-grid/moved-cells.ts";
import { type OpenedWorkbook, openWorkbook } from "../workbook/xlsx-grid/open-file.ts";
import { exportedSheets } from "../workbook/xlsx-grid/save-file.ts";
import type { StructureStep } from "../workbook/xlsx-grid/structure.ts";
import { TypedCells } from "../workbook/xlsx-grid/typed-cells.ts";
import { joined, type SavedInto, saveIntoFile } from "./save-into-file.ts";

export interface Saving {
  readonly model: Model;
  readonly library: GridLibrary;
  readonly names: StoredNames;
  readonly functions: Functions;
  readonly valuesOnly: boolean;
}

export interface SavedChanges extends SavedInto {
  /** How many sheets are new. */
  readonly added: number;
  readonly valuesInFile: OpenedWorkbook["valuesInFile"];
}

/** Undefined if the file cannot take what was changed. */
export async function saveChanges(
  given: OpenedWorkbook,
  givenBefore: Snapshot,
  saving: Saving,
): Promise<SavedChanges | undefined> {
  const followed = followStructure(given, givenBefore, saving);
  if (!followed) return undefined;
  const { opened, before, others } = followed;
  const { model, library, names, functions, valuesOnly } = saving;
  const changes = changesSince(before, model);
  if (changes.isMore) return undefined;
  const { from1904, main } = opened.parts;
  const typed = new TypedCells(model, library, names, from1904);
  const isAdded = changes.added.length > 0;
  // The grid exports dates that count from 1900.
  if (isAdded && from1904) return undefined;
  const sheets = isAdded ? await exportedSheets(model, library, names, changes.added) : undefined;
  const added = sheets && addSheets(opened.file, main, sheets);
  if (isAdded && !added) return undefined;
  const saved = saveIntoFile(opened, changes, typed, functions, valuesOnly, added, others);
  return saved && { ...saved, added: changes.added.length, valuesInFile: opened.valuesInFile };
}

interface Followed {
  readonly opened: OpenedWorkbook;
  readonly before: Snapshot;
  /** Formulas whose values may be others, by the places of their sheets in the file and of cells. */
  readonly others: readonly ReadonlySet<number>[];
}

/** The file with the rows, columns and names of sheets that the grid has now, and how the grid would show it. */
function followStructure(
  opened: OpenedWorkbook,
  before: Snapshot,
  { model, library, names }: Saving,
): Followed | undefined {
  const steps = stepsSince(before, model);
  if (!steps) return undefined;
  const ids = before.sheets.map(({ id }) => id);
  const cut = steps.flatMap((step) =>
    step.kind === "move"
      ? step.from.map((box) => ({ box, sheet: opened.places[ids.indexOf(step.sheetId)] }))
      : [],
  );
  if (cut.length > 0 && isNamedElsewhere(opened, before, cut)) return undefined;
  if (steps.every(({ kind }) => kind === "move")) return { opened, before, others: [] };
  const wanted = steps.map((step) => asRestructuring(step, opened.places[ids.indexOf(step.sheetId)]));
  if (!wanted.every((one) => one !== undefined)) return undefined;
  const made = restructured(opened.file, wanted);
  if (!made) return undefined;
  const again = openWorkbook(joined(opened.file.with(made.parts)), library, names);
  const now = snapshotOf(model);
  const moved = snapshotAfter(steps, opened.bytes, ids, { library, names });
  if (!moved) return undefined;
  return {
    opened: { ...again, valuesInFile: renamed(again.valuesInFile, again.data, ids) },
    before: {
      ...moved,
      sheets: moved.sheets.map((sheet, i) => {
        const own = wanted.filter((step) => step.sheet === opened.places[i]);
        return followedSheet(before.sheets[i], own, sheet, now.sheets[i]);
      }),
      steps: now.steps,
    },
    others: made.changed,
  };
}

/** How the grid would have the file if these steps were taken and nothing else were changed. */
function snapshotAfter(
  steps: readonly StructureStep[],
  bytes: Uint8Array,
  ids: readonly string[],
  { library, names }: Pick<Saving, "library" | "names">,
): Snapshot | undefined {
  const model = new library.Model(openWorkbook(bytes, library, names).data as never);
  const own = model.getters.getSheetIds();
  for (const step of steps) {
    const sheetId = own[ids.indexOf(step.sheetId)];
    const sheetName = model.getters.getSheetName(sheetId);
    const dimension = "axis" in step && step.axis === "row" ? "ROW" : "COL";
    const run = (type: string, more: object) =>
      model.dispatch(type as never, { sheetId, sheetName, dimension, ...more } as never).isSuccessful;
    const isDone =
      step.kind === "insert"
        ? run("ADD_COLUMNS_ROWS", { base: step.at, quantity: step.count, position: "before" })
        : step.kind === "remove"
          ? run("REMOVE_COLUMNS_ROWS", { elements: step.at })
          : step.kind === "rename" && run("RENAME_SHEET", { oldName: sheetName, newName: step.name });
    if (!isDone) return undefined;
  }
  return snapshotOf(model);
}

/** Undefined for what a file is not made to follow. */
function asRestructuring(step: StructureStep, sheet: number): Restructuring | undefined {
  const { sheetId: _, ...own } = step;
  return own.kind === "move" || own.kind === "removeSheet" ? undefined : { ...own, sheet };
}

/** Values by the ids that the shown workbook has for its sheets. */
function renamed(
  values: ReadonlyMap<string, CellValue>,
  data: object,
  ids: readonly string[],
): ReadonlyMap<string, CellValue> {
  const { sheets } = data as { sheets: readonly { id: string }[] };
  const now = new Map(sheets.map(({ id }, i) => [id, ids[i]]));
  return new Map(
    [...values].map(([key, value]) => {
      const at = key.indexOf("!");
      return [`${now.get(key.slice(0, at)) ?? key.slice(0, at)}${key.slice(at)}`, value];
    }),
  );
}
