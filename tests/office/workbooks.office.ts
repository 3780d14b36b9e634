// tests: workbooks that LibreOffice has written are filled, and LibreOffice reads what was filled.

import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import * as reader from "@e965/xlsx";
import { parse } from "csv-parse/sync";
import ExcelJS from "exceljs";
import { beforeAll, describe, expect, test } from "vitest";
import { fillCsv } from "../../src/fill/csv/fill-csv.ts";
import { fillWorkbook } from "../../src/fill/fill-workbook.ts";
import { loadFunctions, readMetadata } from "../../src/fill/load-functions.ts";
import type { SheetReport } from "../../src/fill/report.ts";
import { joined, packedEntries, textsIn } from "../support/package.ts";
import { converted } from "./office.ts";

const functions = loadFunctions();
const ROWS = 30;
// 1000·v/(π·D), and 1.5 mm of feed for each 10 turns.
const rpm = (speed: number, diameter: number) => (1000 * speed) / (Math.PI * diameter);
const speedOf = (row: number) => 8 + row;
const diameterOf = (row: number) => 5 + row / 4;

/** As a person's quote: several sheets, styles, a name, a table of limits that spills, native formulas. */
async function quote(): Promise<Uint8Array> {
  const workbook = new ExcelJS.Workbook();
  const sheet = workbook.addWorksheet("Quote");
  sheet.addRow(["callout", "speed", "diameter", "rpm", "feed rate", "least", "greatest", "note"]);
  for (let row = 2; row <= ROWS; row++) {
    sheet.getCell(`A${row}`).value = `${row} H7`;
    sheet.getCell(`B${row}`).value = speedOf(row);
    sheet.getCell(`C${row}`).value = row === 9 ? "soft" : diameterOf(row);
    sheet.getCell(`D${row}`).value = { formula: `_xldudf_REAM_RPM(B${row},C${row})`, result: 0 };
    sheet.getCell(`E${row}`).value = { formula: `IFERROR(ROUND(D${row}*feed,1),0)`, result: 0 };
    for (const column of "FG") sheet.getCell(`${column}${row}`).value = 0;
    sheet.getCell(`D${row}`).numFmt = "0";
    sheet.getRow(row).height = 18;
  }
  sheet.getCell("F2").value = {
    formula: `_xldudf_REAM_LIMITS(A2:A${ROWS})`,
    ref: `F2:G${ROWS}`,
    shareType: "array",
  } as never;
  sheet.getCell("H2").value = { formula: '"REAM.RPM("&TEXT(D2,"0")', result: "" };
  const more = workbook.addWorksheet("Sum & more");
  more.getCell("A1").value = 0.15;
  more.getCell("A2").value = { formula: `SUM(Quote!E2:E${ROWS})`, result: 0 };
  more.getCell("A3").value = { formula: "A1*2", result: 0.3 };
  workbook.definedNames.add("'Sum & more'!$A$1", "feed");
  return new Uint8Array(await workbook.xlsx.writeBuffer());
}

describe("a workbook written by LibreOffice", () => {
  let before: Uint8Array;
  let after: Uint8Array;
  let reports: readonly SheetReport[];
  beforeAll(async () => {
    before = converted(await quote(), "xlsx");
    const { pieces, report } = fillWorkbook(before, functions);
    after = joined(pieces!);
    reports = report.sheets;
  });

  test("holds our functions in LibreOffice's own spelling", () => {
    expect(textsIn(before)["xl/worksheets/sheet1.xml"]).toContain("_xldudf_ream_rpm(B2,C2)");
  });

  test("has every formula computed that depends on them, and one in error", () => {
    const [sheet, more] = reports;
    expect(sheet).toMatchObject({
      computed: 2 * (ROWS - 1) + 2,
      errors: 1,
      kept: 0,
      resized: [],
    });
    expect(sheet.firstErrors).toEqual([
      { cell: "D9", error: "#VALUE!", message: expect.stringContaining('diameter "soft"') },
    ]);
    expect(more).toMatchObject({ computed: 1, errors: 0, kept: 0 });
  });

  test("has the values that the formulas give, as another reader reads them", () => {
    const sheet = reader.read(after, { type: "array" }).Sheets.Quote;
    for (let row = 2; row <= ROWS; row++) {
      if (row === 9) expect(sheet[`D${row}`]).toMatchObject({ t: "e", w: "#VALUE!" });
      else {
        const turns = rpm(speedOf(row), diameterOf(row));
        expect(sheet[`D${row}`].v).toBeCloseTo(turns, 8);
        expect(Math.abs(sheet[`E${row}`].v - turns * 0.15)).toBeLessThanOrEqual(0.051);
      }
      expect(sheet[`F${row}`].v).toBe(row);
      expect(sheet[`G${row}`].v).toBeGreaterThan(row);
    }
    // ISO 286: 12 H7 is +0.018/0.
    expect(sheet.G12.v).toBe(12.018);
    expect(sheet.H2.v).toBe(`REAM.RPM(${Math.round(rpm(speedOf(2), diameterOf(2)))}`);
  });

  test("is the same bytes but for the two sheets, and those but for values and types", () => {
    const changed = packedEntries(before).flatMap(([name, bytes], i) => {
      const [otherName, other] = packedEntries(after)[i];
      expect(otherName).toBe(name);
      return Buffer.compare(other, bytes) === 0 ? [] : [name];
    });
    expect(changed).toEqual(["xl/worksheets/sheet1.xml", "xl/worksheets/sheet2.xml"]);
    const bare = (text: string) =>
      text
        .replace(/<v>[^<]*<\/v>/g, "")
        .replace(/ t="\w+"(?=><f)/g, "")
        .replace(/(<c [^>]*?) t="\w+"/g, "$1");
    for (const name of changed) expect(bare(textsIn(after)[name])).toBe(bare(textsIn(before)[name]));
  });

  test("is read again by LibreOffice, with our values in its ordinary cells", () => {
    const rows: string[][] = parse(Buffer.from(converted(after, "csv")), { relax_column_count: true });
    for (let row = 2; row <= ROWS; row++) {
      const [, , , turns, rate] = rows[row - 1];
      if (row === 9) expect(rate).toBe("0");
      else {
        // Shown in whole turns.
        expect(Math.abs(Number(turns) - rpm(speedOf(row), diameterOf(row)))).toBeLessThanOrEqual(0.5);
        expect(Math.abs(Number(rate) - 0.15 * rpm(speedOf(row), diameterOf(row)))).toBeLessThanOrEqual(0.051);
      }
    }
  });
});

test("a CSV file written by LibreOffice is filled", async () => {
  const folder = mkdtempSync(join(tmpdir(), "office-csv-"));
  try {
    const [input, output] = [join(folder, "in.csv"), join(folder, "out.csv")];
    writeFileSync(input, converted(await quote(), "csv"));
    const formulas = ["width=REAM.TOLERANCE(callout)"];
    const report = await fillCsv(
      { input, output, formulas, units: undefined },
      functions,
      readMetadata(),
      () => {},
    );
    expect(report).toMatchObject({ rows: ROWS - 1, errors: 0 });
    const rows: Record<string, string>[] = parse(readFileSync(output), { columns: true });
    // ISO 286: 12 H7 is +0.018/0.
    expect(rows[10]).toMatchObject({ callout: "12 H7", width: "0.018" });
  } finally {
    rmSync(folder, { recursive: true });
  }
});
