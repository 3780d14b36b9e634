// tests: the reference pages as a person finds and reads them: search, keyboard, narrow and enlarged, light and dark.

import { readFileSync } from "node:fs";
import { basename, join, relative } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { helpWithoutPage, pagesIn } from "../../src/build/links.ts";
import { defaultAddress } from "../../src/build/manifest.ts";
import type { Metadata } from "../../src/build/metadata.ts";
import { distFolder, projectFolder } from "../../src/build/paths.ts";
import { readPage as read } from "../support/page-reader.ts";
import { longTest, share } from "../support/share.ts";
import { startBrowser, type TestBrowser } from "./browser.ts";

const { functions } = JSON.parse(readFileSync(join(distFolder, "functions.json"), "utf8")) as Metadata;
const pages = pagesIn(join(distFolder, "reference")).map((page) => basename(page));
const axe = readFileSync(join(projectFolder, "node_modules", "axe-core", "axe.min.js"), "utf8");

const somePages = pages.filter((name, index) => /^[a-z]/.test(name) || index % 90 === 0);
const someFunctions = functions.filter((_, index) => index % 15 === 0);

let browser: TestBrowser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser?.close());

describe("as built", () => {
  test("there is a page for every function, and six more", () => {
    const wanted = [
      ...functions.map(({ id }) => `${id}.html`),
      "callouts.html",
      "index.html",
      "material-names.html",
      "papers.html",
      "rules.html",
      "tables.html",
    ];
    expect([...pages].sort()).toEqual(wanted.sort());
  });

  // That no link leads nowhere the build has seen to.
  test("Excel's help finds its pages", () => {
    const [{ helpUrl }] = functions;
    const address = helpUrl!.slice(0, helpUrl!.indexOf("/reference/"));
    expect(address).toBe(process.env.REAMWRIGHT_ADDRESS || defaultAddress);
    expect(helpWithoutPage(functions, address, distFolder)).toEqual([]);
  });

  test("every page states the policy that its header does", async () => {
    for (const page of share(
      pagesIn(distFolder).filter((_, index) => index % 10 === 0),
      pagesIn(distFolder),
    )) {
      const answer = await fetch(`${browser.address}/${relative(distFolder, page).replaceAll("\\", "/")}`);
      const text = await answer.text();
      const stated = read(text.slice(0, text.indexOf("</head>")))
        .querySelector('meta[http-equiv="Content-Security-Policy"]')!
        .getAttribute("content");
      // A page cannot state by itself that none may frame it.
      const sent = answer.headers.get("content-security-policy")!.replace("; frame-ancestors 'none'", "");
      expect(sent, page).toBe(stated);
      expect(stated, page).toMatch(/^default-src 'none'; script-src 'self'/);
    }
  });
});

test("every page of a function says when to use it, what it takes, an example, its errors, and its source", () => {
  const lacking: string[] = [];
  for (const { id, parameters } of share(someFunctions, functions)) {
    const page = read(readFileSync(join(distFolder, "reference", `${id}.html`), "utf8"));
    const texts = (selector: string) =>
      [...page.querySelectorAll(selector)].map(({ textContent }) => textContent);
    const titles = texts("h2");
    const wanted = [
      "When to use it",
      "Arguments",
      "Result",
      "Worked example",
      "Errors",
      "Source",
      "See also",
    ];
    lacking.push(...wanted.filter((title) => !titles.includes(title)).map((title) => `${id}: ${title}`));
    if (parameters.length > 0 && texts(".errors tbody tr, .worked").length < 1)
      lacking.push(`${id}: nothing shown`);
    // Where units matter, one example in mm and one in inches.
    if (parameters.some(({ name }) => name === "units")) {
      if (!texts("h3").includes("In inches")) lacking.push(`${id}: an example in inches`);
    }
  }
  expect(lacking).toEqual([]);
});

