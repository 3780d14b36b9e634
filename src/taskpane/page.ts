// taskpane: the start of the page that Excel loads: the pane over Excel's workbook, or over none outside Excel. Excel
// may be ready at once or after a minute, and no part waits for another: buttons, pane, workbook, help.

import { ExcelWorkbook } from "../workbook/excel-workbook.ts";
import { laterWorkbook } from "../workbook/later-workbook.ts";
import { noWorkbook } from "../workbook/no-workbook.ts";
import type { Workbook } from "../workbook/workbook.ts";
import { byId } from "./dom.ts";
import { loadHelp } from "./help.ts";
import { startPane } from "./pane.ts";

/** The buttons of the ribbon, each with the view that it opens. */
const buttons: Readonly<Record<string, string>> = {
  showPane: "find",
  showConvert: "convert",
  showCheck: "check",
  showSheet: "quote",
};

/** Excel asks for the pane, and may never answer: a button is not kept waiting longer than this. */
const LONGEST_WAIT = 10_000;

// Before anything else: Excel calls a button's action as soon as it has announced itself, once.
const isOffice = typeof Office !== "undefined";
let show: (view: string) => void = () => {};
if (isOffice) {
  if (Office.actions) startButtons();
  else void Office.onReady(startButtons);
}

const isExcel: Promise<boolean> = isOffice
  ? Office.onReady().then(
      ({ host }) => host === Office.HostType.Excel,
      () => false,
    )
  : Promise.resolve(false);
const workbook = isExcel.then((is): Workbook => (is ? new ExcelWorkbook() : noWorkbook));
show = startPane(laterWorkbook(workbook), loadHelp);
void showState();

/** A button runs in this same page; it opens the pane at its view and tells Excel that it is done. */
function startButtons(): void {
  for (const [name, view] of Object.entries(buttons)) {
    Office.actions.associate(name, async (event: Office.AddinCommands.Event) => {
      try {
        show(view);
        await Promise.race([
          Office.addin.showAsTaskpane(),
          new Promise((resolve) => setTimeout(resolve, LONGEST_WAIT)),
        ]);
      } catch (refused) {
        console.warn("Excel did not show the pane:", refused);
      } finally {
        event.completed();
      }
    });
  }
}

async function showState(): Promise<void> {
  const state = byId("state");
  if (isOffice) state.textContent = "Waiting for Excel…";
  const is = await isExcel;
  byId("elsewhere").hidden = is;
  state.textContent = is
    ? "Ready: type =REAM. into a cell."
    : "This page is not in Excel, so it has no workbook.";
  // Where the help is missing, the search says so.
  const help = await loadHelp().catch(() => undefined);
  if (!help) return;
  const { functions } = help;
  state.textContent = is
    ? `${functions.length} functions ready: type =REAM. into a cell.`
    : `${functions.length} functions, but this page is not in Excel.`;
}
