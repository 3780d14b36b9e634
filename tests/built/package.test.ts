// tests: the folder that `npm run package` makes, on a host that knows nothing of it.

import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { createServer } from "node:http";
import { tmpdir } from "node:os";
import { extname, join } from "node:path";
import { unzipSync } from "fflate";
import { JSDOM } from "jsdom";
import { afterAll, beforeAll, expect, test } from "vitest";
import { writePackage } from "../../src/build/package.ts";
import { distFolder } from "../../src/build/paths.ts";
import { listen } from "../../src/build/server.ts";
import { startBrowser, type TestBrowser } from "../in-browser/browser.ts";
import { openWorkbook, readSheet, typeInto } from "../in-browser/workbook-page.ts";
import { share } from "../support/share.ts";

const folder = mkdtempSync(join(tmpdir(), "package-"));
const site = join(folder, "site");
let browser: TestBrowser;
let port: number;
const server = createServer(({ url = "/" }, response) => {
  const path = join(site, url.endsWith("/") ? `${url}index.html` : url);
  if (!existsSync(path)) return response.writeHead(404).end();
  return response.writeHead(200, { "Content-Type": types[extname(path)] ?? "" }).end(readFileSync(path));
});
beforeAll(async () => {
  writePackage(distFolder, folder, "https://tools.example/reaming");
  browser = await startBrowser();
  port = await listen(server, 0);
});
afterAll(async () => {
  server.close();
  server.closeAllConnections();
  await browser.close();
  rmSync(folder, { recursive: true });
});

/** As a plain server knows them. */
const types: Readonly<Record<string, string>> = {
  ".html": "text/html",
  ".js": "text/javascript",
  ".css": "text/css",
  ".json": "application/json",
  ".xml": "application/xml",
};

const text = (...names: string[]) => readFileSync(join(folder, ...names), "utf8");

test("has what its page for the host names, and a zip with the icons that its manifest names", () => {
  expect(readdirSync(folder).sort()).toEqual(
    ["for-the-host.html", "manifest.json", "manifest.xml", "reamwright.zip", "site"].sort(),
  );
  const told = new JSDOM(text("for-the-host.html")).window.document;
  const named = [...told.querySelectorAll("code")]
    .map(({ textContent }) => textContent!.replace("https://tools.example/reaming/", "site/"))
    .filter((name) => /^(?:site\/)?[\w-]+\.(?:html|xml|json|zip)$/.test(name));
  expect(named.length).toBeGreaterThan(3);
  for (const name of named)
    expect([name, existsSync(join(folder, name)) || existsSync(join(site, name))]).toEqual([name, true]);
  const zip = unzipSync(new Uint8Array(readFileSync(join(folder, "reamwright.zip"))));
  const manifest = JSON.parse(new TextDecoder().decode(zip["manifest.json"]));
  expect(Object.keys(zip).sort()).toEqual(["manifest.json", ...Object.values(manifest.icons)].sort());
});

test("has every file that its pages lead to", () => {
  for (const page of ["index.html", "workbook.html", "add-to-excel.html"]) {
    const { document } = new JSDOM(text("site", page)).window;
    const targets = [...document.querySelectorAll("[src], [href]")]
      .map((element) => element.getAttribute("src") ?? element.getAttribute("href")!)
      .filter((target) => !/^(?:https?:|data:|#)/.test(target));
    for (const target of targets) {
      const path = join(site, target.replace(/[?#].*$/, ""));
      expect([page, target, existsSync(path)]).toEqual([page, target, true]);
    }
  }
});

test.each(share([], ["a plain server"]))("computes a quote from %s", async () => {
  const page = await browser.newPage();
  const errors: string[] = [];
  page.on("pageerror", ({ message }) => errors.push(message));
  await page.goto(`http://127.0.0.1:${port}/add-to-excel.html`);
  await page.locator('a[href="workbook.html"]').first().click();
  await openWorkbook({ open: async () => ({ page }) } as never);
  await typeInto(page, "C6", "40 H7");
  const sheet = await readSheet(page);
  // ISO 286-1: 40 H7 is +0.025/0.
  expect(["E6", "F6", "G6"].map((cell) => sheet[cell])).toEqual(["40.000", "40.000", "40.025"]);
  expect(errors).toEqual([]);
  await page.context().close();
});
