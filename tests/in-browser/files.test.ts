// tests: a workbook file into the browser workbook and out of it, in a real browser. Expected speed: 1000·15/(π·10),
// limits of 12 H7 by ISO 286-1:2010 Table 1.

import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { startBrowser, type TestBrowser, type Watched } from "./browser.ts";
import { jobFile, openFile, said, save, savedBook, speed } from "./file-page.ts";
import { goTo, openWorkbook, readSelected, readSheet, typeInto } from "./workbook-page.ts";

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
  test("is opened by the button, at the keyboard", async () => {
    const chooser = page.waitForEvent("filechooser");
    const opened = chooser.then(() => true);
    const notYet = () => new Promise<boolean>((resolve) => setTimeout(() => resolve(false), 500));
    // While the grid draws itself for the first time it takes the focus back.
    await expect
      .poll(async () => {
        await page.getByRole("button", { name: "Open a file" }).focus();
        await page.keyboard.press("Enter");
        return Promise.race([opened, notYet()]);
      })
      .toBe(true);
    await (await chooser).setFiles({ name: "job.xlsx", mimeType: "", buffer: await jobFile() });
    await said(page, /^job\.xlsx is open$/);
    const sheet = await readSheet(page);
    expect(Number(sheet.B1)).toBeCloseTo(speed, 3);
    expect(Number(sheet.B2)).toBeCloseTo(2 * speed, 3);
    expect([sheet.B3, sheet.C3, sheet.A4]).toEqual(["12", "12.018", "1/4"]);
    await expect(page.locator(".o-sheet-name").allTextContents()).resolves.toEqual(["Job 7", "More"]);
  });

  test("is told of beside the grid: what is in it, what cannot be computed, what will not be saved", async () => {
    const notes = (await page.locator("#file-notes").textContent())!;
    expect(notes).toContain("job.xlsx: 2 sheets, 5 formulas, 3 of them with REAM.");
    expect(notes).toMatch(/1 cell cannot be computed here \(LET\)/);
    expect(notes).toMatch(/Lost only if .*: Typefaces/);
  });

  test("shows its formulas as a person writes them, and computes on", async () => {
    await goTo(page, "B2");
    expect((await readSelected(page)).Formula).toBe("=REAM.RPM(A1,A2)*2");
    await typeInto(page, "A1", "30");
    expect(Number((await readSheet(page)).B1)).toBeCloseTo(2 * speed, 3);
  });

  test("is for the tools too, which were started on another workbook", async () => {
    await goTo(page, "A2");
    await page.click("#tools-toggle");
    await expect.poll(() => page.locator("#pane-where").textContent()).toBe("A2 on Job 7");
    await page.click("#tools-toggle");
  });

  test("is saved into itself: what was changed, what depends on it, and nothing else", async () => {
    await typeInto(page, "D1", "=REAM.LIMITS(A3)");
    await typeInto(page, "D5", "=A1*2");
    const download = await save(page, "#save-file", false);
    await said(page, /^Saved job\.xlsx: 3 cells changed, 7 formulas computed.* shows #NAME\?/);
    expect(download.suggestedFilename()).toBe("job.xlsx");
    const book = await savedBook(download);
    const job = book.getWorksheet("Job 7")!;
    expect(job.getCell("A1").value).toBe(30);
    expect(job.getCell("A1").font).toMatchObject({ name: "Calibri", bold: true, size: 11 });
    expect(job.getCell("B1").formula).toBe("_xldudf_REAM_RPM(A1,A2)");
    expect(job.getCell("B1").result).toBeCloseTo(2 * speed, 9);
    expect(job.getCell("B3").value).toEqual({ formula: "REAM.LIMITS(A3)", result: 12 });
    expect(job.getCell("D1").value).toMatchObject({
      formula: "_xldudf_REAM_LIMITS(A3)",
      ref: "D1:E1",
      result: 12,
    });
    expect(job.getCell("E1").value).toBe(12.018);
    expect(job.getCell("D5").value).toEqual({ formula: "A1*2", result: 60 });
    expect(job.getCell("B5").value).toEqual({ formula: "_xlfn.LET(_xlpm.x,A1,_xlpm.x+1)", result: 31 });
    expect(job.getCell("A4").value).toBe("1/4");
    expect(book.getWorksheet("More")!.getCell("A1").value).toEqual({
      formula: "'Job 7'!B1",
      result: job.getCell("B1").result,
    });
  });

  test("is saved as values for who has no such functions", async () => {
    const download = await save(page, "#save-values", false);
    expect(download.suggestedFilename()).toBe("job (values).xlsx");
    const job = (await savedBook(download)).getWorksheet("Job 7")!;
    expect(job.getCell("B1").value).toBeCloseTo(2 * speed, 9);
    expect([job.getCell("D1").value, job.getCell("E1").value]).toEqual([12, 12.018]);
    expect(job.getCell("D5").formula).toBe("A1*2");
  });

  test("that is none leaves the open workbook as it is, and says why", async () => {
    const before = await readSheet(page);
    await openFile(page, "cut.xlsx", (await jobFile()).subarray(0, 900));
    await expect(page.locator("#state").textContent()).resolves.toBe(
      "cut.xlsx was not opened: the file is damaged or cut off: its table of contents is missing.",
    );
    await openFile(page, "list.xlsx", Buffer.from("part,speed\n1,2\n"));
    await expect(page.locator("#state").textContent()).resolves.toContain("no .xlsx workbook");
    expect(await readSheet(page)).toEqual(before);
  });
});

/** What the page keeps in the browser's own storage, as text. */
const keptDraft = (page: Page) =>
  page.evaluate(
    () =>
      new Promise<string>((resolve, reject) => {
        const opening = indexedDB.open("reamwright");
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const draft = opening.result.transaction("draft").objectStore("draft").get("draft");
          opening.result.close();
          draft.onsuccess = () => resolve(JSON.stringify(draft.result?.data) ?? "");
          draft.onerror = () => reject(draft.error);
        };
      }),
  );

describe("work", () => {
  test("is not lost when the page is closed: the work is offered again", async () => {
    await openFile(page, "job.xlsx", await jobFile());
    await typeInto(page, "D6", "=A1*2+1");
    await expect.poll(() => keptDraft(page)).toContain("=A1*2+1");
    page.once("dialog", (dialog) => void dialog.accept());
    await page.reload();
    await said(page, /functions ready$/);
    await expect(page.locator("#draft").textContent()).resolves.toContain(
      "Restore your work? job.xlsx was not saved",
    );
    await page.locator("#plain summary").click();
    await page.click("#draft-restore");
    await said(page, /^job\.xlsx is as you left it$/);
    await expect.poll(async () => (await readSheet(page)).D6).toBe("31");
    const book = await savedBook(await save(page, "#save-file", false));
    expect(book.getWorksheet("Job 7")!.getCell("D6").formula).toBe("A1*2+1");
    await page.reload();
    await said(page, /functions ready$/);
    expect(await page.locator("#draft").isVisible()).toBe(false);
  });
});

test("has needed no network, broken no policy and left no error", () => {
  expect(watched.elsewhere).toEqual([]);
  expect(watched.violations).toEqual([]);
  expect(watched.errors).toEqual([]);
});
