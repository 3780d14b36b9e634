// calc: the text of a callout as a row of tokens, each with what it does on a drawing.

import { numberWords, type Role } from "../../data/drawing-words.ts";
import { shown, wrong } from "../problem.ts";
import { DIAMETER_SIGNS, LONGEST_PHRASE, plainWord, roles } from "./drawing-words.ts";

export type TokenKind = "number" | "word" | "class" | "sign" | "plusminus" | "mark" | "symbol" | "other";

export interface Token {
  readonly kind: TokenKind;
  /** As written; words as the table of drawing words has them. */
  readonly text: string;
  readonly role: Role | undefined;
  /** Whether no space stands between this token and the one before. */
  readonly joined: boolean;
  /** Whether a new line of the drawing begins with it. */
  readonly startsLine: boolean;
  /** Where it stands in the text. */
  readonly start: number;
  readonly end: number;
}

type Pattern = readonly [TokenKind, RegExp];

/** Without Æ and Ø, which are diameter signs. */
const LETTERS = "A-Za-zÀ-ÅÇ-ÖÙ-öù-ÿŒœ";
/** Patterns by what a token begins with; the first that fits where reading stands is taken. */
const NUMBER: readonly Pattern[] = [["number", /(?:\d+|[.,]\d+)(?:[.,]\d+)*[.]?/y]];
const LETTER: readonly Pattern[] = [
  ["word", /N[°º]|N(?:r|um)?\. ?(?=\d)/iy],
  ["symbol", /[Dd] ?=/y],
  ["word", /(?:mm|in|inch|um)(?=[A-Z]{1,2}\d)/iy],
  ["word", /C['’] ?BORE|THRO['’]|REQ['’]D|B\/C\b|[BP]\. ?C\.?(?: ?D\.)?|(?:DP|RA|RZ)(?=\d)/iy],
  ["class", /[A-Za-z]{1,2}\d{1,2}(?=THRU|DEEP|REAM|DURCH)/iy],
  ["class", /[A-Za-z]{1,2}\d{1,2}(?![\dA-WYZa-wyz]|[.,]\d)/y],
  ["word", new RegExp(`[${LETTERS}]+(?:['’-][${LETTERS}]{2,})*(?:\\.(?!\\d))?`, "y")],
];
const OTHER: readonly Pattern[] = [
  ["plusminus", /±|\+ ?\/ ?-|%%p|\+-/iy],
  ["symbol", new RegExp(`(?:%%c|[${DIAMETER_SIGNS}])(?: ?=)?`, "iy")],
  ["sign", /[+-]/y],
  ["mark", /[ⒺⓂⓁⓈ]|\([EML]\)/y],
  ["word", /[µμ](?:m|in)(?![A-Za-z])/iy],
  ["word", new RegExp(`[${LETTERS}]+(?:\\.(?!\\d))?`, "y")],
  ["symbol", /''|[↧↓⌴⌵√⌖⟂⊥⌭◎○⌰⏥⌓⌒∥∠⌯↗⌮×"″”()[\]/,;:|&~÷=<≤]/y],
];
const EAST_ASIAN = /[\u3005-\u30ff\u3400-\u9fff]/;
const LONGEST_EAST_ASIAN_WORD = 6;

/** Splits a callout. What no pattern fits is a token of kind "other", for the reader to refuse where it matters. */
export function tokenize(text: string, name: string): Token[] {
  const tokens: Token[] = [];
  let at = 0;
  let joined = false;
  let startsLine = true;
  while (at < text.length) {
    const character = text[at];
    if (character === " " || character === "\n") {
      startsLine ||= character === "\n";
      at++;
      joined = false;
      continue;
    }
    const [kind, written] = tokenAt(text, at);
    if (kind === "other" && isControl(written)) refuseCharacter(written, text, name);
    const plain =
      kind === "word"
        ? plainWord(written.trimEnd())
        : kind === "symbol"
          ? written.replace(/^(.+?) ?=$/, "$1")
          : written;
    const role =
      kind === "word" || kind === "symbol" ? (roles.get(plain) ?? diameterRole(kind, plain)) : undefined;
    tokens.push({ kind, text: plain, role, joined, startsLine, start: at, end: at + written.length });
    at += written.length;
    joined = true;
    startsLine = false;
  }
  return withNumbers(withPhrases(tokens));
}

/** `TWO HOLES`, `vier Bohrungen`, `zweimal`: a number in words is one where what it counts stands behind it. */
function withNumbers(tokens: Token[]): Token[] {
  return tokens.flatMap((token, at): Token[] => {
    if (token.kind !== "word") return [token];
    const number = (word: string): Token | undefined => {
      const value = numberWords.get(word);
      return value === undefined
        ? undefined
        : { ...token, kind: "number", text: String(value), role: undefined };
    };
    const times = token.text.endsWith("MAL") ? number(token.text.slice(0, -3)) : undefined;
    if (times) return [times, { ...token, text: "MAL", role: "count", joined: true, startsLine: false }];
    return [(isCounted(tokens[at + 1]) && number(token.text)) || token];
  });
}

/** What a number of holes stands before. */
export const isCounted = (token: Token | undefined): boolean =>
  token?.role === "count" || token?.role === "hole" || /^EQ/.test(token?.text ?? "");

function diameterRole(kind: TokenKind, text: string): Role | undefined {
  return kind === "symbol" && (DIAMETER_SIGNS.includes(text) || /^(?:%%c|d)$/i.test(text))
    ? "diameter"
    : undefined;
}

function tokenAt(text: string, at: number): [TokenKind, string] {
  const code = text.charCodeAt(at);
  const isDigit =
    (code >= 48 && code <= 57) || ((code === 44 || code === 46) && /\d/.test(text[at + 1] ?? ""));
  const isLetter = (code >= 65 && code <= 90) || (code >= 97 && code <= 122);
  for (const [kind, pattern] of isDigit ? NUMBER : isLetter ? LETTER : OTHER) {
    pattern.lastIndex = at;
    const found = pattern.exec(text);
    if (found) return [kind, found[0]];
  }
  if (EAST_ASIAN.test(text[at])) return ["word", eastAsianWord(text, at)];
  return ["other", String.fromCodePoint(text.codePointAt(at)!)];
}

/** The longest known word that begins there, else the characters up to one. */
function eastAsianWord(text: string, from: number): string {
  const knownAt = (at: number) => {
    for (let length = LONGEST_EAST_ASIAN_WORD; length > 0; length--)
      if (roles.has(text.slice(at, at + length)) && EAST_ASIAN.test(text[at]))
        return text.slice(at, at + length);
    return undefined;
  };
  const known = knownAt(from);
  if (known !== undefined) return known;
  let end = from + 1;
  while (end < text.length && EAST_ASIAN.test(text[end]) && knownAt(end) === undefined) end++;
  return text.slice(from, end);
}

/** Words that mean something together become one token. */
function withPhrases(tokens: Token[]): Token[] {
  const merged: Token[] = [];
  for (let at = 0; at < tokens.length; ) {
    const count = phraseLength(tokens, at);
    const first = tokens[at];
    const text = count === 1 ? first.text : phraseOf(tokens, at, count);
    merged.push(
      count === 1 ? first : { ...first, text, role: roles.get(text), end: tokens[at + count - 1].end },
    );
    at += count;
  }
  return merged;
}

const phraseOf = (tokens: readonly Token[], at: number, count: number) =>
  tokens
    .slice(at, at + count)
    .map((token) => token.text)
    .join(" ");

function phraseLength(tokens: readonly Token[], at: number): number {
  if (tokens[at].kind !== "word") return 1;
  let words = 1;
  while (words < LONGEST_PHRASE && isPhraseWord(tokens[at + words])) words++;
  for (; words > 1; words--) if (roles.has(phraseOf(tokens, at, words))) return words;
  return 1;
}

const isPhraseWord = (token: Token | undefined) => token?.kind === "word" || token?.text === "&";

const isControl = (character: string) => /[\u0000-\u001f\u007f]/.test(character);

export function refuseCharacter(character: string, text: string, name: string): never {
  const named = isControl(character) ? `control character ${character.charCodeAt(0)}` : character;
  return wrong(`${name} ${shown(text)} has ${shown(named)}, which has no meaning there. Delete it.`);
}
