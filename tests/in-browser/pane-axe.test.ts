// tests: the pane for everyone, by axe-core's rules, in light and dark.

import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { share } from "../support/share.ts";
import { findings, someSchemes } from "./axe.ts";
import { startBrowser, type TestBrowser, type Watched } from "./browser.ts";
import { fillTool, openPane, press, started, tool, paneTools as tools } from "./pane-page.ts";
import { goTo } from "./workbook-page.ts";

let browser: TestBrowser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser?.close());

// Its page takes the browser much longer than the one that Excel loads.
describe.each(share([], someSchemes))(
  "beside the workbook in %s, forced colors %s",
  (colorScheme, forcedColors) => {
    let watched: Watched;
    beforeAll(async () => {
      watched = await openPane(browser);
      await watched.page.emulateMedia({ colorScheme, forcedColors });
    });
    afterAll(() => watched?.page.context().close());

    test.each(tools)("%s has no serious finding beside the workbook", async (name) => {
      await fillTool(watched.page, name);
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
  },
);

test.each(someSchemes)(
  "the page that Excel loads has none at 320 px in %s, forced colors %s",
  async (colorScheme, forcedColors) => {
    const { page, violations, errors } = await browser.open("index.html");
    await page.setViewportSize({ width: 320, height: 700 });
    await page.emulateMedia({ colorScheme, forcedColors });
    await page.waitForFunction(started);
    for (const name of share(["find", "quote", "papers"], tools)) {
      await tool(page, name);
      expect(await findings(page, "html"), name).toEqual([]);
    }
    expect(violations).toEqual([]);
    expect(errors).toEqual([]);
    await page.context().close();
  },
);
