// fill: takes a formula apart as spreadsheets do: a minus binds closer than a power, powers from the left.

import { boxBetween, readCorner } from "../../workbook/xlsx/addresses.ts";
import { tokensOf } from "../../workbook/xlsx/formula-tokens.ts";
import type { Formula, Node, Scope } from "./nodes.ts";
import { binding, TokenReader, Unreadable } from "./token-reader.ts";
import { Area, CellError } from "./values.ts";

/** Spreadsheets allow functions 64 deep. */
const DEEPEST = 200;
/** Defined names may name one another, and so make a short formula a long one. */
const NAMES_DEEPEST = 16;
const LARGEST = 10_000;

export function parseFormula(text: string, scope: Scope): Formula {
  const found: Found = { areas: [], calls: new Set(), variables: new Set(), size: 0 };
  try {
    const node = new Parser(text, scope, found, 0).whole();
    return { node, unknown: undefined, areas: found.areas, calls: found.calls };
  } catch (error) {
    if (!(error instanceof Unreadable)) throw error;
    return { node: undefined, unknown: error.message, areas: found.areas, calls: found.calls };
  }
}

interface Found {
  readonly areas: Area[];
  readonly calls: Set<string>;
  /** Names that LET gives. */
  readonly variables: Set<string>;
  /** Operands so far. */
  size: number;
}

class Parser extends TokenReader {
  private depth = 0;
  private isCollecting = false;

  constructor(
    text: string,
    private readonly scope: Scope,
    private readonly found: Found,
    private readonly names: number,
  ) {
    super(text);
  }

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

  private collectAreas(): void {
    if (this.isCollecting) return;
    this.isCollecting = true;
    for (; this.at < this.tokens.length; this.at++) {
      try {
        if (["name", "sheet"].includes(this.tokens[this.at].kind)) this.reference();
      } catch (error) {
        if (!(error instanceof Unreadable)) throw error;
      }
    }
  }

  private refuse(what: string): never {
    this.collectAreas();
    throw new Unreadable(what);
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
      this.refuse(`a reference made with "${this.text}"`);
    for (const operator of signs.reverse()) operand = { kind: "sign", operator, operand };
    return operand;
  }

  private operand(): Node {
    const token = this.tokens[this.at];
    if (!token) this.refuse("a formula that breaks off");
    if (++this.found.size > LARGEST) throw new Unreadable("names that make it too long");
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
    const name = this.scope.functionCalled(written);
    this.found.calls.add(name);
    this.at++;
    this.take("(");
    const args: Node[] = [];
    if (this.take(")")) return { kind: "call", name, args };
    for (;;) {
      const isNewName = name === "LET" && args.length % 2 === 0 && this.tokens[this.at]?.kind === "name";
      if (isNewName && this.tokens[this.at + 1]?.text !== "(") this.found.variables.add(variable(this.text));
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
      rows.at(-1)!.push(this.signed());
      if (this.take("}")) return { kind: "array", rows };
      if (this.take(";")) rows.push([]);
      else if (!this.take(",")) this.refuse("an array that is not read");
    }
  }

  private table(name: string | undefined): Node {
    const inside = this.text.slice(1, -1);
    this.at++;
    if (this.text === "!" || ["name", "sheet"].includes(this.tokens[this.at]?.kind ?? ""))
      this.refuse("a reference to another workbook");
    if (name === undefined && this.scope.isVariable(variable(inside)))
      return { kind: "variable", name: variable(inside) };
    const area = this.scope.tableArea(name, inside);
    if (!area) this.refuse("a reference to a table that is not read");
    return this.area(area);
  }

  private area(area: Area): Node {
    this.found.areas.push(area);
    return { kind: "area", area };
  }

  /** A cell, a range, a column, a row or a name, with its sheet. */
  private reference(): Node {
    let sheet: number | undefined;
    if (this.tokens[this.at + 1]?.text === "!") {
      const { kind, text } = this.tokens[this.at];
      const name = kind === "sheet" ? text.slice(1, -1).replaceAll("''", "'") : text;
      sheet = this.scope.sheetCalled(name);
      this.at += 2;
      if (sheet === undefined) {
        this.at++;
        this.refuse("a reference to another workbook or to several sheets");
      }
    } else if (this.tokens[this.at]?.kind === "sheet") {
      this.at++;
      this.refuse("a quoted word that is no sheet");
    }
    if (this.tokens[this.at]?.kind === "error") {
      this.at++;
      return { kind: "value", value: new CellError("#REF!") };
    }
    const first = this.text;
    if (sheet === undefined && this.isVariable(first)) {
      this.at++;
      return { kind: "variable", name: variable(first) };
    }
    const ranged = this.tokens[this.at + 1]?.text === ":";
    if (ranged) {
      const after = this.tokens[this.at + 3]?.text;
      if (after === "!") this.refuse("a reference to several sheets");
      if (after === "(") this.refuse('a reference made with ":"');
    }
    const corner = readCorner(first);
    const other = ranged ? readCorner(this.tokens[this.at + 2]?.text ?? "") : corner;
    if (corner && other && (ranged || (corner.row !== undefined && corner.column !== undefined))) {
      const box = boxBetween(corner, other);
      this.at += ranged ? 3 : 1;
      if (!box) this.refuse("a range between a cell and a column");
      return this.area(new Area(sheet ?? this.scope.sheet, box.top, box.left, box.bottom, box.right));
    }
    if (ranged) this.refuse('a reference made with ":"');
    this.at++;
    return this.definedName(first, sheet);
  }

  private isVariable(name: string): boolean {
    return this.found.variables.has(variable(name)) || this.scope.isVariable(variable(name));
  }

  private definedName(name: string, sheet: number | undefined): Node {
    const formula = this.scope.nameCalled(name, sheet ?? this.scope.sheet);
    if (formula === undefined) this.refuse(`the name ${name.slice(0, 40)}`);
    if (this.names >= NAMES_DEEPEST) this.refuse("names that name one another");
    const tokens = tokensOf(formula);
    if (tokens.some(({ kind, text }) => kind === "name" && isRelative(text)))
      this.refuse("a name for a place that moves with the cell");
    try {
      return new Parser(formula, this.scope, this.found, this.names + 1).whole();
    } catch (error) {
      if (error instanceof Unreadable) this.refuse(error.message);
      throw error;
    }
  }
}

/** LET's names stand in a file with a prefix. */
const variable = (name: string) => name.replace(/^_xlpm\./i, "").toLowerCase();

function isRelative(text: string): boolean {
  const corner = readCorner(text);
  if (corner?.row === undefined || corner.column === undefined) return false;
  return !corner.fixedRow || !corner.fixedColumn;
}
