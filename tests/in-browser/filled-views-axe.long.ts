// tests: a cell explained and a sheet checked, beside the browser workbook at 320 px, by axe-core's rules.

import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { findings, someSchemes } from "./axe.ts";
import { startBrowser, type TestBrowser, type Watched } from "./browser.ts";
import { openPane, press, tool } from "./pane-page.ts";
import { goTo, typeInto } from "./workbook-page.ts";

let browser: TestBrowser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser?.close());

describe.each(someSchemes)("in %s, forced colors %s", (colorScheme, forcedColors) => {
  let watched: Watched;
  let page: Page;
  beforeAll(async () => {
    watched = await openPane(browser);
    page = watched.page;
    await page.emulateMedia({ colorScheme, forcedColors });
    // A mistake of each kind that the check knows: typed over, and not to be read.
    await typeInto(page, "V8", "1234");
    await typeInto(page, "C9", "no callout");
    await typeInto(page, "B40", "=ROUND(REAM.FEEDRATE(0.3,REAM.RPM(V9*1,10)),0)");
  });
  afterAll(() => watched?.page.context().close());

  const narrow = () => page.setViewportSize({ width: 320, height: 700 });
  const wide = () => page.setViewportSize({ width: 1280, height: 720 });

  test.each(["E6", "G9", "B40"])("%s explained has no serious finding, and fits", async (address) => {
    await wide();
    await tool(page, "explain");
    await goTo(page, address);
    await page.locator("#pane-explain [type=submit]").click();
    await page.locator("#pane-explained").waitFor();
    await narrow();
    expect(await findings(page, "#pane")).toEqual([]);
    const { scroll, width } = await page
      .locator("#pane")
      .evaluate((pane) => ({ scroll: pane.scrollWidth, width: pane.clientWidth }));
    expect(scroll).toBeLessThanOrEqual(width);
  });

  test("the list of what a check found has none, and fits", async () => {
    await wide();
    await tool(page, "look");
    await press(page, "#pane-look [type=submit]");
    await narrow();
    expect(await page.locator("#pane [data-view=look] li").count()).toBeGreaterThan(1);
    expect(await findings(page, "#pane")).toEqual([]);
    const { scroll, width } = await page
      .locator("#pane")
      .evaluate((pane) => ({ scroll: pane.scrollWidth, width: pane.clientWidth }));
    expect(scroll).toBeLessThanOrEqual(width);
  });
});
