// tests: files into the browser workbook and out of it, as a person opens and saves them.

import ExcelJS from "exceljs";
import type { Download, Page } from "playwright-core";

export const said = (page: Page, pattern: RegExp) =>
  page.waitForFunction(
    ([source]) => new RegExp(source).test(document.getElementById("state")!.textContent ?? ""),
    [pattern.source],
  );

export async function openFile(page: Page, name: string, buffer: Buffer): Promise<void> {
  await page.setInputFiles("#file-input", { name, mimeType: "", buffer });
  await said(page, new RegExp(`^${name} (?:is open|was not opened)`));
}

export async function bytesOf(download: Download): Promise<Buffer> {
  return Buffer.concat(await (await download.createReadStream()).toArray());
}

export async function savedBook(download: Download): Promise<ExcelJS.Workbook> {
  const book = new ExcelJS.Workbook();
  await book.xlsx.load((await bytesOf(download)) as never);
  return book;
}

export async function save(page: Page, button: string, asks: boolean): Promise<Download> {
  const download = page.waitForEvent("download");
  await page.click(button);
  if (asks) await page.getByRole("button", { name: "Save without these" }).click();
  return download;
}

/** What B1 of the file below gives at a speed of 15: 1000·v/(π·d). */
export const speed = (1000 * 15) / (Math.PI * 10);

/** A workbook with formulas in the forms that files hold them in, one that cannot be computed, and a second sheet. */
export async function jobFile(): Promise<Buffer> {
  const book = new ExcelJS.Workbook();
  const job = book.addWorksheet("Job 7");
  job.getCell("A1").value = 15;
  job.getCell("A2").value = 10;
  job.getCell("A3").value = "12 H7";
  job.getCell("A4").value = "1/4";
  job.getCell("A1").font = { name: "Calibri", bold: true, size: 11 };
  const formulas: Record<string, string> = {
    B1: "_xldudf_REAM_RPM(A1,A2)",
    B2: "[2]!_xldudf_REAM_RPM(A1,A2)*2",
    B3: "REAM.LIMITS(A3)",
    B5: "_xlfn.LET(_xlpm.x,A1,_xlpm.x+1)",
  };
  for (const [address, formula] of Object.entries(formulas))
    job.getCell(address).value = { formula, result: 16 } as ExcelJS.CellFormulaValue;
  book.addWorksheet("More").getCell("A1").value = {
    formula: "'Job 7'!B1",
    result: 0,
  } as ExcelJS.CellFormulaValue;
  return Buffer.from(await book.xlsx.writeBuffer());
}
