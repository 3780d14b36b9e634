// tests: random formulas computed by the command and by LibreOffice. Where LibreOffice differs from Excel, a rule says so;
// what no rule explains is a fault.

import * as reader from "@e965/xlsx";
import fc from "fast-check";
import { expect, test } from "vitest";
import { fillWorkbook } from "../../src/fill/fill-workbook.ts";
import { loadFunctions } from "../../src/fill/load-functions.ts";
import { cellName } from "../../src/workbook/xlsx/addresses.ts";
import { escapeXml } from "../../src/workbook/xlsx/xml-text.ts";
import { joined, smallWorkbook } from "../support/package.ts";
import { knownDifference } from "./known-differences.ts";
import { converted } from "./office.ts";
import { cells, formula } from "./random-formulas.ts";

/** Always the same formulas, unless others are asked for. */
const seed = Number(process.env.FUZZ_SEED ?? 3);
const FORMULAS = 6000;
const WIDE = 20;

const inputs = (row: number) =>
  cells
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

test("give what LibreOffice gives, but for the differences that are known", () => {
  const sample = fc.sample(formula, { numRuns: FORMULAS, seed });
  const texts = [...new Set(sample)].filter((text) => text.length < 200);
  const nameOf = (i: number) => cellName(19 + Math.floor(i / WIDE), 9 + (i % WIDE));
  let rows = cells[0].map((_, row) => `<row r="${row + 1}">${inputs(row)}</row>`).join("");
  for (let i = 0; i < texts.length; i += WIDE) {
    const line = texts
      .slice(i, i + WIDE)
      .map((text, k) => `<c r="${nameOf(i + k)}"><f>${escapeXml(text)}</f></c>`);
    rows += `<row r="${20 + i / WIDE}">${line.join("")}</row>`;
  }
  // LibreOffice computes all of an array only in a formula that is entered as one.
  const entered = rows.replace(/<c r="(\w+)"><f>(?=[^<]*\{)/g, '<c r="$1"><f t="array" ref="$1">');
  const calculation = '<calcPr fullCalcOnLoad="1"/>';
  const { pieces, report } = fillWorkbook(
    smallWorkbook({ sheets: { S: rows }, workbookPr: calculation }),
    loadFunctions(),
  );
  const theirs = converted(
    smallWorkbook({ sheets: { S: rows, T: entered }, workbookPr: calculation }),
    "xlsx",
  );
  const [ours, plain, asArrays] = [
    valuesIn(joined(pieces!), "S"),
    valuesIn(theirs, "S"),
    valuesIn(theirs, "T"),
  ];
  const different = texts.flatMap((text, i) => {
    const [a, b, c] = [ours, plain, asArrays].map((values) => values(nameOf(i)));
    // What is kept has no value.
    if (a === undefined || isSame(a, b) || (text.includes("{") && isSame(a, c))) return [];
    return { text, ours: a, theirs: b, rule: knownDifference(text) };
  });
  const unexplained = different.filter(({ rule }) => rule === undefined);
  expect(unexplained).toEqual([]);
  // The rules explain a few, and hide nothing.
  expect(different.length).toBeLessThan(texts.length * 0.03);
  expect(report.sheets[0].kept).toBeLessThan(texts.length * 0.03);
});
