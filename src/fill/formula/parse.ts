// fill: takes a formula apart as spreadsheets do: a minus binds closer than a power, powers from the left.

import type { Formula, Node, Scope } from "./nodes.ts";
import { type Found, ReferenceReader, variable } from "./references.ts";
import { binding, Unreadable } from "./token-reader.ts";
import { CellError } from "./values.ts";

/** Spreadsheets allow functions 64 deep. */
const DEEPEST = 200;
const LARGEST = 10_000;

export function parseFormula(text: string, scope: Scope): Formula {
  const found: Found = {
    areas: [],
    calls: new Set(),
    isMoving: false,
    variables: new Set(),
    noted: new Set(),
    size: 0,
  };
  const { areas, calls } = found;
  try {
    const node = new Parser(text, scope, found, 0).whole();
    return { node, unknown: undefined, areas, calls, isMoving: found.isMoving };
  } catch (error) {
    if (!(error instanceof Unreadable)) throw error;
    return { node: undefined, unknown: error.message, areas, calls, isMoving: found.isMoving };
  }
}

class Parser extends ReferenceReader {
  private depth = 0;

  whole(): Node {
    this.space();
    const node = this.expression(1);
    const rest = this.tokens[this.at];
    // What is left is still looked through for cells, so that it is known what the formula depends on.
    if (rest) {
      this.collectAreas();
      throw new Unreadable(`"${rest.text.slice(0, 20)}" in a place where it is not read`);
    }
    return node;
  }

  private expression(least: number): Node {
    if (++this.depth > DEEPEST) this.refuse("more nested than a sheet allows");
    let left = this.signed();
    for (;;) {
      this.space();
      const operator = this.text;
      const strength = this.tokens[this.at]?.kind === "operator" ? binding.get(operator) : undefined;
      if (strength === undefined || strength < least) break;
      this.take(operator);
      left = { kind: "operation", operator, left, right: this.expression(strength + 1) };
    }
    this.depth--;
    return left;
  }

  private signed(): Node {
    const signs: ("-" | "+")[] = [];
    for (;;) {
      if (this.take("-")) signs.push("-");
      else if (this.take("+")) signs.push("+");
      else break;
    }
    let operand = this.operand();
    while (this.take("%")) operand = { kind: "sign", operator: "%", operand };
    if (this.text === ":" || this.text === "#" || this.text === "!")
      this.refuseUntraced(`a reference made with "${this.text}"`);
    for (const operator of signs.reverse()) operand = { kind: "sign", operator, operand };
    return operand;
  }

  private operand(): Node {
    const token = this.tokens[this.at];
    if (!token) this.refuse("a formula that breaks off");
    if (++this.found.size > LARGEST) this.giveUp();
    switch (token.kind) {
      case "number":
        if (this.tokens[this.at + 1]?.text === ":") return this.reference();
        this.at++;
        return { kind: "value", value: Number(token.text) };
      case "text":
        this.at++;
        return { kind: "value", value: token.text.slice(1, -1).replaceAll('""', '"') };
      case "error":
        this.at++;
        return { kind: "value", value: new CellError(token.text.toUpperCase()) };
      case "bracket":
        return this.table(undefined);
      case "sheet":
        return this.reference();
      case "name":
        return this.named();
    }
    if (this.take("(")) {
      const inside = this.expression(1);
      if (!this.take(")")) this.refuse("a union of references");
      return inside;
    }
    if (this.take("{")) return this.array();
    return this.refuse(`"${token.text.slice(0, 20)}" in a place where it is not read`);
  }

  private named(): Node {
    const { text } = this.tokens[this.at];
    const next = this.tokens[this.at + 1];
    if (next?.text === "(") return this.call(text);
    if (next?.kind === "bracket") {
      this.at++;
      return this.table(text);
    }
    if (/^(?:TRUE|FALSE)$/i.test(text)) {
      this.at++;
      return { kind: "value", value: text.toUpperCase() === "TRUE" };
    }
    return this.reference();
  }

  private call(written: string): Node {
    const name = this.noteCall(written);
    this.at++;
    this.take("(");
    const args: Node[] = [];
    if (this.take(")")) return { kind: "call", name, args };
    for (;;) {
      const isNamed = name === "LAMBDA" || (name === "LET" && args.length % 2 === 0);
      if (isNamed && this.tokens[this.at]?.kind === "name" && this.tokens[this.at + 1]?.text === ",")
        this.found.variables.add(variable(this.text));
      this.space();
      const isMissing = this.text === "," || this.text === ")";
      args.push(isMissing ? { kind: "missing" } : this.expression(1));
      if (this.take(")")) return { kind: "call", name, args };
      if (!this.take(",")) this.refuse(this.text === "" ? "a formula that breaks off" : "an intersection");
    }
  }

  private array(): Node {
    const rows: Node[][] = [[]];
    for (;;) {
      rows[rows.length - 1].push(this.signed());
      if (this.take("}")) return { kind: "array", rows };
      if (this.take(";")) rows.push([]);
      else if (!this.take(",")) this.refuse("an array that is not read");
    }
  }

  protected formulaOf(formula: string, scope: Scope): Node {
    return new Parser(formula, scope, this.found, this.names + 1).whole();
  }
}
