// calc: a calculation written out as a person would write it, line by line, from the formula it carries.

import { sources } from "../../data/sources.ts";
import { evaluate } from "../evaluate.ts";
import type { Formula, FormulaStep } from "../formula.ts";
import type { Units } from "../lengths.ts";

export interface WorkedCall {
  readonly formula: Formula;
  readonly names: readonly string[];
  readonly values: readonly any[];
  readonly units: Units;
  /** The function's own numbers, which the last lines must come to. */
  readonly results: readonly number[];
  /** The unit of an argument, "" if it has none. */
  readonly unitOf: (name: string) => string;
}

const LENGTH = ["mm", "in"] as const;

/** Units of the values that formulas look up (`Formula.given`) and that are no argument's name. */
const GIVEN_UNITS: Readonly<Record<string, string | readonly [string, string]>> = {
  ...Object.fromEntries(
    [
      ...["nominal", "lower", "upper", "least", "greatest", "holeLeast", "holeGreatest", "shaftLeast"],
      ...["shaftGreatest", "mean", "tolerance", "shareStep", "tableLeast", "tableGreatest", "lowerLimit"],
      ...["upperLimit", "deviation", "average"],
    ].map((name) => [name, LENGTH]),
  ),
  squares: ["mm^2", "in^2"],
  lowSpeed: "ft/min",
  highSpeed: "ft/min",
  tableFeed: "in",
  kc11: "N/mm²",
  partExpansion: "µm/(m·K)",
  gaugeExpansion: "µm/(m·K)",
};

/** For each step the formula in symbols, the same with numbers and units, and what it comes to; last the source. */
export function writtenSteps(call: WorkedCall): string[] {
  const { formula, names, values, units, results } = call;
  const scope: Record<string, number> = { ...formula.given?.(...values) };
  const unitAt: Record<string, string> = {};
  for (const name of Object.keys(scope))
    unitAt[name] = call.unitOf(name) || pick(GIVEN_UNITS[name] ?? "", units);
  names.forEach((name, index) => {
    if (typeof values[index] !== "number" || name in scope) return;
    scope[name] = values[index];
    unitAt[name] = call.unitOf(name);
  });
  const steps = formula.steps(units, ...values);
  const lines: string[] = [];
  steps.forEach(({ symbol, expression, unit }: FormulaStep, at) => {
    const own = results[at - (steps.length - results.length)];
    lines.push(`${symbol} = ${inSymbols(expression)}`);
    lines.push(`${symbol} = ${inSymbols(withNumbers(expression, scope, unitAt))}`);
    scope[symbol] = evaluate(expression, scope);
    unitAt[symbol] = unit;
    lines.push(`${symbol} = ${withUnit(own ?? scope[symbol], unit)}`);
  });
  return [...lines, `source: ${sources[formula.source].text}`];
}

function pick(unit: string | readonly [string, string], units: Units): string {
  return typeof unit === "string" ? unit : unit[units === "mm" ? 0 : 1];
}

function withNumbers(
  expression: string,
  scope: Readonly<Record<string, number>>,
  unitAt: Readonly<Record<string, string>>,
): string {
  return expression.replace(/(?<![\w.])[A-Za-z_]\w*(?!\w*\()/g, (name) => {
    const value = scope[name];
    if (value === undefined) return name;
    const text = withUnit(value, unitAt[name] ?? "");
    return value < 0 ? `(${text})` : text;
  });
}

function inSymbols(expression: string): string {
  return expression
    .replaceAll(" * ", " · ")
    .replace(/\bpi\b/g, "π")
    .replace(/\bsqrt\(/g, "√(");
}

/** Twelve figures tell a micrometre in a metre and hide the last digits of floating point. */
function withUnit(value: number, unit: string): string {
  const number = String(Number(value.toPrecision(12)));
  return unit === "" ? number : `${number} ${unit}`;
}
