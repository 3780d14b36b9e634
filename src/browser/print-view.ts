// browser: the sheet that is shown, as pages to print: real tables as wide as the page, their header rows on every page,
// a sheet that would come out too small on several pages side by side.

import type { Model } from "@odoo/o-spreadsheet";
import { isLivePaper } from "../papers/live-papers.ts";
import { make } from "../taskpane/dom.ts";
import { printSetupNow, usedPart } from "../workbook/grid-print.ts";
import { cellAddress, type PrintSetup } from "../workbook/workbook.ts";
import { readBox } from "../workbook/xlsx/addresses.ts";
import { type PrintedTable, printedTable, rowsFrom } from "./print-table.ts";
import type { ShownWorkbook } from "./shown-workbook.ts";

/** Printable room in CSS pixels, margins of 12 mm at the sides and 14 mm above and below taken off. */
const ROOM = {
  A4: { upright: [703, 1016], across: [1031, 688] },
  Letter: { upright: [725, 950], across: [965, 710] },
} as const;
/** Smaller than this, a sheet goes on several pages side by side. */
const SMALLEST = 0.72;
/** So much smaller, a paper may be, to end on the page that it began on. */
const SHRINKS_TO = 0.87;

interface Page {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
  /** First and last row that is repeated; undefined where none is. */
  readonly repeated: readonly [number, number] | undefined;
  /** Columns that are repeated on pages side by side. */
  readonly repeatedColumns: number;
  readonly setup: PrintSetup;
  readonly title: string;
  readonly isPaper: boolean;
}

/** Keeps a page for whatever is printed, and makes it anew just before. */
export function startPrinting(shown: ShownWorkbook): void {
  const place = document.getElementById("print-page")!;
  const rules = new CSSStyleSheet();
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, rules];
  window.addEventListener("beforeprint", () => {
    const page = pageOf(shown.model);
    if (!page) return place.replaceChildren();
    rules.replaceSync(pageRules(page));
    place.replaceChildren(...printed(shown.model, page));
    if (page.setup.area) shrink(place, page);
  });
  const button = document.getElementById("print") as HTMLButtonElement;
  button.disabled = false;
  button.addEventListener("click", () => window.print());
}

function pageOf(model: Model): Page | undefined {
  const { getters } = model;
  const sheetId = getters.getActiveSheetId();
  const title = getters.getSheetName(sheetId);
  const stated = printSetupNow(model, sheetId);
  const box = (stated?.area && readBox(stated.area)) || usedPart(model, sheetId);
  if (!box) return undefined;
  const { xSplit, ySplit } = getters.getPaneDivisions(sheetId);
  const setup = stated ?? {
    paper: "A4",
    landscape: widthOf(model, sheetId, columnsOf(model, sheetId, box)) > ROOM.A4.upright[0],
    header: { left: title },
  };
  const last = ySplit - 1;
  const frozen = last > 0 && last < box.bottom ? ([last, last] as const) : undefined;
  const isPaper = isLivePaper(getters.getEvaluatedCell({ sheetId, row: 0, col: 0 }).formattedValue);
  return {
    ...box,
    repeated: frozen ?? setup.repeated,
    repeatedColumns: xSplit || (setup.repeatedColumns ?? 0),
    setup,
    title,
    isPaper,
  };
}

const columnsOf = (model: Model, sheetId: string, { left, right }: { left: number; right: number }) =>
  rowsFrom(left, right).filter((col) => !model.getters.isColHidden(sheetId, col));
const widthOf = (model: Model, sheetId: string, columns: readonly number[]) =>
  columns.reduce((sum, col) => sum + model.getters.getColSize(sheetId, col), 0);

/** A text as a string of a style sheet. */
const cssText = (text: string): string =>
  `"${text.replace(/["\\\n\r\f<>]/g, (sign) => `\\${sign.charCodeAt(0).toString(16)} `)}"`;

function pageRules({ setup, title }: Page): string {
  const { paper, landscape, header, footer } = setup;
  const box = (place: string, text: string) => `@${place} { content: ${text}; font: 8pt sans-serif; }`;
  return `@page { size: ${paper}${landscape ? " landscape" : ""}; margin: 14mm 12mm;
    ${box("top-left", cssText(header?.left ?? title))}
    ${box("top-right", cssText(header?.right ?? ""))}
    ${box("bottom-left", cssText(footer ?? ""))}
    ${box("bottom-right", '"Page " counter(page) " of " counter(pages)')} }`;
}

