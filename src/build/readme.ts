// build: the list of functions in README.md, from the declarations. `npm run readme` renews it, `npm run check` asks
// that it is current.

import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { type Declaration, readDeclarations } from "./declarations.ts";
import { projectFolder } from "./paths.ts";
import { topics } from "./reference/topics.ts";

const file = join(projectFolder, "README.md");
const start = "<!-- functions: written by npm run readme -->";
const end = "<!-- end of functions -->";

export function functionList(declarations: readonly Declaration[]): string {
  const lines = topics.flatMap(([topic, title]) => {
    const own = declarations.filter((declaration) => declaration.topic === topic);
    return own.length === 0 ? [] : [`- **${title}**: ${own.map(({ id }) => `\`${id}\``).join(", ")}`];
  });
  return `${start}\n\n${lines.join("\n")}\n\n${end}`;
}

/** README.md as it should be. Throws where the marks of the list are missing. */
export function currentReadme(text: string, declarations = readDeclarations()): string {
  const [from, to] = [text.indexOf(start), text.indexOf(end)];
  if (from < 0 || to < from) throw new Error(`README.md has lost the marks "${start}" and "${end}"`);
  return text.slice(0, from) + functionList(declarations) + text.slice(to + end.length);
}

export function checkReadme(): void {
  const text = readFileSync(file, "utf8");
  if (currentReadme(text) !== text) throw new Error("README.md lists other functions: run npm run readme");
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href)
  writeFileSync(file, currentReadme(readFileSync(file, "utf8")));
