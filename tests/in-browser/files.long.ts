// tests: more of a workbook file in the browser workbook, in a real browser: dropped onto it, in the place of unsaved changes,
// with a new sheet, with rows inserted and taken out. Expected speed: 1000·15/(π·10), limits of 12 H7 by ISO 286-1:2010 Table 1.

import ExcelJS from "exceljs";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { startBrowser, type TestBrowser, type Watched } from "./browser.ts";
import { jobFile, openFile, said, save, savedBook, speed } from "./file-page.ts";
import { goTo, openWorkbook, readSheet, typeInto } from "./workbook-page.ts";

let browser: TestBrowser;
let watched: Watched;
let page: Page;
beforeAll(async () => {
  browser = await startBrowser();
  watched = await openWorkbook(browser);
  page = watched.page;
});
afterAll(() => browser?.close());

describe("a file", () => {
  beforeAll(async () => {
    await openFile(page, "job.xlsx", await jobFile());
    await typeInto(page, "D1", "=REAM.LIMITS(A3)");
  });

  test("that got a link has that sheet written whole, after what goes is listed, and not if that is too much", async () => {
    await typeInto(page, "A9", "[a page](https://example.com)");
    await page.getByRole("button", { name: "Save as .xlsx" }).click();
    const dialog = page.getByRole("dialog", { name: "What the saved file will lack" });
    await expect(dialog.textContent()).resolves.toContain("Typefaces: all text is saved in one");
    await page.keyboard.press("Escape");
    await said(page, /^Not saved/);
    expect(await dialog.isVisible()).toBe(false);
    const book = await savedBook(await save(page, "#save-file", true));
    expect(book.worksheets.length).toBe(2);
    expect(book.getWorksheet("Job 7")!.getCell("A9").value).toMatchObject({
      hyperlink: "https://example.com",
    });
    expect(book.getWorksheet("Job 7")!.getCell("D1").value).toMatchObject({ ref: "D1:E1", result: 12 });
  });

  test("that got a sheet beside its first has it there, and asks nothing", async () => {
    await page.locator(".o-add-sheet").click();
    const book = await savedBook(await save(page, "#save-file", false));
    expect(book.worksheets.map(({ name }) => name)).toEqual([
      "Job 7",
      expect.stringMatching(/^Sheet/),
      "More",
    ]);
  });

  test("is opened where it is dropped, with a hint while it is over the page", async () => {
    const bytes = [...(await jobFile())];
    const hint = page.locator("#drop-hint");
    const drag = (type: string) =>
      page.evaluate(
        ([type, bytes]) => {
          const data = new DataTransfer();
          data.items.add(new File([Uint8Array.from(bytes)], "dropped.xlsx"));
          const event = new DragEvent(type, { dataTransfer: data, bubbles: true, cancelable: true });
          document.querySelector("#grid canvas")!.dispatchEvent(event);
          return event.defaultPrevented;
        },
        [type, bytes] as const,
      );
    expect(await hint.isVisible()).toBe(false);
    expect(await drag("dragenter")).toBe(true);
    expect(await hint.isVisible()).toBe(true);
    expect(await drag("dragleave")).toBe(true);
    expect(await hint.isVisible()).toBe(false);
    await drag("dragover");
    // What was changed has been saved, so nothing is asked.
    expect(await drag("drop")).toBe(true);
    await said(page, /^dropped\.xlsx is open$/);
    expect(await hint.isVisible()).toBe(false);
    expect(Number((await readSheet(page)).B1)).toBeCloseTo(speed, 3);
  });

  test("does not take the place of changes that are not saved, unless the person says so", async () => {
    await typeInto(page, "A1", "60");
    const asked: string[] = [];
    page.once("dialog", (dialog) => {
      asked.push(dialog.message());
      void dialog.dismiss();
    });
    await openFile(page, "other.xlsx", await jobFile());
    expect(asked.join()).toContain("not saved");
    expect((await readSheet(page)).A1).toBe("60");
    page.once("dialog", (dialog) => void dialog.accept());
    await openFile(page, "other.xlsx", await jobFile());
    expect((await readSheet(page)).A1).toBe("15");
  });
});

describe("rows and looks", () => {
  /** By the menu of a cell in the third row or so. */
  async function fromMenu(item: RegExp): Promise<void> {
    await page.locator(".o-grid-overlay").click({ button: "right", position: { x: 30, y: 50 } });
    await page.locator(".o-menu-item", { hasText: item }).first().click();
  }

  test("are written into the file, without a question: what names the cells follows, and notes stay on them", async () => {
    const book = new ExcelJS.Workbook();
    const job = book.addWorksheet("Job 7");
    for (let row = 1; row <= 9; row++) job.getCell(row, 1).value = row;
    job.getCell("A9").note = "measured";
    job.getCell("A9").font = { name: "Consolas", size: 11 };
    job.getCell("B1").value = { formula: "SUM(A1:A9)", result: 45 };
    book.addWorksheet("More").getCell("A1").value = { formula: "'Job 7'!A9*2", result: 18 };
    await openFile(page, "rows.xlsx", Buffer.from(await book.xlsx.writeBuffer()));
    await fromMenu(/^Insert row/);
    await expect.poll(async () => (await readSheet(page)).A10).toBe("9");
    const sheet = await readSheet(page);
    const row = Array.from({ length: 10 }, (_, i) => i + 1).find((at) => sheet[`A${at}`] === undefined)!;
    await typeInto(page, `A${row}`, "100");
    await goTo(page, "A10");
    await page.locator(".o-topbar-toolbar [title^='Bold']").first().click();
    const saved = await savedBook(await save(page, "#save-file", false));
    const [now, more] = saved.worksheets;
    expect(now.getCell(`A${row}`).value).toBe(100);
    expect(now.getCell("A10")).toMatchObject({ value: 9, note: "measured" });
    expect(now.getCell("A10").font).toMatchObject({ name: "Consolas", bold: true });
    expect(now.getCell("B1").value).toEqual({ formula: "SUM(A1:A10)", result: 145 });
    expect(more.getCell("A1").value).toEqual({ formula: "'Job 7'!A10*2", result: 18 });
    // And once more, from where it was saved.
    await fromMenu(/^Delete row/);
    const again = await savedBook(await save(page, "#save-file", false));
    expect(again.worksheets[0].getCell("B1").value).toMatchObject({ formula: "SUM(A1:A9)" });
    expect(again.worksheets[0].getCell("A9").note).toBe("measured");
  });
});

test("work can be an empty workbook", async () => {
  await page.click("#new-file");
  await said(page, /^An empty workbook$/);
  await typeInto(page, "A1", "=REAM.RPM(15,10)");
  const download = await save(page, "#save-file", false);
  expect(download.suggestedFilename()).toBe("workbook.xlsx");
  expect((await savedBook(download)).worksheets[0].getCell("A1").formula).toBe("_xldudf_REAM_RPM(15,10)");
});

test("has needed no network, broken no policy and left no error", () => {
  expect(watched.elsewhere).toEqual([]);
  expect(watched.violations).toEqual([]);
  expect(watched.errors).toEqual([]);
});
