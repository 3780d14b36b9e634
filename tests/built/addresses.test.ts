// tests: what is built names no address elsewhere but those known here, each with what it is; nothing is loaded from
// any of them but office.js. What the pages may load is held by their policies, which the browser tests watch.

import { lstatSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { defaultAddress } from "../../src/build/manifest.ts";
import { distFolder } from "../../src/build/paths.ts";
import { policies, referencePolicy } from "../../src/build/policy.ts";

const names = readdirSync(distFolder, { recursive: true, encoding: "utf8" }).map((name) =>
  name.replaceAll("\\", "/"),
);

/** Hosts that our own files may name. */
const ours: Readonly<Record<string, string>> = {
  [new URL(process.env.REAMWRIGHT_ADDRESS || defaultAddress).host]: "where the add-in is served",
  "appsforoffice.microsoft.com": "office.js, which Excel requires to come from there",
  "developer.microsoft.com": "the name of the unified manifest's schema",
  "schemas.microsoft.com": "names of parts of manifests and workbooks",
  "schemas.openxmlformats.org": "names of parts of workbooks",
  "www.w3.org": "names of SVG and MathML",
};
/** Hosts that licenses and the files of other packages name besides. */
const others: Readonly<Record<string, string>> = {
  "fontawesome.io": "the font's own page",
  "fsf.org": "in the text of the LGPL",
  "getbootstrap.com": "in a comment of Bootstrap's",
  "github.com": "where the source of a package lies",
  "mathiasbynens.be": "in the license of the reader of XML",
  "www.gnu.org": "in the text of the LGPL",
  "www.odoo.com": "an example in the grid's field for links",
  "www.google.com":
    "icons that the grid would ask for with each link of a sheet: the page's policy refuses it",
};

const hostsIn = (name: string) =>
  [
    ...readFileSync(join(distFolder, name), "latin1").matchAll(
      /\b(?:https?|wss?|ftp):\/\/([^\s/"'`<>()\\,;$]+)/gi,
    ),
  ].map(([, host]) => host.toLowerCase().replace(/\.$/, ""));

test("no file names another host", () => {
  const faults = names
    .filter((name) => /\.(js|css|html|xml|json|txt|svg)$/.test(name))
    .flatMap((name) => {
      const vendored = name.startsWith("vendor/") || name === "licenses.txt";
      const known = vendored ? { ...ours, ...others } : ours;
      return hostsIn(name)
        .filter((host) => !Object.hasOwn(known, host))
        .map((host) => `${name}: ${host}`);
    });
  expect(faults).toEqual([]);
});

test("every host that is allowed is named somewhere", () => {
  const named = new Set(
    names
      .filter((name) => /\.\w+$/.test(name))
      .filter(isFile)
      .flatMap(hostsIn),
  );
  for (const host of Object.keys({ ...ours, ...others })) expect(named, host).toContain(host);
});

test("the functions ask for nothing at all, and no page may ask elsewhere but for office.js", () => {
  const asks = /\bfetch\(|XMLHttpRequest|WebSocket|EventSource|sendBeacon|importScripts|\bimport\(/;
  expect(readFileSync(join(distFolder, "functions.js"), "utf8")).not.toMatch(asks);
  expect(readFileSync(join(distFolder, "reference", "reference.js"), "utf8")).not.toMatch(asks);
  for (const [page, policy] of [...Object.entries(policies), ["reference", referencePolicy]]) {
    expect(policy, page).toMatch(/^default-src 'none';/);
    const allowed = policy.replace("script-src 'self' https://appsforoffice.microsoft.com", "");
    expect(allowed, page).not.toMatch(/https?:|\*|'unsafe-inline'(?<!style-src-attr 'unsafe-inline')/);
  }
});

test("everything is a plain file or a folder, and nothing is hidden", () => {
  for (const name of names) {
    const stats = lstatSync(join(distFolder, name));
    expect(stats.isFile() || stats.isDirectory(), name).toBe(true);
    expect(name).not.toMatch(/(^|\/)\./);
  }
});

function isFile(name: string): boolean {
  return lstatSync(join(distFolder, name)).isFile();
}