test("a formula is copied with one button", async () => {
  const { page } = await browser.open("reference/RPM.html");
  await page.context().grantPermissions(["clipboard-read", "clipboard-write"]);
  await page.locator("button[data-copy]").first().click();
  await page.locator("button", { hasText: "Copied" }).waitFor();
  expect(await page.evaluate(() => navigator.clipboard.readText())).toBe("=REAM.RPM(15, 10)");
  await page.context().close();
});

describe("search", () => {
  test("answers what is asked, says how many are found, is never empty, and gives all back", async () => {
    const { page, violations, errors } = await browser.open("reference/");
    const found = page.locator("#results li");
    const all = await page.locator("section li:visible").count();
    expect(all).toBeGreaterThan(functions.length);
    await page.locator("#search").fill("how much stock");
    expect(await found.locator("a").first().textContent()).toMatch(/^STOCK/);
    expect(await page.locator("section li:visible").count()).toBe(0);
    expect(await page.locator("#found").textContent()).toBe(
      `${await found.count()} found, the nearest first`,
    );
    await page.locator("#search").fill("zzz");
    expect(await found.count()).toBeGreaterThan(3);
    expect(await page.locator("#found").textContent()).toContain("Nothing fits");
    await page.locator("#search").fill("");
    expect(await found.count()).toBe(0);
    expect(await page.locator("section li:visible").count()).toBe(all);
    expect([violations, errors]).toEqual([[], []]);
    await page.context().close();
  });

  test("leads to a page with the keyboard alone", async () => {
    const { page } = await browser.open("reference/");
    const focused = () =>
      page.evaluate(() => document.activeElement?.id || document.activeElement?.textContent);
    const links = await page.locator("header a").count();
    for (let presses = 0; (await focused()) !== "search"; presses++) {
      expect(presses).toBeLessThanOrEqual(links);
      await page.keyboard.press("Tab");
    }
    await page.keyboard.type("run-out readings");
    await page.keyboard.press("Tab");
    expect(await focused()).toMatch(/^RUNOUT/);
    await page.keyboard.press("Enter");
    await page.waitForURL(/\/reference\/RUNOUT\w*\.html$/);
    expect(await page.locator("h1").textContent()).toMatch(/^RUNOUT/);
    await page.context().close();
  });
});

// 640 pixels are what a window of 1280 has left at 200 %. The pages not of a function, and some of those.
longTest("no page is wider than a window of 390 pixels, nor of 640", async () => {
  const page = await browser.newPage();
  const wide: string[] = [];
  for (const name of share(somePages, pages)) {
    await page.goto(`${browser.address}/reference/${name}`);
    for (const width of [390, 640]) {
      await page.setViewportSize({ width, height: 844 });
      if (await page.evaluate(() => document.documentElement.scrollWidth > window.innerWidth))
        wide.push(`${name} at ${width}`);
    }
  }
  expect(wide).toEqual([]);
  await page.context().close();
});

const kinds = [
  "index.html",
  "rules.html",
  "callouts.html",
  "COSTATSPEED.html",
  "MATERIALS.html",
  "tables.html",
];

describe.each(["light", "dark"] as const)("in %s", (colorScheme) => {
  const some = colorScheme === "light" ? ["tables.html"] : ["COSTATSPEED.html"];

  test.each(share(some, kinds))("%s passes axe-core's rules", async (name) => {
    const page = await browser.newPage({ colorScheme, bypassCSP: true });
    await page.goto(`${browser.address}/reference/${name}`);
    await page.evaluate(axe);
    const { violations } = await page.evaluate(() =>
      (globalThis as any).axe.run({ resultTypes: ["violations"] }),
    );
    expect(
      violations.map((one: any) => `${one.id}: ${one.nodes.map((node: any) => node.html).join(" ")}`),
    ).toEqual([]);
    const paper = await page.evaluate(() => getComputedStyle(document.body).backgroundColor);
    const brightness = Number(/\d+/.exec(paper)![0]);
    expect(colorScheme === "dark" ? brightness : 255 - brightness).toBeLessThan(60);
    await page.context().close();
  });
});
