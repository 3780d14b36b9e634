// workbook: a call of one of our functions as formulas of the spreadsheet's own, one for each cell that it gives, with its
// units, caps, defaults and blanks; where our function would show an error, the formula shows #N/A.

import { vocabulary } from "../../../functions/arguments.ts";
import { resultsOf } from "../../calc/formula.ts";
import type { Units } from "../../calc/lengths.ts";
import { hasOwn } from "../../calc/own.ts";
import { Problem } from "../../calc/problem.ts";
import { inSpreadsheet } from "./expression.ts";
import { type KnownFunction, knownFunctions } from "./known.ts";
import { listFunctions } from "./lists.ts";

/** A cell as a formula names it, `B7`, `$B$7`, `Sheet1!B7`, `[@Speed]`; or a plain number, or a word. */
const CELL = new RegExp(
  [
    /^(?:(?:'[^']+'|[A-Za-z_][\w.]*)!)?\$?[A-Z]{1,3}\$?\d+$/,
    /^(?:[A-Za-z_][\w.]*)?\[\[#This Row\],\[[\w. ]+\]\]$/,
    /^(?:[A-Za-z_][\w.]*)?\[@(?:\[[\w. ]+\]|\w+)\]$/,
  ]
    .map(({ source }) => source)
    .join("|"),
  "i",
);
const NUMBER = /^\d+(?:\.\d+)?$/;
const WORD = /^"([^"]*)"$/;
const LONGEST = 8000;
const UNDER_ONE = 1 - 2 ** -53;
const longest = (units: Units): number => (units === "mm" ? 3150 : 124);

/** What stands where nothing is given. */
const DEFAULT_OF: Readonly<Record<string, string>> = { retractRate: "feedRate" };

/** Formulas without "=", one for each cell of the function, or why there are none. */
export type OwnFormulas = readonly string[] | { readonly why: string };

/**
 * @param args as they are written, "" for one left out
 * @param isColumn which of them are one cell of a column: a row is empty where all of these are
 */
export function ownFormulas(
  id: string,
  args: readonly string[],
  isColumn: readonly boolean[] = [],
): OwnFormulas {
  const texts = args.map((text) => text.trim());
  const list = listFunctions.get(id);
  if (list) return list(texts) ?? { why: `${id} with these arguments has no such formula` };
  const one = knownFunctions.get(id);
  if (!one) return { why: `${id} ${whyNot(id)}` };
  const names = [...one.required, ...one.optional];
  if (texts.length > names.length) return { why: `${id} has more arguments than it takes` };
  const given = new Map(names.map((name, at) => [name, texts[at] ?? ""]));
  for (const [name, text] of given) {
    if (text === "" && one.required.includes(name)) return { why: `${id} lacks ${name}` };
    if (!isWritable(one, name, text)) return { why: `${name} of ${id} is neither a cell nor a number` };
  }
  const columns = names.filter((_, at) => isColumn[at]);
  const formulas = inUnits(one, given, columns.length > 0 ? columns : one.required);
  if (!formulas) return { why: `${id} with these arguments has no such formula` };
  return formulas.some((text) => text.length > LONGEST)
    ? { why: `the formula for ${id} would be longer than a cell holds` }
    : formulas;
}

const CALLOUTS =
  /^(?:LIMITS|(?:MIN|MAX|MID)SIZE|TOLERANCE|CALLOUT|CLEARANCE|FITTYPE|GRADEFOR|ACCEPTLIMITS|REAMER\w+|WEARALLOWANCE|PREPLATE|SHAREDREAMERS|INSPECT|CAPABILITY|INTOLERANCE|GAUGESHARE|PLUGGAUGE|CHECKLIMITS|PLAN)$/;
const TABLES =
  /^(?:(?:UPPER|LOWER)DEV|ITWIDTH|STOCK\w*|PREDRILL|DRILL\w+|START\w+|CUTTINGDATA|FLUTES|TORQUE|SIZEAT20|HOTSIZE|DATAFOR|TOOLFOR)$/;

/** Why a function has no formula of the spreadsheet's own. */
function whyNot(id: string): string {
  if (CALLOUTS.test(id)) return "reads a callout";
  return TABLES.test(id) ? "looks up a table" : "answers in words or with a whole table";
}

/** The first cell of a call; undefined if it cannot be written. */
export function ownFormula(id: string, args: readonly string[]): string | undefined {
  const own = ownFormulas(id, args);
  return "why" in own ? undefined : own[0];
}

function isWritable(one: KnownFunction, name: string, text: string): boolean {
  if (text === "" || CELL.test(text))
    return text === "" || !one.words?.includes(name) || one.given !== undefined;
  if (name === "units") return unitsOf(text) !== undefined;
  return one.words?.includes(name) ? WORD.test(text) : NUMBER.test(text);
}

/** A unit that is written out; undefined for one in a cell. */
function unitsOf(text: string): Units | undefined {
  if (text === "") return "mm";
  const word = WORD.exec(text)?.[1].trim().toLowerCase() ?? "none";
  return hasOwn(UNIT_WORDS, word) ? UNIT_WORDS[word] : undefined;
}
const UNIT_WORDS: Readonly<Record<string, Units>> = {
  mm: "mm",
  metric: "mm",
  in: "in",
  inch: "in",
  inches: "in",
};

/** The cells in the unit that is written out, or in either as a cell says. */
function inUnits(one: KnownFunction, all: ArgumentTexts, asked: readonly string[]): string[] | undefined {
  const cell = all.get("units") ?? "";
  const given = new Map(all);
  given.delete("units");
  const units = unitsOf(cell);
  const orEmpty = (text: string) => unlessEmpty(all, asked, text);
  if (units) return cellsIn(one, given, units)?.map(orEmpty);
  const [metric, inch] = [cellsIn(one, given, "mm"), cellsIn(one, given, "in")];
  if (!metric || !inch) return undefined;
  const is = (unit: Units) =>
    Object.keys(UNIT_WORDS)
      .filter((word) => UNIT_WORDS[word] === unit)
      .map((word) => `LOWER(TRIM(${cell}))="${word}"`)
      .join(",");
  return metric.map((text, at) =>
    orEmpty(`IF(OR(TRIM(${cell})="",${cell}=0,${is("mm")}),${text},IF(OR(${is("in")}),${inch[at]},NA()))`),
  );
}

/** "" for an empty row: all of these are cells, and blank. */
function unlessEmpty(given: ArgumentTexts, asked: readonly string[], text: string): string {
  const cells = asked.map((name) => [name, given.get(name) ?? ""] as const);
  if (!cells.every(([, cell]) => CELL.test(cell))) return text;
  return `IF(AND(${cells.map(([name, cell]) => isBlank(name, cell)).join(",")}),"",${text})`;
}

function cellsIn(one: KnownFunction, given: ArgumentTexts, units: Units): string[] | undefined {
  const cells: string[] = [];
  for (let cell = 0; cell < (one.cells ?? 1); cell++) {
    const text =
      one.write?.((name) => given.get(name) ?? "", units)[cell] ?? withoutBlanks(one, given, units, [], cell);
    if (text === undefined) return undefined;
    cells.push(guards(one, given, text, units));
  }
  return cells;
}

/** What a call has written for each argument, by its name. */
type ArgumentTexts = ReadonlyMap<string, string>;

/** The formula for each way in which optional cells without a default may be blank. */
function withoutBlanks(
  one: KnownFunction,
  given: ArgumentTexts,
  units: Units,
  settled: readonly string[],
  cell: number,
): string | undefined {
  const open = one.optional.find(
    (name) =>
      name !== "units" &&
      CELL.test(given.get(name) ?? "") &&
      !settled.includes(name) &&
      !one.asGiven?.includes(name) &&
      !one.words?.includes(name) &&
      (one.leavesOut?.includes(name) || one.calculate.formula.defaults?.[name] === undefined),
  );
  if (open === undefined) return lines(one, given, units, cell);
  const filled = withoutBlanks(one, given, units, [...settled, open], cell);
  const blank = withoutBlanks(one, new Map(given).set(open, ""), units, settled, cell);
  if (filled === undefined || blank === undefined) return undefined;
  if (filled === blank) return filled;
  const text = given.get(open)!;
  return `IF(${one.leavesOut?.includes(open) ? `N(${text})=0` : isBlank(open, text)},${blank},${filled})`;
}

const argumentOf = (name: string) => vocabulary[name as keyof typeof vocabulary];

/** An empty cell, or one with 0 where that counts as one. */
const isBlank = (name: string, cell: string): string =>
  argumentOf(name).zeroCounts ? `${cell}=""` : `OR(${cell}="",${cell}=0)`;

/** The lines of the formula, put into one another, up to the one that is the cell. */
function lines(one: KnownFunction, given: ArgumentTexts, units: Units, cell: number): string | undefined {
  const { formula } = one.calculate;
  const names = [...one.required, ...one.optional];
  // What a line looks like depends on which arguments are there and on words, not on numbers.
  const values = names.map((name) => {
    const text = given.get(name) ?? "";
    if (name === "units") return units;
    return text === "" ? undefined : (WORD.exec(text)?.[1] ?? 1);
  });
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
  const textOf = (name: string) => given.get(name) ?? "";
  for (const [name, text] of Object.entries(one.given?.(textOf, units) ?? {})) texts.set(name, text);
  const steps = stepsOf(one, units, values);
  const resultAt = resultsOf(steps, Math.min(one.cells ?? 1, steps.length));
  for (const [at, { symbol, expression }] of steps.entries()) {
    const text = inSpreadsheet(expression, (name) => texts.get(name));
    if (text === undefined) return undefined;
    if (resultAt[at] === cell) return one.roundedResults?.includes(symbol) ? `ROUND(${text},7)` : text;
    texts.set(symbol, one.rounded?.includes(symbol) ? `ROUND(${text},7)` : `(${text})`);
  }
  // A cell that stays empty with these arguments; a formula without lines has no cell at all.
  return steps.length === 0 ? undefined : '""';
}

function stepsOf(one: KnownFunction, units: Units, values: readonly unknown[]) {
  try {
    return one.calculate.formula.steps(units, ...values);
  } catch (thrown) {
    if (thrown instanceof Problem) return [];
    throw thrown;
  }
}

/** #N/A for what our function refuses. */
function guards(one: KnownFunction, given: ArgumentTexts, text: string, units: Units): string {
  const cells = (names: readonly string[]) =>
    names.flatMap((name) => {
      const cell = given.get(name) ?? "";
      return CELL.test(cell) && !one.words?.includes(name) ? [[name, cell] as const] : [];
    });
  const required = cells(one.required);
  const refused = required.map(([name, cell]) => `NOT(ISNUMBER(${cell})),${outside(name, cell, units)}`);
  for (const [name, cell] of cells(one.optional.filter((name) => name !== "units")))
    refused.push(
      `NOT(OR(${cell}="",ISNUMBER(${cell}))),AND(ISNUMBER(${cell}),NOT(${isBlank(name, cell)}),OR(${outside(name, cell, units)}))`,
    );
  if (one.none) refused.push(one.none((name) => given.get(name) ?? "", units));
  return refused.length === 0 ? text : `IF(OR(${refused.join(",")}),NA(),${text})`;
}

/** Conditions under which a number is none that the argument may be. */
function outside(name: string, cell: string, units: Units): string {
  const { accepts, isLength, zeroCounts, min, max } = argumentOf(name);
  const conditions: string[] = [];
  if (/whole number/.test(accepts))
    conditions.push(`${cell}<${/0 or more/.test(accepts) ? 0 : 1}`, `${cell}<>INT(${cell})`);
  else if (min === Number.MIN_VALUE || (isLength && !zeroCounts)) conditions.push(`${cell}<=0`);
  else if (min > -Number.MAX_VALUE) conditions.push(`${cell}<${min}`);
  if (isLength) conditions.push(`${min < 0 ? `ABS(${cell})` : cell}>${longest(units)}`);
  else if (max === UNDER_ONE) conditions.push(`${cell}>=1`);
  else if (max < Number.MAX_VALUE) conditions.push(`${cell}>${max}`);
  return conditions.length === 0 ? "FALSE" : conditions.join(",");
}
