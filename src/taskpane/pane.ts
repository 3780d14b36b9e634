// taskpane: starts the pane in a page that holds the elements of pane.html: its tools, its views, what is selected.

import { addressOf, type Workbook } from "../workbook/workbook.ts";
import { readCautions } from "./cautions.ts";
import { byId } from "./dom.ts";
import type { Help } from "./help.ts";
import { paneContext } from "./pane-context.ts";
import { checkView } from "./views/check-view.ts";
import { convertView } from "./views/convert-view.ts";
import { curveView } from "./views/curve-view.ts";
import { checkSheetView, explainView } from "./views/explain-view.ts";
import { findView } from "./views/find-view.ts";
import { holeView } from "./views/hole-view.ts";
import { papersView } from "./views/papers-view.ts";
import { freezeView, quoteView } from "./views/sheet-views.ts";

/** @returns the means to show a view by its name */
export function startPane(workbook: Workbook, help: () => Promise<Help>): (view: string) => void {
  const context = paneContext(workbook, help, readCautions);
  leaveDoubleClicks();
  const show = startTools();
  for (const view of [
    findView,
    explainView,
    checkSheetView,
    convertView,
    checkView,
    quoteView,
    papersView,
    freezeView,
    holeView,
    curveView,
  ])
    view(context);
  showSelected(workbook);
  return show;
}

/** The second click of a double click does nothing: what a button does is done once. */
function leaveDoubleClicks(): void {
  const leave = (event: MouseEvent) => {
    if (event.detail < 2 || !(event.target as Element).closest("button")) return;
    event.preventDefault();
    event.stopImmediatePropagation();
  };
  byId("pane").addEventListener("click", leave, { capture: true });
}

function startTools(): (view: string) => void {
  const buttons = Array.from(document.querySelectorAll<HTMLButtonElement>("#pane [data-show]"));
  const views = Array.from(document.querySelectorAll<HTMLElement>("#pane [data-view]"));
  const open = (name: string) => {
    for (const button of buttons) {
      if (button.dataset.show === name) button.setAttribute("aria-current", "true");
      else button.removeAttribute("aria-current");
    }
    for (const view of views) view.hidden = view.dataset.view !== name;
  };
  const show = (name: string) => {
    open(name);
    byId("pane-status").textContent = "";
    document.querySelector<HTMLElement>(`#pane [data-view="${name}"] h2`)?.focus();
  };
  for (const button of buttons) button.addEventListener("click", () => show(button.dataset.show!));
  open("find");
  return show;
}

/** Keeps the line with the selected cells. */
function showSelected(workbook: Workbook): void {
  let isWaiting = false;
  const update = async () => {
    isWaiting = false;
    byId("pane-where").textContent = await selectedText(workbook);
  };
  const soon = () => {
    if (isWaiting) return;
    isWaiting = true;
    setTimeout(update, 120);
  };
  workbook.onChange(soon);
  void update();
}

async function selectedText(workbook: Workbook): Promise<string> {
  try {
    const areas = await workbook.places();
    return `${areas.map(addressOf).join(" and ")} on ${areas[0].sheet}`;
  } catch {
    // A chart is selected, a cell is being edited, or no workbook is there: a tool that needs cells says which.
    return "no cells";
  }
}
