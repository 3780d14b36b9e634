// browser: the work that is not saved, kept in the browser's own storage, so that a closed tab loses nothing.

import type { Model } from "@odoo/o-spreadsheet";
import { type PrintSetups, printSetupsOf } from "../workbook/grid-print.ts";
import type { CellValue } from "../workbook/xlsx/read-sheet.ts";
import type { Snapshot } from "../workbook/xlsx-grid/snapshot.ts";

export interface Draft {
  readonly name: string;
  /** When it was kept, in ms. */
  readonly time: number;
  /** The workbook as the grid has it, and how its rows, columns and sheets came to be. */
  readonly data: object;
  /** How its sheets are printed; drafts of before had none. */
  readonly prints?: PrintSetups;
  /** The file that it came from, and how the grid had it then. */
  readonly opened:
    | {
        readonly bytes: Uint8Array;
        readonly before: Snapshot;
        readonly valuesInFile: readonly (readonly [string, CellValue])[];
      }
    | undefined;
}

/** The workbook as the grid has it now, and how its sheets are printed. */
export const shownAs = (model: Model): Pick<Draft, "data" | "prints"> => ({
  data: (model as any)._exportData(false),
  prints: printSetupsOf(model),
});

const DATABASE = "reamwright";
const STORE = "draft";
const KEY = "draft";

function inStore<T>(mode: IDBTransactionMode, work: (store: IDBObjectStore) => IDBRequest<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    const opening = indexedDB.open(DATABASE, 1);
    opening.onupgradeneeded = () => opening.result.createObjectStore(STORE);
    opening.onerror = () => reject(opening.error);
    opening.onsuccess = () => {
      const database = opening.result;
      const request = work(database.transaction(STORE, mode).objectStore(STORE));
      request.onsuccess = () => {
        database.close();
        resolve(request.result);
      };
      request.onerror = () => {
        database.close();
        reject(request.error);
      };
    };
  });
}

/** A browser may allow no storage: then there is no draft, and no fault. */
const orNothing = async <T>(work: Promise<T>): Promise<T | undefined> => {
  try {
    return await work;
  } catch {
    return undefined;
  }
};

export const keepDraft = (draft: Draft) => orNothing(inStore("readwrite", (store) => store.put(draft, KEY)));
export const clearDraft = () => orNothing(inStore("readwrite", (store) => store.delete(KEY)));
export const readDraft = () => orNothing(inStore<Draft | undefined>("readonly", (store) => store.get(KEY)));

/** Asks whether the work of the last time is wanted; the page goes on meanwhile. */
export function offerDraft({ name, time }: Draft, answer: (isWanted: boolean) => void): void {
  const bar = document.getElementById("draft")!;
  document.getElementById("draft-text")!.textContent =
    `Restore your work? ${name} was not saved, ${new Date(time).toLocaleString()}.`;
  const choose = (isWanted: boolean) => () => {
    bar.hidden = true;
    answer(isWanted);
  };
  document.getElementById("draft-restore")!.onclick = choose(true);
  document.getElementById("draft-discard")!.onclick = choose(false);
  bar.hidden = false;
}
