// tests: no text becomes markup or code. What stands in cells, callouts and files comes from strangers, and every page
// that shows it puts it in as text (textContent); this holds where no content policy reaches, as in a test or a tool.

import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import ts from "typescript";
import { describe, expect, test } from "vitest";
import { projectFolder } from "../src/build/paths.ts";

/** Properties and methods that read a text as markup. */
const markup = new Set([
  "innerHTML",
  "outerHTML",
  "insertAdjacentHTML",
  "createContextualFragment",
  "setHTMLUnsafe",
  "parseHTMLUnsafe",
  "srcdoc",
]);
const compiles = new Set(["eval", "Function"]);
const timers = new Set(["setTimeout", "setInterval"]);

/** Every place in a module where a text would become markup or code. */
function textsMadeCode(text: string): string[] {
  const source = ts.createSourceFile("module.ts", text, ts.ScriptTarget.Latest, true);
  const found: string[] = [];
  const look = (node: ts.Node): void => {
    if (isDangerous(node)) found.push(node.getText());
    ts.forEachChild(node, look);
  };
  look(source);
  return found;
}

function isDangerous(node: ts.Node): boolean {
  if (ts.isPropertyAccessExpression(node)) {
    const { text } = node.name;
    return (
      markup.has(text) || (/^(document|doc)$/.test(node.expression.getText()) && /^write(ln)?$/.test(text))
    );
  }
  if (ts.isElementAccessExpression(node) && ts.isStringLiteral(node.argumentExpression))
    return markup.has(node.argumentExpression.text);
  if (!ts.isCallExpression(node) && !ts.isNewExpression(node)) return false;
  const called = node.expression.getText().replace(/^(window|globalThis|self)\./, "");
  if (compiles.has(called)) return true;
  const first = node.arguments?.[0];
  if (timers.has(called))
    return first !== undefined && (ts.isStringLiteralLike(first) || ts.isTemplateExpression(first));
  return /\.setAttribute$/.test(called) && first !== undefined && /^["'`](on|srcdoc)/.test(first.getText());
}

describe("the check finds", () => {
  test.each([
    "cell.innerHTML = text;",
    'cell["outerHTML"] = text;',
    'cell.insertAdjacentHTML("beforeend", text);',
    "document.write(text);",
    "eval(text);",
    "globalThis.eval(text);",
    'new Function("a", text);',
    "Function(text)();",
    'setTimeout("go()", 1);',
    "window.setInterval(`go()`, 1);",
    'cell.setAttribute("onclick", text);',
  ])("%s", (text) => expect(textsMadeCode(text)).toHaveLength(1));

  test.each([
    "cell.textContent = text;",
    "setTimeout(() => go(text), 1);",
    'cell.setAttribute("title", text);',
    "const evaluate = (text: string) => text;",
    "file.write(text);",
  ])("nothing in %s", (text) => expect(textsMadeCode(text)).toEqual([]));
});

test("no module of ours makes markup or code from a text", () => {
  const listed = execFileSync(
    "git",
    ["ls-files", "--cached", "--others", "--exclude-standard", "src", "functions"],
    {
      cwd: projectFolder,
      encoding: "utf8",
    },
  );
  const modules = listed.split("\n").filter((file) => /\.(ts|js)$/.test(file));
  expect(modules.length).toBeGreaterThan(50);
  const found = modules.flatMap((file) =>
    textsMadeCode(readFileSync(join(projectFolder, file), "utf8")).map((text) => `${file}: ${text}`),
  );
  expect(found).toEqual([]);
});

test("no page of ours has a script or a handler inside it", () => {
  const listed = execFileSync("git", ["ls-files", "src"], { cwd: projectFolder, encoding: "utf8" });
  const pages = listed.split("\n").filter((file) => file.endsWith(".html"));
  expect(pages.length).toBeGreaterThan(1);
  for (const file of pages) {
    const text = readFileSync(join(projectFolder, file), "utf8");
    expect(text, file).not.toMatch(/\son[a-z]+\s*=|javascript:|<script(?![^>]*\ssrc=)/i);
  }
});
