// functions: the usual mistakes of a hand calculation, each made on the inputs of a function. Which mistakes people make
// is common practice, no source.

import type { Callout } from "../src/calc/callouts/callout.ts";
import { evaluate } from "../src/calc/evaluate.ts";
import { resultsOf, scopeOf } from "../src/calc/formula.ts";
import { fromTicks } from "../src/calc/lengths.ts";
import { hasOwn } from "../src/calc/own.ts";
import {
  METERS_PER_FOOT,
  NEWTON_METERS_PER_POUND_FORCE_INCH,
  WATTS_PER_HORSEPOWER,
} from "../src/data/units.ts";
import { type Argument, type ArgumentName, vocabulary } from "./arguments.ts";
import { isBlank } from "./cells.ts";
import type { Call } from "./check-of.ts";

/** What is done wrong, and the numbers that this gives. */
export type Mistake = readonly [name: string, made: readonly number[]];

/** Every mistake and what it gives, the likeliest first. */
export function* mistakesIn(call: Call, results: readonly number[]): Generator<Mistake> {
  yield* unitMistakes(call);
  yield* diameterMistakes(call);
  yield* classMistakes(call);
  yield* deviationMistakes(call, results);
  yield* omissions(call);
  yield* exchanges(call);
  yield* habits(call, results);
  yield* constantMistakes(call, results);
  yield* resultMistakes(call, results);
  yield* digitMistakes(results);
}

const argumentOf = (name: string): Argument | undefined =>
  hasOwn(vocabulary, name) ? vocabulary[name as ArgumentName] : undefined;

/** What one unit is in the other set. */
const OTHER_UNITS: Readonly<Record<string, number>> = {
  mm: 25.4,
  "m/min": METERS_PER_FOOT,
  "mm/min": 25.4,
  N·m: NEWTON_METERS_PER_POUND_FORCE_INCH,
  kW: WATTS_PER_HORSEPOWER / 1000,
};
/** Units of time apart by 60. */
const OTHER_TIMES: Readonly<Record<string, string>> = { s: "min", min: "s or h", h: "min" };

function* unitMistakes(call: Call): Generator<Mistake> {
  for (const [at, name] of call.names.entries()) {
    const value = call.number(at);
    const unit = argumentOf(name)?.unit;
    if (value === undefined || unit === undefined) continue;
    if (typeof unit === "string") {
      const other = hasOwn(OTHER_TIMES, unit) ? OTHER_TIMES[unit] : undefined;
      for (const changed of other ? [value / 60, value * 60] : [])
        yield [`${name} in ${other} for ${unit}`, call.with({ [at]: changed })];
      continue;
    }
    if (!hasOwn(OTHER_UNITS, unit[0])) continue;
    const factor = OTHER_UNITS[unit[0]];
    const [own, other] = call.units === "mm" ? unit : [unit[1], unit[0]];
    yield [`${name} in ${other} for ${own}`, call.with({ [at]: value * factor })];
    yield [`${name} in ${other} for ${own}`, call.with({ [at]: value / factor })];
  }
  const units = call.names.indexOf("units");
  if (units >= 0) {
    const other = call.units === "mm" ? "in" : "mm";
    yield [`units "${other}" for "${call.units}"`, call.with({ [units]: other })];
  }
}

/** The right result written in the other unit. */
function* resultMistakes(call: Call, results: readonly number[]): Generator<Mistake> {
  for (const [at, result] of results.entries()) {
    const [mm, inch] = call.one.cells[at]?.units ?? ["", ""];
    const factor = mm === inch ? undefined : OTHER_UNITS[mm];
    if (factor === undefined) continue;
    const isMetric = call.units === "mm";
    if (isMetric && mm === "mm") yield ["µm for mm", [result * 1000]];
    const name = `result in ${isMetric ? inch : mm} for ${isMetric ? mm : inch}`;
    yield [name, [isMetric ? result / factor : result * factor]];
  }
}

function* diameterMistakes(call: Call): Generator<Mistake> {
  for (const [at, name] of call.names.entries()) {
    const value = call.number(at);
    if (value === undefined || !/^(?:diameter|drill|bore)$/.test(name)) continue;
    yield [`radius for ${name === "diameter" ? "" : `${name} `}diameter`, call.with({ [at]: value / 2 })];
    yield [`twice the ${name}`, call.with({ [at]: value * 2 })];
  }
}

/** Another class in a callout, or the shaft of the letter. */
function* classMistakes(call: Call): Generator<Mistake> {
  for (const [at, name] of call.names.entries()) {
    const cell = call.cells[at];
    const found = typeof cell === "string" ? /([A-Za-z]{1,2})(\d{1,2})(?!\d)/.exec(cell) : null;
    if (!found || (name !== "callout" && name !== "class")) continue;
    const [own, letters, grade] = found;
    const changed = (other: string) => call.with({ [at]: (cell as string).replace(own, other) });
    for (const off of [1, -1, 2, -2]) {
      const other = `${letters}${Number(grade) + off}`;
      yield [`${other} for ${own}`, changed(other)];
    }
    const turned = letters === letters.toUpperCase() ? letters.toLowerCase() : letters.toUpperCase();
    yield [`${turned}${grade} for ${own}`, changed(`${turned}${grade}`)];
  }
}

/** Deviations ten times too large or small, or with the sign turned, in a limit of size. */
function* deviationMistakes(call: Call, results: readonly number[]): Generator<Mistake> {
  const callout = call.values[call.names.indexOf("callout")] as Callout | undefined;
  if (!LIMITS.has(call.one.id) || typeof callout?.nominal !== "number") return;
  const nominal = fromTicks(callout.nominal, call.units);
  const made = (factor: number) => results.map((result) => nominal + (result - nominal) * factor);
  yield ["sign turned", made(-1)];
  yield ["deviations ten times too large", made(10)];
  yield ["deviations ten times too small", made(0.1)];
}

