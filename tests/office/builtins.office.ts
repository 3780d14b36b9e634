// tests: what the command computes with the spreadsheet's own functions, against LibreOffice's own recalculation.

import * as reader from "@e965/xlsx";
import { describe, expect, test } from "vitest";
import { builtins } from "../../src/fill/builtins/all.ts";
import { fillWorkbook } from "../../src/fill/fill-workbook.ts";
import { loadFunctions } from "../../src/fill/load-functions.ts";
import { cellName } from "../../src/workbook/xlsx/addresses.ts";
import { escapeXml } from "../../src/workbook/xlsx/xml-text.ts";
import { joined, smallWorkbook } from "../support/package.ts";
import { arrayFormulas, builtinFormulas, inputs } from "./builtin-formulas.ts";
import { converted } from "./office.ts";

const ROW = 5;
const COLUMN = 6;
interface Placed {
  readonly text: string;
  readonly row: number;
  readonly column: number;
  readonly size: readonly [rows: number, columns: number];
  readonly isArray: boolean;
}

/** Each in a row of its own, the third row for the first, so that column A crosses some of them. */
const formulas = builtinFormulas.flatMap(([, ...texts]) => texts);
const placed: Placed[] = [
  ...formulas.map((text, i) => ({
    text,
    row: 1 + (i % ROW),
    column: COLUMN + Math.floor(i / ROW),
    size: [1, 1] as const,
    isArray: false,
  })),
  ...arrayFormulas.map(([text, rows, columns], i) => ({
    text,
    row: 20 + 10 * i,
    column: COLUMN,
    size: [rows, columns] as const,
    isArray: true,
  })),
];

/** With column A by our functions, or as plain numbers and without any value for LibreOffice to take over. */
function workbook(ours: boolean): Uint8Array {
  const rows = new Map<number, Map<number, string>>();
  const put = (row: number, column: number, inside: string, attributes = "") => {
    const cells = rows.get(row) ?? new Map();
    rows.set(row, cells.set(column, `<c r="${cellName(row, column)}"${attributes}>${inside}</c>`));
  };
  for (let row = 0; row < 6; row++)
    put(row, 0, ours ? `<f>_xldudf_REAM_CONVERT(${row + 1},"mm","mm")</f><v>0</v>` : `<v>${row + 1}</v>`);
  for (const [name, value] of Object.entries(inputs)) {
    const [row, column] = [Number(name.slice(1)) - 1, name.charCodeAt(0) - 65];
    if (typeof value === "string") put(row, column, `<is><t>${escapeXml(value)}</t></is>`, ' t="inlineStr"');
    else put(row, column, `<v>${Number(value)}</v>`, typeof value === "boolean" ? ' t="b"' : "");
  }
  for (const { text, row, column, size, isArray } of placed) {
    const last = cellName(row + size[0] - 1, column + size[1] - 1);
    const formula = isArray
      ? `<f t="array" ref="${cellName(row, column)}:${last}">${escapeXml(text)}</f>`
      : `<f>${escapeXml(`IF($A$1=1,${text})`)}</f>`;
    for (let i = 0; i < size[0]; i++)
      for (let k = 0; k < size[1]; k++)
        put(row + i, column + k, (i === 0 && k === 0 ? formula : "") + (ours ? "<v>0</v>" : ""));
  }
  const sheet = [...rows]
    .sort(([a], [b]) => a - b)
    .map(([row, cells]) => {
      const sorted = [...cells].sort(([a], [b]) => a - b).map(([, cell]) => cell);
      return `<row r="${row + 1}">${sorted.join("")}</row>`;
    });
  return smallWorkbook({ sheets: { Sheet1: sheet.join("") } });
}

/** Where LibreOffice is known to differ from what Microsoft documents for Excel, and in what. */
const differs: ReadonlyMap<string, string> = new Map([
  ["ATAN2(0,0)", "Excel: both 0 is #DIV/0!; LibreOffice: 0"],
  ["MROUND(-7,3)", "Excel: different signs are #NUM!; LibreOffice rounds all the same"],
  ...['CONCATENATE(A1,"-",B1,TRUE)', "A1&B1&TRUE", "B1<TRUE"].map(
    (text) => [text, "Excel: a truth is a kind of its own; LibreOffice: it is the number 1"] as const,
  ),
]);

/** LibreOffice has more kinds of errors than a file can say, and writes those as #VALUE!. */
const isSameError = (mine: Cell, other: Cell) =>
  typeof mine === "string" && (mine === other || (/^#[A-Z/0!]+[!A]$/.test(mine) && other === "#VALUE!"));

type Cell = number | string | boolean | undefined;

function readCell(sheet: reader.WorkSheet, name: string): Cell {
  const cell = sheet[name] as reader.CellObject | undefined;
  if (cell?.t === "e") return String(cell.w ?? cell.v);
  return cell?.v as Cell;
}

const filled = fillWorkbook(workbook(true), loadFunctions());
const ours = reader.read(joined(filled.pieces!), { type: "array" }).Sheets.Sheet1;
const theirs = reader.read(converted(workbook(false), "xlsx"), { type: "array" }).Sheets.Sheet1;

test("every function that is computed has a formula here", () => {
  // LET and XLOOKUP came after this LibreOffice; the others are how Excel writes A1# and @A1.
  const elsewhere = ["LET", "XLOOKUP", "ANCHORARRAY", "SINGLE"];
  const asked = builtinFormulas.map(([name]) => name);
  expect([...builtins.keys()].filter((name) => !asked.includes(name) && !elsewhere.includes(name))).toEqual(
    [],
  );
});

test("every formula is computed", () => {
  expect(filled.report.sheets[0].firstKept).toEqual([]);
  expect(filled.report.sheets[0].computed).toBe(placed.length + 6);
});

describe("gives what LibreOffice gives", () => {
  test.each(placed)("$text", ({ text, row, column, size }) => {
    for (let i = 0; i < size[0]; i++)
      for (let k = 0; k < size[1]; k++) {
        const name = cellName(row + i, column + k);
        const [mine, other] = [readCell(ours, name), readCell(theirs, name)];
        if (differs.has(text)) expect(mine).not.toEqual(other);
        else if (typeof mine === "number" && typeof other === "number")
          expect(Math.abs(mine - other)).toBeLessThanOrEqual(1e-12 * Math.max(1, Math.abs(other)));
        else if (!isSameError(mine, other)) expect(mine).toEqual(other);
      }
  });
});
