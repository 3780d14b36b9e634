// tests: a link that leads nowhere is found before the pages are put in place.

import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { brokenLinks, helpWithoutPage, pagesIn } from "../../src/build/links.ts";

let folder: string;
beforeEach(() => {
  folder = join(mkdtempSync(join(tmpdir(), "links-")), "dist");
  write("other/style.css", "");
  write("other/page.html", '<h1 id="top">Page</h1><a href="../index.html">back</a>');
});
afterEach(() => rmSync(dirname(folder), { recursive: true, force: true }));

function write(name: string, text: string): void {
  mkdirSync(dirname(join(folder, name)), { recursive: true });
  writeFileSync(join(folder, name), text);
}

test("links to files, to places on pages and to office.js are good", () => {
  write(
    "index.html",
    `<link rel="stylesheet" href="other/style.css"><a class="b" href="other/page.html#top">c</a>
    <p id="here"><a href="#here">here</a></p><script src="https://appsforoffice.microsoft.com/lib/1/hosted/office.js"></script>`,
  );
  expect(pagesIn(folder).length).toBe(2);
  expect(brokenLinks(folder)).toEqual([]);
});

test.each([
  ["a missing file", '<a href="gone.html">'],
  ["a missing place", '<a href="other/page.html#bottom">'],
  ["a missing place on the page itself", '<a href="#nowhere">'],
  ["a folder", '<a href="other">'],
  ["a file beside dist", '<a href="../secret.txt">'],
  ["a file that scripts load", '<script src="gone.js" defer></script>'],
  ["another host", '<a href="https://elsewhere.example/page.html">'],
  ["a script in a link", '<a href="javascript:alert(1)">'],
])("%s is a broken link", (_, text) => {
  writeFileSync(join(folder, "..", "secret.txt"), "secret");
  write("index.html", text);
  const [, link] = /"([^"]*)"/.exec(text)!;
  expect(brokenLinks(folder)).toEqual([`index.html: ${link}`]);
});

test("help without a page is found", () => {
  write("index.html", "");
  const help = (helpUrl?: string) =>
    helpWithoutPage([{ id: "RPM", helpUrl }], "https://host.example", folder);
  expect(help("https://host.example/other/page.html")).toEqual([]);
  expect(help("https://host.example/reference/RPM.html")).toHaveLength(1);
  expect(help("https://elsewhere.example/other/page.html")).toHaveLength(1);
  expect(help(undefined)).toHaveLength(1);
});
