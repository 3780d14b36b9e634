// build: what a script asks of the engine that the oldest supported one lacks: Safari 14.1, in which Excel on a Mac may
// run. Syntax is lowered when scripts are bundled; library calls and patterns are not, and one pattern that does not
// parse takes the whole file with it.

import ts from "typescript";

/** Methods that came later, by the release of Safari that brought them. */
const METHODS: Readonly<Record<string, string>> = {
  at: "15.4",
  findLast: "15.4",
  findLastIndex: "15.4",
  toReversed: "16",
  toSorted: "16",
  toSpliced: "16",
  isWellFormed: "16.4",
  toWellFormed: "16.4",
};
const FUNCTIONS: Readonly<Record<string, string>> = {
  "Object.hasOwn": "15.4",
  "Object.groupBy": "17.4",
  "Map.groupBy": "17.4",
  "Array.fromAsync": "16.4",
  "Promise.withResolvers": "17.4",
  structuredClone: "15.4",
};
const LOOK_BEHIND = /\(\?<[=!]/g;

/** The patterns that take the whole file with them. */
export const lookBehinds = (script: string): string[] =>
  Array.from(
    script.matchAll(LOOK_BEHIND),
    ({ index }) => `look-behind, which Safari parses from 16.4 on: ${script.slice(index, index + 30)}`,
  );

/** Everything that such an engine lacks, one line each. */
export function lackingInOldEngines(script: string): string[] {
  const found = new Set<string>(lookBehinds(script));
  const look = (node: ts.Node): void => {
    if (ts.isRegularExpressionLiteral(node) && /[dv]/.test(node.text.slice(node.text.lastIndexOf("/"))))
      found.add(`a pattern with the flag d or v: ${node.text.slice(0, 30)}`);
    if (ts.isCallExpression(node)) {
      const called = node.expression.getText();
      if (Object.hasOwn(FUNCTIONS, called)) found.add(`${called}, in Safari from ${FUNCTIONS[called]} on`);
      if (ts.isPropertyAccessExpression(node.expression)) {
        const name = node.expression.name.text;
        // A method of ours may have the same name: at() of a list takes one argument.
        if (Object.hasOwn(METHODS, name) && (name !== "at" || node.arguments.length === 1))
          found.add(`${name}(), in Safari from ${METHODS[name]} on`);
      }
    }
    ts.forEachChild(node, look);
  };
  look(ts.createSourceFile("script.js", script, ts.ScriptTarget.Latest, true, ts.ScriptKind.JS));
  return [...found];
}
