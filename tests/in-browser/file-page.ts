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
