// workbook: whether a text is a formula that a file can hold. Programs take a file for damaged that holds another.

import { readCorner } from "./addresses.ts";
import { type Token, tokensOf } from "./formula-tokens.ts";

/** From Excel's specifications and limits: signs of a formula, and of a text within one. */
const LONGEST = 8192;
const LONGEST_TEXT = 255;

const signs = new Set(["+", "-", "*", "/", "^", "&", "=", "<", ">", "<=", ">=", "<>", ":"]);
const operands = new Set(["text", "number", "name", "sheet", "bracket", "error"]);

/** @param formula as a file has it, without "=" */
export const isFormula = (formula: string): boolean =>
  formula.length <= LONGEST && new Syntax(tokensOf(formula)).isWhole();

class Syntax {
  /** What is open: a group, the arguments of a call, an array. */
  private readonly open: ("(" | "call" | "{")[] = [];
  private isValueNext = true;
  private before: Token | undefined;
  private isApart = false;

  constructor(private readonly tokens: readonly Token[]) {}

  isWhole(): boolean {
    for (let i = 0; i < this.tokens.length; i++) {
      const token = this.tokens[i];
      if (token.kind === "space") {
        this.isApart = true;
        continue;
      }
      const isRight = this.isValueNext ? this.value(token, i) : this.behindValue(token, i);
      if (!isRight) return false;
      this.before = token;
      this.isApart = false;
    }
    return this.open.length === 0 && !this.isValueNext;
  }

  private value({ kind, text }: Token, i: number): boolean {
    const innermost = this.open.at(-1);
    if (operands.has(kind)) {
      this.isValueNext = false;
      const isConstant = /^(?:text|number|error)$/.test(kind) || /^(?:TRUE|FALSE)$/i.test(text);
      if (innermost === "{" && !isConstant) return false;
      if (kind === "text") return text.replaceAll('""', '"').length - 2 <= LONGEST_TEXT;
      if (text.startsWith("$")) return readCorner(text) !== undefined;
      return kind !== "sheet" || this.tokens[i + 1]?.text === "!";
    }
    if (text === "+" || text === "-") return true;
    if (innermost === "{") return false;
    if (text === "@") return /^(?:name|sheet)$/.test(this.tokens[i + 1]?.kind ?? "");
    if (text === "(" || text === "{") return this.open.push(text) > 0;
    // An argument that is left out.
    if (innermost !== "call" || !/^[(,]$/.test(this.before!.text)) return false;
    if (text === ")") {
      this.open.pop();
      this.isValueNext = false;
    }
    return text === ")" || text === ",";
  }

  private behindValue({ kind, text }: Token, i: number): boolean {
    const innermost = this.open.at(-1);
    const { kind: kindBefore, text: textBefore } = this.before!;
    const isReference =
      kindBefore === "name" || kindBefore === "bracket" || textBefore === ")" || textBefore === "#";
    if (text === "!") {
      this.isValueNext = true;
      return (
        kindBefore === "sheet" || kindBefore === "name" || kindBefore === "number" || kindBefore === "bracket"
      );
    }
    if (text === "(") {
      this.open.push("call");
      this.isValueNext = true;
      return kindBefore === "name" || textBefore === ")";
    }
    if (text === "%") return innermost !== "{";
    if (text === "#") return kindBefore === "name" && !this.isApart;
    if (text === ")" || text === "}")
      return (this.open.pop() === "{") === (text === "}") && innermost !== undefined;
    if (text === "," || text === ";" || signs.has(text)) {
      this.isValueNext = true;
      if (text === ",") return innermost !== undefined;
      if (text === ";") return innermost === "{";
      return innermost !== "{" && !(text === ":" && kindBefore === "text");
    }
    // The columns of a table; a sheet of another workbook.
    if (!this.isApart)
      return (kind === "bracket" && kindBefore === "name") || (kind === "name" && kindBefore === "bracket");
    // A space between two references is for the cells that they have in common.
    const isOther =
      kind === "name" || kind === "sheet" || (kind === "number" && this.tokens[i + 1]?.text === ":");
    return isOther && (isReference || this.tokens[i - 3]?.text === ":") && innermost !== "{";
  }
}
