// tests: the file that a customer gets, read by LibreOffice.

import * as reader from "@e965/xlsx";
import { expect, test } from "vitest";
import { customerQuote } from "../../src/papers/customer-quote.ts";
import { quoteDataSheet, readQuoteData } from "../../src/papers/quote-data.ts";
import { valuesFile } from "../../src/workbook/xlsx/new-file.ts";
import { quotedPart } from "../support/quoted-part.ts";
import { converted } from "./office.ts";

test("opens with its prices, its day and its words", () => {
  const rows = quoteDataSheet(46_352).top.map((row) => [...row]);
  for (const [label, content] of [
    ["Shop name", "Example Reaming Works"],
    ["Quote no.", "Q-0147"],
    ["Customer", "Example & Sons <Hydraulics>"],
  ])
    rows.find(([first]) => first === label)![1] = content;
  const part = quotedPart({ breaks: [50] });
  const settings = { currency: "USD", setupTime: 45, setupRate: 60, overhead: 0.12, margin: 0.2 };
  const file = valuesFile(customerQuote(readQuoteData(rows), [part], settings, "A4"));
  const book = reader.read(converted(file, "xlsx"));
  expect(book.SheetNames).toEqual(["Quote Q-0147"]);
  const cells = Object.values(book.Sheets["Quote Q-0147"]).map((cell) => (cell as { w?: string }).w);
  for (const shown of ["3.44", "860.00", "2026-11-26", "12.000–12.018 mm", "Example & Sons <Hydraulics>"])
    expect(cells).toContain(shown);
});
