// papers: the quote that a customer gets. Values only: nothing of the cost sheet is in it but the printed prices.

import { readCallout } from "../calc/callouts/read-callout.ts";
import { price } from "../calc/cost/part-cost.ts";
import { type NewSheet, type PrintSetup, Refusal } from "../workbook/workbook.ts";
import { figure, lengthFigure, rounded } from "./figures.ts";
import { COLUMNS, cell, Layout, type PaperCell } from "./layout.ts";
import { conditions } from "./quote-conditions.ts";
import type { QuoteData } from "./quote-data.ts";
import type { QuotedPart } from "./quoted-part.ts";

export interface PriceSettings {
  readonly currency: string;
  readonly setupTime: number;
  readonly setupRate: number;
  readonly overhead: number;
  readonly margin: number;
}

/** The unit price that is printed and multiplied: rounded to two decimals. */
export function unitPrice({ cost }: QuotedPart, quantity: number, settings: PriceSettings): number {
  const { setupTime, setupRate, overhead, margin } = settings;
  return rounded(price(cost, setupTime, setupRate, quantity, overhead, margin), 2);
}

const amountOf = (unit: number, quantity: number) => rounded(unit * quantity, 2);

const MONEY = "#,##0.00";
const DAY = "yyyy-mm-dd";
const COUNT = "#,##0";
/** How many characters of a callout a line of its cell shows. */
const CALLOUT_CHARACTERS = 18;

/** @throws Refusal that says which cell is missing */
export function customerQuote(
  data: QuoteData,
  parts: readonly QuotedPart[],
  settings: PriceSettings,
  paper: PrintSetup["paper"],
): NewSheet {
  if (parts.length === 0) throw new Refusal("The quoting sheet has no row with a price.");
  const { texts } = data;
  const layout = new Layout();
  letterhead(layout, data);
  layout.gap();
  const subject =
    texts.subject || `Reaming of ${parts.length} ${parts.length === 1 ? "part" : "parts"} to drawing`;
  layout.row([cell(subject, COLUMNS, "strong", "@")]);
  layout.gap();
  const headers = layout.next - 1;
  const amounts = partTable(layout, parts, settings);
  breakTable(layout, parts, settings);
  layout.gap();
  totals(layout, data, amounts, settings.currency);
  layout.gap();
  conditions(layout, data, parts);
  layout.gap();
  const tail = layout.next - 1;
  signatures(layout, texts.signer);
  return layout.sheet(`Quote ${texts.number}`, {
    paper,
    repeated: [headers, headers],
    tail,
    header: { left: texts.shop, right: "Quote" },
    footer: [texts.number, texts.revision && `revision ${texts.revision}`].filter(Boolean).join(", "),
  });
}

function letterhead(layout: Layout, { texts, date, validity }: QuoteData): void {
  layout.row([cell(texts.shop, 7, "title", "@"), cell("Quote", 5, "title", undefined, "right")], 2);
  const left = [texts.address, texts.phone, texts.mail].filter((text) => text !== "");
  const all: [string, string | number][] = [
    ["Quote no.", texts.number],
    ["Revision", texts.revision],
    ["Date", date],
    ["Valid until", date + validity],
  ];
  const right = all.filter(([, content]) => content !== "");
  for (let at = 0; at < Math.max(left.length, right.length); at++)
    layout.row([
      cell(left[at] ?? "", 7, undefined, "@"),
      cell(right[at]?.[0] ?? "", 2, "label"),
      cell(right[at]?.[1] ?? "", 3, undefined, typeof right[at]?.[1] === "number" ? DAY : "@", "right"),
    ]);
  layout.gap();
  for (const [label, text] of [
    ["Customer", texts.customer],
    ["Contact", texts.contact],
    ["Your inquiry", texts.inquiry],
  ])
    if (text !== "")
      layout.row([cell(label, 2, "label"), cell(text, 10, label === "Customer" ? "strong" : undefined, "@")]);
}

