// workbook: a new sheet of the browser workbook, as commands of its grid.

import { type Step, typed } from "./grid-steps.ts";
import type { Content, NewSheet } from "./workbook.ts";

const HEADER_STYLE = {
  bold: true,
  textColor: "#12303f",
  fillColor: "#dcebf2",
  align: "center",
  verticalAlign: "middle",
  wrapping: "wrap",
};
const HEADER_HEIGHT = 38;

export function newSheetSteps(
  sheet: NewSheet,
  { sheetId, name, position }: { sheetId: string; name: string; position: number },
): Step[] {
  const { top, columns, rows } = sheet;
  const header = top.length;
  const cell = (row: number, col: number, content: Content): Step => ({
    type: "UPDATE_CELL",
    sheetId,
    row,
    col,
    content: typed(content),
  });
  const steps: Step[] = [
    {
      type: "CREATE_SHEET",
      sheetId,
      name,
      position,
      cols: columns.length + 4,
      rows: header + 1 + rows + 10,
    },
    ...top.flatMap((line, row) =>
      line.flatMap((content, col) => (content === "" ? [] : [cell(row, col, content)])),
    ),
  ];
  columns.forEach(({ header: title, width, format, first, choices }, col) => {
    const zone = { left: col, right: col, top: header + 1, bottom: header + rows };
    steps.push(cell(header, col, title), {
      type: "RESIZE_COLUMNS_ROWS",
      sheetId,
      dimension: "COL",
      elements: [col],
      size: Math.round(width * 7 + 10),
    });
    if (format) steps.push({ type: "SET_FORMATTING", sheetId, target: [zone], format });
    if (first !== undefined) steps.push(cell(header + 1, col, first));
    if (choices) steps.push(choiceRule(sheetId, zone, choices, `${sheetId}-${col}`));
  });
  const headers = { left: 0, right: columns.length - 1, top: header, bottom: header };
  steps.push(
    { type: "SET_FORMATTING", sheetId, target: [headers], style: HEADER_STYLE },
    {
      type: "RESIZE_COLUMNS_ROWS",
      sheetId,
      dimension: "ROW",
      elements: [header],
      size: HEADER_HEIGHT,
    },
    { type: "FREEZE_ROWS", sheetId, quantity: header + 1 },
  );
  if (top.length > 0) {
    const title = { left: 0, right: 0, top: 0, bottom: 0 };
    steps.push({
      type: "SET_FORMATTING",
      sheetId,
      target: [title],
      style: { bold: true, fontSize: 14 },
    });
  }
  return steps;
}

function choiceRule(sheetId: string, zone: object, choices: readonly string[], id: string): Step {
  return {
    type: "ADD_DATA_VALIDATION_RULE",
    sheetId,
    ranges: [{ _sheetId: sheetId, _zone: zone }],
    rule: {
      id,
      isBlocking: true,
      criterion: { type: "isValueInList", values: [...choices], displayStyle: "arrow" },
    },
  };
}