const LIMITS = new Set(["LIMITS", "MINSIZE", "MAXSIZE", "MIDSIZE"]);

function* omissions(call: Call): Generator<Mistake> {
  const left: Record<number, unknown> = {};
  const others: string[] = [];
  for (const [at, name] of call.names.entries()) {
    if (name === "units" || at >= call.cells.length || isBlank(call.cells[at])) continue;
    yield [`${name} left out`, call.with({ [at]: null })];
    const value = call.number(at);
    if (value === undefined) continue;
    if (!argumentOf(name)?.zeroCounts) {
      if (name === "batch") yield [`${name} left out`, call.with({ [at]: 1 })];
      continue;
    }
    yield [`${name} left out`, call.with({ [at]: 0 })];
    left[at] = 0;
    others.push(name);
  }
  if (others.length === 2) yield [`${others.join(" and ")} left out`, call.with(left)];
}

function* exchanges(call: Call): Generator<Mistake> {
  const [from, to] = [call.names.indexOf("from"), call.names.indexOf("to")];
  if (from >= 0 && to >= 0)
    yield ["from and to exchanged", call.with({ [from]: call.cells[to], [to]: call.cells[from] })];
  for (let first = 0; first < call.names.length; first++)
    for (let second = first + 1; second < call.names.length; second++) {
      const [a, b] = [call.number(first), call.number(second)];
      if (a === undefined || b === undefined || a === b) continue;
      const names = `${call.names[first]} and ${call.names[second]}`;
      yield [`${names} exchanged`, call.with({ [first]: b, [second]: a })];
    }
}

/** What else people do with these functions, each with its own arithmetic. */
function* habits(call: Call, results: readonly number[]): Generator<Mistake> {
  const scaled = (factor: number) => results.map((result) => result * factor);
  const numberOf = (name: string) => call.number(call.names.indexOf(name));
  const retract = call.names.indexOf("retractRate");
  if (retract >= 0) yield ["the retract left out", call.with({ [retract]: "rapid" })];
  const margin = numberOf("margin");
  if (margin) yield ["share on the cost for share on the price", scaled((1 - margin) * (1 + margin))];
  const scrap = numberOf("scrapRate");
  if (scrap)
    yield ["scrapRate added to the cost for divided by 1 − scrapRate", scaled((1 - scrap) * (1 + scrap))];
  const move = numberOf("moveTime");
  if (move) yield ["a move for every hole, for one less", results.map((result) => result + move)];
  if (PER_SIDE.has(call.one.id)) yield ["per side for on diameter", scaled(1 / 2)];
  const flutes = numberOf("flutes");
  if (flutes && flutes > 1) {
    const name = `per tooth for per revolution with ${flutes} flutes`;
    yield [name, scaled(flutes)];
    yield [name, scaled(1 / flutes)];
  }
}

/** Functions whose results are stock on diameter. */
const PER_SIDE = new Set(["STOCK", "STOCKRANGE", "DRILLFOR"]);

/** Constants of the written formula left out, and 3 for π. */
function* constantMistakes(call: Call, results: readonly number[]): Generator<Mistake> {
  const { formula, names, values, units } = call;
  if (!formula) return;
  const steps = formula.steps(units, ...values);
  const constants = new Set(
    steps.flatMap(({ expression }) => (expression.match(WORD) ?? []).filter(isConstant)),
  );
  const scope = scopeOf(formula, names, values, units);
  const made = (constant: string, instead: number): number[] => {
    const known = new Map([...scope].map(([name, [value]]) => [name, value]));
    const at = resultsOf(steps, results.length);
    return steps.flatMap(({ symbol, expression }, line) => {
      const value = evaluate(
        expression.replace(WORD, (one) => (one === constant ? String(instead) : one)),
        known,
      );
      known.set(symbol, value);
      return at[line] === undefined ? [] : [value];
    });
  };
  for (const constant of constants) {
    if (constant === "pi") yield [units === "in" ? "4 for 12/π" : "3 for π", made(constant, 3)];
    yield [CONSTANTS[constant] ?? `${constant} left out`, made(constant, 1)];
  }
}

/** A name or a number with its exponent. */
const WORD = /[\w.^]+/g;
/** A number of two digits or more, or π, that is no exponent: a conversion between units. */
const isConstant = (word: string) => /^(?:pi|[1-9]\d+)$/.test(word);
const CONSTANTS: Readonly<Record<string, string>> = { pi: "π left out", 60: "minutes for seconds" };

function* digitMistakes(results: readonly number[]): Generator<Mistake> {
  yield ["a zero too many", results.map((result) => result * 10)];
  yield ["a zero too few", results.map((result) => result / 10)];
  yield ["a zero too many", results.map((result) => result * 100)];
  yield ["a zero too few", results.map((result) => result / 100)];
  yield ["two digits swapped", results.flatMap(swapped)];
}

/** A number, to four and to three figures, with each two neighboring digits in turn swapped. */
function swapped(value: number): number[] {
  return [3, 4, 5].flatMap((figures) => {
    const [digits, exponent] = value.toExponential(figures - 1).split("e");
    const plain = digits.replace(/[-.]/g, "");
    const sign = value < 0 ? "-" : "";
    return Array.from({ length: plain.length - 1 }, (_, at) => {
      const turned = plain.slice(0, at) + plain[at + 1] + plain[at] + plain.slice(at + 2);
      return Number(`${sign}${turned[0]}.${turned.slice(1)}e${exponent}`);
    });
  });
}
