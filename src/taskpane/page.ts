// taskpane: the page that Excel loads. It says whether Excel is there, and lists what can be typed.

import type { Metadata, MetadataFunction } from "../build/metadata.ts";

/** How long the page waits for a host before it says that there is none. */
const patience = 4000;

const byId = (id: string) => document.getElementById(id)!;

function signature({ name, parameters }: MetadataFunction): string {
  const words = parameters.map((parameter) =>
    parameter.repeating ? `${parameter.name}…` : parameter.optional ? `[${parameter.name}]` : parameter.name,
  );
  return `REAM.${name}(${words.join(", ")})`;
}

function showFunctions(functions: readonly MetadataFunction[]): void {
  const list = byId("list");
  const entries = functions.map((described) => {
    const term = document.createElement("dt");
    term.textContent = signature(described);
    const text = document.createElement("dd");
    text.textContent = described.description ?? "";
    list.append(term, text);
    return { term, text, words: `${term.textContent} ${text.textContent}`.toLowerCase() };
  });
  const find = byId("find") as HTMLInputElement;
  find.addEventListener("input", () => {
    const wanted = find.value.trim().toLowerCase();
    for (const { term, text, words } of entries) term.hidden = text.hidden = !words.includes(wanted);
  });
}

async function inExcel(): Promise<boolean> {
  if (typeof Office === "undefined") return false;
  const waited = new Promise<boolean>((resolve) => setTimeout(() => resolve(false), patience));
  const asked = Office.onReady().then(({ host }) => host === Office.HostType.Excel);
  return Promise.race([asked, waited]);
}

async function start(): Promise<void> {
  const response = await fetch("functions.json");
  if (!response.ok) throw new Error(`functions.json: ${response.status}`);
  const { functions } = (await response.json()) as Metadata;
  showFunctions(functions);
  byId("state").textContent = (await inExcel())
    ? `Ready in Excel: ${functions.length} functions. Type =REAM. into a cell.`
    : `This page is not in Excel. Its ${functions.length} functions are loaded; try them in the browser workbook below.`;
}

start().catch((error) => {
  byId("state").textContent =
    `The functions could not be loaded (${error.message}). Reload the page or ask who serves it.`;
});
