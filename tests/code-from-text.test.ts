// tests: no text becomes markup or code. What stands in cells, callouts and files comes from strangers, and every page
// that shows it puts it in as text (textContent); this holds where no content policy reaches, as in a test or a tool.

import ts from "typescript";
import { describe, expect, test } from "vitest";
import { files, nodesIn, parse, textOf, treeOf } from "./support/modules.ts";

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
const textsMadeCode = (module: ts.SourceFile): string[] =>
  [...nodesIn(module)].filter(isDangerous).map((node) => node.getText());

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
  ])("%s", (text) => expect(textsMadeCode(parse(text))).toHaveLength(1));

  test.each([
    "cell.textContent = text;",
    "setTimeout(() => go(text), 1);",
    'cell.setAttribute("title", text);',
    "const evaluate = (text: string) => text;",
    "file.write(text);",
  ])("nothing in %s", (text) => expect(textsMadeCode(parse(text))).toEqual([]));
});

test("no module of ours makes markup or code from a text", () => {
  const ours = files.filter((file) => /^(src|functions)\/.*\.(ts|js)$/.test(file));
  expect(ours.length).toBeGreaterThan(50);
  const found = ours.flatMap((file) => textsMadeCode(treeOf(file)).map((text) => `${file}: ${text}`));
  expect(found).toEqual([]);
});

test("no page of ours has a script or a handler inside it", () => {
  const pages = files.filter((file) => /^src\/.*\.html$/.test(file));
  expect(pages.length).toBeGreaterThan(1);
  for (const file of pages) {
    expect(textOf(file), file).not.toMatch(/\son[a-z]+\s*=|javascript:|<script(?![^>]*\ssrc=)/i);
  }
});
