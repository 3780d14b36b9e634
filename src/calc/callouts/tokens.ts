// calc: the text of a callout as a row of tokens.

import { shown, wrong } from "../problem.ts";
import { DIAMETER_SIGNS, STOP } from "./drawing-words.ts";

export type TokenKind = "number" | "word" | "class" | "sign" | "plusminus" | "mark" | "symbol" | "other";

export interface Token {
  readonly kind: TokenKind;
  /** As written; words in capitals, classes as written. */
  readonly text: string;
  /** Whether no space stands between this token and the one before. */
  readonly joined: boolean;
}

type Pattern = readonly [TokenKind, RegExp];

/** Patterns by what a token begins with; the first that fits where reading stands is taken. */
const NUMBER: readonly Pattern[] = [["number", /\d+(?:[.,]\d+)*[.]?|[.,]\d+(?:[.,]\d+)*/y]];
const LETTER: readonly Pattern[] = [
  ["word", /(?:mm|in|inch)(?=[A-Z]{1,2}\d)/iy],
  ["word", /[BP]\. ?C\.?(?: ?D\.)?|(?:DP|RA|RZ)(?=\d)/iy],
  ["class", /[A-Za-z]{1,2}\d{1,2}(?![\dA-WYZa-wyz]|[.,]\d)/y],
  ["word", /[A-Za-zÄÖÜäöüß]+(?:\.(?!\d))?/y],
];
const OTHER: readonly Pattern[] = [
  ["plusminus", /±|\+ ?\/ ?-|%%p|\+-/iy],
  ["symbol", new RegExp(`%%c|[${DIAMETER_SIGNS}]`, "iy")],
  ["sign", /[+-]/y],
  ["mark", /[ⒺⓂⓁ]|\([EML]\)/y],
  ["word", /[µμ](?:m|in)|[ÄÖÜäöüß][A-Za-zÄÖÜäöüß]*/iy],
  ["symbol", /[↧⌴⌵√⌖⟂⌭◎○⌰⏥⌓⌒∥∠⌯↗⌮×]|''|["″”]|[()[\]/,;:|&]/y],
];

/** Splits a callout, already without odd spaces and dashes, up to a counterbore or countersink. @throws Problem "wrong" at a character of no meaning */
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
    if (STOP.has(written)) return tokens;
    at += written.length;
    joined = true;
  }
  return tokens;
}

function tokenAt(text: string, at: number): [TokenKind, string] | undefined {
  const code = text.charCodeAt(at);
  const isDigit =
    (code >= 48 && code <= 57) || ((code === 44 || code === 46) && /\d/.test(text[at + 1] ?? ""));
  const isLetter = (code >= 65 && code <= 90) || (code >= 97 && code <= 122);
  for (const [kind, pattern] of isDigit ? NUMBER : isLetter ? LETTER : OTHER) {
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
