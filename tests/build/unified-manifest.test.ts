// tests: the unified manifest, filled and with one thing wrong at a time.

import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { defaultAddress } from "../../src/build/manifest.ts";
import { manifestFolder } from "../../src/build/paths.ts";
import { fillUnifiedManifest, unifiedManifestFaults } from "../../src/build/unified-manifest.ts";
import { share } from "../support/share.ts";

const read = (name: string) => readFileSync(join(manifestFolder, name), "utf8");
const address = "https://tools.example";
const filled = JSON.parse(fillUnifiedManifest(read("manifest.json"), read("manifest.xml"), address, "1.2.3"));

/** The faults but for files: nothing is built here. */
const faultsOf = async (manifest: object) =>
  (await unifiedManifestFaults(JSON.stringify(manifest, null, 2), address, manifestFolder)).filter(
    (fault) => !fault.includes("no such file"),
  );

describe("the unified manifest", () => {
  test("is in order against the schema, with the address of the functions alone and the version", async () => {
    expect(await faultsOf(filled)).toEqual([]);
    expect(filled.version).toBe("1.2.3");
    expect(filled.extensions[0].runtimes[0].customFunctions).toEqual({
      namespace: { id: "REAM", name: "REAM" },
      metadataUrl: `${address}/functions.json`,
    });
  });
  test("names the address alone", () => {
    expect(JSON.stringify(filled)).not.toContain(defaultAddress);
    expect(filled.validDomains).toEqual(["tools.example"]);
  });
  test("has the buttons of the XML manifest, and hides that", () => {
    const [extension] = filled.extensions;
    expect(extension.ribbons[0].tabs[0].groups[0].controls.map(({ actionId }: any) => actionId)).toEqual([
      "showPane",
      "showConvert",
      "showCheck",
      "showSheet",
    ]);
    const { officeAddinId } = extension.alternates[0].hide.customOfficeAddin;
    expect(read("manifest.xml")).toContain(`<Id>${officeAddinId}</Id>`);
    expect(officeAddinId).not.toBe(filled.id);
  });
  const faults: readonly [string, (manifest: any) => void, string][] = [
    [
      "a list of functions",
      (m) => Object.assign(m.extensions[0].runtimes[0].customFunctions, { functions: [] }),
      "beside metadataUrl",
    ],
    ["an action that is not there", (m) => m.extensions[0].runtimes[0].actions.pop(), "which is not there"],
    [
      "another address",
      (m) => Object.assign(m.extensions[0].runtimes[0].code, { page: "https://other.example/a" }),
      "does not lie at",
    ],
    [
      "no buttons",
      (m) => Object.assign(m.extensions[0].ribbons[0].tabs[0].groups[0], { controls: [] }),
      "no buttons",
    ],
    ["a field of the wrong kind", (m) => Object.assign(m, { accentColor: 7 }), "accentColor"],
    [
      "a namespace too long",
      (m) => Object.assign(m.extensions[0].runtimes[0].customFunctions.namespace, { id: "R".repeat(33) }),
      "namespace",
    ],
  ];
  test.each(share(faults.slice(1, 3), faults))("%s is a fault", async (_, spoil, said) => {
    const manifest = structuredClone(filled);
    spoil(manifest);
    expect((await faultsOf(manifest)).join("\n")).toContain(said);
  });
  test("a file that is not there is a fault", async () => {
    const faults = await unifiedManifestFaults(JSON.stringify(filled), address, join(manifestFolder, "none"));
    expect(faults.join("\n")).toContain("icons/outline.png: there is no such file");
    expect(faults.join("\n")).toContain("/functions.js: there is no such file");
  });
});
