// tests: the pane beside the browser workbook, as a person uses it.

import type { Page } from "playwright-core";
import type { TestBrowser, Watched } from "./browser.ts";
import { goTo, openWorkbook } from "./workbook-page.ts";

/** The browser workbook with the pane open; the cautions count as read unless a test is about them. */
export async function openPane(test: TestBrowser, cautionsRead = true): Promise<Watched> {
  const watched = await openWorkbook(test);
  const { page } = watched;
  await page.context().grantPermissions(["clipboard-read", "clipboard-write"]);
  if (cautionsRead) await page.evaluate(() => localStorage.setItem("reamwright-cautions-read", "yes"));
  await page.locator("#tools-toggle").click();
  await page.locator("#pane").waitFor();
  return watched;
}

export async function tool(page: Page, name: string): Promise<void> {
  await page.locator(`#pane [data-show="${name}"]`).click();
}

/** Does something and gives the sentence that the pane then tells. */
export async function told(page: Page, act: () => Promise<unknown>): Promise<string> {
  await page.evaluate(() => {
    document.getElementById("pane-status")!.textContent = "";
  });
  await act();
  await page.waitForFunction(() => document.getElementById("pane-status")!.textContent !== "");
  return (await page.locator("#pane-status").textContent()) ?? "";
}

export const press = (page: Page, selector: string) => told(page, () => page.locator(selector).click());

/** Adds an empty sheet and fills it from a cell on with rows of texts as they are typed. */
export async function newSheet(page: Page, rows: readonly (readonly string[])[], at = "A1"): Promise<void> {
  await page.locator(".o-add-sheet, .o-sheet-item.o-add-sheet").first().click();
  await paste(page, rows, at);
}

export async function paste(page: Page, rows: readonly (readonly string[])[], at: string): Promise<void> {
  await goTo(page, at);
  await page.evaluate(
    (text) => navigator.clipboard.writeText(text),
    rows.map((row) => row.join("\t")).join("\n"),
  );
  await page.keyboard.press("Control+v");
}

/** Selects one area by its address, through the name box. `shown` is what the pane tells of it. */
export async function select(page: Page, address: string, shown = address): Promise<void> {
  const box = page.locator(".o-named-range-selector input").first();
  await box.click();
  await box.fill(address);
  await box.press("Enter");
  await selectedIs(page, shown);
}

/** Waits until the pane tells what is selected. */
export async function selectedIs(page: Page, text: string): Promise<void> {
  await page.waitForFunction(
    (wanted) => document.getElementById("pane-where")!.textContent.startsWith(wanted),
    text,
  );
}

/** Where a cell is on the screen, in a sheet whose columns and rows have their first width and height. */
export async function cellPlace(page: Page, column: number, row: number): Promise<{ x: number; y: number }> {
  const box = (await page.locator("#grid canvas").first().boundingBox())!;
  return { x: box.x + 48 + 96 * column + 40, y: box.y + 26 + 23 * row + 11 };
}

export async function undo(page: Page): Promise<void> {
  await page.locator(".o-topbar-toolbar [title^='Undo']").first().click();
}

export const paneTools = [
  "find",
  "explain",
  "look",
  "convert",
  "check",
  "quote",
  "papers",
  "freeze",
  "hole",
  "curve",
  "cautions",
];

/** In the page that Excel loads: whether it is done starting. */
export const started = () => /\d functions/.test(document.getElementById("state")?.textContent ?? "");

/** Opens everything that a tool can show. */
export async function fillTool(page: Page, name: string): Promise<void> {
  await tool(page, name);
  if (name === "look" && (await page.locator("#grid").count()) > 0)
    await press(page, "#pane-look [type=submit]");
  if (name === "hole") {
    await page.locator("#pane-callout").fill("12 H7");
    await press(page, "#pane-hole [type=submit]");
  }
  if (name === "curve") {
    const figures = [0.25, 60, 12, 0.3, 30, 120, 40, 90];
    const fields = page.locator("#pane-curve-fields input");
    for (const [index, figure] of figures.entries()) await fields.nth(index).fill(String(figure));
    await press(page, "#pane-curve [type=submit]");
  }
}
