// tests: formulas between a file and the grid. Stored forms of newer functions: [MS-XLSX] 2.3.3.

import { describe, expect, test } from "vitest";
import { functionsIn } from "../../../src/workbook/xlsx/formula-tokens.ts";
import { storedNames } from "../../../src/workbook/xlsx/stored-names.ts";
import {
  fileFormula,
  fillsOneCell,
  gridFormula,
  readsOtherWorkbook,
} from "../../../src/workbook/xlsx-grid/grid-formulas.ts";

const names = storedNames(["RPM", "SAY.TEXT"]);

describe("a formula of a file, for the grid", () => {
  test.each([
    ["_xldudf_REAM_RPM(A1,10)", "REAM.RPM(A1,10)"],
    ["[2]!_xldudf_REAM_SAY_TEXT(A1)", "REAM.SAY.TEXT(A1)"],
    ["REAM.RPM(A1)", "REAM.RPM(A1)"],
    ["_xlfn.CONCAT(A1,_xlfn.CONCAT(B1))", "CONCAT(A1,CONCAT(B1))"],
    ["_xlfn._xlws.FILTER(A1:A9,B1:B9>0)", "FILTER(A1:A9,B1:B9>0)"],
    ['SUM(Sheet1!#REF!)&"#REF!"', 'SUM(Sheet1!#REF)&"#REF!"'],
    ['"_xldudf_REAM_RPM("&A1', '"_xldudf_REAM_RPM("&A1'],
  ])("%s", (stored, typed) => expect(gridFormula(stored, names)).toBe(typed));
});

describe("a formula of the grid, for a file", () => {
  test.each([
    ["REAM.RPM(A1,10)", "_xldudf_REAM_RPM(A1,10)"],
    ["ream.say.text(A1)", "_xldudf_REAM_SAY_TEXT(A1)"],
    ["concat(A1,B1)", "_xlfn.CONCAT(A1,B1)"],
    ["FILTER(A1:A9,B1:B9>0)", "_xlfn._xlws.FILTER(A1:A9,B1:B9>0)"],
    ["sum(#REF,1)", "SUM(#REF!,1)"],
    ["ROUND(A1)+ROUND(A1,2)", "ROUND(A1,0)+ROUND(A1,2)"],
    ["CEILING(SUM(A1,B1))", "CEILING(SUM(A1,B1),1)"],
    ["IFERROR(INDEX({1,2},1))", "IFERROR(INDEX({1,2},1),0)"],
    // A fraction is no date, whatever it looks like.
    ['REAM.SAY.TEXT("1/4")', '_xldudf_REAM_SAY_TEXT("1/4")'],
  ])("%s", (typed, stored) => expect(fileFormula(typed, names)).toBe(stored));
});

describe("whether a formula fills one cell", () => {
  test.each([
    ["A1*2", true],
    ["SUM(A1:A9)", true],
    ["SUM('Job 7'!A1:A9)/ROUND(B1,2)", true],
    ['IF(TRUE,SUMIF(A1:A9,">0"),0)', true],
    ["A1:A9*2", false],
    ["SUM(A1:A9*B1:B9)", false],
    ["SUM(Speeds)", false],
    ["_xldudf_REAM_RPM(A1,10)", false],
    ["SUM({1,2}*A1)", false],
    ["_xlfn._xlws.FILTER(A1:A9,B1:B9)", false],
    ["ROUND(A1:A9,1)", false],
  ])("%s: %s", (formula, expected) => expect(fillsOneCell(formula)).toBe(expected));
});

test.each([
  ["[1]Sheet1!A1", true],
  ["'[1]Sheet 1'!A1+2", true],
  ["SUM([1]!Rates)", true],
  ["Table1[1]", false],
  ["Table1[[#This Row],[Speed]]", false],
  ['SUM(A1,"[1]Sheet1!A1")', false],
  ["'Sheet 1'!A1", false],
])("%s reads another workbook: %s", (formula, expected) =>
  expect(readsOtherWorkbook(formula)).toBe(expected),
);

test("the functions of a formula are told in capitals, texts aside", () => {
  expect(functionsIn('=ream.rpm(A1)+Sum(1)&"MAX(1)"&A1')).toEqual(["REAM.RPM", "SUM"]);
});
