// workbook: a call of one of our functions as a formula of the spreadsheet's own, with its units, caps, defaults and
// blanks; where our function would show an error, the formula shows #N/A.

import { vocabulary } from "../../../functions/arguments.ts";
import type { Units } from "../../calc/lengths.ts";
import { inSpreadsheet } from "./expression.ts";
import { type KnownFunction, knownFunctions } from "./known.ts";

/** A cell as a formula names it, `B7`, `$B$7`, `Sheet1!B7`; or a plain number. */
const CELL = /^(?:(?:'[^']+'|[A-Za-z_][\w.]*)!)?\$?[A-Z]{1,3}\$?\d+$/i;
const NUMBER = /^\d+(?:\.\d+)?$/;
const LONGEST = 8000;
const UNDER_ONE = 1 - 2 ** -53;
const longest = (units: Units): number => (units === "mm" ? 3150 : 124);

/** What stands where nothing is given. */
const DEFAULT_OF: Readonly<Record<string, string>> = { retractRate: "feedRate" };

/** @param args as they are written, "" for one left out @returns without "="; undefined where it cannot be written */
export function ownFormula(id: string, args: readonly string[]): string | undefined {
  const one = knownFunctions.get(id);
  if (!one) return undefined;
  const names = [...one.required, ...one.optional];
  if (args.length > names.length) return undefined;
  const given = new Map(names.map((name, at) => [name, (args[at] ?? "").trim()]));
  const units = unitsOf(given.get("units") ?? "");
  if (!units) return undefined;
  given.delete("units");
  for (const [name, text] of given) {
    if (text !== "" && !CELL.test(text) && !NUMBER.test(text)) return undefined;
    if (text === "" && one.required.includes(name)) return undefined;
  }
  const text = withoutBlanks(one, given, units, []);
  if (text === undefined) return undefined;
  const guarded = guards(one, given, text, units);
  return guarded.length > LONGEST ? undefined : guarded;
}

/** A unit that is written out; one in a cell might change. */
function unitsOf(text: string): Units | undefined {
  if (text === "") return "mm";
  const word = /^"\s*(mm|in)\s*"$/i.exec(text)?.[1].toLowerCase();
  return word as Units | undefined;
}

type Given = ReadonlyMap<string, string>;

/** The formula for each way in which optional cells without a default may be blank. */
function withoutBlanks(
  one: KnownFunction,
  given: Given,
  units: Units,
  settled: readonly string[],
): string | undefined {
  const open = one.optional.find(
    (name) =>
      name !== "units" &&
      CELL.test(given.get(name) ?? "") &&
      !settled.includes(name) &&
      !one.asGiven?.includes(name) &&
      (one.leavesOut?.includes(name) || one.calculate.formula.defaults?.[name] === undefined),
  );
  if (open === undefined) return lines(one, given, units);
  const filled = withoutBlanks(one, given, units, [...settled, open]);
  const blank = withoutBlanks(one, new Map(given).set(open, ""), units, settled);
  if (filled === undefined || blank === undefined) return undefined;
  return filled === blank ? filled : `IF(${isBlank(open, given.get(open)!)},${blank},${filled})`;
}

const argumentOf = (name: string) => vocabulary[name as keyof typeof vocabulary];

/** An empty cell, or one with 0 where that counts as one. */
const isBlank = (name: string, cell: string): string =>
  argumentOf(name).zeroCounts ? `${cell}=""` : `OR(${cell}="",${cell}=0)`;

/** The lines of the formula, put into one another. */
function lines(one: KnownFunction, given: Given, units: Units): string | undefined {
  const { formula } = one.calculate;
  const names = [...one.required, ...one.optional];
  // What a line looks like depends on which arguments are there, not on their values.
  const values = names.map((name) => (name === "units" ? units : given.get(name) === "" ? undefined : 1));
  const texts = new Map<string, string>();
  for (const name of names) {
    const text = given.get(name) ?? "";
    const standard = formula.defaults?.[name];
    const own = typeof standard === "object" ? standard[units] : standard;
    if (text === "" && own !== undefined) texts.set(name, String(own));
    else if (text === "" && DEFAULT_OF[name]) texts.set(name, given.get(DEFAULT_OF[name])!);
    else if (CELL.test(text) && own !== undefined)
      texts.set(name, `IF(${isBlank(name, text)},${own},${text})`);
    else if (text !== "") texts.set(name, text);
    // Where it is needed and left out, the guard has refused the row.
    else if (one.asGiven?.includes(name)) texts.set(name, "0");
  }
  let last: string | undefined;
  for (const { symbol, expression } of formula.steps(units, ...values)) {
    last = inSpreadsheet(expression, (name) => texts.get(name));
    if (last === undefined) return undefined;
    texts.set(symbol, `(${last})`);
  }
  return last;
}

/** "" for an empty row, #N/A for what our function refuses. */
function guards(one: KnownFunction, given: Given, text: string, units: Units): string {
  const cells = (names: readonly string[]) =>
    names.flatMap((name) => {
      const cell = given.get(name) ?? "";
      return CELL.test(cell) ? [[name, cell] as const] : [];
    });
  const required = cells(one.required);
  const refused = required.map(([name, cell]) => `NOT(ISNUMBER(${cell})),${outside(name, cell, units)}`);
  for (const [name, cell] of cells(one.optional.filter((name) => name !== "units")))
    refused.push(
      `NOT(OR(${cell}="",ISNUMBER(${cell}))),AND(ISNUMBER(${cell}),NOT(${isBlank(name, cell)}),OR(${outside(name, cell, units)}))`,
    );
  if (one.none) refused.push(one.none((name) => given.get(name)!));
  const checked = refused.length === 0 ? text : `IF(OR(${refused.join(",")}),NA(),${text})`;
  if (required.length < one.required.length || required.length === 0) return checked;
  const blank = required.map(([name, cell]) => isBlank(name, cell));
  return `IF(AND(${blank.join(",")}),"",${checked})`;
}

/** Conditions under which a number is none that the argument may be. */
function outside(name: string, cell: string, units: Units): string {
  const { accepts, isLength, zeroCounts, min, max } = argumentOf(name);
  const conditions: string[] = [];
  if (/whole number/.test(accepts))
    conditions.push(`${cell}<${/0 or more/.test(accepts) ? 0 : 1}`, `${cell}<>INT(${cell})`);
  else if (min === Number.MIN_VALUE || (isLength && !zeroCounts)) conditions.push(`${cell}<=0`);
  else if (min > -Number.MAX_VALUE) conditions.push(`${cell}<${min}`);
  if (isLength) conditions.push(`${cell}>${longest(units)}`);
  else if (max === UNDER_ONE) conditions.push(`${cell}>=1`);
  else if (max < Number.MAX_VALUE) conditions.push(`${cell}>${max}`);
  return conditions.length === 0 ? "FALSE" : conditions.join(",");
}
