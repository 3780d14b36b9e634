// fill: what a formula names: cells, sheets, tables, defined names, and functions of the workbook's own. All cells are
// noted, also those of a formula that is not computed, so that it is known what it depends on.

import { boxBetween, readCorner } from "../../workbook/xlsx/addresses.ts";
import type { Token } from "../../workbook/xlsx/formula-tokens.ts";
import type { Node, Scope } from "./nodes.ts";
import { TokenReader, Unreadable } from "./token-reader.ts";
import { Area, CellError } from "./values.ts";

/** Defined names may name one another, and so make a short formula a long one. */
const NAMES_DEEPEST = 16;

export interface Found {
  readonly areas: Area[];
  readonly calls: Set<string>;
  isMoving: boolean;
  /** Names that LET and LAMBDA give. */
  readonly variables: Set<string>;
  /** Formulas of the workbook's own functions that were looked through. */
  readonly noted: Set<string>;
  /** Operands so far. */
  size: number;
}

const movingFunctions: ReadonlySet<string> = new Set(["INDIRECT", "OFFSET"]);

export abstract class ReferenceReader extends TokenReader {
  private isCollecting = false;

  constructor(
    text: string,
    protected readonly scope: Scope,
    protected readonly found: Found,
    protected readonly names: number,
  ) {
    super(text);
  }

  /** A formula that is called by a name. */
  protected abstract formulaOf(formula: string, scope: Scope): Node;

  protected collectAreas(): void {
    if (this.isCollecting) return;
    this.isCollecting = true;
    for (; this.at < this.tokens.length; this.at++) {
      const { kind, text } = this.tokens[this.at];
      try {
        if (kind === "name" && this.tokens[this.at + 1]?.text === "(") this.noteCall(text);
        else if (kind === "name" || kind === "sheet") this.reference();
      } catch (error) {
        if (!(error instanceof Unreadable)) throw error;
      }
    }
  }

  protected refuse(what: string): never {
    this.collectAreas();
    throw new Unreadable(what);
  }

  /** The same where the cells that are meant cannot be told. */
  protected refuseUntraced(what: string): never {
    this.found.isMoving = true;
    return this.refuse(what);
  }

  protected giveUp(): never {
    this.found.isMoving = true;
    throw new Unreadable("names that make it too long");
  }

  /** The name of a function that is called, with what it may read by itself. */
  protected noteCall(written: string): string {
    const name = this.scope.functionCalled(written);
    this.found.calls.add(name);
    if (movingFunctions.has(name)) this.found.isMoving = true;
    // A function that the workbook defines.
    const own = this.scope.nameCalled(written, undefined);
    if (own !== undefined && !this.found.noted.has(own)) this.inside(own, written);
    return name;
  }

  protected table(name: string | undefined): Node {
    const inside = this.text.slice(1, -1);
    this.at++;
    if (this.text === "!" || ["name", "sheet"].includes(this.tokens[this.at]?.kind ?? ""))
      this.refuse("a reference to another workbook");
    if (name === undefined && this.scope.isVariable(variable(inside)))
      return { kind: "variable", name: variable(inside) };
    const area = this.scope.tableArea(name, inside);
    if (!area) this.refuseUntraced("a reference to a table that is not read");
    return this.area(area);
  }

  private area(area: Area): Node {
    this.found.areas.push(area);
    return { kind: "area", area };
  }

  /** A cell, a range, a column, a row or a name, with its sheet or its sheets. */
  protected reference(): Node {
    const sheets = this.sheets();
    if (this.tokens[this.at]?.kind === "error") {
      this.at++;
      return { kind: "value", value: new CellError("#REF!") };
    }
    const first = this.text;
    if (!sheets && this.isVariable(first)) {
      this.at++;
      return { kind: "variable", name: variable(first) };
    }
    const ranged = this.tokens[this.at + 1]?.text === ":";
    if (ranged && ["!", "("].includes(this.tokens[this.at + 3]?.text ?? "")) this.refuseUntraced(MADE);
    const corner = readCorner(first);
    const other = ranged ? readCorner(this.tokens[this.at + 2]?.text ?? "") : corner;
    if (corner && other && (ranged || (corner.row !== undefined && corner.column !== undefined))) {
      const box = boxBetween(corner, other);
      this.at += ranged ? 3 : 1;
      if (!box) this.refuse("a range between a cell and a column");
      const areas = (sheets ?? [this.scope.sheet]).map(
        (sheet) => new Area(sheet, box.top, box.left, box.bottom, box.right),
      );
      if (areas.length === 1) return this.area(areas[0]);
      this.found.size += areas.length;
      this.found.areas.push(...areas);
      return { kind: "sheets", areas };
    }
    if (ranged) this.refuseUntraced(MADE);
    this.at++;
    return this.definedName(first, sheets?.[0]);
  }

  /** The sheets before a reference, `Data!`, `'First 1:Last'!` or `First:Last!`; undefined if there are none. */
  private sheets(): number[] | undefined {
    const [one, mark, other, end] = this.tokens.slice(this.at, this.at + 4);
    const isPair = mark?.text === ":" && end?.text === "!" && ["name", "sheet"].includes(other.kind);
    if (mark?.text !== "!" && !isPair) {
      if (one?.kind !== "sheet") return undefined;
      this.at++;
      return this.refuse("a quoted word that is no sheet");
    }
    this.at += isPair ? 4 : 2;
    const names = isPair ? [plainSheet(one), plainSheet(other)] : plainSheet(one).split(":");
    const places = names.map((name) => this.scope.sheetCalled(name));
    const [first, last = first] = places;
    if (first === undefined || last === undefined || places.includes(undefined)) {
      this.at++;
      return isPair ? this.refuseUntraced(MADE) : this.refuse("a reference to another workbook");
    }
    const low = Math.min(first, last);
    return Array.from({ length: Math.abs(last - first) + 1 }, (_, i) => low + i);
  }

  protected isVariable(name: string): boolean {
    return this.found.variables.has(variable(name)) || this.scope.isVariable(variable(name));
  }

  private definedName(name: string, sheet: number | undefined): Node {
    const formula = this.scope.nameCalled(name, sheet);
    if (formula === undefined) this.refuse(`the name ${name.slice(0, 40)}`);
    if (this.names >= NAMES_DEEPEST) this.refuseUntraced("names that name one another");
    try {
      const node = this.formulaOf(formula, this.scope.withinName?.(name, sheet) ?? this.scope);
      return node.kind === "value" || node.kind === "area" ? node : { kind: "named", node };
    } catch (error) {
      if (error instanceof Unreadable) this.refuse(error.message);
      throw error;
    }
  }

  /** Notes what a formula reads that is called by its name. */
  private inside(formula: string, name: string): void {
    this.found.noted.add(formula);
    try {
      this.formulaOf(formula, this.scope.withinName?.(name, undefined) ?? this.scope);
    } catch (error) {
      if (!(error instanceof Unreadable)) throw error;
    }
  }
}

const MADE = 'a reference made with ":"';

const plainSheet = ({ kind, text }: Token): string =>
  kind === "sheet" ? text.slice(1, -1).replaceAll("''", "'") : text;

/** LET's names stand in a file with a prefix. */
export const variable = (name: string) => name.replace(/^_xlpm\./i, "").toLowerCase();
