// workbook: a new sheet of the browser workbook, as commands of its grid.

import { paintSteps } from "./grid-looks.ts";
import { asUserInput, type Step } from "./grid-steps.ts";
import { type Content, literal, type NewSheet } from "./workbook.ts";
import { readBox } from "./xlsx/addresses.ts";

const HEADER_STYLE = {
  bold: true,
  textColor: "#12303f",
  fillColor: "#dcebf2",
  align: "center",
  verticalAlign: "middle",
  wrapping: "wrap",
};
/** Each formatted cell costs the grid something. */
const ADDED_ROWS = 100;
const HEADER_HEIGHT = 80;
const INPUT_STYLE = { textColor: "#0b4fa0" };

export function newSheetSteps(
  sheet: NewSheet,
  { sheetId, name, position }: { sheetId: string; name: string; position: number },
): Step[] {
  const { top, columns, rows } = sheet;
  const header = top.length;
  /** Formats and lists reach beyond the rows, where the sheet has room: rows may be added. */
  const reach = Math.min(rows + ADDED_ROWS, Math.max(rows, (sheet.room ?? 0) - header - 1));
  const cell = (row: number, col: number, content: Content): Step => ({
    type: "UPDATE_CELL",
    sheetId,
    row,
    col,
    content: asUserInput(literal(content)),
  });
  const steps: Step[] = [
    {
      type: "CREATE_SHEET",
      sheetId,
      name,
      position,
      cols: columns.length + 4,
      rows: Math.max(header + 1 + rows + 10, sheet.room ?? 0),
    },
    ...top.flatMap((line, row) =>
      line.flatMap((content, col) => (content === "" ? [] : [cell(row, col, content)])),
    ),
  ];
  columns.forEach(({ header: title, width, format, first, each, choices, offers, isInput }, col) => {
    const zone = { left: col, right: col, top: header + 1, bottom: header + reach };
    if (title !== "") steps.push(cell(header, col, title));
    steps.push({
      type: "RESIZE_COLUMNS_ROWS",
      sheetId,
      dimension: "COL",
      elements: [col],
      size: Math.round(width * 7 + 10),
    });
    if (rows === 0) return;
    if (format) steps.push({ type: "SET_FORMATTING", sheetId, target: [zone], format });
    if (isInput) steps.push({ type: "SET_FORMATTING", sheetId, target: [zone], style: INPUT_STYLE });
    if (each)
      for (let row = header + 1; row <= header + rows; row++)
        steps.push(cell(row, col, each.replaceAll("{row}", String(row + 1))));
    if (first !== undefined) steps.push(cell(header + 1, col, first));
    const words = choices ?? offers;
    if (words) steps.push(listRule(sheetId, zone, words, `${sheetId}-${col}`, choices !== undefined));
  });
  (sheet.data ?? []).forEach((line, row) => {
    line.forEach((content, col) => {
      if (content !== "") steps.push(cell(header + 1 + row, col, content));
    });
  });
  if (columns.some(({ header: title }) => title !== "")) steps.push(...headerSteps(sheet, sheetId));
  if (top.length > 0 && !sheet.painted?.length) {
    const title = { left: 0, right: 0, top: 0, bottom: 0 };
    steps.push({
      type: "SET_FORMATTING",
      sheetId,
      target: [title],
      style: { bold: true, fontSize: 14 },
    });
  }
  steps.push(...paintSteps(sheet, sheetId));
  for (const { area, words, isBinding = false } of sheet.lists ?? []) {
    const { top: first, left, bottom, right } = readBox(area)!;
    const zone = { top: first, left, bottom, right };
    steps.push(listRule(sheetId, zone, words, `${sheetId}-${area}`, isBinding));
  }
  return steps;
}

/** The look of the headers, and what stays in sight with them. */
function headerSteps({ top, columns, frozenColumns }: NewSheet, sheetId: string): Step[] {
  const header = top.length;
  const headers = { left: 0, right: columns.length - 1, top: header, bottom: header };
  return [
    { type: "SET_FORMATTING", sheetId, target: [headers], style: HEADER_STYLE },
    {
      type: "RESIZE_COLUMNS_ROWS",
      sheetId,
      dimension: "ROW",
      elements: [header],
      size: HEADER_HEIGHT,
    },
    { type: "FREEZE_ROWS", sheetId, quantity: header + 1 },
    ...(frozenColumns ? [{ type: "FREEZE_COLUMNS", sheetId, quantity: frozenColumns }] : []),
  ];
}

/** A list of words; where it does not bind, other words may stand there too. */
function listRule(
  sheetId: string,
  zone: object,
  words: readonly string[],
  id: string,
  isBinding: boolean,
): Step {
  return {
    type: "ADD_DATA_VALIDATION_RULE",
    sheetId,
    ranges: [{ _sheetId: sheetId, _zone: zone }],
    rule: {
      id,
      isBlocking: isBinding,
      criterion: { type: "isValueInList", values: [...words], displayStyle: "arrow" },
    },
  };
}
