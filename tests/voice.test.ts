// tests: our own words. Descriptions begin with their verb and are short, arguments say no unit that they lack, and no text
// or comment has a banned idiom, a second term for one concept, or a British spelling.

import { readFileSync } from "node:fs";
import { join } from "node:path";
import ts from "typescript";
import { describe, expect, test } from "vitest";
import { type ArgumentName, vocabulary } from "../functions/arguments.ts";
import { projectFolder } from "../src/build/paths.ts";
import { files, modules, nodesIn, textOf, treeOf } from "./support/modules.ts";
import { declarations } from "./support/sheet.ts";

const functions = declarations.map((declaration) => [declaration.id, declaration] as const);
const wordsIn = (text: string) => text.split(/\s+/).filter((word) => /\w/.test(word)).length;
const sentencesOf = (text: string) => text.split(/(?<=[.?!])\s+(?=[A-Z=])/);

describe.each(functions)("%s", (_, { description, remarks, parameters }) => {
  test("is described in one sentence, from its verb on, of at most 18 words", () => {
    const [first, ...more] = sentencesOf(description);
    expect(first).toMatch(/^(?:Returns|Calculates|Converts|Checks|Lists|Looks up|Shows) /);
    expect(wordsIn(first), first).toBeLessThanOrEqual(18);
    // What a check returns may follow.
    for (const sentence of more) expect(sentence).toMatch(/^Returns /);
  });

  test("has remarks in sentences that can be read at once", () => {
    for (const sentence of sentencesOf(remarks)) expect(wordsIn(sentence), sentence).toBeLessThanOrEqual(20);
  });

  test("says no unit for texts, TRUE and FALSE", () => {
    for (const { name, description } of parameters) {
      const { accepts } = vocabulary[name.replace(/_$/, "") as ArgumentName] ?? { accepts: "" };
      if (/^(?:text|TRUE|one of)/.test(accepts))
        expect(description).not.toMatch(/\bunits?\b|, (?:mm|m\/min)/);
    }
  });
});

const BANNED: readonly (readonly [words: RegExp, instead: string])[] = [
  [/\bdrawn in\b/, "written in"],
  [/\bat or under\b/, "up to"],
  [/\bpassed over\b/, "skipped"],
  [/\bway out\b/, "retract"],
  [/\bdearer\b/, "more expensive"],
  [/\bmend(?:s|ed|ing)?\b/, "repair"],
  [/\bwhere it is right\b/, "if it is correct"],
  [/\b[Ww]hoever\b/, "you, or the program that"],
  [/\ba person\b/, "you, or a user"],
  [/\btaken apart\b/, "parsed"],
  [/\bat hand\b/, "available"],
  [/\bnot sound\b/, "what does not fit"],
  [/\bgo together\b/, "fit"],
  [/\b[Rr]un-out/, "runout"],
  [/\blead-in\b/, "approach"],
  [/\bwear (?:reserve|left)\b/, "wear allowance"],
  [/\blife of an edge\b/, "tool life"],
  [/\bgages?\b/, "gauge"],
  [/\b[Ss]lips?\b/, "mistake"],
  [
    /\b(?:[Ll]east|[Gg]reatest) (?:size|hole|diameter|limit|reamer)\b/,
    "lower or upper limit, minimum or maximum",
  ],
  [/\bwidth of the tolerance\b/, "tolerance"],
  [
    /\b(?:colour|grey|aluminium|neighbour|behaviour|favour|fibre|mould|modell|travell|whilst|learnt|spelt|per cent)/i,
    "American spelling",
  ],
  [
    /\b(?:centre|licence|metre|catalogue|programme|organis|anodis|recognis|normalis|summaris|optimis|analys[ei](?!s\b)|practis)/i,
    "American spelling",
  ],
];

/** What is wrong in a text: the words found and what to write. */
const faultsIn = (text: string, place: string): string[] =>
  BANNED.flatMap(([words, instead]) => {
    const found = words.exec(text);
    return found ? [`${place}: "${found[0]}", write ${instead}`] : [];
  });

// What people write, on drawings and in searches, and what is quoted from others.
const others =
  /^src\/(?:data\/(?:materials\/|drawing-words)|build\/reference\/keywords|calc\/checking\/convert)/;

test.each(modules.filter((file) => !others.test(file)))("%s", (file) => {
  const comments = textOf(file).match(/\/\*[\s\S]*?\*\/|(?:^|\s)\/\/[^\n]*/g) ?? [];
  const texts: string[] = [];
  for (const node of nodesIn(treeOf(file))) {
    if (!ts.isStringLiteral(node) && !ts.isNoSubstitutionTemplateLiteral(node) && !ts.isTemplateHead(node)) {
      if (!ts.isTemplateMiddle(node) && !ts.isTemplateTail(node)) continue;
    }
    if (!ts.isImportDeclaration(node.parent)) texts.push(node.text);
  }
  expect([...comments, ...texts].flatMap((text) => faultsIn(text, text.trim().slice(0, 60)))).toEqual([]);
});

const pages = files.filter((file) => /^[A-Z-]+\.md$|^src\/.*\.html$/.test(file));

test.each(pages)("%s", (file) => {
  const text = readFileSync(join(projectFolder, file), "utf8");
  expect(text.split("\n").flatMap((line, index) => faultsIn(line, `line ${index + 1}`))).toEqual([]);
});

test.each(["Gives the least size.", "Whoever opens it", "neighbouring cells", "the licence"])(
  '"%s" is found',
  (text) => {
    expect(faultsIn(text, "")).toHaveLength(1);
  },
);
