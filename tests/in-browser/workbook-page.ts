// tests: the browser workbook as a person uses it: keys in, plain elements out.

import type { Page } from "playwright-core";
import type { TestBrowser, Watched } from "./browser.ts";

export async function openWorkbook(test: TestBrowser): Promise<Watched> {
  const watched = await test.open("workbook.html");
  await watched.page.waitForFunction(() =>
    /ready|could not/.test(document.getElementById("state")?.textContent ?? ""),
  );
  await watched.page.locator("#plain summary").click();
  await watched.page.locator("#table tr").first().waitFor();
  return watched;
}

/** Selects a cell by its address, through the name box. */
export async function goTo(page: Page, address: string): Promise<void> {
  const box = page.locator(".o-named-range-selector input").first();
  await box.click();
  await box.fill(address);
  await box.press("Enter");
  await page.waitForFunction(
    (wanted) =>
      document.querySelector("#selected dd")?.textContent === wanted &&
      document.activeElement?.classList.contains("o-composer"),
    address,
  );
  await nextFrames(page);
}

/** Types into a cell as a person does, and leaves it with Enter. */
export async function typeInto(page: Page, address: string, text: string): Promise<void> {
  await goTo(page, address);
  await type(page, text);
  await page.keyboard.press("Enter");
}

/** Types into the selected cell. The first key opens the cell's editor, which takes a frame or two to be there. */
export async function type(page: Page, text: string): Promise<void> {
  await page.keyboard.type(text.slice(0, 1));
  await nextFrames(page);
  await page.keyboard.type(text.slice(1), { delay: 5 });
  await page.waitForFunction(
    (typed) =>
      Array.from(document.querySelectorAll(".o-composer")).some(({ textContent }) => textContent === typed),
    text,
  );
}

/** Waits until what a change asked for has been drawn. */
async function nextFrames(page: Page): Promise<void> {
  await page.evaluate(
    () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(done)))),
  );
}

/** The texts of the plain table by address, `{ A1: "…" }`; empty cells are left out. */
export async function readSheet(page: Page): Promise<Record<string, string>> {
  await nextFrames(page);
  return page.evaluate(() => {
    const found: Record<string, string> = {};
    const [head, ...rows] = Array.from(document.querySelectorAll<HTMLTableRowElement>("#table tr"));
    rows.forEach((row, index) => {
      Array.from(row.cells).forEach((cell, column) => {
        if (column > 0 && cell.textContent)
          found[`${head.cells[column].textContent}${index + 1}`] = cell.textContent;
      });
    });
    return found;
  });
}

/** What the pane says of the selected cell, by term: Cell, Formula, Result, Message. */
export async function readSelected(page: Page): Promise<Record<string, string>> {
  return page.evaluate(() => {
    const terms = Array.from(document.querySelectorAll("#selected dt"));
    return Object.fromEntries(
      terms.map((term) => [term.textContent, term.nextElementSibling?.textContent ?? ""]),
    );
  });
}
