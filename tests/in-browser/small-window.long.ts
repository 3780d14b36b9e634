// tests: the browser workbook in a small window: a phone, and a screen of 1280 by 720 enlarged to 200 %, which a page
// sees as 640 by 360. Expected size: ISO 286-1:2010 Table 1, IT7 over 30 to 50 mm is 25 µm.

import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { startBrowser, type TestBrowser } from "./browser.ts";
import { readSheet, typeInto } from "./workbook-page.ts";

let browser: TestBrowser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser?.close());

const ready = () => document.getElementById("state")?.textContent?.includes("ready") ?? false;
const scrolled = (page: Page) => page.evaluate(() => window.scrollY);

const windows = [
  { name: "200 %", width: 640, height: 360 },
  { name: "a phone", width: 390, height: 844 },
  { name: "a low window", width: 1100, height: 400 },
];

describe.each(windows)("$name ($width by $height)", ({ width, height }) => {
  let page: Page;
  beforeAll(async () => {
    ({ page } = await browser.open("reference/"));
    await page.setViewportSize({ width, height });
    await page.goto(`${browser.address}/workbook.html`);
    await page.waitForFunction(ready);
  });
  afterAll(() => page?.context().close());

  test("opens at its top, ready, with rows under the headers and columns beside those that stay", async () => {
    expect(await scrolled(page)).toBe(0);
    const grid = (await page.locator("#grid canvas").first().boundingBox())!;
    // Headers of the grid 26 px, the five rows that stay 132 px, and at least four rows of 23 px.
    expect(grid.height).toBeGreaterThan(26 + 132 + 4 * 23);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
  });

  test("can be scrolled down to its last line", async () => {
    const last = page.locator("p.small");
    await last.scrollIntoViewIfNeeded();
    expect(await last.isVisible()).toBe(true);
    const box = (await last.boundingBox())!;
    expect(box.y + box.height).toBeLessThanOrEqual(height + 1);
    await page.evaluate(() => window.scrollTo({ top: 0, behavior: "instant" }));
  });

  test("computes a callout that is typed in", async () => {
    await page.evaluate(() => {
      (document.getElementById("plain") as HTMLDetailsElement).open = true;
    });
    await typeInto(page, "C6", "40 H7");
    const sheet = await readSheet(page);
    expect(["F6", "G6"].map((cell) => sheet[cell])).toEqual(["40.000", "40.025"]);
  });

  test("another sheet is shown without the page moving from under the hand", async () => {
    const tab = page.locator(".o-sheet-name", { hasText: "Inch and metric" });
    await tab.scrollIntoViewIfNeeded();
    const before = await page.evaluate(
      () => new Promise((done) => setTimeout(() => done(window.scrollY), 600)),
    );
    await tab.click();
    await page.waitForFunction(() =>
      document.querySelector(".o-sheet.active")?.textContent?.includes("Inch"),
    );
    await page.evaluate(() => new Promise((done) => setTimeout(done, 600)));
    expect(await scrolled(page)).toBe(before);
  });

  test("opens the tools within the window's width, over or beside the grid and not under it", async () => {
    await page.evaluate(() => window.scrollTo({ top: 0, behavior: "instant" }));
    await page.locator("#tools-toggle").click();
    const pane = (await page.locator("#tools").boundingBox())!;
    expect(pane.x + pane.width).toBeLessThanOrEqual(width);
    const found = await page.evaluate(() => {
      const button = document.querySelector("#tools [aria-current]")!;
      const { left, top, width, height } = button.getBoundingClientRect();
      return button.contains(document.elementFromPoint(left + width / 2, top + height / 2));
    });
    expect(found).toBe(true);
  });
});
