// tests: the page that Excel loads, without Excel: with no office.js at all, and with Microsoft's own.

import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import type { Metadata } from "../../src/build/metadata.ts";
import { distFolder, projectFolder } from "../../src/build/paths.ts";
import { startBrowser, type TestBrowser } from "./browser.ts";

const { functions } = JSON.parse(readFileSync(join(distFolder, "functions.json"), "utf8")) as Metadata;
const officeFolder = join(projectFolder, "node_modules", "@microsoft", "office-js", "dist");
const office = "https://appsforoffice.microsoft.com/lib/1/hosted/";

let browser: TestBrowser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser?.close());

const started = () => !document.getElementById("state")?.textContent?.startsWith("Starting");

test("works when office.js can't be reached", async () => {
  const { page, elsewhere, violations, errors } = await browser.open("");
  await page.waitForFunction(started);
  expect(elsewhere).toEqual([`${office}office.js`]);
  expect(errors).toEqual([]);
  expect(violations).toEqual([]);
  expect(await page.locator("#state").textContent()).toContain(`${functions.length} functions`);
  expect(await page.locator("#elsewhere").isVisible()).toBe(true);
  const answers = await page.evaluate(() => {
    const { associated, Error: WorksheetError } = (globalThis as any).CustomFunctions;
    const rpm = associated.get("RPM");
    const [[wrong]] = rpm([["fast"]], [[10]], null, null, {});
    return {
      value: rpm([[15]], [[10]], null, null, {}),
      isError: wrong instanceof WorksheetError,
      code: wrong.code,
      message: wrong.message,
    };
  });
  // 1000·15/(π·10)
  expect(answers.value[0][0]).toBeCloseTo(477.464829, 6);
  expect(answers.isError).toBe(true);
  expect(answers.code).toBe("#VALUE!");
  expect(answers.message).toContain("surfaceSpeed");
});

test("leaves office.js its own associate, and says that Excel is not there", async () => {
  const { page, violations, errors } = await browser.open("index.html", (url) => {
    const file = join(officeFolder, new URL(url).pathname.replace("/lib/1/hosted/", ""));
    return url.startsWith(office) && existsSync(file) ? file : undefined;
  });
  await page.waitForFunction(started);
  expect(await page.locator("#state").textContent()).toContain("not in Excel");
  const host = await page.evaluate(() => ({
    mappings: Object.keys((globalThis as any).CustomFunctions._association.mappings),
    ours: "associated" in (globalThis as any).CustomFunctions,
  }));
  expect(host.mappings.sort()).toEqual(functions.map(({ id }) => id).sort());
  expect(host.ours).toBe(false);
  expect(errors).toEqual([]);
  expect(violations).toEqual([]);
});

test("finds a function by a word of its help", async () => {
  const { page } = await browser.open("index.html");
  await page.waitForFunction(started);
  await page.locator("#pane-query").fill("spindle speed for a surface");
  const shown = await page.locator("#pane-found button b").allTextContents();
  expect(shown).toContain("REAM.RPM");
  expect(shown.length).toBeLessThan(functions.length);
});

/** As much of office.js as the start of the page needs; the workbook itself answers nothing. */
const officeDouble = `
  var associated = {}, shownPanes = 0;
  var Office = {
    HostType: { Excel: "Excel" },
    onReady: function () { return Promise.resolve({ host: "Excel" }); },
    addin: { showAsTaskpane: function () { shownPanes++; return Promise.resolve(); } },
    actions: { associate: function (name, act) { associated[name] = act; } },
    context: {},
  };
  var Excel = { run: function () { return Promise.reject(new Error("not here")); } };`;

test("in Excel each button of the ribbon opens the pane at its tool", async () => {
  const folder = mkdtempSync(join(tmpdir(), "office-"));
  const script = join(folder, "office.js");
  writeFileSync(script, officeDouble);
  const manifest = readFileSync(join(distFolder, "manifest.xml"), "utf8");
  const names = [...manifest.matchAll(/<FunctionName>(\w+)<\/FunctionName>/g)].map(([, name]) => name);
  expect(names.length).toBeGreaterThan(1);
  const { page, violations } = await browser.open("index.html", (url) =>
    url.startsWith(office) ? script : undefined,
  );
  await page.waitForFunction(started);
  expect(await page.locator("#state").textContent()).toContain("ready");
  expect(await page.locator("#elsewhere").isVisible()).toBe(false);
  const views: string[] = [];
  for (const name of names) {
    const done = await page.evaluate(
      (button) =>
        new Promise<boolean>((resolve) => {
          void (globalThis as any).associated[button]({ completed: () => resolve(true) });
        }),
      name,
    );
    expect(done, name).toBe(true);
    views.push((await page.locator("#pane [data-view]:visible").getAttribute("data-view")) ?? "");
  }
  expect(new Set(views).size).toBe(names.length);
  expect(await page.evaluate(() => (globalThis as any).shownPanes)).toBe(names.length);
  expect(violations).toEqual([]);
  rmSync(folder, { recursive: true });
});

test("has a policy that lets no text become code", async () => {
  const { page } = await browser.open("index.html");
  await page.waitForFunction(started);
  // Later, since what the test itself evaluates is exempt.
  const made = await page.evaluate(
    () =>
      new Promise((resolve) => {
        setTimeout(() => {
          try {
            resolve(String(new Function("return 1")()));
          } catch (error) {
            resolve((error as Error).name);
          }
        });
      }),
  );
  expect(made).toBe("EvalError");
});
