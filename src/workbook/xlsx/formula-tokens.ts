// workbook: the words of a formula as a file holds it: always with commas, decimal points and English names.

export type TokenKind =
  | "text"
  | "number"
  | "name"
  | "sheet"
  | "bracket"
  | "error"
  | "space"
  | "operator"
  | "unknown";

/**
 * A word and what it is: `sheet` is a quoted one without its mark (`'A b'`), `bracket` all between [ and its ], `name` a
 * function, a cell, a column or a defined name, `operator` also parentheses, braces, commas and semicolons.
 */
export interface Token {
  readonly kind: TokenKind;
  readonly text: string;
  readonly start: number;
}

const patterns: readonly [TokenKind, RegExp][] = [
  ["text", /"(?:[^"]|"")*"/y],
  ["sheet", /'(?:[^']|'')*'/y],
  ["error", /#(?:N\/A|NULL!|DIV\/0!|VALUE!|REF!|NAME\?|NUM!|SPILL!|CALC!|FIELD!|GETTING_DATA)/iy],
  ["number", /(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?(?![A-Za-z_\d.])/y],
  // Also `1:3`, the start of which the line above has taken for a number.
  // The middle dots of Japanese stand in names of sheets without quotes.
  ["name", /[$\p{L}_\\][\p{L}\p{M}\p{N}_.\\?$\u30FB\uFF65]*/uy],
  ["space", /[ \t\r\n]+/y],
  ["operator", /<=|>=|<>|[-+*/^&=<>%(),;{}:!@#]/y],
];

/** The end of the bracket that opens at `start`; an apostrophe inside takes the sign after it as it is. */
function bracketEnd(formula: string, start: number): number {
  let depth = 0;
  for (let at = start; at < formula.length; at++) {
    const sign = formula[at];
    if (sign === "'") at++;
    else if (sign === "[") depth++;
    else if (sign === "]" && --depth === 0) return at + 1;
  }
  return -1;
}

/** Every sign of the formula is in one of the tokens; what fits nowhere is `unknown`. */
export function tokensOf(formula: string): Token[] {
  const tokens: Token[] = [];
  for (let start = 0; start < formula.length; ) {
    const token = tokenAt(formula, start);
    tokens.push(token);
    start += token.text.length;
  }
  return tokens;
}

function tokenAt(formula: string, start: number): Token {
  if (formula[start] === "[") {
    const end = bracketEnd(formula, start);
    if (end > 0) return { kind: "bracket", text: formula.slice(start, end), start };
  }
  for (const [kind, pattern] of patterns) {
    pattern.lastIndex = start;
    const found = pattern.exec(formula);
    if (found) return { kind, text: found[0], start };
  }
  return { kind: "unknown", text: String.fromCodePoint(formula.codePointAt(start)!), start };
}

/** The function that is called by token `i`, or undefined. */
export function calledAt(tokens: readonly Token[], i: number): string | undefined {
  const { kind, text } = tokens[i];
  if (kind !== "name") return undefined;
  const next = tokens[i + 1]?.kind === "space" ? i + 2 : i + 1;
  return tokens[next]?.text === "(" ? text : undefined;
}

/** The functions that a formula calls, in capitals. */
export function functionsIn(formula: string): string[] {
  const tokens = tokensOf(formula);
  return tokens.flatMap((_, i) => calledAt(tokens, i)?.toUpperCase() ?? []);
}
