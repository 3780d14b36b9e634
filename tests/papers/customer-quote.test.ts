// tests: the customer quote of an invented shop. Prices by hand: (cost + set-up / batch) × 1.12 / 0.8, rounded to
// two decimals before it is multiplied.

import { unzipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { customerQuote, unitPrice } from "../../src/papers/customer-quote.ts";
import { daySerial, dayText, figure, rounded } from "../../src/papers/figures.ts";
import { roughness } from "../../src/papers/quote-conditions.ts";
import { quoteDataSheet, readQuoteData } from "../../src/papers/quote-data.ts";
import type { Content, NewSheet } from "../../src/workbook/workbook.ts";
import { valuesFile } from "../../src/workbook/xlsx/new-file.ts";
import { gridOf } from "../support/function-grid.ts";
import { refusal } from "../support/memory-workbook.ts";
import { quotedPart as part } from "../support/quoted-part.ts";

const settings = { currency: "USD", setupTime: 45, setupRate: 60, overhead: 0.12, margin: 0.2 };
const parts = [
  part({}),
  part({
    part: "VB-40",
    callout: "4X ⌀16 H7 THRU",
    lower: 16,
    upper: 16.018,
    depth: 40,
    holes: 4,
    material: "ductile iron",
    cost: 2.47393,
    drill: "15.75",
    stock: 0.25,
  }),
  part({
    part: "LV-5",
    callout: "⌀.5000 +.0005/-.0000 THRU",
    units: "in",
    lower: 0.5,
    upper: 0.5005,
    depth: 1.25,
    holes: 1,
    material: "alloy steel",
    quantity: 100,
    breaks: [500],
    cost: 2.15219,
    drill: "31/64",
    stock: 0.015625,
  }),
];

/** The sheet of data as a person fills it in. */
function filled(changes: Readonly<Record<string, Content>>): Content[][] {
  const rows = quoteDataSheet(46_352).top.map((row) => [...row]);
  for (const [label, content] of Object.entries({
    "Shop name": "Example Reaming Works",
    "Quote no.": "Q-0147",
    Date: "2026-11-26",
    Customer: "Example Hydraulics",
    ...changes,
  }))
    rows.find(([first]) => first === label)![1] = content;
  const charge = rows.find(([first]) => first === "Charge 1")!;
  charge[1] = "Fixture";
  charge[2] = 650;
  return rows;
}
const data = (changes: Readonly<Record<string, Content>> = {}) => readQuoteData(filled(changes));

/** What a printed page shows, a line for each row. */
async function printed(sheet: NewSheet): Promise<string[]> {
  const grid = gridOf(sheet);
  return sheet.top.map((row, at) =>
    row
      .map((_, column) => grid.shown(`${String.fromCharCode(65 + column)}${at + 1}`))
      .filter((text) => text !== "")
      .join(" | "),
  );
}

describe("a customer quote", () => {
  test("prints the rounded unit price and what it comes to", async () => {
    const lines = await printed(customerQuote(data({ "Parts arrive": "drilled" }), parts, settings, "A4"));
    const text = lines.join("\n");
    expect(text).toContain("1 | PB-12 | 2X ⌀12 H7 x 30 deep | 2 | medium-carbon steel | 250 | 3.44 | 860.00");
    expect(text).toContain("2 | VB-40 | 4X ⌀16 H7 THRU | 4 | ductile iron | 250 | 3.72 | 930.00");
    expect(text).toContain("3 | LV-5 | ⌀.5000 +.0005/-.0000 THRU | 1 | alloy steel | 100 | 3.64 | 364.00");
    for (const words of [
      "12.000–12.018 mm | depth 30.0 mm",
      "16.000–16.018 mm | depth 40.0 mm through",
      "0.5000–0.5005 in | depth 1.25 in through",
      "PB-12 | 50 | 4.45 | 222.50",
      "PB-12 | 250 | 3.44 | 860.00 | quoted",
      "PB-12 | 1,000 | 3.26 | 3,260.00",
      "VB-40 | 50 | 4.72 | 236.00",
      "VB-40 | 1,000 | 3.53 | 3,530.00",
      "LV-5 | 500 | 3.14 | 1,570.00",
      "Parts, USD | 2,154.00",
      "Fixture, once | 650.00",
      "Total, USD | 2,804.00",
      "Date | 2026-11-26",
      "Valid until | 2026-12-26",
      "PB-12: please drill to 11.8 mm (0.200 mm on diameter), position to drawing.",
      "VB-40: please drill to 15.75 mm (0.250 mm on diameter)",
      "LV-5: please drill to 31/64 in (0.0156 in on diameter)",
      "Reaming of 3 parts to drawing",
      "Inspection: Plug gauge on every hole, first part measured.",
      "Prices hold for the material and hardness stated.",
      "Sizes are at 20 °C (68 °F).",
      "Prices do not include tax.",
    ])
      expect(text).toContain(words);
    expect(text).not.toContain("861.23");
    expect(text).not.toMatch(/margin|overhead|cost|scrap|rate|m\/min|cycle/i);
  });

  test("leaves out what was not typed, and breaks that were not asked for", async () => {
    const one = customerQuote(data(), [part({ breaks: [] })], settings, "Letter");
    const text = (await printed(one)).join("\n");
    expect(text).not.toMatch(/Contact|Revision|other quantities|please drill/);
    expect(text).toContain("Reaming of 1 part to drawing");
    expect(one.print).toMatchObject({ paper: "Letter", header: { left: "Example Reaming Works" } });
  });

  test("says what burns, what is plated, and what finish was drawn", async () => {
    const plated = part({
      callout: "10 H7 AFTER PLATING Ra 0.8",
      material: "Ti-6Al-4V",
      lower: 10,
      upper: 10.015,
    });
    expect(await refusal(() => customerQuote(data(), [plated], settings, "A4"))).toContain("Row 9 is plated");
    const coated = data({
      "Coating thickness": 0.05,
      "Coating thickness tolerance, plus or minus": 0.005,
      "Build-up, share of the coating outside the surface": 0.5,
    });
    const text = (await printed(customerQuote(coated, [plated], settings, "A4"))).join("\n");
    expect(text).toContain("10.055–10.060 mm, for a coating of 0.050 ± 0.005 mm");
    expect(text).toContain("Chips burn");
    expect(text).toContain("Finish of PB-12: Ra 0.8");
    const inch = part({ callout: ".5 H7 PLATED", units: "in", rowNumber: 12 });
    expect(await refusal(() => customerQuote(coated, [plated, inch], settings, "A4"))).toMatch(
      /^Rows 9 and 12 are plated, one in mm and one in inches/,
    );
    expect(
      await refusal(() =>
        data({ "Coating thickness": 0.05, "Build-up, share of the coating outside the surface": 50 }),
      ),
    ).toContain('outside the surface is "50"');
    expect(roughness("12 H7 32 FINISH")).toBe("32 FINISH");
    expect(roughness("12 H7")).toBeUndefined();
  });

  test("names the cell that is missing", async () => {
    for (const [label, words] of [
      ["Shop name", "Shop name is empty. Fill in B4"],
      ["Quote no.", "B8 on Quote data"],
      ["Customer", "Customer is empty"],
      ["Date", "Date is empty"],
    ])
      expect(await refusal(() => data({ [label]: "" }))).toContain(words);
    expect(await refusal(() => data({ Date: "26.11.2026" }))).toContain("2026-11-26");
    expect(await refusal(() => data({ "Validity, days": "soon" }))).toContain("Write a number");
    expect(
      await refusal(() =>
        customerQuote(data({ "Parts arrive": "drilled" }), [part({ drill: "" })], settings, "A4"),
      ),
    ).toContain("Row 9 has no drill");
    expect(await refusal(() => customerQuote(data(), [], settings, "A4"))).toContain("no row with a price");
  });

  test("goes out as a file with its own values alone", () => {
    const file = valuesFile(customerQuote(data(), parts, settings, "A4"));
    const files = unzipSync(file);
    expect(Object.keys(files).sort()).toEqual([
      "[Content_Types].xml",
      "_rels/.rels",
      "xl/_rels/workbook.xml.rels",
      "xl/styles.xml",
      "xl/workbook.xml",
      "xl/worksheets/sheet1.xml",
    ]);
    const text = Object.values(files)
      .map((part) => new TextDecoder().decode(part))
      .join("");
    expect(text).not.toMatch(
      /<f[ >]|definedName|REAM|state="hidden"|docProps|creator|2\.28067|Quote of holes/,
    );
    expect(text).toContain("<v>3.44</v>");
    expect(text).toContain('paperSize="9"');
  });

  test("holds as text what a person typed like a formula, on the sheet and in the file", async () => {
    const sheet = customerQuote(data({ Contact: "=1+1" }), parts, settings, "A4");
    expect((await printed(sheet)).join("\n")).toContain("Contact | =1+1");
    const { "xl/worksheets/sheet1.xml": text } = unzipSync(valuesFile(sheet));
    expect(new TextDecoder().decode(text)).toContain(">=1+1</t>");
    const formula = { ...sheet, top: [["=1+1"]] };
    expect(await refusal(() => valuesFile(formula))).toContain("formula");
  });
});

describe("printed figures", () => {
  test("round halves away from zero, in decimal", () => {
    expect([3.445, 1.005, -3.445, 2.5, 1.45].map((value) => rounded(value, 2))).toEqual([
      3.45, 1.01, -3.45, 2.5, 1.45,
    ]);
    expect(rounded(-0.0105, 3)).toBe(-0.011);
    expect([1234567.891, 999.995, -12.5].map((value) => figure(value, 2))).toEqual([
      "1,234,567.89",
      "1,000.00",
      "−12.50",
    ]);
    expect(unitPrice(part({ cost: 3.445 }), 1e9, { ...settings, setupTime: 0, overhead: 0, margin: 0 })).toBe(
      3.45,
    );
  });

  test("days are numbers of a sheet", () => {
    expect(dayText(46_352)).toBe("2026-11-26");
    expect(daySerial("2026-11-26")).toBe(46_352);
    expect(daySerial("26.11.2026")).toBeUndefined();
    expect(daySerial("2026-13-40")).toBeUndefined();
  });
});