function printed(model: Model, page: Page): HTMLElement[] {
  const sheetId = model.getters.getActiveSheetId();
  const all = columnsOf(model, sheetId, page);
  const [room] = roomOf(page);
  const groups = sideBySide(model, sheetId, page, all, room);
  const zoom = Math.min(1, ...groups.map((columns) => room / widthOf(model, sheetId, columns)));
  const parts = groups.flatMap((columns, at) => {
    const made = tables(model, page, { sheetId, columns, zoom, isPaper: page.isPaper });
    if (at > 0) made[0].element.style.breakBefore = "page";
    return made;
  });
  const stopped = page.isPaper ? parts.flatMap(({ errors }) => errors) : [];
  if (stopped.length > 0) return [notPrinted(stopped)];
  return [...parts.map(({ element }) => element), ...pictures()];
}

const roomOf = ({ setup: { paper, landscape } }: Page) => ROOM[paper][landscape ? "across" : "upright"];

/** Why a paper is not printed: what its cells ask for. */
function notPrinted(errors: readonly PrintedTable["errors"][number][]): HTMLElement {
  return make(
    "div",
    {},
    make("p", {}, "This paper is not printed yet. Correct these cells first:"),
    make(
      "ul",
      {},
      ...errors.map(({ row, col, told }) => make("li", {}, `${cellAddress(row, col)}: ${told}`)),
    ),
  );
}

/** The columns of each page side by side, the repeated ones first on all but the first. */
function sideBySide(
  model: Model,
  sheetId: string,
  { repeatedColumns }: Page,
  all: readonly number[],
  room: number,
): (readonly number[])[] {
  if (widthOf(model, sheetId, all) * SMALLEST <= room) return [all];
  const most = room / SMALLEST;
  const first = all.filter((col) => col < repeatedColumns);
  const kept = widthOf(model, sheetId, first) < most / 2 ? first : [];
  const groups: number[][] = [[...kept]];
  for (const col of all.filter((col) => !kept.includes(col))) {
    const group = groups[groups.length - 1];
    const isFull = group.length > kept.length && widthOf(model, sheetId, [...group, col]) > most;
    if (isFull) groups.push([...kept, col]);
    else group.push(col);
  }
  return groups;
}

interface Part {
  readonly sheetId: string;
  readonly columns: readonly number[];
  readonly zoom: number;
  readonly isPaper: boolean;
}

/** The rows over the repeated ones as a table of their own, the repeated ones as the head of the rest, and the tail. */
function tables(model: Model, page: Page, part: Part): PrintedTable[] {
  const { top, repeated, setup } = page;
  const table = (head: readonly number[], body: readonly number[]) => printedTable(model, part, head, body);
  const end = setup.tail === undefined || setup.tail > page.bottom ? page.bottom + 1 : setup.tail;
  const bottom = end - 1;
  const made: PrintedTable[] = [];
  if (!repeated || repeated[0] < top || repeated[1] >= bottom) made.push(table([], rowsFrom(top, bottom)));
  else {
    const [first, last] = repeated;
    if (first > top) made.push(table([], rowsFrom(top, first - 1)));
    made.push(table(rowsFrom(first, last), rowsFrom(last + 1, bottom)));
  }
  if (end <= page.bottom) {
    const tail = table([], rowsFrom(end, page.bottom));
    tail.element.classList.add("together");
    made.push(tail);
  }
  return made;
}

/** A paper that runs over its page by a little is printed a little smaller. */
function shrink(place: HTMLElement, page: Page): void {
  const [, room] = roomOf(page);
  const tables = Array.from(place.querySelectorAll<HTMLElement>("table.printed"));
  const zooms = tables.map(({ style }) => Number(style.zoom));
  const zoomTo = (share: number) => {
    tables.forEach((table, at) => {
      table.style.zoom = String(zooms[at] * share);
    });
    place.classList.add("measured");
    const { height } = place.getBoundingClientRect();
    place.classList.remove("measured");
    return height;
  };
  let share = 1;
  // Lines break elsewhere in another size: a second or third try may be needed.
  for (let height = zoomTo(share); height > room; height = zoomTo(share)) {
    share *= Math.min(0.995, room / height);
    if (share < SHRINKS_TO) return void zoomTo(1);
  }
}

/** The charts and pictures that are in sight, as they are drawn. */
function pictures(): HTMLImageElement[] {
  const drawn = Array.from(document.querySelectorAll<HTMLCanvasElement>(".o-figure canvas")).map((canvas) =>
    canvas.toDataURL(),
  );
  const placed = Array.from(document.querySelectorAll<HTMLImageElement>(".o-figure img")).map(
    ({ src }) => src,
  );
  return [...drawn, ...placed].map((src) =>
    make("img", { src, alt: "Picture of the sheet", class: "printed" }),
  );
}
