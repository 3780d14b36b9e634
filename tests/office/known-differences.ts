// tests: what Excel does and LibreOffice does not. Each rule writes a part of a formula so that LibreOffice computes what
// Excel does: a difference is explained if it is gone when the whole formula is written so, and not before.

import type { Node, Scope } from "../../src/fill/formula/nodes.ts";
import { parseFormula } from "../../src/fill/formula/parse.ts";
import { boxName } from "../../src/workbook/xlsx/addresses.ts";
import { cells } from "./random-formulas.ts";

type Column = (typeof cells)[number];

/** Sheets beside the one with the formulas: the same cells, but for those that LibreOffice is not to take for others. */
export const otherSheets: Readonly<Record<string, readonly Column[]>> = {
  /** Errors are texts. */
  Named: cells.map((column) => column.map((one) => (isError(one) ? nameOf(one.error) : one))),
  /** No numbers. */
  Texts: cells.map((column) => column.map((one) => (typeof one === "number" ? null : one))),
  /** No numbers in the columns that have no text. */
  Tables: cells.map((column) =>
    column.map((one) =>
      typeof one === "number" && column.every((cell) => typeof cell === "number") ? null : one,
    ),
  ),
};

function isError(one: Column[number]): one is { error: string } {
  return typeof one === "object" && one !== null;
}

/** A text that no formula makes. */
function nameOf(error: string): string {
  return `error ${error.replace(/\W/g, "")}`;
}

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

/** They make one value of all that they are given. */
const intoOne =
  "SUM MAX MIN AVERAGE COUNT COUNTA MEDIAN PRODUCT SUMSQ AND OR SUMPRODUCT TEXTJOIN ROWS COLUMNS".split(" ");

interface Size {
  readonly rows: number;
  readonly columns: number;
  /** Arrays of other sizes come together somewhere. */
  readonly isApart: boolean;
}

/** Of what a part of a formula gives: ranges stand only where they are taken whole. */
function sizeOf(node: Node): Size {
  if (node.kind === "array") return { rows: node.rows.length, columns: node.rows[0].length, isApart: false };
  const sizes = inside(node).map(sizeOf);
  const differ = (all: readonly number[]) => new Set(all.filter((one) => one !== 1)).size > 1;
  const [rows, columns] = [sizes.map((size) => size.rows), sizes.map((size) => size.columns)];
  const isInto = node.kind === "call" && intoOne.includes(node.name);
  const isApart = sizes.some((size) => size.isApart) || (!isInto && (differ(rows) || differ(columns)));
  return isInto
    ? { rows: 1, columns: 1, isApart }
    : { rows: Math.max(1, ...rows), columns: Math.max(1, ...columns), isApart };
}

const hasArray = (node: Node): boolean => sizeOf(node).rows * sizeOf(node).columns > 1;

const called = (name: string, ...args: string[]) =>
  `${name === "TEXTJOIN" ? "_xlfn." : ""}${name}(${args.join(",")})`;

/** An error for each value of an array: for one that stands alone LibreOffice gives nothing but it. */
const errorFor = (text: string) => `VALUE("x"&LEFT(${text}&"",0))`;

/** A call as LibreOffice has to be given it; undefined where it differs in nothing. */
const rules: Readonly<Record<string, (args: readonly Node[], name: string) => string | undefined>> = {
  /**
   * 0 to the power of 0 is no number: LibreOffice gives 1, and in arrays for errors and texts as well. What is too small is
   * 0 (Microsoft: Floating-point arithmetic may give inaccurate results in Excel): LibreOffice gives an error.
   */
  POWER: ([base, exponent]) => power(write(base), write(exponent)),
  /** Over an array it gives a value for each: LibreOffice gives one, or passes over errors. */
  NOT: ([given]) => {
    const truth = write(given);
    return hasArray(given) ? `IF(ISERROR(${truth}),${errorFor(truth)},${truth}=0)` : undefined;
  },
  EXACT: (args) => {
    const [a, b] = args.map(write);
    const isSame = `((LEN(${a})=LEN(${b}))*ISNUMBER(FIND(${a}&"",${b}&""))>0)`;
    return args.some(hasArray)
      ? `IF(ISERROR(LEN(${a})+LEN(${b})),${errorFor(`${a}&${b}`)},${isSame})`
      : undefined;
  },
  /** Of an array each value chooses: LibreOffice takes the error of any branch. */
  IF: (args) => chosen("IF", args),
  CHOOSE: (args) => chosen("CHOOSE", args),
  /** A text is no number to a look-up, and an empty cell is 0: LibreOffice finds the number, and no 0. */
  MATCH: ([sought, list]) =>
    found(sought, (one, sheet) => called("MATCH", one, sheet("Texts") + write(list), "0")),
  VLOOKUP: ([sought, table, column]) =>
    found(sought, (one, sheet) => called("VLOOKUP", one, sheet("Tables") + write(table), write(column), "0")),
  ...Object.fromEntries(
    ["SUM", "MAX", "MIN", "AVERAGE", "COUNT", "MEDIAN", "PRODUCT", "SUMSQ", "AND", "OR"].map((name) => [
      name,
      aggregate,
    ]),
  ),
  ...Object.fromEntries(["COUNTIF", "SUMIF", "AVERAGEIF"].map((name) => [name, withErrors(0)])),
  ...Object.fromEntries([
    ["COUNTIFS", withErrors(0)],
    ["SUMIFS", withErrors(1)],
    ["AVERAGEIFS", withErrors(1)],
  ]),
};

