// browser: what there is to know of the file that was opened, beside the grid, and what saving leaves behind, before it
// does.

import type { Model } from "@odoo/o-spreadsheet";
import type { WorkbookReport } from "../fill/report.ts";
import type { OpenedWorkbook } from "../workbook/xlsx-grid/open-file.ts";
import type { Uncomputed } from "../workbook/xlsx-grid/uncomputed.ts";

const byId = (id: string) => document.getElementById(id)!;

const items = (texts: readonly string[]) =>
  texts.map((text) => {
    const item = document.createElement("li");
    item.textContent = text;
    return item;
  });

const count = (number: number, one: string, many = `${one}s`) =>
  `${number.toLocaleString("en-US")} ${number === 1 ? one : many}`;

export function showFileNotes(
  name: string,
  { sheets, formulas, ours, losses }: OpenedWorkbook,
  uncomputed: Uncomputed,
  differing: readonly string[],
): void {
  byId("file-notes").hidden = false;
  // What it says is of the workbook that was there before.
  byId("intro").hidden = true;
  const parts = [
    count(sheets, "sheet"),
    count(formulas, "formula"),
    `${ours.toLocaleString("en-US")} of them with REAM`,
  ];
  byId("file-summary").textContent = `${name}: ${parts.join(", ")}.`;
  const notes = losses.map((loss) => `Lost only if the workbook has to be written anew: ${loss}`);
  if (differing.length > 0)
    notes.unshift(
      `${count(differing.length, "cell")} would be computed otherwise here, so the value of the file is shown: ${differing.slice(0, 20).join(", ")}${differing.length > 20 ? " and more" : ""}.`,
    );
  if (uncomputed.cells > 0) {
    const which = uncomputed.functions.length === 0 ? "" : ` (${uncomputed.functions.join(", ")})`;
    notes.unshift(
      `${count(uncomputed.cells, "cell")} cannot be computed here${which}: the formula stays, and its last value is saved with it.`,
    );
  }
  byId("file-losses").replaceChildren(...items(notes));
}

export function hideFileNotes(): void {
  byId("file-notes").hidden = true;
  byId("intro").hidden = true;
}

/** What was done to a file, for the person. */
export function toldOf(changed: number, added: number, asValues: number, { sheets }: WorkbookReport): string {
  const sum = (key: "computed" | "kept") => sheets.reduce((total, sheet) => total + sheet[key], 0);
  const told = [`${count(changed, "cell")} changed`, `${count(sum("computed"), "formula")} computed`];
  if (added > 0) told.unshift(`${count(added, "sheet")} added`);
  if (sum("kept") > 0) told.push(`${count(sum("kept"), "formula")} left for Excel to compute`);
  if (asValues > 0) told.push(asValuesTold(asValues));
  return told.join(", ");
}

/** Of formulas with functions that the grid alone has, and of those that make no sense. */
export const asValuesTold = (formulas: number): string => `${formulas} as values that no other program reads`;

/** What a program without the add-in shows. */
export function hintOf({ getters }: Model): string {
  const hasOurs = getters
    .getSheetIds()
    .some((sheetId) =>
      getters
        .getEvaluatedCellsPositions(sheetId)
        .some((position) => /\bREAM\./i.test(getters.getCellText(position, { showFormula: true }))),
    );
  return hasOurs
    ? '. A program without the add-in shows #NAME? for REAM formulas: "Save values only" is for that.'
    : "";
}

/** Whether the person saves all the same; asks nothing if nothing is lost. */
export function confirmLosses(losses: readonly string[]): Promise<boolean> {
  if (losses.length === 0) return Promise.resolve(true);
  const dialog = byId("losses") as HTMLDialogElement;
  byId("losses-list").replaceChildren(...items(losses));
  let isWanted = false;
  byId("losses-save").onclick = () => {
    isWanted = true;
    dialog.close();
  };
  byId("losses-cancel").onclick = () => dialog.close();
  dialog.showModal();
  return new Promise((answer) => {
    dialog.addEventListener("close", () => answer(isWanted), { once: true });
  });
}
