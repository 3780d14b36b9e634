// browser: what was changed since a file was opened, saved into that file: its sheets, their rows and their columns
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
import type { StructureStep } from "../workbook/xlsx-grid/structure.ts";
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
  const { model, library, names, functions, valuesOnly } = saving;
  const now = snapshotOf(model);
  const followed = followStructure(given, givenBefore, now, saving);
  if (!followed) return undefined;
  const { opened, before } = followed;
  const changes = changesSince(before, now);
  if (!changes) return undefined;
  const typed = new TypedCells(model, library, names, opened.parts.from1904);
  const made = await madeSheets(opened, changes, saving);
  const named = made && withRangesNow(opened, made, changes);
  if (!made || !named) return undefined;
  const isOld = (id: string) => givenBefore.sheets.some((sheet) => sheet.id === id);
  const others = opened.parts.sheets.map(
    (_, i) => new Set([...(followed.others[i] ?? []), ...(named.changed[i] ?? [])]),
  );
  const beside = { made: named.made, others };
  const saved = saveIntoFile(opened, changes, typed, functions, valuesOnly, beside);
  return (
    saved && {
      ...saved,
      added: changes.order.filter((id) => !isOld(id)).length,
      valuesInFile: opened.valuesInFile,
      losses: [...lossesOf(opened, changes, copiesSince(givenBefore, now), saving), ...made.losses],
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
  copies: ReturnType<typeof copiesSince>,
  { library, names }: Saving,
): string[] {
  const copied = copies.flatMap(({ sheetId, to }) => {
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

/** The file with the sheets, rows and columns that the grid has now, and how the grid would show it. */
function followStructure(
  opened: OpenedWorkbook,
  before: Snapshot,
  now: Snapshot,
  saving: Saving,
): Followed | undefined {
  const steps = stepsSince(before, now);
  if (!steps) return undefined;
  const ids = before.sheets.map(({ id }) => id);
  const own = steps.filter(({ sheetId }) => ids.includes(sheetId));
  const cut = own.flatMap((step) =>
    step.kind === "move"
      ? step.from.map((box) => ({ box, sheet: opened.places[ids.indexOf(step.sheetId)] }))
      : [],
  );
  // Where cut cells had been in the file is not known once rows or columns have moved.
  if (cut.length > 0 && (own.some(movesCells) || isNamedElsewhere(opened, before, cut))) return undefined;
  const copies = steps.some(({ kind }) => kind === "copy") && !steps.some(movesCells) ? steps : [];
  return (
    (copies.length > 0 ? stepsFollowed(opened, before, now, copies, saving) : undefined) ??
    stepsFollowed(
      opened,
      before,
      now,
      own.filter(({ kind }) => kind !== "copy"),
      saving,
    )
  );
}

const movesCells = ({ kind }: StructureStep): boolean => kind === "insert" || kind === "remove";

/** Copies of sheets that are not among the steps are new sheets as others are. */
function stepsFollowed(
  opened: OpenedWorkbook,
  before: Snapshot,
  now: Snapshot,
  given: readonly StructureStep[],
  { library, names }: Saving,
): Followed | undefined {
  const steps = given.filter((step) => step.kind !== "move");
  if (steps.length === 0) return { opened, before: { ...before, steps: now.steps }, others: [] };
  const ids = before.sheets.map(({ id }) => id);
  const copies = steps.flatMap((step) => (step.kind === "copy" ? step.to : []));
  const placeOf = (id: string) =>
    ids.includes(id) ? opened.places[ids.indexOf(id)] : opened.parts.sheets.length + copies.indexOf(id);
  const wanted = steps.map(({ sheetId, ...step }): Restructuring => ({ ...step, sheet: placeOf(sheetId) }));
  const made = restructured(opened.file, wanted);
  const moved = made && snapshotAfter(steps, opened, ids, { library, names });
  if (!moved) return undefined;
  const again = openWorkbook(joined(opened.file.with(made.parts, made.gone)), library, names);
  const left = [...ids, ...copies].flatMap((id) => {
    const [own, replayed] = [now, moved].map(({ sheets }) => sheets.find((sheet) => sheet.id === id));
    return own && replayed ? [{ own, replayed, was: before.sheets[ids.indexOf(id)] ?? replayed }] : [];
  });
  if (left.length !== moved.sheets.length || left.length !== again.places.length) return undefined;
  const valuesInFile = renamed(
    again.valuesInFile,
    again.model,
    left.map(({ own }) => own.id),
  );
  const sheets = left.map(({ own, replayed, was }) => {
    const steps = wanted.filter((step) => step.sheet === placeOf(own.id));
    return followedSheet(was, steps, replayed, own);
  });
  return {
    opened: { ...again, valuesInFile },
    before: { ...moved, sheets, steps: now.steps },
    others: made.changed,
  };
}

/** How the grid would have the file if these steps were taken and nothing else were changed, its sheets by their ids here. */
function snapshotAfter(
  steps: readonly StructureStep[],
  { bytes }: OpenedWorkbook,
  ids: readonly string[],
  { library, names }: Pick<Saving, "library" | "names">,
): Snapshot | undefined {
  const { model } = openWorkbook(bytes, library, names);
  const sheetIds = model.getters.getSheetIds();
  for (const step of steps) {
    const sheetId = sheetIds[ids.indexOf(step.sheetId)] ?? step.sheetId;
    const sheetName = model.getters.getSheetName(sheetId as never);
    const dimension = "axis" in step && step.axis === "row" ? "ROW" : "COL";
    const run = (type: string, more: object) =>
      model.dispatch(type as never, { sheetId, sheetName, dimension, ...more } as never).isSuccessful;
    if (!isRun(step, sheetName, run)) return undefined;
  }
  const now = snapshotOf(model);
  const sheets = now.sheets.map((sheet) => ({
    ...sheet,
    id: ids[sheetIds.indexOf(sheet.id as never)] ?? sheet.id,
  }));
  return { ...now, sheets };
}

function isRun(
  step: StructureStep,
  sheetName: string,
  run: (type: string, more: object) => boolean,
): boolean {
  if (step.kind === "insert")
    return run("ADD_COLUMNS_ROWS", { base: step.at, quantity: step.count, position: "before" });
  if (step.kind === "remove") return run("REMOVE_COLUMNS_ROWS", { elements: step.at });
  if (step.kind === "rename") return run("RENAME_SHEET", { oldName: sheetName, newName: step.name });
  if (step.kind === "copy") return run("DUPLICATE_SHEET", { sheetIdTo: step.to, sheetNameTo: step.name });
  return step.kind === "removeSheet" && run("DELETE_SHEET", {});
}

/** Values by the ids that the shown workbook has for its sheets. */
function renamed(
  values: ReadonlyMap<string, CellValue>,
  model: Model,
  ids: readonly string[],
): ReadonlyMap<string, CellValue> {
  const now = new Map<string, string>(model.getters.getSheetIds().map((id, i) => [id, ids[i]]));
  return new Map(
    [...values].map(([key, value]) => {
      const at = key.indexOf("!");
      return [`${now.get(key.slice(0, at)) ?? key.slice(0, at)}${key.slice(at)}`, value];
    }),
  );
}