/** Gives the amounts. */
function partTable(
  layout: Layout,
  parts: readonly QuotedPart[],
  { currency, ...rest }: PriceSettings,
): number[] {
  const settings = { currency, ...rest };
  const head = (text: string, span: number, align?: PaperCell["align"]) =>
    cell(text, span, "header", undefined, align);
  layout.row(
    [
      head("Item", 1),
      head("Part, drawing", 2),
      head("Hole as drawn; limits; depth", 2),
      head("Holes per part", 1),
      head("Material", 2),
      head("Quantity", 1, "right"),
      head(`Unit price, ${currency}`, 1, "right"),
      head(`Amount, ${currency}`, 2, "right"),
    ],
    3,
  );
  return parts.map((part, index) => {
    const unit = unitPrice(part, part.quantity, settings);
    const amount = amountOf(unit, part.quantity);
    const { units } = part;
    const limits = `${lengthFigure(part.lower, units)}–${lengthFigure(part.upper, units)}`;
    layout.row(
      [
        cell(index + 1, 1, "wrapped", "0", "left"),
        cell(part.part, 2, "wrapped", "@"),
        cell(part.callout, 2, "wrapped", "@"),
        cell(part.holes, 1, "wrapped", "0", "center"),
        cell(part.material, 2, "wrapped", "@"),
        cell(part.quantity, 1, "wrapped", COUNT),
        cell(unit, 1, "wrapped", MONEY),
        cell(amount, 2, "wrapped", MONEY),
      ],
      Math.ceil(part.callout.length / CALLOUT_CHARACTERS),
    );
    layout.row([
      cell("", 1),
      cell(part.drawing === "" ? "Drawing ________" : part.drawing, 2, "note", "@"),
      cell(`${limits} ${units}`, 3, undefined, "@"),
      cell(depthText(part), 6, undefined, "@"),
    ]);
    return amount;
  });
}

function depthText({ depth, callout, units }: QuotedPart): string {
  const { through } = readCallout(callout, "callout", units);
  const deep = depth === undefined ? "" : `depth ${figure(depth, units === "mm" ? 1 : 2)} ${units}`;
  return [deep, through ? "through" : ""].filter(Boolean).join(" ");
}

function breakTable(layout: Layout, parts: readonly QuotedPart[], settings: PriceSettings): void {
  const rows = parts
    .filter(({ breaks }) => breaks.length > 0)
    .flatMap((part) =>
      [...new Set([...part.breaks, part.quantity])]
        .sort((a, b) => a - b)
        .map((quantity) => ({ part, quantity, unit: unitPrice(part, quantity, settings) })),
    );
  if (rows.length === 0) return;
  layout.gap();
  layout.heading("Price at other quantities");
  layout.row([
    cell("Part", 4, "header"),
    cell("Quantity", 2, "header", undefined, "right"),
    cell(`Unit price, ${settings.currency}`, 2, "header", undefined, "right"),
    cell(`Amount, ${settings.currency}`, 2, "header", undefined, "right"),
    cell("", 2, "header"),
  ]);
  for (const { part, quantity, unit } of rows) {
    const isQuoted = quantity === part.quantity;
    const look = isQuoted ? "shaded" : undefined;
    layout.row([
      cell(part.part, 4, look, "@"),
      cell(quantity, 2, look, COUNT),
      cell(unit, 2, look, MONEY),
      cell(amountOf(unit, quantity), 2, look, MONEY),
      cell(isQuoted ? "quoted" : "", 2, look),
    ]);
  }
}

function totals(
  layout: Layout,
  { charges, texts }: QuoteData,
  amounts: readonly number[],
  currency: string,
): void {
  const line = (label: string, amount: number, look?: PaperCell["look"]) =>
    layout.row([cell("", 4), cell(label, 5, look, "@"), cell(amount, 3, look, MONEY)]);
  const parts = amounts.reduce((sum, amount) => sum + amount, 0);
  if (charges.length > 0) {
    line(`Parts, ${currency}`, rounded(parts, 2));
    for (const { label, amount } of charges) line(`${label}, once`, rounded(amount, 2));
  }
  const once = charges.reduce((sum, { amount }) => sum + rounded(amount, 2), 0);
  line(`Total, ${currency}`, rounded(parts + once, 2), "total");
  if (texts.tax !== "") layout.row([cell("", 4), cell(texts.tax, 8, "note", "@")]);
}

function signatures(layout: Layout, signer: string): void {
  layout.row([cell("For the shop", 6, "strong"), cell("Accepted by customer", 6, "strong")]);
  for (const [label, text] of [
    ["Name", signer],
    ["Date", ""],
    ["Signature", ""],
  ])
    layout.row(
      [
        cell(label, 2, "label"),
        cell(text, 3, "line", "@"),
        cell("", 1),
        cell(label, 2, "label"),
        cell("", 3, "line"),
      ],
      2,
    );
}
