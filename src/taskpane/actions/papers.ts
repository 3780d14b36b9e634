// taskpane: the papers, each made from the quoting sheet or from the row of the active cell.

import { beforeAndAfter } from "../../papers/before-and-after.ts";
import { customerQuote } from "../../papers/customer-quote.ts";
import { QUOTE_DATA_SHEET, quoteDataSheet, readQuoteData } from "../../papers/quote-data.ts";
import { setUpCard } from "../../papers/set-up-card.ts";
import { troubleSheet } from "../../papers/trouble-sheet.ts";
import { type NewSheet, type PrintSetup, sheetReference, type Workbook } from "../../workbook/workbook.ts";
import { sheetName, valuesFile } from "../../workbook/xlsx/new-file.ts";
import {
  activeRow,
  holeRow,
  priceSettings,
  quotedPart,
  quoteSheet,
  refuseCardWithout,
  refuseTypedPrice,
} from "./paper-rows.ts";
import { shopTablesOf } from "./shop-table.ts";

type Paper = PrintSetup["paper"];

/** A sheet's number for a day of the calendar here. */
export const dayNumber = (now: Date): number =>
  Math.round(Date.UTC(now.getFullYear(), now.getMonth(), now.getDate()) / 86_400_000) + 25_569;

async function added(workbook: Workbook, sheet: NewSheet): Promise<string> {
  return workbook.addSheet({ ...sheet, name: sheetName(sheet.name) });
}

/** The quote as a sheet of this workbook or of another; undefined if the data for it was asked for first. @throws Refusal */
async function quoteFrom(
  workbook: Workbook,
  paper: Paper,
  now: Date,
  isForHere: boolean,
): Promise<NewSheet | undefined> {
  const dayShift = await workbook.dayShift();
  const quote = await quoteSheet(workbook);
  if (!(await workbook.sheets()).includes(QUOTE_DATA_SHEET)) {
    await workbook.addSheet(quoteDataSheet(dayNumber(now) + dayShift));
    return undefined;
  }
  const used = (await workbook.used(QUOTE_DATA_SHEET))!;
  const { values } = await workbook.read({
    ...used,
    row: 0,
    column: 0,
    rows: used.row + used.rows,
    columns: Math.max(3, used.column + used.columns),
  });
  const data = readQuoteData(values, 1, dayShift);
  const settings = priceSettings(quote);
  const parts = quote.rows.map((row) => {
    const part = quotedPart(row);
    refuseTypedPrice(row, part, settings);
    return part;
  });
  return customerQuote({ ...data, date: data.date + (isForHere ? dayShift : 0) }, parts, settings, paper);
}

const ASKED = `The sheet "${QUOTE_DATA_SHEET}" is added. Fill in shop, quote number and customer, then press the button again.`;

export async function makeQuote(workbook: Workbook, paper: Paper, now: Date): Promise<string> {
  const sheet = await quoteFrom(workbook, paper, now, true);
  if (!sheet) return ASKED;
  const name = await added(workbook, sheet);
  return `The sheet "${name}" is added, values only. Shop and customer come from "${QUOTE_DATA_SHEET}". Print it, or make the customer's file.`;
}

/** @returns what came of it, and the file if there is one to download */
export async function makeQuoteFile(
  workbook: Workbook,
  paper: Paper,
  now: Date,
): Promise<{ told: string; file?: { name: string; bytes: Uint8Array<ArrayBuffer> } }> {
  const sheet = await quoteFrom(workbook, paper, now, false);
  if (!sheet) return { told: ASKED };
  const bytes = valuesFile(sheet);
  const name = `${sheetName(sheet.name)}.xlsx`;
  if (await workbook.openNew(bytes))
    return { told: "The customer's file is open as a workbook of its own: save it, then send it." };
  return { told: `${name} is saved: this sheet alone, values only.`, file: { name, bytes } };
}

export async function makeCard(workbook: Workbook, paper: Paper): Promise<string> {
  const { quote, row } = await activeRow(workbook);
  const hole = holeRow(row);
  refuseCardWithout(row);
  const table = (await shopTablesOf(workbook))[hole.units];
  const maxRpm = quote.setting("maxRpm");
  const sheet = setUpCard(
    {
      row: hole,
      ...(table ? { table: `${sheetReference(table.sheet)}!${table.address}` } : {}),
      ...(typeof maxRpm === "number" ? { maxRpm } : {}),
    },
    paper,
  );
  return `The sheet "${await added(workbook, sheet)}" is added. Type readings into its lines, or print it and write.`;
}

export async function makeComparison(workbook: Workbook, paper: Paper, now: Date): Promise<string> {
  const { row } = await activeRow(workbook);
  const today = dayNumber(now) + (await workbook.dayShift());
  const name = await added(workbook, beforeAndAfter(holeRow(row), today, paper));
  return `The sheet "${name}" is added. Type both processes into the columns beside the page.`;
}

export async function makeTrouble(workbook: Workbook, paper: Paper): Promise<string> {
  const { row } = await activeRow(workbook);
  const name = await added(workbook, troubleSheet(holeRow(row), paper));
  return `The sheet "${name}" is added. Type positions and diameters, or print it and write.`;
}
