// tests: names of a sheet and of the workbook that are called the same, in formulas of names.

import { expect, test } from "vitest";
import { fillWorkbook } from "../../src/fill/fill-workbook.ts";
import { joined, partsOf, textsIn, zipped } from "../support/package.ts";
import { functions } from "../support/small-functions.ts";

test("a name of the workbook stands for the same on every sheet, a name of a sheet for what its sheet calls so", () => {
  const name = (of: string, formula: string, sheet?: number) =>
    `<definedName name="${of}"${sheet === undefined ? "" : ` localSheetId="${sheet}"`}>${formula}</definedName>`;
  const cell = (at: string, formula: string) => `<c r="${at}"><f>${formula}</f></c>`;
  const parts = partsOf({
    sheets: {
      One: `<row r="1">${cell("A1", "Rate")}${cell("B1", "Twice")}${cell("C1", "Own")}${cell("D1", "Two!Own")}</row>`,
      Two: `<row r="1">${cell("A1", "Rate")}${cell("B1", "Twice")}${cell("C1", "Own")}</row>`,
    },
    definedNames:
      name("Rate", "5") +
      name("Rate", "7", 0) +
      name("Rate", "9", 1) +
      name("Twice", "Rate*2") +
      name("Own", "Rate*3", 0) +
      name("Own", "Rate*100", 1),
  });
  const main = "xl/workbook.xml";
  parts[main] = parts[main].replace("</workbook>", '<calcPr fullCalcOnLoad="1"/></workbook>');
  const { pieces } = fillWorkbook(zipped(parts), functions);
  const texts = textsIn(joined(pieces!));
  const values = (sheet: number) =>
    [...texts[`xl/worksheets/sheet${sheet}.xml`].matchAll(/<v>([^<]*)<\/v>/g)].map(([, value]) =>
      Number(value),
    );
  expect(values(1)).toEqual([7, 10, 21, 900]);
  expect(values(2)).toEqual([9, 10, 900]);
});
