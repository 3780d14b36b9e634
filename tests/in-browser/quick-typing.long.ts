// tests: typing faster than the page is drawn, and going on after a suggestion was taken.

import type { Page } from "playwright-core";
import { afterAll, beforeAll, beforeEach, expect, test } from "vitest";
import { startBrowser, type TestBrowser, type Watched } from "./browser.ts";
import { goTo, openWorkbook, typeInto } from "./workbook-page.ts";

let browser: TestBrowser;
let watched: Watched;
let page: Page;
beforeAll(async () => {
  browser = await startBrowser();
  watched = await openWorkbook(browser);
  page = watched.page;
});
afterAll(async () => {
  await watched?.page.context().close();
  await browser?.close();
});

/** Waits until the caret is behind a text in the cell's editor. */
const caretBehind = (text: string) =>
  page.waitForFunction((wanted) => {
    const selection = window.getSelection();
    const composer = document.activeElement;
    if (!selection?.rangeCount || !composer?.classList.contains("o-composer")) return false;
    const before = selection.getRangeAt(0).cloneRange();
    before.setStart(composer, 0);
    return before.toString() === wanted;
  }, text);

const typed = async (address: string) => {
  await goTo(page, address);
  return page.locator(".o-composer").first().textContent();
};

beforeEach(async () => {
  for (const address of ["C44", "C45"]) await typeInto(page, address, "12");
});

test.each([0, 2, 5, 30])(
  "what is typed replaces what the cell had, with %d ms between keys",
  async (delay) => {
    for (const text of ["257", "abc 1", "=A1+257"]) {
      await goTo(page, "C44");
      await page.keyboard.type(text, { delay });
      await page.keyboard.press("Enter");
      expect(await typed("C44")).toBe(text);
    }
  },
);

test("so it does in the next cell, and keys in the midst of a text go where the caret is", async () => {
  await goTo(page, "C44");
  // All keys before the page is drawn once.
  for (const key of ["2", "5", "7", "Enter", "3", "1", "Enter"]) await page.keyboard.press(key);
  expect([await typed("C44"), await typed("C45")]).toEqual(["257", "31"]);
  await goTo(page, "C44");
  // Pressed and let go before the page is drawn once.
  await page.evaluate(() => {
    for (const type of ["keydown", "keyup"])
      document.activeElement!.dispatchEvent(new KeyboardEvent(type, { key: "F2", bubbles: true }));
  });
  await caretBehind("257");
  for (const key of ["ArrowLeft", "9", "8", "Enter"]) await page.keyboard.press(key);
  expect(await typed("C44")).toBe("25987");
});

const suggestions: readonly (readonly [start: string, key: string, delay: number])[] = [
  ["=REAM.FEEDR", "Tab", 0],
  ["=1+ream.feedr", "Enter", 40],
  ["=ream.feedr", "Tab", 5],
  ["=REAM.RP", "Enter", 0],
  ["=ROUN", "Tab", 20],
];

test.each(suggestions)(
  "after the suggestion for %s is taken by %s, typing goes on inside its parentheses",
  async (start, key, delay) => {
    await goTo(page, "C44");
    await page.keyboard.type(start, { delay });
    await page.locator(".o-autocomplete-value").first().waitFor();
    await page.keyboard.press(key);
    await page.keyboard.type("15,10", { delay });
    const name = { "=ROUN": "ROUND", "=REAM.RP": "REAM.RPM" }[start] ?? "REAM.FEEDRATE";
    const before = start.startsWith("=1+") ? "=1+" : "=";
    await expect.poll(() => page.locator(".o-composer").first().textContent()).toBe(`${before}${name}(15,10`);
    await page.keyboard.press("Escape");
    await page.keyboard.press("Escape");
  },
);
