// tests: the demo quote as a file, whole: saved and opened again in a real browser.

import type ExcelJS from "exceljs";
import { afterAll, beforeAll, expect, test } from "vitest";
import { firstRow, lastRow } from "../../src/browser/demo-quote/quote.ts";
import { startBrowser, type TestBrowser } from "./browser.ts";
import { bytesOf, openFile, save, savedBook } from "./file-page.ts";
import { openWorkbook, readSheet } from "./workbook-page.ts";

let browser: TestBrowser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser?.close());

test("the demo quote is saved as it stands, errors included, and opens again with the same results", async () => {
  const { page, errors } = await openWorkbook(browser);
  const before = await readSheet(page);
  const download = await save(page, "#save-file", false);
  expect(download.suggestedFilename()).toBe("quote.xlsx");
  const bytes = await bytesOf(download);
  const book = await savedBook(download);
  const quote = book.getWorksheet("Quote")!;
  const { formula, ref } = quote.getCell(`F${firstRow}`).value as ExcelJS.CellFormulaValue & {
    ref: string;
  };
  expect(formula).toBe(`_xldudf_REAM_LIMITS(C${firstRow}:C${lastRow},D${firstRow}:D${lastRow})`);
  expect(ref).toBe(`F${firstRow}:G${lastRow}`);
  expect(quote.getCell("G6").value).toBe(12.018);
  const faulty = Object.keys(before).filter((cell) => /^#[A-Z/]+[A!?]$/.test(before[cell]));
  expect(faulty.length).toBeGreaterThan(0);
  for (const cell of faulty) {
    const { value } = quote.getCell(cell);
    const shown = (value as ExcelJS.CellFormulaValue).result ?? value;
    expect(shown, cell).toEqual({ error: before[cell] });
  }
  await openFile(page, "quote.xlsx", bytes);
  expect(await readSheet(page)).toEqual(before);
  expect(errors).toEqual([]);
  await page.context().close();
});
