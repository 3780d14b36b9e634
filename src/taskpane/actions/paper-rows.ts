// taskpane: what the papers take from a quoting sheet: its rows and settings as values.

import { type PriceSettings, unitPrice } from "../../papers/customer-quote.ts";
import { rounded } from "../../papers/figures.ts";
import type { HoleRow } from "../../papers/hole-row.ts";
import type { QuotedPart } from "../../papers/quoted-part.ts";
import { type Content, Refusal, type Workbook } from "../../workbook/workbook.ts";
import { readCell } from "../../workbook/xlsx/addresses.ts";
import { isQuoteHeader } from "./continue-quote.ts";
import { unitNamed } from "./header-units.ts";
import { type QuoteColumn, quoteColumns } from "./quote-columns.ts";
import { letterOf, QUOTE_HEADER_ROW, type Setting, settingCell } from "./quoting-sheet.ts";

type Key = QuoteColumn["key"];

export interface QuoteRow {
  /** From 1. */
  readonly number: number;
  of(key: Key): Content;
}

export interface QuoteSheet {
  readonly name: string;
  /** Rows with a callout. */
  readonly rows: readonly QuoteRow[];
  setting(key: Setting): Content;
}

/** The quoting sheet that is shown, or the only one of the workbook. @throws Refusal */
export async function quoteSheet(workbook: Workbook): Promise<QuoteSheet> {
  const { sheet: shown } = await workbook.active();
  const active = await readQuote(workbook, shown);
  if (active) return active;
  const found: QuoteSheet[] = [];
  for (const sheet of await workbook.sheets()) {
    const quote = sheet === shown ? undefined : await readQuote(workbook, sheet);
    if (quote) found.push(quote);
  }
  if (found.length === 1) return found[0];
  throw new Refusal(
    found.length === 0
      ? "There is no quoting sheet: add one with New quote."
      : `There are ${found.length} quoting sheets: show the one that is meant.`,
  );
}

async function readQuote(workbook: Workbook, sheet: string): Promise<QuoteSheet | undefined> {
  const used = await workbook.used(sheet);
  if (!used || used.row + used.rows <= QUOTE_HEADER_ROW) return undefined;
  const all = { sheet, row: 0, column: 0, rows: used.row + used.rows, columns: quoteColumns.length };
  const headers = await workbook.read({ ...all, row: QUOTE_HEADER_ROW - 1, rows: 1 });
  if (!isQuoteHeader(headers.values[0])) return undefined;
  // What is still being computed shows the figures of before.
  const { values } = await workbook.readComputed(all);
  const column = new Map(quoteColumns.map(({ key }, at) => [key, at]));
  const rows = values
    .map((row, at): QuoteRow => ({ number: at + 1, of: (key) => row[column.get(key)!] }))
    .slice(QUOTE_HEADER_ROW)
    .filter((row) => row.of("callout") !== "");
  return {
    name: sheet,
    rows,
    setting: (key) => {
      const { row, column: at } = readCell(settingCell(key))!;
      return values[row][at];
    },
  };
}

/** The row of the active cell. @throws Refusal where it is no row with a part and a callout that can be read */
export async function activeRow(workbook: Workbook): Promise<{ quote: QuoteSheet; row: QuoteRow }> {
  const { sheet, row: at } = await workbook.active();
  const quote = await readQuote(workbook, sheet);
  if (!quote) throw new Refusal(`"${sheet}" is no quoting sheet: select a cell in the row of a part on one.`);
  const row = quote.rows.find(({ number }) => number === at + 1);
  if (!row) throw new Refusal(`Row ${at + 1} has no callout: select a cell in the row of a part.`);
  needed(row, "part");
  if (typeof row.of("lower") !== "number")
    throw new Refusal(
      `The callout in ${letterOf("callout")}${row.number} cannot be read: see the limits beside it.`,
    );
  return { quote, row };
}

