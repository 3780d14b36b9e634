// browser: the sheet that is shown, as a page to print: a real table, one page wide, its header rows on every page.

import type { Model } from "@odoo/o-spreadsheet";
import { make } from "../taskpane/dom.ts";
import { printSetupOf } from "../workbook/grid-print.ts";
import type { PrintSetup } from "../workbook/workbook.ts";
import { readBox } from "../workbook/xlsx/addresses.ts";
import type { ShownWorkbook } from "./shown-workbook.ts";

/** Printable width in CSS pixels, margins of 12 mm taken off. */
const PRINTABLE = {
  A4: { upright: 703, across: 1031 },
  Letter: { upright: 725, across: 965 },
} as const;
const SMALLEST_ROW = 16;

interface Page {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
  /** First and last row that is repeated; undefined where none is. */
  readonly repeated: readonly [number, number] | undefined;
  readonly setup: PrintSetup;
  readonly title: string;
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
    place.replaceChildren(...tables(shown.model, page), ...pictures());
  });
  const button = document.getElementById("print") as HTMLButtonElement;
  button.disabled = false;
  button.addEventListener("click", () => window.print());
}

function pageOf(model: Model): Page | undefined {
  const { getters } = model;
  const sheetId = getters.getActiveSheetId();
  const title = getters.getSheetName(sheetId);
  const stated = printSetupOf(model, sheetId);
  const used = usedBox(model, sheetId);
  if (!used) return undefined;
  const { ySplit } = getters.getPaneDivisions(sheetId);
  const box = (stated?.area && readBox(stated.area)) || used;
  const width = widthOf(model, sheetId, box);
  const setup = stated ?? { paper: "A4", landscape: width > PRINTABLE.A4.upright, header: { left: title } };
  const last = ySplit - 1;
  const frozen = last > 0 && last < box.bottom ? ([last, last] as const) : undefined;
  return { ...box, repeated: setup.repeated ?? frozen, setup, title };
}

function usedBox(model: Model, sheetId: string) {
  const filled = model.getters
    .getEvaluatedCellsPositions(sheetId)
    .filter((position) => model.getters.getEvaluatedCell(position).formattedValue !== "");
  if (filled.length === 0) return undefined;
  const box = { top: 0, left: 0, bottom: 0, right: 0 };
  for (const { row, col } of filled) {
    box.bottom = Math.max(box.bottom, row);
    box.right = Math.max(box.right, col);
  }
  return box;
}

function widthOf(model: Model, sheetId: string, { left, right }: { left: number; right: number }): number {
  let width = 0;
  for (let col = left; col <= right; col++)
    if (!model.getters.isColHidden(sheetId, col)) width += model.getters.getColSize(sheetId, col);
  return width;
}

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

/** The rows over the repeated ones as a table of their own, then the repeated ones as the head of the rest. */
function tables(model: Model, page: Page): HTMLTableElement[] {
  const { top, bottom, repeated } = page;
  if (!repeated || repeated[0] < top) return [table(model, page, [], rowsFrom(top, bottom))];
  const [first, last] = repeated;
  const above = rowsFrom(top, first - 1);
  const head = rowsFrom(first, last);
  const body = rowsFrom(last + 1, bottom);
  const main = table(model, page, head, body);
  return above.length === 0 ? [main] : [table(model, page, [], above), main];
}

const rowsFrom = (first: number, last: number): number[] =>
  Array.from({ length: Math.max(0, last - first + 1) }, (_, at) => first + at);

function table(model: Model, page: Page, head: readonly number[], body: readonly number[]): HTMLTableElement {
  const { getters } = model;
  const sheetId = getters.getActiveSheetId();
  const columns = rowsFrom(page.left, page.right).filter((col) => !getters.isColHidden(sheetId, col));
  const width = widthOf(model, sheetId, page);
  const { paper, landscape } = page.setup;
  const room = PRINTABLE[paper][landscape ? "across" : "upright"];
  const made = make(
    "table",
    { class: "printed" },
    make(
      "colgroup",
      {},
      ...columns.map((col) => {
        const one = make("col");
        one.style.width = `${getters.getColSize(sheetId, col)}px`;
        return one;
      }),
    ),
  );
  made.style.width = `${width}px`;
  made.style.zoom = String(Math.min(1, room / width));
  const row = (at: number) => tableRow(model, sheetId, at, columns);
  if (head.length > 0) made.append(make("thead", {}, ...head.map(row)));
  made.append(make("tbody", {}, ...body.filter((at) => !getters.isRowHidden(sheetId, at)).map(row)));
  return made;
}

function tableRow(
  model: Model,
  sheetId: string,
  row: number,
  columns: readonly number[],
): HTMLTableRowElement {
  const { getters } = model;
  const made = make("tr");
  made.style.height = `${Math.max(SMALLEST_ROW, getters.getRowSize(sheetId, row))}px`;
  for (const col of columns) {
    const position = { sheetId, row, col };
    const merge = getters.getMerge(position);
    if (merge && (merge.left !== col || merge.top !== row)) continue;
    made.append(tableCell(model, position, merge));
  }
  return made;
}

type Position = { sheetId: string; row: number; col: number };
type Merge = { left: number; right: number; top: number; bottom: number } | undefined;

function tableCell(model: Model, position: Position, merge: Merge): HTMLTableCellElement {
  const { getters } = model;
  const evaluated = getters.getEvaluatedCell(position);
  const made = make("td", {}, evaluated.formattedValue);
  if (merge) {
    made.colSpan = merge.right - merge.left + 1;
    made.rowSpan = merge.bottom - merge.top + 1;
  }
  const style = getters.getCellComputedStyle(position);
  const { style: own } = made;
  own.textAlign = style.align ?? (evaluated.type === "number" ? "right" : "left");
  if (style.bold) own.fontWeight = "bold";
  if (style.italic) own.fontStyle = "italic";
  if (style.fontSize) own.fontSize = `${style.fontSize}pt`;
  if (style.textColor) own.color = style.textColor;
  if (style.fillColor) own.backgroundColor = style.fillColor;
  if (style.wrapping === "wrap" || merge) own.whiteSpace = "pre-wrap";
  else if (!merge) made.classList.add("open");
  const borders = getters.getCellBorder(position) as Record<string, unknown> | null;
  for (const [side, property] of [
    ["top", "borderTop"],
    ["bottom", "borderBottom"],
    ["left", "borderLeft"],
    ["right", "borderRight"],
  ] as const)
    if (borders?.[side]) own[property] = "1px solid #444";
  return made;
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
