// taskpane: the start of the page that Excel loads: the pane over Excel's workbook, or over none outside Excel.

import { ExcelWorkbook } from "../workbook/excel-workbook.ts";
import { noWorkbook } from "../workbook/no-workbook.ts";
import { byId } from "./dom.ts";
import type { Help } from "./help.ts";
import { startPane } from "./pane.ts";

/** How long the page waits for a host before it says that there is none. */
const patience = 4000;

/** The buttons of the ribbon, each with the view that it opens. */
const buttons: Readonly<Record<string, string>> = {
  showPane: "find",
  showConvert: "convert",
  showCheck: "check",
  showSheet: "quote",
};

async function inExcel(): Promise<boolean> {
  if (typeof Office === "undefined") return false;
  const waited = new Promise<boolean>((resolve) => setTimeout(() => resolve(false), patience));
  const asked = Office.onReady().then(({ host }) => host === Office.HostType.Excel);
  return Promise.race([asked, waited]);
}

/** A button runs in this same page; it opens the pane at its view and tells Excel that it is done. */
function startButtons(show: (view: string) => void): void {
  for (const [name, view] of Object.entries(buttons)) {
    Office.actions.associate(name, async (event: Office.AddinCommands.Event) => {
      await Office.addin.showAsTaskpane();
      show(view);
      event.completed();
    });
  }
}

async function start(): Promise<void> {
  const response = await fetch("help.json");
  if (!response.ok) throw new Error(`help.json: ${response.status}`);
  const help = (await response.json()) as Help;
  const isExcel = await inExcel();
  const show = startPane(isExcel ? new ExcelWorkbook() : noWorkbook, help);
  if (isExcel) startButtons(show);
  byId("elsewhere").hidden = isExcel;
  byId("state").textContent = isExcel
    ? `${help.functions.length} functions ready: type =REAM. into a cell.`
    : `${help.functions.length} functions, but this page is not in Excel.`;
}

start().catch((error) => {
  byId("state").textContent =
    `The functions could not be loaded (${error.message}). Reload the page or ask who serves it.`;
});
