// functions: a hand figure against the function that it was worked out for. Every usual mistake is made on the
// function's own inputs, and the one that gives the hand figure is named. Which mistakes people make is common
// practice, no source.

import { LENGTH_OK } from "../src/calc/checking/check-limits.ts";
import { offBy, placeOf, verdictInside } from "../src/calc/checking/written-digits.ts";
import { fromTicks, type Units } from "../src/calc/lengths.ts";
import { hasOwn } from "../src/calc/own.ts";
import { shown, wrong } from "../src/calc/problem.ts";
import { type Argument, type ArgumentName, vocabulary } from "./arguments.ts";
import { isBlank, isErrorCell } from "./cells.ts";
import { explanationOf } from "./map-rows.ts";
import { handedOver, type Matrix, type Registered, registered } from "./register.ts";

/** Functions whose results are lengths to be met to 0.0005 mm (0.00002 in), not to a share. */
const EXACT_LENGTHS = new Set([
  ...["LIMITS", "MINSIZE", "MAXSIZE", "MIDSIZE", "TOLERANCE", "CALLOUT", "UPPERDEV", "LOWERDEV", "ITWIDTH"],
  ...["CLEARANCE", "ACCEPTLIMITS", "REAMERLIMITS", "REAMERSIZE", "WEARALLOWANCE", "CUTSOVER", "PREPLATE"],
]);
const SHARE = 0.01;
/** Rounding on the way (3.14 for π) leaves this share; coarser figures than the other fit too many mistakes. */
const ROUNDED_ON_THE_WAY = 0.0006;
const COARSEST = 0.003;
const DIGITS = 1e-9;

/** `ok`, the mistake, or how far off. */
export function checkOf(functionName: string, handFigure: number, inputs: readonly Matrix[]): unknown {
  const id = functionName.toUpperCase().replace(/^REAM\./, "");
  const one = registered.get(id);
  if (!one || id === "CHECKOF" || id === "STEPS")
    return wrong(`functionName is ${shown(functionName)}. Write the name of a function, such as "RPM".`);
  const call = new Call(one, inputs);
  const results = call.results(call.cells);
  const [first] = results;
  if (isErrorCell(first)) return first;
  const numbers = results.filter((result): result is number => typeof result === "number");
  if (numbers.length === 0) return wrong(`functionName is ${id}, which gives no number to check against.`);
  const judge = new Judge(handFigure, EXACT_LENGTHS.has(id) ? call.units : undefined);
  const at = results.findIndex((result) => typeof result === "number" && judge.isOk(result));
  if (at >= 0) return results.length > 1 ? `ok: ${one.cells[at]?.name ?? `cell ${at + 1}`}` : "ok";
  const mistake = [...mistakesIn(call, numbers)].find(([, made]) =>
    made.some((value) => judge.isMeant(value)),
  );
  if (mistake) return mistake[0];
  const nearest = numbers.reduce((a, b) => (Math.abs(b - handFigure) < Math.abs(a - handFigure) ? b : a));
  return judge.offFrom(nearest);
}

/** Holds a hand figure against others. */
class Judge {
  private readonly lengthOk: number | undefined;
  private readonly half: number;

  constructor(
    private readonly figure: number,
    units: Units | undefined,
  ) {
    this.lengthOk = units && fromTicks(LENGTH_OK[units], units) + DIGITS;
    this.half = placeOf(figure) / 2;
  }

  isOk(exact: number): boolean {
    if (this.lengthOk !== undefined) return Math.abs(this.figure - exact) <= this.lengthOk;
    return exact === 0 ? this.figure === 0 : verdictInside(this.figure, exact, SHARE) === "ok";
  }

  /** Whether the figure is this one to its own digits. */
  isMeant(value: number): boolean {
    const off = Math.abs(this.figure - value);
    if (!Number.isFinite(value) || value === 0) return false;
    if (this.lengthOk !== undefined) return off <= this.lengthOk;
    const share = off / Math.abs(value);
    return share <= ROUNDED_ON_THE_WAY || (off <= this.half && share <= COARSEST);
  }

  offFrom(expected: number): string {
    if (this.lengthOk !== undefined) {
      const off = Number((this.figure - expected).toFixed(7));
      return `${Math.abs(off)} ${off > 0 ? "high" : "low"}`;
    }
    if (expected === 0) return `${this.figure} for 0`;
    return verdictInside(this.figure, expected, SHARE) ?? offBy(this.figure, expected);
  }
}

/** A call of a function with single cells, that can be made again with others. */
class Call {
  readonly cells: readonly unknown[];
  readonly names: readonly string[];
  readonly values: readonly unknown[];
  readonly units: Units;

