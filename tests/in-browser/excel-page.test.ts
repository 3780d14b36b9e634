// tests: the page that Excel loads, without Excel: with no office.js at all, and with Microsoft's own.

import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Metadata } from "../../src/build/metadata.ts";
import { distFolder, projectFolder } from "../../src/build/paths.ts";
import { SENTENCES } from "../../src/workbook/excel-run.ts";
import { longTest, share } from "../support/share.ts";
import { startBrowser, type TestBrowser, type Watched } from "./browser.ts";
import { started } from "./pane-page.ts";

const { functions } = JSON.parse(readFileSync(join(distFolder, "functions.json"), "utf8")) as Metadata;
const officeFolder = join(projectFolder, "node_modules", "@microsoft", "office-js", "dist");
const office = "https://appsforoffice.microsoft.com/lib/1/hosted/";

let browser: TestBrowser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser?.close());

describe("when office.js can't be reached", () => {
  let watched: Watched;
  beforeAll(async () => {
    watched = await browser.open("");
    await watched.page.waitForFunction(started);
  });
  afterAll(() => watched?.page.context().close());

  test("computes", async () => {
    const { page, elsewhere, violations, errors } = watched;
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

  test("finds a function by a word of its help", async () => {
    const { page } = watched;
    await page.locator("#pane-query").fill("spindle speed for a surface");
    const shown = await page.locator("#pane-found button b").allTextContents();
    expect(shown).toContain("REAM.RPM");
    expect(shown.length).toBeLessThan(functions.length);
  });

  test("has a policy that lets no text become code", async () => {
    const { page } = watched;
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
});

longTest("leaves office.js its own associate, and says that Excel is not there", async () => {
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

const hosts = ["Excel$Win32$16.01$en-US", "Excel$Mac$16.00$en-US", "Excel$Web$16.00$en-US"];

test.each(share(hosts.slice(0, 1), hosts))(
  "loads Microsoft's own files for %s under the page's policy",
  async (host) => {
    const loaded: string[] = [];
    const { page, violations } = await browser.open(`index.html?_host_Info=${host}`, (url) => {
      const file = join(officeFolder, new URL(url).pathname.replace("/lib/1/hosted/", ""));
      if (!url.startsWith(office) || !existsSync(file)) return undefined;
      loaded.push(new URL(url).pathname);
      return file;
    });
    await page.waitForFunction(() => typeof (globalThis as any).Excel?.run === "function");
    expect(loaded.some((path) => /\/excel-(win32|mac|web)-/.test(path))).toBe(true);
    const found = await page.evaluate(() => ({
      functions: Object.keys((globalThis as any).CustomFunctions._association.mappings).length,
      actions: Object.keys((globalThis as any).Office.actions._association.mappings).sort(),
      state: document.getElementById("state")!.textContent,
    }));
    expect(found.functions).toBe(functions.length);
    expect(found.actions.map((name) => name.toLowerCase())).toEqual([
      "showcheck",
      "showconvert",
      "showpane",
      "showsheet",
    ]);
    expect(found.state).not.toContain("not in Excel");
    expect(violations).toEqual([]);
    await page.context().close();
  },
);

/** As much of office.js as the start of the page needs. The test says when Excel is ready, and what the pane answers. */
const officeDouble = `
  var associated = {}, shownPanes = 0, becomeReady, pane = function () { return Promise.resolve(); };
  var ready = new Promise(function (resolve) { becomeReady = function () { resolve({ host: "Excel" }); }; });
  var Office = {
    HostType: { Excel: "Excel" },
    VisibilityMode: { taskpane: "Taskpane", hidden: "Hidden" },
    onReady: function () { return ready; },
    addin: {
      showAsTaskpane: function () { shownPanes++; return pane(); },
      onVisibilityModeChanged: function () { return Promise.resolve(function () { return Promise.resolve(); }); },
    },
    actions: { associate: function (name, act) { associated[name] = act; } },
    context: {},
  };
  var Excel = { run: function () { return Promise.reject(new Error("not here")); } };`;

describe("in Excel", () => {
  const folder = mkdtempSync(join(tmpdir(), "office-"));
  const script = join(folder, "office.js");
  writeFileSync(script, officeDouble);
  afterAll(() => rmSync(folder, { recursive: true }));
  const names = [
    ...readFileSync(join(distFolder, "manifest.xml"), "utf8").matchAll(
      /<FunctionName>(\w+)<\/FunctionName>/g,
    ),
  ].map(([, name]) => name);

  type Help = "as usual" | "slow" | "503" | "missing";
  /** The page, and the means to let its help come. */
  async function openPage(help: Help = "as usual"): Promise<Watched & { letHelpCome(): void }> {
    let letHelpCome = () => {};
    const come = new Promise<void>((resolve) => {
      letHelpCome = resolve;
    });
    const watched = await browser.open(
      "index.html",
      (url) => (url.startsWith(office) ? script : undefined),
      async (page) => {
        await page.clock.install();
        await page.route("**/help.json", async (route) => {
          if (help === "slow") await come;
          if (help === "503") return route.fulfill({ status: 503 });
          if (help === "missing") return route.fulfill({ status: 404 });
          return route.continue();
        });
      },
    );
    return { ...watched, letHelpCome };
  }

  /** Presses a button of the ribbon; the view that is open once Excel has been told that it is done. */
  async function press({ page }: Watched, button: string): Promise<string> {
    const done = page.evaluate(
      (name) =>
        new Promise<void>((resolve) => {
          void (globalThis as any).associated[name]({ completed: resolve });
        }),
      button,
    );
    await done;
    return (await page.locator("#pane [data-view]:visible").getAttribute("data-view")) ?? "";
  }
  const ready = ({ page }: Watched) => page.evaluate(() => (globalThis as any).becomeReady());
  const stateOf = ({ page }: Watched) => page.locator("#state").textContent();

  test("each button of the ribbon opens the pane at its tool", async () => {
    expect(names.length).toBeGreaterThan(1);
    const watched = await openPage();
    await ready(watched);
    await watched.page.waitForFunction(started);
    expect(await stateOf(watched)).toContain("ready");
    expect(await watched.page.locator("#elsewhere").isVisible()).toBe(false);
    const views: string[] = [];
    for (const name of names) views.push(await press(watched, name));
    expect(new Set(views).size).toBe(names.length);
    expect(await watched.page.evaluate(() => (globalThis as any).shownPanes)).toBe(names.length);
    expect(watched.violations).toEqual([]);
    await watched.page.context().close();
  });

  const helps: readonly Help[] = ["as usual", "slow", "503", "missing"];
  const starts = [0, 5, 20].flatMap((seconds) => helps.map((help) => [seconds, help] as const));
  // Late, with a help that fails; the test of the ribbon's buttons is ready at once.
  const someStarts = [starts[10]];

  test.each(share(someStarts, starts))(
    "that is ready after %i s, with the help %s, is of use from the first click",
    async (seconds, help) => {
      const watched = await openPage(help);
      const { page } = watched;
      // Excel knows every action before it says that it is ready.
      expect(await page.evaluate(() => Object.keys((globalThis as any).associated).sort())).toEqual(
        [...names].sort(),
      );
      expect(await press(watched, "showConvert")).toBe("convert");
      await page.clock.fastForward(1000 * seconds);
      expect(await stateOf(watched)).not.toContain("not in Excel");
      await ready(watched);
      await page.waitForFunction(() => document.getElementById("state")!.textContent.includes("type =REAM."));
      expect(await press(watched, "showSheet")).toBe("quote");
      // What is asked of the workbook reaches Excel now, and its answer the person.
      await page.locator("#pane [data-show=freeze]").click();
      await page.locator("#pane-freeze [type=submit]").click();
      await page.clock.runFor(1000);
      await page.waitForFunction(() =>
        document.getElementById("pane-status")!.textContent.includes("not here"),
      );
      if (help === "as usual") expect(await stateOf(watched)).toContain(`${functions.length} functions`);
      else
        expect(await page.locator("#pane-count").textContent()).toMatch(
          help === "slow" ? /Loading/ : /could not be loaded/,
        );
      expect(await page.locator("#elsewhere").isVisible()).toBe(false);
      watched.letHelpCome();
      await page.context().close();
    },
  );

  test("what Excel refuses is told in the pane, whatever its code", async () => {
    const watched = await openPage();
    const { page } = watched;
    await ready(watched);
    await page.waitForFunction(started);
    await page.locator("#pane [data-show=freeze]").click();
    const told: Record<string, string | null> = {};
    const sentences = share(Object.entries(SENTENCES).slice(0, 2), Object.entries(SENTENCES));
    for (const [code] of sentences) {
      await page.evaluate((refused) => {
        (globalThis as any).Excel.run = () =>
          Promise.reject(Object.assign(new Error("no"), { code: refused }));
        document.getElementById("pane-status")!.textContent = "";
      }, code);
      await page.locator("#pane-freeze [type=submit]").click();
      await page.clock.runFor(100);
      await page.waitForFunction(() => document.getElementById("pane-status")!.textContent !== "");
      told[code] = await page.locator("#pane-status").textContent();
    }
    expect(told).toEqual(Object.fromEntries(sentences));
    expect(await page.locator("#pane-status").getAttribute("data-tone")).toBe("refused");
    await page.context().close();
  });

  longTest("a list of functions that did not come is asked for again", async () => {
    const watched = await openPage("503");
    const { page } = watched;
    await ready(watched);
    await page.waitForFunction(() => document.getElementById("pane-count")!.textContent.includes("503"));
    await page.unroute("**/help.json");
    await page.locator("#pane-found button", { hasText: "Try again" }).click();
    await page.locator("#pane-found button", { hasText: "RPM" }).first().waitFor();
    await page.context().close();
  });

  const answers = ["never answered", "refused", "thrown"];

  test.each(share([], answers))("a pane that is %s does not leave the button waiting", async (answer) => {
    const watched = await openPage();
    const { page } = watched;
    await page.evaluate((kind) => {
      (globalThis as any).pane =
        kind === "refused"
          ? () => Promise.reject(new Error("refused"))
          : kind === "thrown"
            ? () => {
                throw new Error("thrown");
              }
            : () => new Promise(() => {});
    }, answer);
    const pressed = press(watched, "showCheck");
    await page.clock.fastForward(20_000);
    expect(await pressed).toBe("check");
    await page.context().close();
  });
});
