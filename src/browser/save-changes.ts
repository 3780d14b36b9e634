// browser: what was changed since a file was opened, saved into that file: its rows, columns and the names of its sheets
// first, then its cells and how they look.

import type { Model } from "@odoo/o-spreadsheet";
import type { Functions } from "../fill/formula/evaluate.ts";
import { putSheets, type WithSheets } from "../workbook/xlsx/add-sheets.ts";
import { joined, over } from "../workbook/xlsx/package.ts";
import { saidSetup } from "../workbook/xlsx/page-setup.ts";
import { withRanges } from "../workbook/xlsx/range-names.ts";
import type { CellValue } from "../workbook/xlsx/read-sheet.ts";
import { restructured } from "../workbook/xlsx/restructure.ts";
import type { Restructuring } from "../workbook/xlsx/restructure-step.ts";
import type { StoredNames } from "../workbook/xlsx/stored-names.ts";
import { type Changes, changesSince, copiesSince, stepsSince } from "../workbook/xlsx-grid/changes.ts";
import { followedSheet } from "../workbook/xlsx-grid/followed-sheet.ts";
import type { GridLibrary } from "../workbook/xlsx-grid/library.ts";
import { PAGE_SETUP } from "../workbook/xlsx-grid/losses.ts";
import { isNamedElsewhere } from "../workbook/xlsx-grid/moved-cells.ts";
import { type OpenedWorkbook, openWorkbook } from "../workbook/xlsx-grid/open-file.ts";
import { exportedSheets } from "../workbook/xlsx-grid/save-file.ts";
import { lossesOfSheets } from "../workbook/xlsx-grid/sheet-losses.ts";
import { type Snapshot, snapshotOf } from "../workbook/xlsx-grid/snapshot.ts";
import { isOfLines, type LineStep } from "../workbook/xlsx-grid/structure.ts";
import { TypedCells } from "../workbook/xlsx-grid/typed-cells.ts";
import { noSheets, type SavedInto, saveIntoFile } from "./save-into-file.ts";

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
  /** What sheets lose that had to be written whole, a sentence each. */
  readonly losses: readonly string[];
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
  const { opened, before } = followed;
  const { model, library, names, functions, valuesOnly } = saving;
  const changes = changesSince(before, model);
  if (!changes) return undefined;
  const typed = new TypedCells(model, library, names, opened.parts.from1904);
  const made = await madeSheets(opened, changes, saving);
  const named = made && withRangesNow(opened, made, changes);
  if (!made || !named) return undefined;
  const others = opened.parts.sheets.map(
    (_, i) => new Set([...(followed.others[i] ?? []), ...(named.changed[i] ?? [])]),
  );
  const beside = { made: named.made, others };
  const saved = saveIntoFile(opened, changes, typed, functions, valuesOnly, beside);
  return (
    saved && {
      ...saved,
      added: changes.added.length,
      valuesInFile: opened.valuesInFile,
      losses: [...lossesOf(opened, changes, before, saving), ...made.losses],
    }
  );
}

/** Sheets that are new, and those of which more was changed than can be followed; undefined if the file cannot take them. */
async function madeSheets(
  opened: OpenedWorkbook,
  { sheets, rewritten, added }: Changes,
  { model, library, names }: Saving,
): Promise<(WithSheets & { readonly losses: readonly string[] }) | undefined> {
  if (rewritten.length + added.length === 0) return { ...noSheets, losses: [] };
  const instead = rewritten.map((i) => {
    const place = opened.places[i];
    const setup = saidSetup(opened.file.read(opened.parts.sheets[place].part));
    return { id: sheets[i], instead: { place, setup } };
  });
  const wanted = [...instead, ...added.map((id) => ({ id }))];
  const exported = await exportedSheets(model, library, names, wanted, opened);
  const put = putSheets(opened.file, exported);
  return put && { ...put, losses: exported.losses };
}

/** With the names of ranges that are new, other or gone. */
function withRangesNow({ file, parts: { main } }: OpenedWorkbook, made: WithSheets, { names }: Changes) {
  if (names.size === 0) return { made, changed: [] };
  const ranges = withRanges(over(file, made.parts, made.gone), names);
  return (
    ranges && {
      made: { ...made, parts: new Map(made.parts).set(main, ranges.text) },
      changed: ranges.changed,
    }
  );
}

/** What sheets that are written whole lose, and copies of sheets have not. */
function lossesOf(
  opened: OpenedWorkbook,
  { sheets, rewritten, added }: Changes,
  before: Snapshot,
  { model, library, names }: Saving,
): string[] {
  const copied = copiesSince(before, model).flatMap(({ sheetId, to }) => {
    const at = sheets.indexOf(sheetId);
    return at >= 0 && added.includes(to) ? at : [];
  });
  const on = (places: readonly number[]) =>
    places.length === 0
      ? []
      : lossesOfSheets(opened, new Set(places.map((i) => opened.places[i])), library, names);
  return [...new Set([...on(rewritten).filter((loss) => loss !== PAGE_SETUP), ...on(copied)])];
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
  const all = stepsSince(before, model);
  if (!all) return undefined;
  const steps = all.filter(isOfLines);
  const ids = before.sheets.map(({ id }) => id);
  const cut = all.flatMap((step) =>
    step.kind === "move"
      ? step.from.map((box) => ({ box, sheet: opened.places[ids.indexOf(step.sheetId)] }))
      : [],
  );
  // Where cut cells had been in the file is not known once rows or columns have moved.
  const isMoved = steps.some(({ kind }) => kind === "insert" || kind === "remove");
  if (cut.length > 0 && (isMoved || isNamedElsewhere(opened, before, cut))) return undefined;
  if (steps.length === 0) return { opened, before, others: [] };
  const wanted = steps.map(
    ({ sheetId, ...step }): Restructuring => ({
      ...step,
      sheet: opened.places[ids.indexOf(sheetId)],
    }),
  );
  const made = restructured(opened.file, wanted);
  if (!made) return undefined;
  const again = openWorkbook(joined(opened.file.with(made.parts, made.gone)), library, names);
  const now = snapshotOf(model);
  const moved = snapshotAfter(steps, opened.bytes, ids, { library, names });
  if (!moved) return undefined;
  const left = before.sheets.flatMap((sheet, i) => {
    const own = now.sheets.find(({ id }) => id === sheet.id);
    return own ? [{ sheet, place: opened.places[i], own }] : [];
  });
  if (left.length !== moved.sheets.length) return undefined;
  return {
    opened: {
      ...again,
      valuesInFile: renamed(
        again.valuesInFile,
        again.data,
        left.map(({ own }) => own.id),
      ),
    },
    before: {
      ...moved,
      sheets: left.map(({ sheet, place, own }, i) => {
        const steps = wanted.filter((step) => step.sheet === place);
        return followedSheet(sheet, steps, moved.sheets[i], own);
      }),
      steps: now.steps,
    },
    others: made.changed,
  };
}

/** How the grid would have the file if these steps were taken and nothing else were changed. */
function snapshotAfter(
  steps: readonly LineStep[],
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
          : step.kind === "rename"
            ? run("RENAME_SHEET", { oldName: sheetName, newName: step.name })
            : run("DELETE_SHEET", {});
    if (!isDone) return undefined;
  }
  return snapshotOf(model);
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