/** The unit of a row by any of the names that the functions read. */
function unitsOf(row: QuoteRow): "mm" | "in" {
  const text = String(row.of("units")).trim().toLowerCase();
  const units = text === "" ? "mm" : unitNamed(text);
  if (units) return units;
  throw new Refusal(`Units in ${letterOf("units")}${row.number} is "${text}". Write mm or in.`);
}

function needed(row: QuoteRow, key: Key): string {
  const content = row.of(key);
  const { header } = quoteColumns.find((column) => column.key === key)!;
  if (content === "") throw new Refusal(`${header} is empty. Fill in ${letterOf(key)}${row.number}.`);
  return String(content);
}

/** A number of a row. @throws Refusal that names the cell, where it shows anything else */
function figure(row: QuoteRow, key: Key): number {
  const content = row.of(key);
  if (typeof content === "number") return content;
  const { header } = quoteColumns.find((column) => column.key === key)!;
  throw new Refusal(
    `${header} in ${letterOf(key)}${row.number} shows ${content === "" ? "nothing" : `"${content}"`}: the paper needs a number there.`,
  );
}

/** What a set-up card cannot do without. @throws Refusal that names the cell */
export function refuseCardWithout(row: QuoteRow): void {
  figure(row, "upper");
  figure(row, "depthUsed");
  // An input that cannot be used stops the card; a value that nobody has is printed as not available.
  for (const key of ["speed", "rpm", "feed", "feedRate"] as const)
    if (row.of(key) !== "#N/A") figure(row, key);
}

export function holeRow(row: QuoteRow): HoleRow {
  const depth = row.of("depth");
  return {
    part: String(row.of("part")),
    drawing: String(row.of("drawing")),
    callout: String(row.of("callout")),
    units: unitsOf(row),
    material: needed(row, "material"),
    tool: String(row.of("tool")),
    depth: typeof depth === "number" ? depth : String(depth),
    holes: typeof row.of("holesUsed") === "number" ? Number(row.of("holesUsed")) : 1,
  };
}

/** @throws Refusal where the price on the sheet is not what its cost and settings give: somebody typed over it */
export function refuseTypedPrice(row: QuoteRow, part: QuotedPart, settings: PriceSettings): void {
  if (Math.abs(rounded(figure(row, "price"), 2) - unitPrice(part, part.quantity, settings)) < 0.001) return;
  throw new Refusal(
    `The price in ${letterOf("price")}${row.number} is not what its cost and the settings give. Put its formula back, or change cost or margin.`,
  );
}

export function quotedPart(row: QuoteRow): QuotedPart {
  const depth = row.of("depthUsed");
  const stock = row.of("stock");
  figure(row, "price");
  return {
    rowNumber: row.number,
    part: needed(row, "part"),
    drawing: String(row.of("drawing")),
    callout: String(row.of("callout")),
    units: unitsOf(row),
    lower: figure(row, "lower"),
    upper: figure(row, "upper"),
    depth: typeof depth === "number" ? depth : undefined,
    holes: figure(row, "holesUsed"),
    material: needed(row, "material"),
    quantity: figure(row, "batch"),
    breaks: (["break1", "break2", "break3"] as const).flatMap((key) =>
      row.of(key) === "" ? [] : [figure(row, key)],
    ),
    cost: figure(row, "cost"),
    drill: typeof stock === "number" ? String(row.of("drill")) : "",
    stock: typeof stock === "number" ? stock : undefined,
  };
}

export function priceSettings(quote: QuoteSheet): PriceSettings {
  const number = (key: Setting): number => {
    const content = quote.setting(key);
    if (content === "") return 0;
    if (typeof content === "number") return content;
    throw new Refusal(
      `The setting in ${settingCell(key).replaceAll("$", "")} is "${content}". Write a number.`,
    );
  };
  return {
    currency: String(quote.setting("currency")),
    setupTime: number("setupTime"),
    setupRate: number("setupRate"),
    overhead: number("overhead"),
    margin: number("margin"),
  };
}
