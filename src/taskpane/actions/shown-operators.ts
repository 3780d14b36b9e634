// taskpane: `A2#` and `@A2:A9`, which a sheet shows in place of functions that its file has.

import { type Token, tokensOf } from "../../workbook/xlsx/formula-tokens.ts";

/** A formula with ANCHORARRAY and SINGLE in place of the signs # and @. */
export function inCalls(formula: string): string {
  if (!/[#@]/.test(formula)) return formula;
  const tokens = tokensOf(formula);
  const before = tokens.map(() => "");
  const after = tokens.map(() => "");
  const texts = tokens.map(({ text }) => text);
  tokens.forEach(({ kind, text }, at) => {
    if (kind !== "operator") return;
    if (text === "#" && tokens[at - 1]?.kind === "name") {
      const start = tokens[at - 2]?.text === "!" ? at - 3 : at - 1;
      before[start] += "ANCHORARRAY(";
      texts[at] = ")";
    } else if (text === "@") {
      texts[at] = "SINGLE(";
      const end = operandEnd(tokens, at + 1);
      after[end] = `)${after[end]}`;
    }
  });
  return texts.map((text, at) => before[at] + text + after[at]).join("");
}

/** The last word of the call or reference that begins at a word. */
function operandEnd(tokens: readonly Token[], start: number): number {
  let at = start;
  while (/^[:!]$/.test(tokens[at + 1]?.text ?? "") && at + 2 < tokens.length) at += 2;
  const next = tokens[at + 1];
  if (next?.text === "#" || next?.kind === "bracket") return at + 1;
  if (next?.text !== "(") return Math.min(at, tokens.length - 1);
  let depth = 0;
  for (at++; at < tokens.length; at++) {
    if (tokens[at].text === "(") depth++;
    else if (tokens[at].text === ")" && --depth === 0) return at;
  }
  return tokens.length - 1;
}