function power(base: string, exponent: string): string {
  const [x, y] = [`(${base}+0)`, `(${exponent}+0)`];
  const small = `IF(${y}*LOG10(ABS(${x}+(${x}=0)))<-307.6,0,${x}^${y})`;
  return `IF(ISERROR(${x}+${y}),${errorFor(base)},IF((${x}=0)*(${y}<=0),${errorFor(base)},${small}))`;
}

function chosen(name: string, [condition, ...branches]: readonly Node[]): string | undefined {
  if (!hasArray(condition)) return undefined;
  const whole = called(name, write(condition), ...branches.map((one) => `IFERROR(${write(one)},"error")`));
  return `IF(${whole}="error",${errorFor(whole)},${whole})`;
}

function found(sought: Node, look: (sought: string, sheet: (name: string) => string) => string): string {
  const value = write(sought);
  return `IF(ISTEXT(${value}),${look(value, (sheet) => `${sheet}!`)},${look(`(${value}+0)`, () => "")})`;
}

/** An error as a condition asks for that error, as Apache POI has it (`ErrorMatcher`): LibreOffice gives the error. */
function withErrors(first: number) {
  return (args: readonly Node[], name: string): string | undefined => {
    const written = args.map(write);
    let isOther = false;
    for (let i = first; i + 1 < args.length; i += 2) {
      const error = { C5: "#N/A", C6: "#DIV/0!" }[written[i + 1]];
      if (error === undefined) continue;
      isOther = true;
      // The cells that are summed are the same, errors among them.
      if (!name.endsWith("S") && name !== "COUNTIF") written[2] ??= written[0];
      written[i] = `Named!${written[i]}`;
      written[i + 1] = `"${nameOf(error)}"`;
    }
    return isOther ? called(name, ...written) : undefined;
  };
}

/**
 * A text that stands in an aggregate by itself is read as a number: LibreOffice gives #VALUE!. An error in an array is an
 * error of what goes over the array, and a text in it is passed over: LibreOffice passes over the error, and has the text
 * for 0 among the largest and the smallest.
 */
function aggregate(args: readonly Node[], name: string): string {
  const isTruth = name === "AND" || name === "OR";
  const outermost = { MAX: "-1E+300", MIN: "1E+300" }[name];
  const written = args.map((arg) => {
    if (isTruth) return write(arg);
    if (!hasArray(arg) || outermost === undefined) return direct(arg);
    return `IF(ISNUMBER(${write(arg)}),${write(arg)},${outermost})`;
  });
  let whole = called(name, ...written);
  if (outermost !== undefined) whole = `(${whole}*(ABS(${whole})<1E+300))`;
  const errors = args.filter(hasArray).map((array) => `SUMPRODUCT(--ISERROR(${write(array)}))`);
  if (name === "COUNT" || errors.length === 0) return whole;
  const guarded = `(${whole}/((${errors.join("+")})=0))`;
  return isTruth ? `(${guarded}>0)` : guarded;
}

/** What Excel reads as a number, as one; a cell that is chosen stays one. */
function direct(node: Node): string {
  if (node.kind === "area" || hasArray(node) || (node.kind === "value" && typeof node.value !== "string"))
    return write(node);
  if (node.kind === "call" && node.name === "INDEX") return write(node);
  if (node.kind === "call" && (node.name === "IF" || node.name === "CHOOSE"))
    return called(node.name, write(node.args[0]), ...node.args.slice(1).map(direct));
  const text = write(node);
  return `IF(ISTEXT(${text}),VALUE(${text}),${text})`;
}

/** The formula as LibreOffice has to be given it, so that it computes what Excel does. */
export function asExcelComputes(formula: string): string {
  const node = parsed(formula);
  // Of a whole formula in a plain cell the first value is shown.
  if (node.kind === "call" && node.name === "CHOOSE" && node.args[0].kind === "array")
    return write({ ...node, args: [node.args[0].rows[0][0], ...node.args.slice(1)] });
  return write(node);
}

/** Arrays of different sizes give #N/A where they do not meet: LibreOffice cuts both to what they share. */
export const isOfDifferentSizes = (formula: string): boolean => sizeOf(parsed(formula)).isApart;

const parsed = (formula: string): Node => parseFormula(formula, scope).node!;

function write(node: Node): string {
  switch (node.kind) {
    case "value":
      if (typeof node.value === "string") return `"${node.value.replaceAll('"', '""')}"`;
      return String(node.value).toUpperCase();
    case "area":
      return boxName(node.area);
    case "array":
      return `{${node.rows.map((row) => row.map(plain).join(",")).join(";")}}`;
    case "sign":
      return node.operator === "%" ? `(${write(node.operand)}%)` : `(${node.operator}${write(node.operand)})`;
    case "operation":
      if (node.operator === "^") return power(write(node.left), write(node.right));
      return `(${write(node.left)}${node.operator}${write(node.right)})`;
    case "call":
      return rules[node.name]?.(node.args, node.name) ?? called(node.name, ...node.args.map(write));
    default:
      throw new Error(`no ${node.kind} is among the formulas`);
  }
}

/** A value of an array, which has no parentheses. */
const plain = (node: Node): string =>
  node.kind === "sign" ? `${node.operator}${write(node.operand)}` : write(node);