  constructor(
    private readonly one: Registered,
    inputs: readonly Matrix[],
  ) {
    this.cells = inputs.map((input) => (Array.isArray(input) && isSingle(input) ? input[0][0] : input));
    const how = explanationOf(this.run(this.cells));
    if (how && how.rows > 1)
      wrong(`inputs are ${how.rows} rows of ${one.id}. Enter one cell for each argument.`);
    this.names = how?.names ?? [];
    this.values = how?.values ?? [];
    this.units = this.values[this.names.indexOf("units")] === "in" ? "in" : "mm";
  }

  run(cells: readonly unknown[]): Matrix {
    const inputs = cells.map((cell) => (Array.isArray(cell) ? cell : [[cell]]) as Matrix);
    return this.one.call(...handedOver(this.one.call.length, inputs));
  }

  results(cells: readonly unknown[]): unknown[] {
    return this.run(cells)[0];
  }

  /** The numbers that the function gives with one cell changed, none where it gives an error. */
  with(changes: Readonly<Record<number, unknown>>): number[] {
    const last = Math.max(this.cells.length, ...Object.keys(changes).map((at) => Number(at) + 1));
    const cells = Array.from({ length: last }, (_, at) => (at in changes ? changes[at] : this.cells[at]));
    return this.results(cells).filter((result): result is number => typeof result === "number");
  }

  number(at: number): number | undefined {
    const value = this.values[at];
    return typeof value === "number" && !isBlank(this.cells[at]) ? value : undefined;
  }
}

const isSingle = (matrix: Matrix) => matrix.length === 1 && matrix[0]?.length === 1;

type Mistake = readonly [name: string, made: readonly number[]];

/** Every mistake and what it gives, the likeliest first. */
function* mistakesIn(call: Call, results: readonly number[]): Generator<Mistake> {
  yield* unitMistakes(call);
  yield* diameterMistakes(call);
  yield* classMistakes(call);
  yield* omissions(call);
  yield* exchanges(call);
  yield* factorMistakes(call, results);
  yield* digitMistakes(results);
}

const argumentOf = (name: string): Argument | undefined =>
  hasOwn(vocabulary, name) ? vocabulary[name as ArgumentName] : undefined;

/** What one unit of an argument is in the other set. */
const OTHER_UNITS: Readonly<Record<string, number>> = { mm: 25.4, "m/min": 0.3048, "mm/min": 25.4 };

function* unitMistakes(call: Call): Generator<Mistake> {
  for (const [at, name] of call.names.entries()) {
    const value = call.number(at);
    const unit = argumentOf(name)?.unit;
    if (value === undefined || typeof unit !== "object" || !(unit[0] in OTHER_UNITS)) continue;
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

function* omissions(call: Call): Generator<Mistake> {
  for (const [at, name] of call.names.entries()) {
    if (name === "units" || at >= call.cells.length || isBlank(call.cells[at])) continue;
    yield [`${name} left out`, call.with({ [at]: null })];
    if (call.number(at) !== undefined && argumentOf(name)?.zeroCounts)
      yield [`${name} left out`, call.with({ [at]: 0 })];
  }
}

function* exchanges(call: Call): Generator<Mistake> {
  for (let first = 0; first < call.names.length; first++)
    for (let second = first + 1; second < call.names.length; second++) {
      const [a, b] = [call.number(first), call.number(second)];
      if (a === undefined || b === undefined || a === b) continue;
      const names = `${call.names[first]} and ${call.names[second]}`;
      yield [`${names} exchanged`, call.with({ [first]: b, [second]: a })];
    }
}

function* factorMistakes(call: Call, results: readonly number[]): Generator<Mistake> {
  const scaled = (factor: number) => results.map((result) => result * factor);
  const both = function* (name: string, factor: number): Generator<Mistake> {
    yield [name, scaled(factor)];
    yield [name, scaled(1 / factor)];
  };
  const numberOf = (name: string) => call.number(call.names.indexOf(name));
  if (call.names.includes("retractRate")) {
    const at = call.names.indexOf("retractRate");
    yield ["the retract left out", call.with({ [at]: "rapid" })];
  }
  const margin = numberOf("margin");
  if (margin) yield ["share on the cost for share on the price", scaled((1 - margin) * (1 + margin))];
  yield* both("π left out", Math.PI);
  yield* both(call.units === "in" ? "4 for 12/π" : "3 for π", Math.PI / 3);
  yield* both(call.units === "in" ? "12 left out" : "1000 left out", call.units === "in" ? 12 : 1000);
  const flutes = numberOf("flutes");
  if (flutes && flutes > 1) yield* both(`per tooth for per revolution with ${flutes} flutes`, flutes);
  yield* both("minutes for seconds", 60);
  yield* both(call.units === "in" ? "1000 left out" : "12 left out", call.units === "in" ? 1000 : 12);
}

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
