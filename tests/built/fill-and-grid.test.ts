// tests: a workbook filled by the command, opened by the grid, which computes it anew: both come to the same.

import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { registerFunctions } from "../../src/browser/register-functions.ts";
import { runFunctionsScript } from "../../src/build/built-functions.ts";
import { distFolder } from "../../src/build/paths.ts";
import { fillWorkbook } from "../../src/fill/fill-workbook.ts";
import { loadFunctions, readMetadata } from "../../src/fill/load-functions.ts";
import { storedNames } from "../../src/workbook/xlsx/stored-names.ts";
import { openWorkbook } from "../../src/workbook/xlsx-grid/open-file.ts";
import { joined, smallWorkbook, textsIn } from "../support/package.ts";
import { gridLibrary } from "../workbook/xlsx-grid/grid-library.ts";

const metadata = readMetadata();
class WorksheetError {
  constructor(
    readonly code: string,
    readonly message?: string,
  ) {}
}
registerFunctions(
  metadata,
  runFunctionsScript(readFileSync(join(distFolder, "functions.js"), "utf8")),
  // The list of proposals, which the support module has set up already, is of no interest here.
  { ...gridLibrary.registries, autoCompleteProviders: { get: () => ({}), replace: () => {} } } as never,
  WorksheetError,
);

const number = (cell: string, value: number) => `<c r="${cell}"><v>${value}</v></c>`;
const text = (cell: string, value: string) => `<c r="${cell}" t="inlineStr"><is><t>${value}</t></is></c>`;
const formula = (cell: string, inside: string) => `<c r="${cell}"><f>${inside}</f><v>0</v></c>`;
const ROWS = 20;

const before = smallWorkbook({
  sheets: {
    Quote: Array.from({ length: ROWS }, (_, i) => {
      const row = i + 1;
      const limits =
        row === 1
          ? `<c r="I1" cm="1"><f t="array" ref="I1:J${ROWS}">_xldudf_REAM_LIMITS(A1:A${ROWS})</f><v>0</v></c>`
          : number(`I${row}`, 0);
      const cells = [
        row === 7 ? text("A7", "7 H") : text(`A${row}`, `${row + 2} H7`),
        number(`B${row}`, 8 + row),
        number(`C${row}`, row === 9 ? -1 : row + 2),
        formula(`D${row}`, `_xldudf_REAM_RPM(B${row},C${row})`),
        formula(`E${row}`, `_xldudf_REAM_HOLETIME(30,_xldudf_REAM_FEEDRATE(0.15,D${row}))`),
        formula(`F${row}`, `IFERROR(ROUND(E${row}*1.1,2),0)`),
        formula(`G${row}`, `IF(F${row}&gt;4,"long","short")&amp;" at "&amp;B${row}`),
        formula(`H${row}`, `SUM(F$1:F$${ROWS})-F${row}+MAX(F$1:F$${ROWS})`),
        limits,
        number(`J${row}`, 0),
        formula(`K${row}`, `INDEX(_xldudf_REAM_LIMITS(A${row}),1,2)-I${row}`),
      ];
      return `<row r="${row}">${cells.join("")}</row>`;
    }).join(""),
  },
});

test("the grid computes what the command has filled in", () => {
  const { pieces, report } = fillWorkbook(before, loadFunctions());
  const after = joined(pieces!);
  expect(report.sheets[0]).toMatchObject({ computed: 6 * ROWS + 1, kept: 0, resized: [] });
  const sheet = textsIn(after)["xl/worksheets/sheet1.xml"];
  const names = storedNames(metadata.functions.map(({ name }) => name));
  const { model } = openWorkbook(after, gridLibrary, names);
  const sheetId = model.getters.getSheetIds()[0];
  let compared = 0;
  for (const [, name, type, held] of sheet.matchAll(
    /<c r="([D-K]\d+)"(?: cm="1")?(?: t="(\w+)")?>(?:<f.*?<\/f>)?<v>([^<]*)<\/v>/g,
  )) {
    const zone = model.getters.getRangeFromSheetXC(sheetId, name).zone;
    const cell = model.getters.getEvaluatedCell({ sheetId, col: zone.left, row: zone.top });
    if (type === undefined) expect(cell.value, name).toBeCloseTo(Number(held), 9);
    else expect(String(cell.value), name).toBe(held);
    compared++;
  }
  expect(compared).toBe(8 * ROWS);
});
