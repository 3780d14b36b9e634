// fill: a formula parsed.

import type { Area, Scalar } from "./values.ts";

export type Node =
  | { readonly kind: "value"; readonly value: Scalar }
  /** An argument left out between commas. */
  | { readonly kind: "missing" }
  | { readonly kind: "area"; readonly area: Area }
  /** The same cells of several sheets: `First:Last!A1`. */
  | { readonly kind: "sheets"; readonly areas: readonly Area[] }
  /** What a defined name stands for, where that is more than a value or a range. */
  | { readonly kind: "named"; readonly node: Node }
  /** A name given by LET, or a column of a CSV file. */
  | { readonly kind: "variable"; readonly name: string }
  | { readonly kind: "call"; readonly name: string; readonly args: readonly Node[] }
  | { readonly kind: "operation"; readonly operator: string; readonly left: Node; readonly right: Node }
  | { readonly kind: "sign"; readonly operator: "-" | "+" | "%"; readonly operand: Node }
  | { readonly kind: "array"; readonly rows: readonly (readonly Node[])[] };

export interface Formula {
  /** Undefined if the formula has something that is not computed here. */
  readonly node: Node | undefined;
  /** What that is, for the report. */
  readonly unknown: string | undefined;
  /** Every cell it names, also if it is not computed. */
  readonly areas: readonly Area[];
  /** Functions called, in capitals. */
  readonly calls: ReadonlySet<string>;
  /** Whether it may read cells beside those, which only computing it can tell. */
  readonly isMoving: boolean;
}

/** What names in a formula mean where it stands. */
export interface Scope {
  readonly sheet: number;
  /** The place of a sheet by its name. */
  sheetCalled(name: string): number | undefined;
  /** A formula instead of a defined name, as it reads in this cell; without a sheet, of the name that is meant here. */
  nameCalled(name: string, sheet: number | undefined): string | undefined;
  /** What names mean in that formula, if it is not the same. */
  withinName?(name: string, sheet: number | undefined): Scope;
  /** Cells of a table; `table` is undefined for the one in which the formula stands. */
  tableArea(table: string | undefined, inside: string): Area | undefined;
  /** Whether a name that is nothing else is a variable. */
  isVariable(name: string): boolean;
  /** A function's name as a user writes it, in capitals. */
  functionCalled(name: string): string;
}
