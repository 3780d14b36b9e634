// browser: starts the browser workbook. The grid and its library come as scripts of their own and leave two globals.

import type { Metadata } from "../build/metadata.ts";
import { readHelp } from "../taskpane/help.ts";
import { startPane } from "../taskpane/pane.ts";
import { registerSteps } from "../workbook/grid-steps.ts";
import { watchStructure } from "../workbook/xlsx-grid/structure.ts";
import { quoteWorkbook } from "./demo-quote/quote.ts";
import { startFiles } from "./files.ts";
import { allowPasteOverPanes } from "./paste-over-panes.ts";
import { startPrinting } from "./print-view.ts";
import { keepUpWithKeys } from "./quick-typing.ts";
import { type Call, type ErrorClass, registerFunctions } from "./register-functions.ts";
import { ShownWorkbook } from "./shown-workbook.ts";
import { keepPageInPlace } from "./tab-in-sight.ts";

declare const o_spreadsheet: typeof import("@odoo/o-spreadsheet");
/** As src/browser/shim.ts leaves it. */
declare const CustomFunctions: { Error: ErrorClass; associated: ReadonlyMap<string, Call> };

/** A narrower window, in px, would show nothing beside the three columns that stay in sight. */
const ROOM_FOR_FROZEN = 760;

const state = document.getElementById("state")!;

async function read(path: string): Promise<Response> {
  const response = await fetch(path);
  if (!response.ok) throw new Error(`${path}: ${response.status}`);
  return response;
}

async function start(): Promise<void> {
  const [metadata, help, templates] = await Promise.all([
    read("functions.json").then((response) => response.json() as Promise<Metadata>),
    read("help.json").then(async (response) => readHelp(await response.json())),
    read("vendor/o-spreadsheet/o_spreadsheet.xml").then((response) => response.text()),
  ]);
  registerFunctions(metadata, CustomFunctions.associated, o_spreadsheet.registries, CustomFunctions.Error);
  registerSteps(o_spreadsheet);
  allowPasteOverPanes(o_spreadsheet.registries.clipboardHandlersRegistries.cellHandlers as never);
  watchStructure(o_spreadsheet);
  keepUpWithKeys(o_spreadsheet.components);
  keepPageInPlace();
  const shown = new ShownWorkbook(templates, say);
  const { data, prints } = quoteWorkbook(window.innerWidth < ROOM_FOR_FROZEN ? 0 : undefined);
  await shown.showData(data, prints);
  startPane(shown.workbook, async () => help);
  await startFiles(shown, o_spreadsheet, metadata, CustomFunctions.associated, say);
  startPrinting(shown);
  startToggle();
  forgetOnAction();
  say(`${metadata.functions.length} functions ready`);
}

/** Opens and closes the tools. */
function startToggle(): void {
  const toggle = document.getElementById("tools-toggle") as HTMLButtonElement;
  const tools = document.getElementById("tools")!;
  toggle.disabled = false;
  toggle.addEventListener("click", () => {
    tools.hidden = !tools.hidden;
    toggle.setAttribute("aria-expanded", String(!tools.hidden));
    // The grid measures its place again.
    window.dispatchEvent(new Event("resize"));
    if (!tools.hidden) tools.querySelector<HTMLElement>("[aria-current]")?.focus();
  });
}

/** What was said goes with the next thing that is done, and stays to be read where the pointer rests. */
function forgetOnAction(): void {
  const forget = () => {
    if (!state.textContent?.endsWith("…")) state.textContent = "";
  };
  for (const event of ["pointerdown", "keydown"]) window.addEventListener(event, forget, true);
}

function say(text: string): void {
  state.textContent = text;
  state.title = text;
}

start().catch((error) => {
  say("The workbook could not start");
  const told = document.createElement("p");
  told.textContent = `The workbook could not start (${error.message}). Reload the page; if that does not help, run npm run build.`;
  document.getElementById("grid")!.replaceChildren(told);
  console.error(error);
});
