// workbook: signs that a file writes as functions: `A1#`, the cells that a formula fills, and `@A1:A9`, the one of them in
// this row; and the names that LET and LAMBDA give, which have a mark in a file (from memory).

import { calledAt, type Token, tokensOf } from "./formula-tokens.ts";

/** A formula, without "=", with those signs and names as a file has them. */
export function withStoredSyntax(formula: string): string {
  if (!/[#@]|\b(?:LET|LAMBDA)\b/i.test(formula)) return formula;
  const tokens = tokensOf(formula);
  const texts = tokens.map(({ text }) => text);
  for (const at of namesGiven(tokens)) texts[at] = `_xlpm.${texts[at]}`;
  tokens.forEach(({ text }, i) => {
    if (text === "#" && tokens[i - 1]?.kind === "name") {
      texts[startOf(tokens, i - 1)] = `_xlfn.ANCHORARRAY(${texts[startOf(tokens, i - 1)]}`;
      texts[i] = ")";
    }
    const end = text === "@" ? endOf(tokens, i + 1) : undefined;
    if (end === undefined) return;
    texts[i] = "_xlfn.SINGLE(";
    texts[end] += ")";
  });
  return texts.join("");
}

/** A reference begins at the sheet that it names. */
const startOf = (tokens: readonly Token[], cell: number): number =>
  tokens[cell - 1]?.text === "!" ? cell - 2 : cell;

/** The last token of a reference, of a name or of a call. */
function endOf(tokens: readonly Token[], start: number): number | undefined {
  const at = tokens[start + 1]?.text === "!" ? start + 2 : start;
  const next = tokens[at + 1];
  if (next?.text === ":") return at + 2;
  if (next?.kind === "bracket") return at + 1;
  return next?.text === "(" ? closing(tokens, at + 1) : at;
}

function closing(tokens: readonly Token[], open: number): number | undefined {
  let depth = 0;
  for (let at = open; at < tokens.length; at++) {
    if (tokens[at].text === "(") depth++;
    else if (tokens[at].text === ")" && --depth === 0) return at;
  }
  return undefined;
}

/** Where names stand that LET and LAMBDA give. */
function namesGiven(tokens: readonly Token[]): ReadonlySet<number> {
  const places = new Set<number>();
  tokens.forEach((_, i) => {
    const called = calledAt(tokens, i)
      ?.replace(/^_xlfn\./i, "")
      .toUpperCase();
    if (called !== "LET" && called !== "LAMBDA") return;
    const open = tokens[i + 1].text === "(" ? i + 1 : i + 2;
    const close = closing(tokens, open);
    if (close === undefined) return;
    const given = argumentsBetween(tokens, open, close).slice(0, -1);
    const names = given.flatMap((own, at) => {
      const [only] = own;
      const isName = own.length === 1 && only.kind === "name" && (called === "LAMBDA" || at % 2 === 0);
      return isName ? only.text.toUpperCase() : [];
    });
    for (let at = open; at < close; at++) {
      const { kind, text } = tokens[at];
      if (kind === "name" && names.includes(text.toUpperCase()) && !/^_xlpm\./i.test(text)) places.add(at);
    }
  });
  return places;
}

/** The words of each argument, without spaces. */
function argumentsBetween(tokens: readonly Token[], open: number, close: number): Token[][] {
  const all: Token[][] = [[]];
  let depth = 0;
  for (const token of tokens.slice(open + 1, close)) {
    if (/^[({]$/.test(token.text)) depth++;
    else if (/^[)}]$/.test(token.text)) depth--;
    if (token.text === "," && depth === 0) all.push([]);
    else if (token.kind !== "space") all[all.length - 1].push(token);
  }
  return all;
}
