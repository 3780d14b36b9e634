// build: reads the worksheet functions as they are declared in functions/*.ts. Everything that is said about a
// function elsewhere (Excel's metadata, help, reference pages, the list in the README) follows from here.

import { readdirSync, readFileSync } from "node:fs";
import { basename, join, relative } from "node:path";
import ts from "typescript";
import { functionsFolder, projectFolder } from "./paths.ts";

export interface Parameter {
  readonly name: string;
  /** The text of its `@param`, empty if there is none. */
  readonly description: string;
  readonly optional: boolean;
  readonly repeating: boolean;
  /** Taken whole, as `@list` says: its cells do not spread over rows. */
  readonly whole: boolean;
}

export interface Example {
  readonly formula: string;
  /** What stands after `//`: a number, a quoted text, TRUE, #N/A, or the cells of a row between commas. */
  readonly result: string;
}

export interface Declaration {
  readonly id: string;
  readonly exportName: string;
  /** From the root of the project, `functions/speeds.ts`. */
  readonly file: string;
  /** The file's name without its ending, `speeds`. */
  readonly topic: string;
  readonly description: string;
  readonly remarks: string;
  readonly parameters: readonly Parameter[];
  readonly returns: string;
  /** Names of the cells that a row function gives per input row; empty for the others. */
  readonly row: readonly string[];
  /** The cells that it gives for a row, with their units; none where its result has a shape of its own. */
  readonly cells: readonly { readonly name: string; readonly units: readonly [mm: string, inch: string] }[];
  readonly examples: readonly Example[];
  /** Keys of src/data/sources.ts. */
  readonly sources: readonly string[];
  readonly faults: readonly string[];
}

/** The names of the files that may declare functions, in alphabetical order. */
export function functionFiles(folder = functionsFolder): string[] {
  return readdirSync(folder)
    .filter((name) => name.endsWith(".ts"))
    .sort()
    .map((name) => join(folder, name));
}

/** Every declared function, file by file, in the order of the text. `faults` lists what is wrong with each. */
export function readDeclarations(folder = functionsFolder): Declaration[] {
  return functionFiles(folder).flatMap((file) => readFile(file));
}

function readFile(path: string): Declaration[] {
  const text = readFileSync(path, "utf8");
  const source = ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true);
  const file = relative(projectFolder, path).replaceAll("\\", "/");
  const declarations = source.statements
    .filter((node): node is ts.FunctionDeclaration => ts.isFunctionDeclaration(node))
    .filter((node) => tagTexts(node, "customfunction").length > 0)
    .map((node) => readFunction(node, file));
  const tags = text.match(/^[ \t]*(?:\/\*)?\*+[ \t]*@customfunction\b/gim)?.length ?? 0;
  if (tags !== declarations.length) {
    throw new Error(
      `${file}: ${tags} @customfunction tags but ${declarations.length} top-level functions: declare each as "export function"`,
    );
  }
  return declarations;
}

