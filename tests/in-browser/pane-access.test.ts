// tests: the pane for everyone: axe-core's rules in light and dark, narrow panes, and the keyboard alone.

import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { projectFolder } from "../../src/build/paths.ts";
import { startBrowser, type TestBrowser, type Watched } from "./browser.ts";
import { openPane, press, selectedIs, tool } from "./pane-page.ts";
import { goTo, readSheet } from "./workbook-page.ts";

const axe = readFileSync(join(projectFolder, "node_modules", "axe-core", "axe.min.js"), "utf8");
const tools = ["find", "convert", "check", "quote", "freeze", "hole", "curve", "cautions"];

let browser: TestBrowser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser?.close());

const started = () => !document.getElementById("state")?.textContent?.startsWith("Starting");

/** What axe-core finds in a part of the page, serious or worse, one line each. */
async function findings(page: Page, part: string): Promise<string[]> {
  if (!(await page.evaluate(() => "axe" in globalThis))) await page.evaluate(axe);
  return page.evaluate(async (selector) => {
    const { violations } = await (globalThis as any).axe.run(selector);
    return violations
      .filter(({ impact }: { impact: string }) => impact === "serious" || impact === "critical")
      .flatMap(({ id, nodes }: { id: string; nodes: { html: string }[] }) =>
        nodes.map(({ html }) => `${id}: ${html.slice(0, 120)}`),
      );
  }, part);
}

/** Opens everything that a tool can show. */
async function fill(page: Page, name: string): Promise<void> {
  await tool(page, name);
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

describe.each(["light", "dark"] as const)("in %s", (colorScheme) => {
  let watched: Watched;
  beforeAll(async () => {
    watched = await openPane(browser);
    await watched.page.emulateMedia({ colorScheme });
  });
  afterAll(() => watched?.page.context().close());

  test.each(tools)("%s has no serious finding beside the workbook", async (name) => {
    await fill(watched.page, name);
    expect(await findings(watched.page, "#pane")).toEqual([]);
  });

  test("nor have a function's form, a change to be made, a verdict and a refusal", async () => {
    const { page } = watched;
    await tool(page, "find");
    await page.locator("#pane-query").fill("predrill");
    await page.locator("#pane-found button").first().click();
    expect(await findings(page, "#pane")).toEqual([]);
    await tool(page, "convert");
    await goTo(page, "V6");
    await page.locator("#pane-convert [type=submit]").click();
    await page.locator("#pane-change").waitFor();
    expect(await findings(page, "#pane")).toEqual([]);
    await tool(page, "check");
    await page.locator("#pane-hand").fill("V6:V9");
    await page.locator("#pane-expected").fill("O6:O9");
    await press(page, "#pane-check [type=submit]");
    await page.locator("#pane-verdict").waitFor();
    expect(await findings(page, "#pane")).toEqual([]);
    await page.locator("#pane-hand").fill("");
    await press(page, "#pane-check [type=submit]");
    expect(await page.locator("#pane-status").getAttribute("data-tone")).toBe("refused");
    expect(await findings(page, "#pane")).toEqual([]);
  });

  test("nor have the cautions before the first speed, and the page's own frame", async () => {
    const { page } = watched;
    await page.evaluate(() => (document.getElementById("pane-first") as HTMLDialogElement).showModal());
    expect(await findings(page, "#pane-first")).toEqual([]);
    await page.keyboard.press("Escape");
    expect(await findings(page, ".masthead")).toEqual([]);
    await page.locator("#tools-toggle").click();
    expect(await findings(page, ".results")).toEqual([]);
    expect(watched.violations).toEqual([]);
  });

  test("nor has the page that Excel loads, whole", async () => {
    const { page, violations, errors } = await browser.open("index.html");
    await page.emulateMedia({ colorScheme });
    await page.waitForFunction(started);
    for (const name of tools) {
      await tool(page, name);
      expect(await findings(page, "html"), name).toEqual([]);
    }
    expect(violations).toEqual([]);
    expect(errors).toEqual([]);
    await page.context().close();
  });
});

describe("narrow", () => {
  test.each([320, 390])("at %i px nothing sticks out of the pane", async (width) => {
    const { page } = await browser.open("index.html");
    await page.setViewportSize({ width, height: 700 });
    await page.waitForFunction(started);
    await page.evaluate(() => localStorage.setItem("reamwright-cautions-read", "yes"));
    for (const name of tools) {
      await fill(page, name);
      const out = await page.evaluate(() => {
        const limit = document.documentElement.clientWidth;
        const seen = Array.from(document.querySelectorAll<HTMLElement>("#pane *"));
        return seen
          .filter(
            (element) => element.checkVisibility() && element.getBoundingClientRect().right > limit + 0.5,
          )
          .map((element) => `${element.tagName} ${element.id} ${element.textContent?.slice(0, 40)}`);
      });
      expect(out, name).toEqual([]);
    }
    await page.context().close();
  });

  test("on a phone the pane lies over the workbook, and closing it gives the grid back", async () => {
    const { page } = await openPane(browser);
    await page.setViewportSize({ width: 390, height: 800 });
    const pane = (await page.locator("#pane").boundingBox())!;
    expect(pane.width).toBe(390);
    await page.locator("#tools-toggle").click();
    expect(await page.locator("#pane").isVisible()).toBe(false);
    const grid = async () => (await page.locator("#grid canvas").first().boundingBox())!;
    await expect.poll(async () => (await grid()).width).toBeGreaterThan(300);
    expect((await grid()).height).toBeGreaterThan(250);
    await page.context().close();
  });

  test("at 1280 by 720 the grid beside the open pane shows the callouts and their limits", async () => {
    const { page } = await openPane(browser);
    const pane = (await page.locator("#tools").boundingBox())!;
    const gridWidth = async () => {
      const { x, width } = (await page.locator("#grid canvas").first().boundingBox())!;
      return x + width;
    };
    await expect.poll(gridWidth).toBeLessThanOrEqual(pane.x + 1);
    // Row numbers and columns A to G of the quote.
    expect(await gridWidth()).toBeGreaterThan(48 + 38 + 100 + 234 + 46 + 3 * 72);
    await page.context().close();
  });
});

test("the keyboard alone finds a function, fills it in and puts it into the sheet", async () => {
  const { page } = await openPane(browser);
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
  expect(await focused()).toBe("Inch and metric");
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
  await page.waitForFunction(() => document.getElementById("pane-status")!.textContent.includes("C40 holds"));
  // 1000·15/(π·10)
  expect(Number((await readSheet(page)).C40)).toBeCloseTo(477.4648, 1);
  await page.context().close();
});

test("a tool that is opened says its name: its heading has the focus", async () => {
  const { page } = await openPane(browser);
  for (const name of tools) {
    await tool(page, name);
    expect(await page.evaluate(() => document.activeElement?.id)).toBe(`pane-${name}-title`);
    expect(await page.locator("#pane [aria-current]").count()).toBe(1);
    expect(await page.locator("#pane [data-view]:visible").count()).toBe(1);
  }
  await page.context().close();
});

test("without a workbook every tool that needs one says so", async () => {
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

test("a page whose storage is blocked still asks once, and works", async () => {
  const { page, errors } = await openPane(browser, false);
  await page.evaluate(() => {
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
  await page.context().close();
});
