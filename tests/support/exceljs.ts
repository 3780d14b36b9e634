// tests: a workbook file as a library of others reads it.

import ExcelJS from "exceljs";

export async function readBook(bytes: Uint8Array): Promise<ExcelJS.Workbook> {
  const book = new ExcelJS.Workbook();
  await book.xlsx.load(bytes as never);
  return book;
}
