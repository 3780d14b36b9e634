// browser: what the canvas shows, said in plain elements: the selected cell, the errors of the sheet, the sheet as a
// table. For screen readers, for tests, and for reading a message without hovering.

import type { Model } from "@odoo/o-spreadsheet";
import { cellAddress, columnLetters } from "../workbook/workbook.ts";

const mostErrors = 40;
/** A sheet larger than this is not walked through at each change. */
const mostCells = 20_000;

interface Position {
  sheetId: string;
  col: number;
  row: number;
}

const byId = (id: string) => document.getElementById(id)!;

function element(name: string, text: string, className = ""): HTMLElement {
  const made = document.createElement(name);
  made.textContent = text;
  if (className) made.className = className;
  return made;
}

let shown: Model;
let isWaiting = false;

function update(): void {
  if (isWaiting) return;
  isWaiting = true;
  requestAnimationFrame(() => {
    isWaiting = false;
    showSelected(shown);
    showErrors(shown);
    showTable(shown);
  });
}

/** From now on of this workbook, in place of the one before. */
export function showResults(model: Model): void {
  shown?.off("update", byId("grid"));
  shown = model;
  model.on("update", byId("grid"), update);
  byId("plain").addEventListener("toggle", update);
  update();
}

function showSelected(model: Model): void {
  const { getters } = model;
  const position = getters.getActivePosition();
  const cell = getters.getEvaluatedCell(position);
  const origin = getters.getArrayFormulaSpreadingOn(position) ?? position;
  const written = getters.getCellText(origin, { showFormula: true });
  const facts: [string, string, string?][] = [["Cell", cellAddress(position.row, position.col)]];
  if (written.startsWith("=")) {
    const spilled = origin.col !== position.col || origin.row !== position.row;
    facts.push([spilled ? `From ${cellAddress(origin.row, origin.col)}` : "Formula", written]);
  }
  facts.push(["Result", cell.type === "empty" ? "(empty)" : cell.formattedValue]);
  if (cell.type === "error") facts.push(["Message", cell.message || "no message", "fault"]);
  const { note } = cell as { note?: string };
  if (note && cell.type !== "error") facts.push(["Note", note]);
  replaceIfChanged(
    byId("selected"),
    facts.flatMap(([term, text, className]) => [element("dt", term), element("dd", text, className)]),
  );
}

function showErrors(model: Model): void {
  const { getters } = model;
  const sheetId = getters.getActiveSheetId();
  const positions = getters.getEvaluatedCellsPositions(sheetId);
  if (positions.length > mostCells) {
    byId("summary").textContent = "This sheet is too large to list its errors.";
    byId("errors").replaceChildren();
    return;
  }
  const faults = positions.filter((position) => getters.getEvaluatedCell(position).type === "error");
  faults.sort((a, b) => a.row - b.row || a.col - b.col);
  byId("summary").textContent =
    faults.length === 0
      ? "No errors on this sheet."
      : `Cells on this sheet that show an error: ${faults.length}`;
  // A row that can't be read shows one message in many cells: it is told once.
  const groups = new Map<string, Position[]>();
  for (const position of faults) {
    const { message } = getters.getEvaluatedCell(position);
    const key = `${position.row} ${message}`;
    groups.set(key, [...(groups.get(key) ?? []), position]);
  }
  const entries = [...groups.values()].slice(0, mostErrors);
  replaceIfChanged(
    byId("errors"),
    entries.map((group) => errorEntry(model, group)),
  );
}

function errorEntry(model: Model, [first, ...others]: Position[]): HTMLElement {
  const cell = model.getters.getEvaluatedCell(first);
  const entry = document.createElement("li");
  const button = element("button", cellAddress(first.row, first.col));
  button.addEventListener("click", () => model.selection.selectCell(first.col, first.row));
  const more = others.length === 0 ? "" : ` (and ${others.length} more in row ${first.row + 1})`;
  entry.append(button, ` ${cell.formattedValue} `, element("span", cell.message ?? "", "fault"), more);
  return entry;
}

function showTable(model: Model): void {
  if (!(byId("plain") as HTMLDetailsElement).open) return;
  const { getters } = model;
  const sheetId = getters.getActiveSheetId();
  const positions = getters.getEvaluatedCellsPositions(sheetId);
  if (positions.length > mostCells) return;
  const filled = positions.filter((position) => getters.getEvaluatedCell(position).formattedValue !== "");
  const lastColumn = Math.max(0, ...filled.map(({ col }) => col));
  const lastRow = Math.max(0, ...filled.map(({ row }) => row));
  const head = document.createElement("tr");
  head.append(element("td", ""));
  for (let col = 0; col <= lastColumn; col++) head.append(element("th", columnLetters(col)));
  const rows = [head];
  for (let row = 0; row <= lastRow; row++) {
    const line = document.createElement("tr");
    line.append(element("th", String(row + 1)));
    for (let col = 0; col <= lastColumn; col++) {
      const cell = getters.getEvaluatedCell({ sheetId, col, row });
      const shown = element("td", cell.formattedValue);
      if (cell.type === "error" && cell.message) shown.title = cell.message;
      line.append(shown);
    }
    rows.push(line);
  }
  replaceIfChanged(byId("table"), rows);
}

/** Leaves an element alone whose text stays, so that a screen reader says nothing twice and a focus is kept. */
function replaceIfChanged(parent: HTMLElement, children: HTMLElement[]): void {
  const text = (elements: Iterable<Node>) =>
    Array.from(elements, ({ textContent }) => textContent).join("\n");
  if (text(parent.childNodes) !== text(children)) parent.replaceChildren(...children);
}
