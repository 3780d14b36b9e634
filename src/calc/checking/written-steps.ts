// calc: a calculation written out as a user would write it, line by line, from the formula it carries.

import { conversions, evaluate } from "../evaluate.ts";
import { type Formula, resultsOf, scopeOf } from "../formula.ts";
import type { Units } from "../lengths.ts";
import { hasOwn } from "../own.ts";

export interface WorkedCall {
  readonly formula: Formula;
  readonly names: readonly string[];
  readonly values: readonly any[];
  readonly units: Units;
  /** The function's own numbers. */
  readonly results: readonly number[];
  /** The unit of an argument, "" if it has none. */
  readonly unitOf: (name: string) => string;
}

/** For each step the formula in symbols, the same with numbers and units, and its result; words before and behind. */
export function writtenSteps(call: WorkedCall): string[] {
  const { formula, names, values, units, results } = call;
  const scope: Record<string, number> = {};
  const unitAt: Record<string, string> = {};
  for (const [name, [value, unit]] of scopeOf(formula, names, values, units)) {
    scope[name] = value;
    unitAt[name] = unit ?? call.unitOf(name);
  }
  const steps = formula.steps(units, ...values);
  const resultAt = resultsOf(steps, results.length);
  const lines = [...(formula.lookup?.(units, ...values) ?? [])];
  steps.forEach(({ symbol, expression, unit }, at) => {
    scope[symbol] = evaluate(expression, scope);
    const own = resultAt[at] === undefined ? undefined : results[resultAt[at]];
    lines.push(`${symbol} = ${inWords(expression)}`);
    lines.push(`${symbol} = ${inWords(withNumbers(expression, scope, unitAt))}`);
    // "as the readings" is said of the result alone.
    unitAt[symbol] = unit.startsWith("as the ") ? "" : unit;
    lines.push(`${symbol} = ${withUnit(own ?? scope[symbol], unit)}`);
  });
  lines.push(...(formula.conclusion?.(units, ...values) ?? []));
  return lines;
}

function withNumbers(
  expression: string,
  scope: Readonly<Record<string, number>>,
  unitAt: Readonly<Record<string, string>>,
): string {
  return expression.replace(/[A-Za-z_]\w*(?!\w*\()/g, (name, at: number) => {
    const value = /[\w.]/.test(expression[at - 1] ?? "") ? undefined : scope[name];
    if (value === undefined) return name;
    const text = withUnit(value, unitAt[name] ?? "");
    const isRaised = expression.startsWith(" ^", at + name.length);
    return value < 0 || (isRaised && text.includes(" ")) ? `(${text})` : text;
  });
}

/** What a function does to the whole line, said behind it: `60 · life / cutTime, rounded down`. */
const SAID: Readonly<Record<string, string>> = {
  wholedown: "rounded down to a whole number",
  wholeup: "rounded up to a whole number",
  nearesteven: "the nearest even number",
};

const NAMES: Readonly<Record<string, string>> = {
  sind: "sin",
  cosd: "cos",
  tand: "tan",
  atan2d: "atan2",
  normal: "Φ",
  sqrt: "√",
};

/** An expression as people write it: signs of arithmetic, roundings and conversions in words. */
function inWords(expression: string): string {
  const outer = /^(\w+)\((.*)\)$/.exec(expression);
  if (outer && closesAtEnd(outer[2])) {
    const [, name, inner] = outer;
    const unit = conversions.get(name)?.unit;
    if (unit) return `${inWords(inner)}, in ${unit}`;
    if (hasOwn(SAID, name)) return `${inWords(inner)}, ${SAID[name]}`;
    if (name === "roundup" || name === "roundto") {
      const comma = inner.lastIndexOf(", ");
      const how = name === "roundup" ? "rounded up to a whole" : "rounded to";
      return `${inWords(inner.slice(0, comma))}, ${how} ${inner.slice(comma + 2)}`;
    }
  }
  return expression
    .replace(/\b(\w+)\(/g, (call, name: string) => {
      if (conversions.has(name)) return `${conversions.get(name)!.unit}(`;
      return hasOwn(NAMES, name) ? `${NAMES[name]}(` : call;
    })
    .replaceAll(" ^ 2", "²")
    .replaceAll(" * ", " · ")
    .replaceAll(" - ", " − ")
    .replace(/(^|[(,^] ?)-/g, "$1−")
    .replace(/\bpi\b/g, "π");
}

/** Whether the brackets of a text pair up within it. */
function closesAtEnd(inner: string): boolean {
  let depth = 0;
  for (const character of inner) {
    if (character === "(") depth++;
    else if (character === ")") depth--;
    if (depth < 0) return false;
  }
  return depth === 0;
}

/** Twelve figures show a micrometer in a meter and hide the last digits of floating point. */
function withUnit(value: number, unit: string): string {
  const number = String(Number(value.toPrecision(12))).replace(/^-/, "−");
  return unit === "" ? number : unit === "°" ? `${number}°` : `${number} ${unit}`;
}
