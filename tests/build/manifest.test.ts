// tests: the checks of the manifest find what would keep Excel from loading it.

import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { addressSetting, defaultAddress, fillManifest, manifestFaults } from "../../src/build/manifest.ts";
import { manifestFolder } from "../../src/build/paths.ts";

const address = "https://tools.example/reaming";
const text = fillManifest(readFileSync(join(manifestFolder, "manifest.xml"), "utf8"), address, "1.2.3");

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "manifest-"));
  mkdirSync(join(folder, "icons"));
  const icons = [16, 32, 64, 80].map((size) => `icons/icon-${size}.png`);
  for (const name of ["index.html", "functions.js", "functions.json", ...icons])
    writeFileSync(join(folder, name), "");
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test("the manifest has no fault at its own address and version", () => {
  expect(manifestFaults(text, address, folder)).toEqual([]);
  expect(text).not.toContain(defaultAddress);
  expect(text).toContain("<Version>1.2.3.0</Version>");
});

test("it asks for no more than changing the open workbook", () => {
  expect(text).toContain("<Permissions>ReadWriteDocument</Permissions>");
});

const id = "Functions.Script.Url";
const cases: [what: string, from: string | RegExp, to: string, said: string][] = [
  ["a resource that is not there", `bt:Url id="${id}"`, 'bt:Url id="Other.Url"', `names the resource ${id}`],
  ["a resource that nothing uses", `resid="${id}"`, 'resid="Page.Url"', `resource ${id} is not used`],
  ["an id over 32 characters", new RegExp(id, "g"), `${id}${"x".repeat(20)}`, "over 32"],
  ["a short text over 125 characters", "Reamwright is ready", "x".repeat(126), "over 125"],
  ["a long text over 250 characters", "Type =REAM. into", "x".repeat(251), "over 250"],
  ["a file that is not there", "icon-80.png", "icon-81.png", "no such file"],
  ["another address", `${address}/functions.js"`, 'https://other.example/functions.js"', "does not lie at"],
  ["a short runtime", 'lifetime="long"', 'lifetime="short"', "lifetime long"],
  [
    "a runtime of its own",
    '<FunctionFile resid="Page.Url"',
    `<FunctionFile resid="${id}"`,
    "share the resid",
  ],
  [
    "runtimes out of order",
    /(<Runtimes>[\s\S]*<\/Runtimes>)\s*(<AllFormFactors>[\s\S]*<\/AllFormFactors>)/,
    "$2$1",
    "before",
  ],
  ["a task pane id", "<Action xsi", "<TaskpaneId>a</TaskpaneId><Action xsi", "TaskpaneId"],
  ["an icon left out", /<bt:Image size="16"[^>]*>/, "", "icons of 16, 32 and 80"],
  ["a version of three numbers", "1.2.3.0", "1.2.3", "four numbers"],
  ["a part left out", /<SupportUrl[^>]*>/, "", "OfficeApp has no SupportUrl"],
  [
    "parts out of their order",
    /(<Hosts>[\s\S]*?<\/Hosts>)\s*(<Requirements>[\s\S]*?<\/Requirements>)/,
    "$2$1",
    "Hosts is out of its order",
  ],
  ["a tip without its title", /<Title resid="Check.Label" \/>/, "", "Supertip has no Title"],
  [
    "a group whose icon comes last",
    /(<Label resid="Group.Label" \/>)\s*(<Icon>[\s\S]*?<\/Icon>)/,
    "$2$1",
    "Label is out of its order",
  ],
  [
    "a description over 250 characters",
    "Worksheet functions for reamed holes",
    "x".repeat(251),
    "Description must have",
  ],
  ["an Id that is no GUID", /<Id>.*<\/Id>/, "<Id>reamwright</Id>", "GUID"],
];

describe("a fault is found:", () => {
  test.each(cases)("%s", (_, from, to, said) => {
    const faulty = text.replace(from, to);
    expect(faulty).not.toBe(text);
    expect(manifestFaults(faulty, address, folder).join("\n")).toContain(said);
  });
});

test("the address is a setting, https only", () => {
  expect(addressSetting({})).toBe(defaultAddress);
  expect(addressSetting({ REAMWRIGHT_ADDRESS: `${address}/` })).toBe(address);
  for (const bad of ["http://tools.example", "tools.example", "https://tools.example/<a>", "javascript:1"]) {
    expect(() => addressSetting({ REAMWRIGHT_ADDRESS: bad })).toThrow("https");
  }
});
