// tests: random formulas computed by the command and by LibreOffice. Where they differ, LibreOffice is given the formula
// once more, in the words in which it computes what Excel does: what differs still is a fault.

import * as reader from "@e965/xlsx";
import fc from "fast-check";
import { expect, test } from "vitest";
import { fillWorkbook } from "../../src/fill/fill-workbook.ts";
import { loadFunctions } from "../../src/fill/load-functions.ts";
import { cellName } from "../../src/workbook/xlsx/addresses.ts";
import { escapeXml } from "../../src/workbook/xlsx/xml-text.ts";
import { joined, smallWorkbook } from "../support/package.ts";
import { asExcelComputes, isOfDifferentSizes, otherSheets } from "./known-differences.ts";
import { converted } from "./office.ts";
import { cells, formula } from "./random-formulas.ts";

/** Always the same formulas, unless others are asked for. */
const seed = Number(process.env.FUZZ_SEED ?? 3);
const FORMULAS = 6000;
const WIDE = 20;

const inputs = (row: number, columns = cells) =>
  columns
    .map((column, at) => {
      const value = column[row] ?? null;
      const name = cellName(row, at);
      if (value === null) return "";
      if (typeof value === "number") return `<c r="${name}"><v>${value}</v></c>`;
      if (typeof value === "boolean") return `<c r="${name}" t="b"><v>${Number(value)}</v></c>`;
      if (typeof value === "object") return `<c r="${name}" t="e"><v>${value.error}</v></c>`;
      return `<c r="${name}" t="inlineStr"><is><t>${value}</t></is></c>`;
    })
    .join("");

type Cell = number | string | boolean | undefined;
const isErrorCode = (value: Cell) => typeof value === "string" && /^#[A-Z/0]+[!?A]$/.test(value);

function valuesIn(file: Uint8Array, sheetName: string): (name: string) => Cell {
  const sheet = reader.read(file, { type: "array" }).Sheets[sheetName];
  return (name) => {
    const cell = sheet[name] as reader.CellObject | undefined;
    return cell?.t === "e" ? String(cell.w ?? cell.v) : (cell?.v as Cell);
  };
}

/** LibreOffice tells errors apart otherwise, and truths from numbers not at all. */
function isSame(ours: Cell, theirs: Cell): boolean {
  if (ours === theirs || (isErrorCode(ours) && isErrorCode(theirs))) return true;
  if (ours === "" && theirs === undefined) return true;
  if (typeof ours === "string" || typeof theirs === "string") return false;
  const [a, b] = [Number(ours), Number(theirs)];
  return Math.abs(a - b) <= 1e-12 * Math.max(1, Math.abs(b));
}

const rowsOf = (columns = cells) =>
  columns[0].map((_, row) => `<row r="${row + 1}">${inputs(row, columns)}</row>`).join("");
const nameOf = (i: number) => cellName(19 + Math.floor(i / WIDE), 9 + (i % WIDE));
const asksForAll = '<calcPr fullCalcOnLoad="1"/>';

/** The cells and below them the formulas; `isArray` for those that are entered as arrays. */
function sheetWith(formulas: readonly string[], isArray: (text: string) => boolean): string {
  let rows = rowsOf();
  for (let i = 0; i < formulas.length; i += WIDE) {
    const line = formulas.slice(i, i + WIDE).map((text, k) => {
      const entered = isArray(text) ? ` t="array" ref="${nameOf(i + k)}"` : "";
      return `<c r="${nameOf(i + k)}"><f${entered}>${escapeXml(text)}</f></c>`;
    });
    rows += `<row r="${20 + i / WIDE}">${line.join("")}</row>`;
  }
  return rows;
}

/** What LibreOffice gives for formulas, in plain cells and entered as arrays: only so it computes all of an array. */
function theirs(formulas: readonly string[]): readonly ((name: string) => Cell)[] {
  const others = Object.entries(otherSheets).map(([name, columns]) => [name, rowsOf(columns)]);
  const sheets = {
    S: sheetWith(formulas, () => false),
    T: sheetWith(formulas, (text) => text.includes("{")),
    ...Object.fromEntries(others),
  };
  const file = converted(smallWorkbook({ sheets, workbookPr: asksForAll }), "xlsx");
  return ["S", "T"].map((name) => valuesIn(file, name));
}

test("give what LibreOffice gives where it computes as Excel does", () => {
  const sample = fc.sample(formula, { numRuns: FORMULAS, seed });
  const texts = [...new Set(sample)].filter((text) => text.length < 200);
  const { pieces, report } = fillWorkbook(
    smallWorkbook({ sheets: { S: sheetWith(texts, () => false) }, workbookPr: asksForAll }),
    loadFunctions(),
  );
  const ours = valuesIn(joined(pieces!), "S");
  const given = theirs(texts);
  const different = texts.flatMap((text, i) => {
    const value = ours(nameOf(i));
    const [plain, asArray] = given.map((values) => values(nameOf(i)));
    // What is kept has no value.
    if (value === undefined || isSame(value, plain)) return [];
    return text.includes("{") && isSame(value, asArray) ? [] : { text, ours: value, theirs: plain };
  });
  const rewritten = theirs(different.map(({ text }) => asExcelComputes(text)));
  const faults = different.filter(
    ({ ours: value }, i) => !rewritten.some((values) => isSame(value, values(nameOf(i)))),
  );
  expect(faults.filter(({ text }) => !isOfDifferentSizes(text))).toEqual([]);
  expect(faults.length).toBeLessThan(texts.length * 0.002);
  expect(different.length).toBeLessThan(texts.length * 0.03);
  // Kept are choices between arrays and empty conditions, which no help describes.
  expect(report.sheets[0].kept).toBeLessThan(texts.length * 0.05);
});
