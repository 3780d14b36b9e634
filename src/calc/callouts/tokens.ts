// calc: the text of a callout as a row of tokens.

import { shown, wrong } from "../problem.ts";

export type TokenKind = "number" | "word" | "class" | "sign" | "plusminus" | "mark" | "symbol" | "other";

export interface Token {
  readonly kind: TokenKind;
  /** As written; words in capitals, classes as written. */
  readonly text: string;
  /** Whether no space stands between this token and the one before. */
  readonly joined: boolean;
}

/** Each kind of token at the place where reading stands; the first that fits is taken. */
const PATTERNS: readonly (readonly [TokenKind, RegExp])[] = [
  ["plusminus", /±|\+ ?\/ ?-|%%[pP]|\+-/y],
  ["symbol", /%%[cC]|[⌀ØøΦφ]/y],
  ["number", /\d+(?:[.,]\d+)*[.]?|[.,]\d+(?:[.,]\d+)*/y],
  ["sign", /[+-]/y],
  ["mark", /[ⒺⓂⓁ]|\((?:[EML])\)/y],
  ["word", /[BP]\. ?C\.?(?: ?D\.)?/iy],
  ["word", /[µμ](?:m|in)/iy],
  ["word", /(?:DP|RA|RZ)(?=\d)/iy],
  ["class", /(?:[A-Za-z]{1,2})\d{1,2}(?![\d.,A-WY-Zac-wyz])/y],
  ["word", /[A-Za-zÄÖÜäöüß]+(?:\.(?!\d))?/y],
  ["symbol", /[↧⌴⌵√⌖⟂⌭◎○⌰⏥⌓⌒∥∠⌯↗⌮×]/y],
  ["symbol", /''|["″”]/y],
  ["symbol", /[()[\]/,;:|&]/y],
];

/** Splits a callout, already without odd spaces and dashes. @throws Problem "wrong" at a character of no meaning */
export function tokenize(text: string, name: string): Token[] {
  const tokens: Token[] = [];
  let at = 0;
  let joined = false;
  while (at < text.length) {
    if (text[at] === " ") {
      at++;
      joined = false;
      continue;
    }
    const token = tokenAt(text, at);
    if (!token)
      return wrong(`${name} ${shown(text)} has ${shown(characterAt(text, at))}, which can't be read`);
    const written = token[1];
    tokens.push({
      kind: token[0],
      text: token[0] === "word" ? written.toUpperCase().replace(/[. ]/g, "") : written,
      joined,
    });
    at += written.length;
    joined = true;
  }
  return tokens;
}

function tokenAt(text: string, at: number): [TokenKind, string] | undefined {
  for (const [kind, pattern] of PATTERNS) {
    pattern.lastIndex = at;
    const found = pattern.exec(text);
    if (found) return [kind, found[0]];
  }
  return undefined;
}

function characterAt(text: string, at: number): string {
  const code = text.codePointAt(at)!;
  return code < 32 || code === 127 ? `control character ${code}` : String.fromCodePoint(code);
}