function readFunction(node: ts.FunctionDeclaration, file: string): Declaration {
  const exportName = node.name?.text ?? "";
  const faults: string[] = [];
  const documented = new Map<string, { text: string; bracketed: boolean }>();
  for (const tag of ts.getJSDocTags(node).filter(ts.isJSDocParameterTag)) {
    const name = tag.name.getText();
    if (documented.has(name)) faults.push(`two @param tags for ${name}`);
    documented.set(name, { text: textOf(tag.comment), bracketed: tag.isBracketed });
  }
  const lists = new Set(splitList(tagTexts(node, "list").join(",")));
  const parameters = node.parameters.map((parameter) => {
    const name = parameter.name.getText();
    const type = parameter.type?.getText() ?? "";
    const optional = parameter.questionToken !== undefined;
    const written = documented.get(name);
    documented.delete(name);
    if (!written) faults.push(`parameter ${name} has no @param`);
    else if (written.bracketed !== optional)
      faults.push(`@param ${name} and the parameter disagree on "optional"`);
    if (type !== "any[][]" && type !== "any[][][]")
      faults.push(`parameter ${name} must be any[][], or any[][][] if it repeats`);
    if (parameter.initializer || parameter.dotDotDotToken)
      faults.push(`parameter ${name} has a default or is a rest parameter`);
    const shown = argumentName(name);
    const repeating = type === "any[][][]";
    const whole = repeating || lists.delete(shown);
    return { name: shown, description: written?.text ?? "", optional, repeating, whole };
  });
  for (const name of lists) faults.push(`@list ${name} is for no parameter`);
  for (const name of documented.keys()) faults.push(`@param ${name} is for no parameter`);
  if (node.type?.getText() !== "any[][]") faults.push("the result must be declared any[][]");
  if (!node.modifiers?.some((modifier) => modifier.kind === ts.SyntaxKind.ExportKeyword))
    faults.push("not exported");
  const id = tagTexts(node, "customfunction")[0] ?? "";
  if (/\s/.test(id)) faults.push("@customfunction takes the id alone");
  const rowCells = splitList(tagTexts(node, "row").join(",")).map(readCell);
  const descriptions = ts.getJSDocCommentsAndTags(node).filter(ts.isJSDoc);
  if (descriptions.length !== 1) faults.push("more than one doc comment");
  return {
    id,
    exportName,
    file,
    topic: basename(file, ".ts"),
    description: textOf(descriptions.at(-1)?.comment),
    remarks: tagTexts(node, "remarks").join("\n"),
    parameters,
    returns: [...tagTexts(node, "returns"), ...tagTexts(node, "return")].join(" "),
    row: rowCells.map(({ name }) => name),
    cells: rowCells.length > 0 ? rowCells : splitList(tagTexts(node, "cell").join(",")).map(readCell),
    examples: tagTexts(node, "example").map(readExample),
    sources: tagTexts(node, "see")
      .filter((text) => text.startsWith("sources:"))
      .flatMap((text) => splitList(text.slice("sources:".length))),
    faults,
  };
}

/** The name in the formula bar: one that the language keeps for itself is declared with `_` behind it. */
export function argumentName(identifier: string): string {
  return identifier.replace(/_$/, "");
}

/** `spindle speed [rev/min]`, `stock [mm|in]`, `drill`: the name of a cell, and its unit in both sets. */
function readCell(text: string) {
  const [, name, unit = ""] = /^(.*?)(?: \[(.*)\])?$/.exec(text)!;
  const [mm, inch = mm] = unit.split("|");
  return { name, units: [mm, inch] as const };
}

function readExample(text: string): Example {
  const at = text.lastIndexOf(" // ");
  return at < 0
    ? { formula: text, result: "" }
    : { formula: text.slice(0, at).trim(), result: text.slice(at + 4).trim() };
}

function tagTexts(node: ts.Node, name: string): string[] {
  return ts
    .getJSDocTags(node)
    .filter((tag) => tag.tagName.text.toLowerCase() === name)
    .map((tag) => seeText(tag));
}

/** The words of a tag. A `@see` has its first word parsed as a name by the compiler, so its text is read whole. */
function seeText(tag: ts.JSDocTag): string {
  if (!ts.isJSDocSeeTag(tag)) return textOf(tag.comment);
  return oneLine(
    tag
      .getText()
      .replace(/^@see\s*/, "")
      .replace(/\n\s*\*/g, "\n"),
  );
}

function textOf(comment: string | ts.NodeArray<ts.JSDocComment> | undefined): string {
  return oneLine(ts.getTextOfJSDocComment(comment) ?? "");
}

const oneLine = (text: string) => text.replace(/\s+/g, " ").trim();

const splitList = (text: string) =>
  text
    .split(",")
    .map((part) => part.trim())
    .filter((part) => part !== "");
