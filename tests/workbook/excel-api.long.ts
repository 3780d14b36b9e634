// tests: every member of Excel's that the sources name, against the API set in which Microsoft's types say it came, and
// against what the manifests ask for; those that no test calls too.

import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import ts from "typescript";
import { expect, test } from "vitest";
import { manifestFolder, projectFolder } from "../../src/build/paths.ts";
import { askedFor } from "../support/api-sets.ts";

const filesIn = (folder: string, pattern: RegExp) =>
  readdirSync(join(projectFolder, "src", folder), { recursive: true, encoding: "utf8" })
    .filter((name) => pattern.test(name))
    .map((name) => join(projectFolder, "src", folder, name));

/** "1.9" by member, for all that the files name and that has a set. */
function setsUsed(files: readonly string[]): Map<string, string> {
  const read = ts.readConfigFile(join(projectFolder, "tsconfig.json"), ts.sys.readFile).config;
  const { options } = ts.parseJsonConfigFileContent(read, ts.sys, projectFolder);
  const program = ts.createProgram(files, { ...options, noEmit: true });
  const checker = program.getTypeChecker();
  const used = new Map<string, string>();
  const note = (symbol: ts.Symbol | undefined) => {
    for (const declaration of symbol?.declarations ?? []) {
      const source = declaration.getSourceFile();
      if (!source.fileName.includes("office-js")) continue;
      const comment = source.text.slice(declaration.pos, declaration.getStart());
      // A property may have come for reading first.
      const [, came, toSet] =
        /\[Api set: ExcelApi (\d+\.\d+)(?: for get, (\d+\.\d+) for set)?/.exec(comment) ?? [];
      const { name = undefined } = declaration.parent as { name?: ts.Identifier };
      if (came) used.set(`${name?.text ?? "Excel"}.${symbol!.name}`, toSet ?? came);
    }
  };
  const visit = (node: ts.Node): void => {
    if (ts.isPropertyAccessExpression(node)) note(checker.getSymbolAtLocation(node.name));
    if (ts.isPropertyAssignment(node) || ts.isShorthandPropertyAssignment(node))
      note(checker.getContextualType(node.parent)?.getProperty(node.name.getText()));
    ts.forEachChild(node, visit);
  };
  for (const file of files) visit(program.getSourceFile(file)!);
  return used;
}

const inOrder = (a: string, b: string) => a.localeCompare(b, "en", { numeric: true });

test("the manifests ask for the newest API set that a member in the sources came in, and for no newer", () => {
  const used = setsUsed([...filesIn("workbook", /^excel-.*\.ts$/), ...filesIn("taskpane", /\.ts$/)]);
  // The reader of the types reads them.
  expect(used.get("Range.formulas")).toBe("1.1");
  expect(used.get("Application.calculationMode")).toBe("1.8");
  expect(used.size).toBeGreaterThan(60);
  expect([...used.values()].sort(inOrder).at(-1)).toBe(askedFor);
  const unified = JSON.parse(readFileSync(join(manifestFolder, "manifest.json"), "utf8"));
  const capabilities: { name: string; minVersion: string }[] =
    unified.extensions[0].requirements.capabilities;
  expect(capabilities).toContainEqual({ name: "ExcelApi", minVersion: askedFor });
});
