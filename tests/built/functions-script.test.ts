// tests: the two files that Excel takes the functions from.

import { readFileSync } from "node:fs";
import { join } from "node:path";
import { AppManifestUtils } from "@microsoft/app-manifest";
import { describe, expect, test } from "vitest";
import { type BuiltError, runFunctionsScript } from "../../src/build/built-functions.ts";
import { readDeclarations } from "../../src/build/declarations.ts";
import { buildMetadata, type Metadata } from "../../src/build/metadata.ts";
import { distFolder } from "../../src/build/paths.ts";

const script = readFileSync(join(distFolder, "functions.js"), "utf8");
const metadata = JSON.parse(readFileSync(join(distFolder, "functions.json"), "utf8")) as Metadata;

describe("functions.js", () => {
  test("registers every declared function in an engine that has nothing but CustomFunctions", () => {
    const functions = runFunctionsScript(script);
    expect([...functions.keys()].sort()).toEqual(
      readDeclarations()
        .map(({ id }) => id)
        .sort(),
    );
    // 1000·15/(π·10)
    expect(functions.get("RPM")!([[15]], [[10]], null, null, {})[0][0]).toBeCloseTo(477.464829, 6);
  });

  test("gives errors of the host's own class", () => {
    const [[cell]] = runFunctionsScript(script).get("RPM")!([["fast"]], [[10]], null, null, {});
    const { code, message } = cell as BuiltError;
    expect(code).toBe("#VALUE!");
    expect(message).toContain('"fast"');
  });

  test("is ASCII alone, since a host may read it in another encoding", () => {
    expect(script).toMatch(/^[\0-\x7f]*$/);
  });

  test("says nothing of the machine that built it", () => {
    expect(script).not.toContain(process.cwd());
    expect(script).not.toContain("sourceMappingURL");
  });
});

describe("functions.json", () => {
  test("is what the sources say, to the letter", async () => {
    expect(metadata).toEqual(await buildMetadata());
  });

  test("fits Microsoft's schema, inside a unified manifest", async () => {
    expect(await AppManifestUtils.validateAgainstSchema(unifiedManifest() as any)).toEqual([]);
  });
});

/** The least manifest around the functions. */
function unifiedManifest() {
  const text = { short: "Reaming", full: "Functions for reamed holes" };
  const site = "https://tools.example";
  return {
    $schema: "https://developer.microsoft.com/en-us/json-schemas/teams/v1.29/MicrosoftTeams.schema.json",
    manifestVersion: "1.29",
    id: "0f1d5c52-36c6-4cf1-9a8c-9b0b7a4de0f1",
    version: "1.0.0",
    developer: { name: "Reamwright", websiteUrl: site, privacyUrl: site, termsOfUseUrl: site },
    name: text,
    description: text,
    icons: { color: "icons/color.png", outline: "icons/outline.png" },
    accentColor: "#1B5E7A",
    extensions: [
      {
        requirements: { scopes: ["workbook"] },
        runtimes: [
          {
            id: "functions",
            type: "general",
            lifetime: "long",
            code: { page: `${site}/index.html`, script: `${site}/functions.js` },
            customFunctions: {
              metadataUrl: `${site}/functions.json`,
              namespace: { id: "REAM", name: "REAM" },
              functions: metadata.functions,
            },
          },
        ],
      },
    ],
  };
}
