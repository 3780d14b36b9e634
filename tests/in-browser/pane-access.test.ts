// tests: the pane for everyone: narrow panes, the keyboard alone, no workbook, blocked storage.

import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { longTest, share } from "../support/share.ts";
import { startBrowser, type TestBrowser, type Watched } from "./browser.ts";
import { fillTool, openPane, press, selectedIs, started, tool, paneTools as tools } from "./pane-page.ts";
import { goTo, readSheet } from "./workbook-page.ts";

let browser: TestBrowser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser?.close());

test.each(share([320], [320, 390]))("at %i px nothing sticks out of the pane", async (width) => {
  const { page } = await browser.open("index.html");
  await page.setViewportSize({ width, height: 700 });
  await page.waitForFunction(started);
  await page.evaluate(() => localStorage.setItem("reamwright-cautions-read", "yes"));
  for (const name of share(["find", "convert", "hole", "curve"], tools)) {
    await fillTool(page, name);
    const out = await page.evaluate(() => {
      const limit = document.documentElement.clientWidth;
      const seen = Array.from(document.querySelectorAll<HTMLElement>("#pane *"));
      return seen
        .filter((element) => element.checkVisibility() && element.getBoundingClientRect().right > limit + 0.5)
        .map((element) => `${element.tagName} ${element.id} ${element.textContent?.slice(0, 40)}`);
    });
    expect(out, name).toEqual([]);
  }
  await page.context().close();
});

longTest("without a workbook every tool that needs one says so", async () => {
  const { page, errors } = await browser.open("index.html");
  await page.waitForFunction(started);
  for (const [name, selector] of [
    ["convert", "#pane-convert [type=submit]"],
    ["check", "#pane-check-both"],
    ["freeze", "#pane-freeze [type=submit]"],
    ["hole", "#pane-callout-take"],
  ]) {
    await tool(page, name);
    expect(await press(page, selector)).toMatch(/^No workbook is open here/);
  }
  expect(errors).toEqual([]);
  await page.context().close();
});

describe("beside the workbook", () => {
  let watched: Watched;
  beforeAll(async () => {
    watched = await openPane(browser);
  });
  afterAll(() => watched?.page.context().close());

  longTest("at 1280 by 720 the grid beside the open pane shows the callouts and their limits", async () => {
    const { page } = watched;
    const pane = (await page.locator("#tools").boundingBox())!;
    const gridWidth = async () => {
      const { x, width } = (await page.locator("#grid canvas").first().boundingBox())!;
      return x + width;
    };
    await expect.poll(gridWidth).toBeLessThanOrEqual(pane.x + 1);
    // Row numbers and columns A to G of the quote.
    expect(await gridWidth()).toBeGreaterThan(48 + 38 + 100 + 234 + 46 + 3 * 72);
  });

  test("the keyboard alone finds a function, fills it in and puts it into the sheet", async () => {
    const { page } = watched;
    await goTo(page, "C40");
    await selectedIs(page, "C40");
    await page.locator("#tools-toggle").focus();
    await page.keyboard.press("Enter");
    expect(await page.locator("#tools").isVisible()).toBe(false);
    await page.keyboard.press("Enter");
    const focused = () =>
      page.evaluate(
        () =>
          document.activeElement?.getAttribute("aria-label") ||
          document.activeElement?.id ||
          document.activeElement?.textContent,
      );
    const tabTo = async (wanted: string) => {
      for (let step = 0; step < 30; step++) {
        if ((await focused()) === wanted) return;
        await page.keyboard.press("Tab");
      }
      throw new Error(`Tab does not reach ${wanted}`);
    };
    expect(await focused()).toBe("Find a function");
    await page.keyboard.press("Tab");
    expect(await focused()).toBe("Explain this cell");
    await tabTo("pane-query");
    await page.keyboard.type("rpm");
    await page.keyboard.press("Enter");
    await page.keyboard.press("Enter");
    expect(await focused()).toBe("pane-name");
    await tabTo("pane-argument-surfaceSpeed-0");
    await page.keyboard.type("15");
    await page.keyboard.press("Tab");
    expect(await focused()).toBe("Take the selection for surfaceSpeed");
    await page.keyboard.press("Tab");
    expect(await focused()).toBe("pane-argument-diameter-0");
    await page.keyboard.type("10");
    const outline = await page.evaluate(() => getComputedStyle(document.activeElement!).outlineStyle);
    expect(outline).toBe("solid");
    await page.keyboard.press("Enter");
    await page.waitForFunction(() =>
      document.getElementById("pane-status")!.textContent.includes("C40 holds"),
    );
    // 1000·15/(π·10)
    expect(Number((await readSheet(page)).C40)).toBeCloseTo(477.4648, 1);
  });

  longTest("a tool that is opened says its name: its heading has the focus", async () => {
    const { page } = watched;
    for (const name of tools) {
      await tool(page, name);
      expect(await page.evaluate(() => document.activeElement?.id)).toBe(`pane-${name}-title`);
      expect(await page.locator("#pane [aria-current]").count()).toBe(1);
      expect(await page.locator("#pane [data-view]:visible").count()).toBe(1);
    }
  });

  longTest("a page whose storage is blocked still asks once, and works", async () => {
    const { page, errors } = watched;
    await page.evaluate(() => {
      localStorage.removeItem("reamwright-cautions-read");
      Object.defineProperty(window, "localStorage", {
        get() {
          throw new Error("blocked");
        },
      });
    });
    await tool(page, "quote");
    await page.locator("#pane-quote [type=submit]").click();
    expect(await press(page, "#pane-first [value=read]")).toContain("is added");
    expect(await press(page, "#pane-quote [type=submit]")).toContain("is added");
    expect(errors).toEqual([]);
  });

  longTest("on a phone the pane lies over the workbook, and closing it gives the grid back", async () => {
    const { page } = watched;
    await page.setViewportSize({ width: 390, height: 800 });
    const pane = (await page.locator("#pane").boundingBox())!;
    expect(pane.width).toBe(390);
    await page.locator("#tools-toggle").click();
    expect(await page.locator("#pane").isVisible()).toBe(false);
    const grid = async () => (await page.locator("#grid canvas").first().boundingBox())!;
    await expect.poll(async () => (await grid()).width).toBeGreaterThan(300);
    expect((await grid()).height).toBeGreaterThan(250);
  });
});
