// tests: names of add-in functions between a file and a person.

import fc from "fast-check";
import { expect, test } from "vitest";
import { storedNames } from "../../../src/workbook/xlsx/stored-names.ts";

const names = storedNames(["RPM", "LIMITS", "TAYLOR.FIT"]);

test.each([
  ["_xldudf_REAM_RPM(A2,B2)", "REAM.RPM(A2,B2)"],
  ["[2]!_xldudf_REAM_RPM(A2)", "REAM.RPM(A2)"],
  ["1+[12]!REAM.RPM(A2)", "1+REAM.RPM(A2)"],
  ["REAM.RPM(A2)", "REAM.RPM(A2)"],
  ["_xlfn._xldudf_REAM_RPM(A2)", "REAM.RPM(A2)"],
  ["_xludf.REAM.RPM(A2)", "REAM.RPM(A2)"],
  // As LibreOffice writes functions that it does not know.
  ["_xldudf_ream_rpm(A2)", "REAM.RPM(A2)"],
  ["ream.limits(A2)", "REAM.LIMITS(A2)"],
  ["_xldudf_REAM_TAYLOR_FIT(A2:A9)", "REAM.TAYLOR.FIT(A2:A9)"],
  ["SUM(_xldudf_REAM_RPM(A2),_xldudf_REAM_LIMITS(B2))", "SUM(REAM.RPM(A2),REAM.LIMITS(B2))"],
])("%s is read as %s", (stored, typed) => {
  expect(names.decode(stored)).toBe(typed);
});

test.each([
  '"_xldudf_REAM_RPM("&A2',
  '"say ""_xldudf_REAM_RPM(1)"""',
  "'_xldudf_REAM_RPM('!A2",
  "_xldudf_REAM_NEVER(A2)",
  "_xldudf_OTHER_RPM(A2)",
  "_xldudf_REAM_RPM+1",
  "Holes[[#This Row],[_xldudf_REAM_RPM(]]",
  "[2]Sheet1!A1+REAM_RPM",
])("%s is left as it is", (formula) => {
  expect(names.decode(formula)).toBe(formula);
});

test("a formula as typed is stored in Excel's form, texts untouched", () => {
  expect(names.encode('REAM.RPM(A2,"REAM.RPM(")&REAM.TAYLOR.FIT(B2)')).toBe(
    '_xldudf_REAM_RPM(A2,"REAM.RPM(")&_xldudf_REAM_TAYLOR_FIT(B2)',
  );
});

test("storing and reading again gives the formula as it was", () => {
  const piece = fc.constantFrom(
    "REAM.RPM(A1)",
    '"a ""b"" REAM.RPM("',
    "SUM(A1:B2)",
    "'REAM.X'!A1",
    "-",
    "1.5",
    "[1]!F(2)",
  );
  fc.assert(
    fc.property(fc.array(piece, { maxLength: 8 }), (pieces) => {
      const formula = pieces.join("+");
      expect(names.decode(names.encode(formula))).toBe(formula);
    }),
  );
});

test("names that would be stored alike are refused", () => {
  expect(() => storedNames(["A.B", "A_B"])).toThrow("stored by one name");
});
