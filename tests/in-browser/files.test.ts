// tests: a workbook file into the browser workbook and out of it, in a real browser. Expected speed: 1000·15/(π·10),
// limits of 12 H7 by ISO 286-1:2010 Table 1.

import ExcelJS from "exceljs";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { startBrowser, type TestBrowser, type Watched } from "./browser.ts";
import { openFile, said, save, savedBook } from "./file-page.ts";
import { goTo, openWorkbook, readSelected, readSheet, typeInto } from "./workbook-page.ts";

let browser: TestBrowser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser?.close());

const speed = (1000 * 15) / (Math.PI * 10);

async function jobFile(): Promise<Buffer> {
  const book = new ExcelJS.Workbook();
  const job = book.addWorksheet("Job 7");
  job.getCell("A1").value = 15;
  job.getCell("A2").value = 10;
  job.getCell("A3").value = "12 H7";
  job.getCell("A4").value = "1/4";
  job.getCell("A1").font = { name: "Calibri", bold: true, size: 11 };
  const formulas: Record<string, string> = {
    B1: "_xldudf_REAM_RPM(A1,A2)",
    B2: "[2]!_xldudf_REAM_RPM(A1,A2)*2",
    B3: "REAM.LIMITS(A3)",
    B5: "_xlfn.LET(_xlpm.x,A1,_xlpm.x+1)",
  };
  for (const [address, formula] of Object.entries(formulas))
    job.getCell(address).value = { formula, result: 16 } as ExcelJS.CellFormulaValue;
  book.addWorksheet("More").getCell("A1").value = {
    formula: "'Job 7'!B1",
    result: 0,
  } as ExcelJS.CellFormulaValue;
  return Buffer.from(await book.xlsx.writeBuffer());
}

describe("a file", () => {
  let watched: Watched;
  let page: Page;
  beforeAll(async () => {
    watched = await openWorkbook(browser);
    page = watched.page;
  });
  afterAll(() => page?.context().close());

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

  test("that got a sheet is saved anew, after what goes is listed, and not if that is too much", async () => {
    await page.locator(".o-add-sheet").click();
    await page.getByRole("button", { name: "Save as .xlsx" }).click();
    const dialog = page.getByRole("dialog", { name: "What the saved file will lack" });
    await expect(dialog.textContent()).resolves.toContain("Typefaces: all text is saved in one");
    await page.keyboard.press("Escape");
    await said(page, /^Not saved/);
    expect(await dialog.isVisible()).toBe(false);
    const book = await savedBook(await save(page, "#save-file", true));
    expect(book.worksheets.length).toBe(3);
    expect(book.getWorksheet("Job 7")!.getCell("D1").value).toMatchObject({ ref: "D1:E1", result: 12 });
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

  test("has needed no network, broken no policy and left no error", () => {
    expect(watched.elsewhere).toEqual([]);
    expect(watched.violations).toEqual([]);
    expect(watched.errors).toEqual([]);
  });
});

describe("rows and looks", () => {
  let page: Page;
  beforeAll(async () => {
    page = (await openWorkbook(browser)).page;
  });
  afterAll(() => page?.context().close());

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
  let page: Page;
  beforeAll(async () => {
    page = (await openWorkbook(browser)).page;
  });
  afterAll(() => page?.context().close());

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

  test("can be an empty one", async () => {
    await page.click("#new-file");
    await said(page, /^An empty workbook$/);
    await typeInto(page, "A1", "=REAM.RPM(15,10)");
    const download = await save(page, "#save-file", false);
    expect(download.suggestedFilename()).toBe("workbook.xlsx");
    expect((await savedBook(download)).worksheets[0].getCell("A1").formula).toBe("_xldudf_REAM_RPM(15,10)");
  });
});
