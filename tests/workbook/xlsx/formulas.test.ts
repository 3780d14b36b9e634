// tests: the words of a formula, and shared formulas in the cells that share them.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readBox, readCorner } from "../../../src/workbook/xlsx/addresses.ts";
import { sharedFormula } from "../../../src/workbook/xlsx/formula-shift.ts";
import { tokensOf } from "../../../src/workbook/xlsx/formula-tokens.ts";
import { anySign } from "../../support/any-sign.ts";

describe("words", () => {
  test("every sign of any formula is in one of them", () => {
    fc.assert(
      fc.property(fc.string({ unit: anySign, maxLength: 60 }), (formula) => {
        expect(
          tokensOf(formula)
            .map(({ text }) => text)
            .join(""),
        ).toBe(formula);
      }),
    );
  });

  test.each<[string, string[]]>([
    ['A1&"a ""b"""', ["name A1", "operator &", 'text "a ""b"""']],
    ["'It''s'!A1", ["sheet 'It''s'", "operator !", "name A1"]],
    ["T[[#This Row],[a']b]]", ["name T", "bracket [[#This Row],[a']b]]"]],
    ["#N/A+1.5E+3", ["error #N/A", "operator +", "number 1.5E+3"]],
    ["$A:$B", ["name $A", "operator :", "name $B"]],
    ["Größe<>2", ["name Größe", "operator <>", "number 2"]],
    ['"open', ['unknown "', "name open"]],
  ])("%s", (formula, words) => {
    expect(tokensOf(formula).map(({ kind, text }) => `${kind} ${text}`)).toEqual(words);
  });
});

describe("a shared formula", () => {
  test.each([
    ["A1+$A1+A$1+$A$1", 2, 3, "D3+$A3+D$1+$A$1"],
    ["SUM(B2:B9)", 1, 0, "SUM(B3:B10)"],
    ["SUM(B:B,$B:B)", 4, 1, "SUM(C:C,$B:C)"],
    ["SUM(2:2,$2:3)", 4, 1, "SUM(6:6,$2:7)"],
    ["Sheet2!A1&'A1 b'!A1", 1, 1, "Sheet2!B2&'A1 b'!B2"],
    ['"A1"&LOG10(A1)', 1, 0, '"A1"&LOG10(A2)'],
    ["A1.B+_xldudf_REAM_RPM(A1)", 1, 0, "A1.B+_xldudf_REAM_RPM(A2)"],
    ["A1", 0, 0, "A1"],
    // Round the edge of the sheet.
    ["A1", -1, -1, "XFD1048576"],
  ])("%s, %i down and %i across, is %s", (formula, rows, columns, moved) => {
    expect(sharedFormula(formula).at(rows, columns)).toBe(moved);
  });
});

describe("addresses", () => {
  test("corners", () => {
    expect(readCorner("$B7")).toEqual({ row: 6, column: 1, fixedRow: false, fixedColumn: true });
    expect(readCorner("B$7")).toEqual({ row: 6, column: 1, fixedRow: true, fixedColumn: false });
    expect(readCorner("$7")).toEqual({ row: 6, column: undefined, fixedRow: true, fixedColumn: false });
    expect(readCorner("xfd1048576")).toMatchObject({ row: 1_048_575, column: 16_383 });
    for (const none of ["XFE1", "A1048577", "A0", "$", "A1B", "", "ABCD1", "1A", "B$"])
      expect(readCorner(none), none).toBeUndefined();
  });

  test("boxes, whichever corner stands first", () => {
    expect(readBox("C3")).toEqual({ top: 2, left: 2, bottom: 2, right: 2 });
    expect(readBox("C9:B2")).toEqual({ top: 1, left: 1, bottom: 8, right: 2 });
    for (const none of ["A:A", "A1:B2:C3", "x", ""]) expect(readBox(none), none).toBeUndefined();
  });
});
