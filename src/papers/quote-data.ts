// papers: what a customer quote holds beside its parts: a sheet of labels and inputs, typed once.

import { type Content, type NewSheet, Refusal } from "../workbook/workbook.ts";
import { daySerial } from "./figures.ts";

export const QUOTE_DATA_SHEET = "Quote data";

const CHARGES = 3;

const fields = [
  ["shop", "Shop name"],
  ["address", "Address"],
  ["phone", "Phone"],
  ["mail", "Mail"],
  ["number", "Quote no."],
  ["revision", "Revision"],
  ["date", "Date"],
  ["validity", "Validity, days"],
  ["customer", "Customer"],
  ["contact", "Contact"],
  ["inquiry", "Your inquiry"],
  ["subject", "Subject"],
  ["delivery", "Delivery"],
  ["payment", "Payment"],
  ["freight", "Freight"],
  ["arrive", "Parts arrive"],
  ["inspection", "Inspection"],
  ["finish", "Finish"],
  ["tax", "Tax"],
  ["coating", "Coating thickness"],
  ["coatingTolerance", "Coating thickness tolerance, plus or minus"],
  ["buildUp", "Build-up, share of the coating outside the surface"],
  ["signer", "For the shop"],
] as const;
export type QuoteField = (typeof fields)[number][0];

const hints: Partial<Record<QuoteField, string>> = {
  shop: "required",
  number: "required",
  customer: "required",
  date: "written once; type another day to change it",
  subject: "blank: Reaming of N parts to drawing",
  arrive: "blank or drilled",
  coating: "for holes that are plated after reaming, in the unit of the row",
  buildUp: "1, or 0.5 for hard anodizing",
  tax: "a line under the total",
};

const CHARGE_HEADER = "One-time charges";

/** The sheet to fill in. @param today a sheet's number for the day */
export function quoteDataSheet(today: number): NewSheet {
  const defaults: Partial<Record<QuoteField, Content>> = {
    date: today,
    validity: 30,
    arrive: "blank",
    inspection: "Plug gauge on every hole, first part measured.",
    tax: "Prices do not include tax.",
  };
  const top: Content[][] = [
    ["Quote data"],
    ["Fill in the blue cells. The customer quote is made from them and from the quoting sheet."],
    [],
    ...fields.map(([key, label]): Content[] => [label, defaults[key] ?? "", hints[key] ?? ""]),
    [],
    [CHARGE_HEADER, "What for", "Amount"],
    ...Array.from({ length: CHARGES }, (_, index): Content[] => [`Charge ${index + 1}`, "", ""]),
  ];
  const first = 4;
  const row = (key: QuoteField) => first + fields.findIndex(([name]) => name === key);
  const last = first + fields.length - 1;
  const charges = last + 3;
  return {
    name: QUOTE_DATA_SHEET,
    top,
    columns: [34, 46, 30].map((width) => ({ header: "", width })),
    rows: 0,
    painted: [
      { area: "A1", look: "title" },
      { area: "A2", look: "note" },
      { area: `A${first}:A${last}`, look: "label" },
      { area: `B${first}:B${last}`, look: "input", align: "left" },
      { area: `C${first}:C${last}`, look: "note" },
      { area: `B${row("date")}`, format: "yyyy-mm-dd" },
      { area: `A${charges - 1}:C${charges - 1}`, look: "header" },
      { area: `B${charges}:C${charges + CHARGES - 1}`, look: "input" },
      { area: `C${charges}:C${charges + CHARGES - 1}`, format: "#,##0.00" },
    ],
  };
}

export interface QuoteData {
  readonly texts: Readonly<Record<QuoteField, string>>;
  readonly date: number;
  readonly validity: number;
  readonly charges: readonly { readonly label: string; readonly amount: number }[];
  readonly coating:
    | { readonly thickness: number; readonly tolerance: number; readonly buildUp: number }
    | undefined;
}

/**
 * Reads the sheet back, rows found by their labels.
 * @param dayShift what the workbook's numbers for days differ by from those that count from 1900
 * @throws Refusal that names the cell that is missing
 */
export function readQuoteData(
  values: readonly (readonly Content[])[],
  firstRow = 1,
  dayShift = 0,
): QuoteData {
  const at = (label: string) => values.findIndex(([first]) => first === label);
  const cellOf = (label: string, column = "B") => `${column}${firstRow + at(label)} on ${QUOTE_DATA_SHEET}`;
  const content = (label: string): Content => values[at(label)]?.[1] ?? "";
  const texts = Object.fromEntries(
    fields.map(([key, label]) => [key, String(content(label)).trim()]),
  ) as Record<QuoteField, string>;
  for (const key of ["shop", "number", "date", "customer"] as const) {
    const label = fields.find(([name]) => name === key)![1];
    if (texts[key] === "") throw new Refusal(`${label} is empty. Fill in ${cellOf(label)}.`);
  }
  const day = content("Date");
  const date = daySerial(typeof day === "number" ? day - dayShift : day);
  if (date === undefined)
    throw new Refusal(`Date is "${texts.date}". Write a day such as 2026-11-26 in ${cellOf("Date")}.`);
  const number = (label: string, least: number, most = Number.POSITIVE_INFINITY): number => {
    const given = content(label);
    if (typeof given !== "number" || given < least || given > most)
      throw new Refusal(`${label} is "${given}". Write a number in ${cellOf(label)}.`);
    return given;
  };
  const charges: { label: string; amount: number }[] = [];
  for (const [index, [first, label = "", amount = ""]] of values.entries()) {
    if (!/^Charge \d+$/.test(String(first)) || (label === "" && amount === "")) continue;
    if (typeof amount !== "number")
      throw new Refusal(
        `${first} has no amount. Write it in C${firstRow + index} on ${QUOTE_DATA_SHEET}, or clear the row.`,
      );
    charges.push({ label: String(label || first), amount });
  }
  const thickness = texts.coating === "" ? undefined : number("Coating thickness", 0);
  return {
    texts,
    date,
    validity: number("Validity, days", 0),
    charges,
    coating:
      thickness === undefined
        ? undefined
        : {
            thickness,
            tolerance:
              texts.coatingTolerance === "" ? 0 : number("Coating thickness tolerance, plus or minus", 0),
            buildUp:
              texts.buildUp === "" ? 1 : number("Build-up, share of the coating outside the surface", 0, 1),
          },
  };
}
