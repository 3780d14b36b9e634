// tests: a license outside the list is found, whatever form it is named in; each shipped package's text goes along.

import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import {
  exceptions,
  type LicensedPackage,
  licenseFaults,
  licensesFile,
  licenseText,
  lockedPackages,
  packageOf,
  shippedPackages,
} from "../../src/build/licenses.ts";
import { projectFolder } from "../../src/build/paths.ts";
import { embedded, vendored } from "../../src/build/vendored.ts";

const none = new Set<string>();
const under = (license: string, name = "some"): LicensedPackage => ({ name, version: "1.0.0", license });
const faultsOf = (license: string, shipped = none) => licenseFaults([under(license)], shipped, {});

describe("in development", () => {
  test.each(["MIT", "(MIT OR GPL-3.0-or-later)", "Apache-2.0 AND MIT", "MPL-2.0", "CC-BY-4.0", "MIT/X11"])(
    "%s is allowed",
    (license) => expect(faultsOf(license)).toEqual([]),
  );

  test.each([
    "GPL-3.0-only",
    "AGPL-3.0-or-later",
    "MIT AND GPL-2.0-only",
    "BUSL-1.1",
    "CC-BY-NC-4.0",
    "UNLICENSED",
    "SEE LICENSE IN LICENSE.txt",
    "",
  ])("%j is a fault that names the package", (license) => {
    expect(faultsOf(license)).toEqual([
      `some 1.0.0 is under "${license}", which is not allowed in development`,
    ]);
  });
});

describe("in dist", () => {
  const some = new Set(["some"]);
  test.each(["LGPL-3.0-or-later", "(OFL-1.1 AND MIT)", "(BSD-3-Clause OR GPL-2.0)"])(
    "%s is allowed",
    (license) => expect(faultsOf(license, some)).toEqual([]),
  );

  test.each(["MPL-2.0", "CC-BY-4.0", "GPL-3.0-only"])("%s is a fault", (license) => {
    expect(faultsOf(license, some)).toHaveLength(1);
  });

  test("no exception holds", () => {
    const odd = [under("LICENSE", "odd")];
    expect(licenseFaults(odd, none, { odd: "for tests" })).toEqual([]);
    expect(licenseFaults(odd, new Set(["odd"]), { odd: "for tests" })).toHaveLength(1);
  });
});

test("an exception for a package that is gone is a fault", () => {
  expect(licenseFaults([], none, { odd: "for tests" })).toEqual([
    "odd is named but not in package-lock.json",
  ]);
});

test.each([
  ["MIT", "MIT"],
  [{ type: "ISC", url: "" }, "ISC"],
  [[{ type: "MIT" }, { type: "GPL-2.0-only" }], "MIT OR GPL-2.0-only"],
  [undefined, ""],
])("package.json may say %j", (field, expected) => expect(licenseText(field)).toBe(expected));

test("the lock file's packages are all allowed, and every exception is needed", () => {
  const packages = lockedPackages();
  expect(packages.length).toBeGreaterThan(100);
  expect(licenseFaults(packages, none)).toEqual([]);
  expect(licenseFaults(packages, none, {}).length).toBe(Object.keys(exceptions).length);
});

test.each([
  ["/a/node_modules/zod/mini/index.js", "zod"],
  ["/a/node_modules/@odoo/owl/LICENSE", "@odoo/owl"],
  ["C:\\a\\node_modules\\rbush\\node_modules\\quickselect\\index.js", "quickselect"],
  ["/a/node_modules/.cache/entry.ts", undefined],
  ["/a/src/calc/problem.ts", undefined],
])("%s is of the package %s", (file, name) => expect(packageOf(file)).toBe(name));

test("what the grid's script holds inside is named", () => {
  const file = join(projectFolder, "node_modules/@odoo/o-spreadsheet/dist/o_spreadsheet.iife.js");
  // The unminified script marks where each package in it begins.
  const marks = readFileSync(file, "utf8").matchAll(/^\/\/#region node_modules\/((?:@[^/\s]+\/)?[^/\s]+)/gm);
  const inside = new Set([...marks].map(([, name]) => name));
  expect([...inside]).toEqual(["rbush"]);
  const { dependencies } = JSON.parse(
    readFileSync(join(projectFolder, "node_modules/rbush/package.json"), "utf8"),
  );
  expect(embedded["@odoo/o-spreadsheet"]).toEqual([...inside, ...Object.keys(dependencies)]);
});

test("the texts of our own license and of each shipped package's go along", () => {
  const shipped = shippedPackages(vendored.map(({ from }) => from));
  expect([...shipped].sort()).toEqual([
    "@odoo/o-spreadsheet",
    "@odoo/owl",
    "bootstrap",
    "font-awesome",
    "quickselect",
    "rbush",
  ]);
  const text = licensesFile(shipped);
  expect(text).toMatch(/^Reamwright, MIT\n/);
  for (const name of shipped) expect(text).toContain(`\n${name} `);
  for (const phrase of [
    "GNU LESSER GENERAL PUBLIC LICENSE",
    "GNU GENERAL PUBLIC LICENSE",
    "SIL OPEN FONT LICENSE",
    "ISC License",
    "Source: https://github.com/mourner/rbush",
  ])
    expect(text).toContain(phrase);
});
