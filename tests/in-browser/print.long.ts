// tests: what the browser workbook prints, made by Chromium as a PDF and read back. Prices of the invented part: see
// tests/papers/customer-quote.test.ts.

import { writeFileSync } from "node:fs";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type PdfPage, pagesOf } from "../support/pdf.ts";
import { startBrowser, type TestBrowser, type Watched } from "./browser.ts";
import { openPane, paste, press, select, tool } from "./pane-page.ts";
import { goTo } from "./workbook-page.ts";

let browser: TestBrowser;
let watched: Watched;
beforeAll(async () => {
  browser = await startBrowser();
  watched = await openPane(browser);
});
afterAll(() => browser?.close());

const A4 = [595, 842];
const LETTER = [612, 792];
async function printed(name: string): Promise<PdfPage[]> {
  const bytes = await watched.page.pdf({ preferCSSPageSize: true, printBackground: true });
  if (process.env.KEEP_PDF) writeFileSync(`${process.env.KEEP_PDF}/${name}.pdf`, bytes);
  return pagesOf(bytes);
}
const size = ({ width, height }: PdfPage) => [Math.round(width), Math.round(height)];
const showSheet = (name: RegExp) => watched.page.locator(".o-sheet-name", { hasText: name }).click();

describe("printing", () => {
  test("gives the sheet as a table one page wide, not the application", async () => {
    const pages = await printed("demo");
    expect(size(pages[0]).reverse()).toEqual(A4);
    const text = pages.map((page) => page.text).join(" ");
    expect(text).toContain("Page 1 of ");
    expect(text).not.toMatch(/Save as .xlsx|Results and errors|Find a function/);
    expect(watched.violations).toEqual([]);
  });

  test("repeats the headers of a long quote on every page", async () => {
    const { page } = watched;
    await tool(page, "quote");
    await page.locator("#pane-rows").fill("60");
    expect(await press(page, "#pane-quote [type=submit]")).toContain("is added");
    await paste(page, [["Last part", "10 H7 x 20", "mm", "", "4140", "HSS", "", "", "50"]], "A68");
    await page.waitForFunction(() => document.getElementById("selected")!.textContent!.includes("Last part"));
    const pages = await printed("quote");
    expect(pages.length).toBeGreaterThan(4);
    // Too wide for one page: on each, part and callout are repeated, and the headers of its columns.
    for (const { text } of pages) {
      expect(text).toContain("Cost sheet: not for the customer");
      expect(text).toMatch(/Part Callout/);
    }
    const withPrice = pages.filter(({ text }) => text.includes("Price per part"));
    expect(withPrice.length).toBe(pages.length / 4);
    expect(withPrice[0].text).toMatch(/Example part.*3\.44/);
    expect(pages.at(-1)!.text).toContain("Last part");
    expect(pages.at(-1)!.text).toContain(`Page ${pages.length} of ${pages.length}`);
    await select(page, "A68:I68");
    await page.keyboard.press("Delete");
  });

  test("gives a customer quote on one page, with prices and no costs", async () => {
    const { page } = watched;
    await showSheet(/^Quote of holes/);
    await tool(page, "papers");
    expect(await press(page, "#pane-paper-quote")).toContain('"Quote data" is added');
    await paste(page, [["Example Reaming Works"]], "B4");
    await paste(page, [["Q-0147"]], "B8");
    await paste(page, [["Example Hydraulics"]], "B12");
    await showSheet(/^Quote of holes/);
    expect(await press(page, "#pane-paper-quote")).toContain('"Quote Q-0147 2" is added');
    const pages = await printed("customer");
    expect(pages.length).toBe(1);
    expect(size(pages[0])).toEqual(A4);
    for (const words of [
      "Example Reaming Works",
      "3.44",
      "860.00",
      "12.000–12.018 mm",
      "Accepted by customer",
      "Page 1 of 1",
    ])
      expect(pages[0].text).toContain(words);
    expect(pages[0].text).not.toMatch(/cost|margin|overhead|machine rate/i);
  });

  const papers: readonly (readonly [id: string, title: string, most: number])[] = [
    ["compare", "Before and after", 1],
    ["card", "Set-up card", 1],
    ["trouble", "Trouble sheet", 1],
  ];

  test.each(papers)("gives the paper %s at the width of a Letter page", async (id, title, most) => {
    const { page } = watched;
    await showSheet(/^Quote of holes/);
    await goTo(page, "B9");
    await tool(page, "papers");
    await page.locator("input[name=paper][value=Letter]").check();
    expect(await press(page, `#pane-paper-${id}`)).toContain("is added");
    const pages = await printed(id);
    expect(size(pages[0])).toEqual(LETTER);
    expect(pages[0].text).toContain(title);
    expect(pages[0].text).toContain("12.018");
    expect(pages.length).toBeLessThanOrEqual(most);
    expect(pages.at(-1)!.text).toContain(`Page ${pages.length} of ${pages.length}`);
  });

  const drawn: readonly (readonly [name: string, most: number, words: string])[] = [
    ["Before and after Valve block", 2, "Cost per part, USD"],
    ["Set-up Valve block", 1, "⌀ 16.000–16.018 mm"],
    ["Trouble Valve block", 2, "500-fold in diameter"],
  ];

  test.each(drawn)(
    "draws the picture of %s, and leaves out rows without a figure",
    async (name, most, words) => {
      await showSheet(new RegExp(`^${name}`));
      const pages = await printed(name);
      expect(pages.length).toBe(most);
      const text = pages.map((page) => page.text).join(" ");
      expect(text).toContain(words);
      const { page } = watched;
      expect(await page.locator("#print-page svg[role=img] desc").count()).toBe(1);
      const empty = await page
        .locator("#print-page tr")
        .evaluateAll((rows) => rows.filter((row) => row.textContent === "" && !row.closest("thead")).length);
      // Rows beside a picture, and spaces between blocks.
      expect(empty).toBeLessThanOrEqual(6);
      // Every cause, on the second page under the same headers.
      if (name.startsWith("Trouble")) {
        expect(text).toContain("Chamfer teeth ground unequal");
        expect(pages[1].text).toContain("How to check");
      }
      expect(watched.errors).toEqual([]);
      expect(watched.violations).toEqual([]);
    },
  );

  test("prints no paper with a cell in error, but names the cell", async () => {
    const { page } = watched;
    await showSheet(/^Set-up Valve block/);
    await paste(page, [["nonsense"]], "C5");
    const [only] = await printed("stopped");
    expect(only.text).toContain("This paper is not printed yet.");
    expect(only.text).toMatch(/[A-Z]\d+: .*"nonsense"/);
    expect(only.text).not.toContain("#VALUE!");
    await page.keyboard.press("Control+z");
  });
});
