// tests: the files of the project and the syntax trees of its modules, each read once.

import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import ts from "typescript";
import { projectFolder } from "../../src/build/paths.ts";

const listed = execFileSync("git", ["ls-files", "--cached", "--others", "--exclude-standard"], {
  cwd: projectFolder,
  encoding: "utf8",
});

/** Every file that is kept, or that would be. */
export const files: readonly string[] = listed.trim().split("\n");

/** The modules of src and functions. */
export const modules = files
  .filter((file) => /^(src|functions)\/.*\.ts$/.test(file))
  .filter((file) => !file.endsWith(".d.ts"));

function once<Made>(make: (file: string) => Made): (file: string) => Made {
  const made = new Map<string, Made>();
  return (file) => {
    const known = made.get(file);
    if (known !== undefined) return known;
    const fresh = make(file);
    made.set(file, fresh);
    return fresh;
  };
}

export const textOf = once((file) => readFileSync(join(projectFolder, file), "utf8"));

export const parse = (text: string): ts.SourceFile =>
  ts.createSourceFile("module.ts", text, ts.ScriptTarget.Latest, true);

export const treeOf = once((file) => parse(textOf(file)));

/** Every node under one, itself included. */
export function* nodesIn(node: ts.Node): Generator<ts.Node> {
  yield node;
  const children: ts.Node[] = [];
  ts.forEachChild(node, (child) => {
    children.push(child);
  });
  for (const child of children) yield* nodesIn(child);
}

/** The identifiers in a module's code; not what stands in comments and texts. */
export const namesIn = once((file): ReadonlySet<string> => {
  const names = new Set<string>();
  for (const node of nodesIn(treeOf(file))) if (ts.isIdentifier(node)) names.add(node.text);
  return names;
});
