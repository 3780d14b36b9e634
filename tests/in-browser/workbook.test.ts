// tests: the browser workbook, driven in a real browser. Expected sizes: ISO 286-1:2010 Table 1 (IT7 over 10 to
// 18 mm is 18 µm, over 30 to 50 mm 25 µm), limits as written on the drawing, and the reamer rule of ISO 522
// (greatest = maximum less 15 % of the tolerance, least = greatest less 35 %, each share up to a whole 0.001 mm).

import { readFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { holes } from "../../src/browser/demo-quote/holes.ts";
import { firstRow, lastRow } from "../../src/browser/demo-quote/quote.ts";
import type { Metadata } from "../../src/build/metadata.ts";
import { distFolder } from "../../src/build/paths.ts";
import { longTest } from "../support/share.ts";
import { startBrowser, type TestBrowser, type Watched } from "./browser.ts";
import { goTo, openWorkbook, readSelected, readSheet, type, typeInto } from "./workbook-page.ts";

const { functions } = JSON.parse(readFileSync(join(distFolder, "functions.json"), "utf8")) as Metadata;
const computed = ["E", "F", "G", "H", "I", "J", "M", "N", "O", "P", "Q", "R", "S", "T", "X", "Z", "AB"];

const rowOf = (callout: string) => firstRow + holes.findIndex((hole) => hole.callout === callout);

let browser: TestBrowser;
let watched: Watched;
beforeAll(async () => {
  browser = await startBrowser();
  watched = await openWorkbook(browser);
});
afterAll(() => browser?.close());

describe("the demo quote", () => {
  let sheet: Record<string, string>;
  beforeAll(async () => {
    sheet = await readSheet(watched.page);
  });

  test("opens without a network, an error or a refusal by its own policy", () => {
    expect(watched.elsewhere).toEqual([]);
    expect(watched.errors).toEqual([]);
    expect(watched.violations).toEqual([]);
  });

  test("is of the size that a quote has", () => {
    expect(holes.length).toBeGreaterThanOrEqual(25);
    expect(new Set(holes.map(({ units }) => units)).size).toBe(2);
    expect(new Set(holes.map(({ kind }) => kind)).size).toBe(2);
    expect(new Set(holes.map(({ material }) => material)).size).toBeGreaterThanOrEqual(6);
  });

  test("registers every function that functions.json describes", () => {
    expect(functions.length).toBeGreaterThan(0);
    // What is said goes with the next action, and stays as a title.
    return expect(watched.page.locator("#state").getAttribute("title")).resolves.toBe(
      `${functions.length} functions ready`,
    );
  });

  test("fills every computed cell", () => {
    for (let row = firstRow; row <= lastRow; row++) {
      for (const column of computed) expect(sheet[`${column}${row}`], `${column}${row}`).toBeTruthy();
    }
  });

  test("shows errors only where the quote has them: no tolerance", () => {
    const faulty = Object.keys(sheet).filter((cell) =>
      /^#(VALUE!|N\/A|NAME|SPILL|REF|ERROR)/.test(sheet[cell]),
    );
    const rows = new Set(faulty.map((cell) => Number(cell.replace(/\D/g, ""))));
    expect([...rows]).toEqual([rowOf("16")]);
  });

  test("gives limits and reamer of 12 H7 and of .5000 +.0005/-.0000", () => {
    expect(holes[0].callout).toContain("12 H7");
    expect(["F6", "G6", "H6", "I6"].map((cell) => sheet[cell])).toEqual([
      "12.000",
      "12.018",
      "12.008",
      "12.015",
    ]);
    expect(holes[5].callout).toBe(".5000 +.0005/-.0000");
    expect(["F11", "G11", "H11", "I11"].map((cell) => sheet[cell])).toEqual([
      "0.5000",
      "0.5005",
      "0.50020",
      "0.50040",
    ]);
  });

  test("has each computed column from one formula", async () => {
    await goTo(watched.page, "G20");
    const told = await readSelected(watched.page);
    expect(told["From F6"]).toBe(`=REAM.LIMITS(C${firstRow}:C${lastRow},D${firstRow}:D${lastRow})`);
  });

  test("sets both unit systems side by side on the second sheet", async () => {
    const { page } = watched;
    await page.locator(".o-sheet-name", { hasText: "Inch and metric" }).click();
    const both = await readSheet(page);
    const good = holes.map((_, index) => index + firstRow).filter((row) => row !== rowOf("16"));
    expect(good.length).toBe(holes.length - 1);
    expect(both[`F${rowOf("16")}`]).toBe("#VALUE!");
    for (const row of good) {
      const number = (column: string) => Number(both[`${column}${row}`].replaceAll(",", ""));
      expect(Math.abs(number("F") / 25.4 - number("K")), `diameters of row ${row}`).toBeLessThan(0.0001);
      expect(Math.abs(number("H") - number("M")), `speeds of row ${row}`).toBeLessThanOrEqual(1);
      expect(number("I") / 25.4 / number("N"), `feeds of row ${row}`).toBeGreaterThan(0.8);
      expect(number("I") / 25.4 / number("N"), `feeds of row ${row}`).toBeLessThan(1.25);
    }
  });
});

describe("at the keyboard", () => {
  beforeAll(() => watched.page.locator(".o-sheet-name", { hasText: /^Quote$/ }).click());

  test("a callout typed into the sheet is computed", async () => {
    const { page } = watched;
    await typeInto(page, "C6", "40 H7");
    const sheet = await readSheet(page);
    expect(["E6", "F6", "G6"].map((cell) => sheet[cell])).toEqual(["40.000", "40.000", "40.025"]);
    expect(sheet.G7).toBe("20.021");
  });

  test("a callout that can't be read shows its message, and its neighbors stay", async () => {
    const { page } = watched;
    await typeInto(page, "C7", "M12");
    await goTo(page, "F7");
    const told = await readSelected(page);
    expect(told.Result).toBe("#VALUE!");
    expect(told.Message).toContain("M12");
    expect(told.Message).toContain("thread");
    const sheet = await readSheet(page);
    expect(sheet.F6).toBe("40.000");
    expect(sheet.G8).toBe("8.022");
    await expect(page.locator("#errors li", { hasText: "E7" }).first().textContent()).resolves.toContain(
      "thread",
    );
  });

  longTest("the message also shows over the cell", async () => {
    const { page } = watched;
    await goTo(page, "A1");
    const box = await page.locator("#grid canvas").first().boundingBox();
    // Row 7, column F: below column letters and rows 1 to 6, right of row numbers and columns A to E.
    await page.mouse.move(
      box!.x + 48 + 38 + 100 + 234 + 46 + 72 + 30,
      box!.y + 26 + 30 + 20 + 23 + 23 + 36 + 23 + 12,
    );
    const tip = page.locator(".o-popover .o-error-tooltip, .o-error-tooltip").first();
    await tip.waitFor();
    await expect(tip.textContent()).resolves.toContain("thread");
  });

  test("a formula over a range spills down the column", async () => {
    const { page } = watched;
    await typeInto(page, "B40", "10");
    await typeInto(page, "B41", "20");
    await typeInto(page, "C40", "=REAM.RPM(15,B40:B42)");
    const sheet = await readSheet(page);
    // 1000·15/(π·10) and half of it; the empty row stays empty.
    expect(Number(sheet.C40)).toBeCloseTo(477.4648, 1);
    expect(Number(sheet.C41)).toBeCloseTo(238.7324, 1);
    expect(sheet.C42).toBeUndefined();
  });

  longTest("a formula that has no room to spill says so, and spills when it has", async () => {
    const { page } = watched;
    await typeInto(page, "C41", "in the way");
    expect((await readSheet(page)).C40).toBe("#SPILL!");
    await goTo(page, "C41");
    await page.keyboard.press("Delete");
    expect(Number((await readSheet(page)).C41)).toBeCloseTo(238.7324, 1);
  });

  test("what is typed faster than the page is drawn is all there", async () => {
    const { page } = watched;
    await goTo(page, "C43");
    await page.keyboard.type("=1+256");
    await page.keyboard.press("Enter");
    await goTo(page, "C43");
    expect(await page.locator(".o-composer").first().textContent()).toBe("=1+256");
    expect((await readSheet(page)).C43).toBe("257");
  });

  test("=REAM. offers the functions, and a function its arguments", async () => {
    const { page } = watched;
    await goTo(page, "C44");
    await type(page, "=REAM.");
    const offered = page.locator(".o-autocomplete-value");
    const names = async () => (await offered.allTextContents()).map((name) => name.trim());
    await expect.poll(names).toEqual(functions.map(({ name }) => `REAM.${name}`));
    await page.keyboard.type("RPM(");
    const help = page.locator(".o-formula-assistant");
    await help.waitFor();
    const text = await help.textContent();
    const { parameters } = functions.find(({ id }) => id === "RPM")!;
    for (const { name, description } of parameters) {
      expect(text).toContain(name);
      expect(text).toContain(description);
    }
    await page.keyboard.press("Escape");
    await page.keyboard.press("Escape");
  });

  longTest("offers the functions in small letters too", async () => {
    const { page } = watched;
    await goTo(page, "C44");
    await type(page, "=ream.stockch");
    await page.locator(".o-autocomplete-value", { hasText: "REAM.STOCKCHECK" }).waitFor();
    await page.keyboard.press("Escape");
    await page.keyboard.press("Escape");
  });

  test("has needed no network and broken no policy meanwhile", () => {
    expect(watched.elsewhere).toEqual([]);
    expect(watched.violations).toEqual([]);
    expect(watched.errors).toEqual([]);
  });
});
