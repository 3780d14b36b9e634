// fill: the tokens of a formula and the place where reading stands.

import { type Token, tokensOf } from "../../workbook/xlsx/formula-tokens.ts";

/** How strongly the operators bind. */
export const binding: ReadonlyMap<string, number> = new Map([
  ["=", 1],
  ["<>", 1],
  ["<", 1],
  [">", 1],
  ["<=", 1],
  [">=", 1],
  ["&", 2],
  ["+", 3],
  ["-", 3],
  ["*", 4],
  ["/", 4],
  ["^", 5],
]);

/** What can't be computed here, said in a few words. */
export class Unreadable extends Error {}

export class TokenReader {
  protected readonly tokens: Token[];
  protected at = 0;

  constructor(text: string) {
    this.tokens = tokensOf(text);
  }

  protected get text(): string {
    return this.tokens[this.at]?.text ?? "";
  }

  protected space(): void {
    while (this.tokens[this.at]?.kind === "space") this.at++;
  }

  protected take(text: string): boolean {
    this.space();
    if (this.tokens[this.at]?.kind !== "operator" || this.text !== text) return false;
    this.at++;
    this.space();
    return true;
  }
}
