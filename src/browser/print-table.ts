// browser: cells of a sheet as a table to print. On a paper, a row without a figure is left out, a picture is drawn where
// a cell tells one, and no error code is printed.

import type { Model } from "@odoo/o-spreadsheet";
import { drawnWords } from "../papers/pictures/drawn-words.ts";
import { renderScene } from "../papers/pictures/scene.ts";
import { make } from "../taskpane/dom.ts";
import { QUIET_COLORS } from "../workbook/grid-looks.ts";

const SMALLEST_ROW = 15;
/** A row of a paper is lower on paper than on the screen, where a cell has a frame. */
const LOWER = 15 / 17;

type Position = { sheetId: string; row: number; col: number };
type Merge = { left: number; right: number; top: number; bottom: number } | undefined;

export interface PrintedTable {
  readonly element: HTMLTableElement;
  /** Cells in error that stop a paper. */
  readonly errors: readonly { readonly row: number; readonly col: number; readonly told: string }[];
}

interface Part {
  readonly sheetId: string;
  readonly columns: readonly number[];
  readonly zoom: number;
  readonly isPaper: boolean;
}

export const rowsFrom = (first: number, last: number): number[] =>
  Array.from({ length: Math.max(0, last - first + 1) }, (_, at) => first + at);

export function printedTable(
  model: Model,
  part: Part,
  head: readonly number[],
  body: readonly number[],
): PrintedTable {
  const { getters } = model;
  const { sheetId, columns, zoom } = part;
  const errors: PrintedTable["errors"][number][] = [];
  const element = make(
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
  element.style.width = `${columns.reduce((sum, col) => sum + getters.getColSize(sheetId, col), 0)}px`;
  element.style.zoom = String(zoom);
  const row = (at: number) => tableRow(model, part, at, errors);
  const isShown = (at: number) =>
    !getters.isRowHidden(sheetId, at) && !(part.isPaper && isUnused(model, part, at));
  if (head.length > 0) element.append(make("thead", {}, ...head.map(row)));
  element.append(make("tbody", {}, ...body.filter(isShown).map(row)));
  return { element, errors };
}

/** Whether a row computes, and nothing came of it, and it has nothing else to read and no line to write on. */
function isUnused({ getters }: Model, { sheetId, columns }: Part, row: number): boolean {
  let computes = false;
  for (const col of columns) {
    const position = { sheetId, row, col };
    const merge = getters.getMerge(position);
    if (merge && merge.left !== col) continue;
    // A picture over several rows belongs to each of them.
    const place = merge ? { sheetId, row: merge.top, col } : position;
    const computed = getters.getCell(place)?.isFormula === true;
    const isEmpty = getters.getEvaluatedCell(place).formattedValue === "";
    if (isEmpty ? isLine(getters, position) : computed || !isLabel(getters, place)) return false;
    if (computed) computes = true;
  }
  return computes;
}

const isLabel = (getters: Model["getters"], position: Position): boolean => {
  const { fillColor, textColor = "" } = getters.getCellComputedStyle(position);
  return fillColor !== undefined || QUIET_COLORS.includes(textColor.toLowerCase());
};

/** A line to write on is neither filled nor bold, as headers are, and no frame. */
function isLine(getters: Model["getters"], position: Position): boolean {
  const borders = getters.getCellBorder(position) as Partial<
    Record<"bottom" | "left" | "right", unknown>
  > | null;
  const { fillColor, bold } = getters.getCellComputedStyle(position);
  const isFrame = borders?.left !== undefined || borders?.right !== undefined;
  return borders?.bottom !== undefined && !isFrame && !fillColor && !bold;
}

/** Whether a text of the row runs over several lines, or a picture stands there: then what it holds makes its height. */
const isWrapped = ({ getters }: Model, { sheetId, columns }: Part, row: number): boolean =>
  columns.some((col) => {
    const position = { sheetId, row, col };
    return (
      getters.getCellComputedStyle(position).wrapping === "wrap" &&
      getters.getEvaluatedCell(position).formattedValue !== ""
    );
  });

function tableRow(
  model: Model,
  part: Part,
  row: number,
  errors: PrintedTable["errors"][number][],
): HTMLTableRowElement {
  const { getters } = model;
  const { sheetId, columns, zoom, isPaper } = part;
  const made = make("tr");
  const onScreen = getters.getRowSize(sheetId, row);
  const height = isPaper ? (isWrapped(model, part, row) ? 0 : onScreen * LOWER) : onScreen;
  made.style.height = `${Math.max(SMALLEST_ROW, height)}px`;
  for (const col of columns) {
    const position = { sheetId, row, col };
    const merge = getters.getMerge(position);
    if (merge && (merge.left !== col || merge.top !== row)) continue;
    const { type, value, message, formattedValue } = getters.getEvaluatedCell(position) as {
      type: string;
      value: unknown;
      message?: string;
      formattedValue: string;
    };
    const isError = isPaper && type === "error";
    if (isError && value !== "#N/A") errors.push({ row, col, told: message || formattedValue });
    const text = isError ? `not available${message ? `: ${message}` : ""}` : formattedValue;
    made.append(tableCell(model, position, merge, text, zoom));
  }
  return made;
}

function tableCell(
  model: Model,
  position: Position,
  merge: Merge,
  text: string,
  zoom: number,
): HTMLTableCellElement {
  const { getters } = model;
  const scene = drawnWords(text);
  const made = make("td", {}, scene ? "" : text);
  if (scene) {
    const { row, col } = position;
    const svg = renderScene(scene, `printed-${row}-${col}`);
    if (scene.isToScale) svg.style.zoom = String(1 / zoom);
    made.append(svg);
    made.classList.add("picture");
  }
  if (merge) {
    made.colSpan = merge.right - merge.left + 1;
    made.rowSpan = merge.bottom - merge.top + 1;
  }
  const style = getters.getCellComputedStyle(position);
  const { style: own } = made;
  own.textAlign = style.align ?? (getters.getEvaluatedCell(position).type === "number" ? "right" : "left");
  if (scene) own.textAlign = "center";
  if (style.bold) own.fontWeight = "bold";
  if (style.italic) own.fontStyle = "italic";
  if (style.fontSize) own.fontSize = `${style.fontSize}pt`;
  if (style.textColor) own.color = style.textColor;
  if (style.fillColor) own.backgroundColor = style.fillColor;
  if (style.wrapping === "wrap" || merge) own.whiteSpace = "pre-wrap";
  else made.classList.add("open");
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
