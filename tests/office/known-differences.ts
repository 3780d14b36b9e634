// tests: what Excel does and LibreOffice does not, by the parts of a formula. Where nothing else is said, the rule was seen
// in LibreOffice 7 and is held to what Microsoft's help says of the function.

import type { Node, Scope } from "../../src/fill/formula/nodes.ts";
import { parseFormula } from "../../src/fill/formula/parse.ts";

const scope: Scope = {
  sheet: 0,
  sheetCalled: () => undefined,
  nameCalled: () => undefined,
  tableArea: () => undefined,
  isVariable: () => false,
  functionCalled: (name) => name.replace(/^_xlfn\./, "").toUpperCase(),
};

const inside = (node: Node): readonly Node[] => {
  if (node.kind === "call") return node.args;
  if (node.kind === "operation") return [node.left, node.right];
  return node.kind === "sign" ? [node.operand] : [];
};

const some = (node: Node, test: (one: Node) => boolean): boolean =>
  test(node) || inside(node).some((one) => some(one, test));

/** The arguments of a call of one of the functions; none if it is something else. */
const argsOf = (node: Node, names: readonly string[]): readonly Node[] =>
  node.kind === "call" && names.includes(node.name) ? node.args : [];

const hasArray = (node: Node): boolean => some(node, ({ kind }) => kind === "array");

const aggregates = ["SUM", "MAX", "MIN", "AVERAGE", "COUNT", "COUNTA", "MEDIAN", "PRODUCT", "SUMSQ"];
const conditional = ["COUNTIF", "COUNTIFS", "SUMIF", "SUMIFS", "AVERAGEIF", "AVERAGEIFS"];
const textual = ["CONCATENATE", "LEFT", "REPT", "RIGHT", "SUBSTITUTE", "TEXTJOIN", "UPPER"];
const branching = ["IF", "IFERROR", "CHOOSE"];

/** One text that is no cell's own, or that comes through a function which chooses. */
const isText = (node: Node): boolean =>
  (node.kind === "value" && typeof node.value === "string") ||
  (node.kind === "operation" && node.operator === "&") ||
  argsOf(node, textual).length > 0 ||
  argsOf(node, branching).some((arg) => isText(arg) || isCellOfTexts(arg));

/** In B and C stand texts. */
const isCellOfTexts = (node: Node): boolean =>
  node.kind === "area" && node.area.isCell && (node.area.left === 1 || node.area.left === 2);

/** The cell with #N/A, and the empty one. */
const isCell = (node: Node, row: number): boolean =>
  node.kind === "area" && node.area.isCell && node.area.left === 2 && node.area.top === row;
const isError = (node: Node) => isCell(node, 4) || isCell(node, 5);
const isEmpty = (node: Node): boolean =>
  node.kind === "area" && node.area.left === 2 && node.area.top <= 3 && node.area.bottom >= 3;

const partsOfPower = (node: Node): readonly Node[] =>
  node.kind === "operation" && node.operator === "^" ? inside(node) : argsOf(node, ["POWER"]);

const differences: readonly [rule: string, test: (node: Node) => boolean][] = [
  [
    "An error as a condition is a condition like any other: LibreOffice gives the error",
    (node) => argsOf(node, conditional).some(isError),
  ],
  [
    "A text in the formula itself that reads as a number counts as one: LibreOffice gives #VALUE!",
    (node) => argsOf(node, aggregates).some(isText),
  ],
  [
    "An error in an array is an error of what goes over the array: LibreOffice passes over it",
    (node) => argsOf(node, [...aggregates, "AND", "OR"]).some(hasArray),
  ],
  [
    "0 to the power of 0 is no number: LibreOffice gives 1, and in arrays for errors and texts as well",
    (node) =>
      partsOfPower(node).length > 0 &&
      (hasArray(node) || partsOfPower(node).every((one) => one.kind !== "value" || one.value === 0)),
  ],
  [
    "A text is no number to a look-up, and an empty cell is 0: LibreOffice finds the number, and no 0",
    (node) =>
      argsOf(node, ["VLOOKUP", "MATCH"])
        .slice(0, 1)
        .some((sought) => isText(sought) || some(sought, isEmpty)),
  ],
  [
    "Where the condition is an array, the first value of it chooses: LibreOffice takes the error of any branch",
    (node) => argsOf(node, branching).slice(0, 1).some(hasArray),
  ],
];

/** What explains that LibreOffice gives something else; undefined if nothing does. */
export function knownDifference(formula: string): string | undefined {
  const { node } = parseFormula(formula, scope);
  return node && differences.find(([, test]) => some(node, test))?.[0];
}
