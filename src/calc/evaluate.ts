// calc: works out one line of a written formula, for the steps shown to a user and for the test that holds
// them to the calculation. A recursive descent over numbers, names, + - * / ^, brackets and the functions below.

import {
  LITERS_PER_GALLON,
  METERS_PER_FOOT,
  MM_PER_INCH,
  NEWTON_METERS_PER_POUND_FORCE_INCH,
  PASCALS_PER_PSI,
} from "../data/units.ts";
import { wholeDown, wholeUp } from "./numbers.ts";
import { hasOwn } from "./own.ts";
import { standardNormal } from "./setup/normal.ts";

type NumberFunction = (...numbers: number[]) => number;

const degrees = Math.PI / 180;

/** Conversions by name: into which unit, and the factor. */
export const conversions: ReadonlyMap<string, { readonly unit: string; readonly factor: number }> = new Map([
  ["inmm", { unit: "mm", factor: MM_PER_INCH }],
  ["inin", { unit: "in", factor: 1 / MM_PER_INCH }],
  ["inmpermin", { unit: "m/min", factor: METERS_PER_FOOT }],
  ["inftpermin", { unit: "ft/min", factor: 1 / METERS_PER_FOOT }],
  /** From N·mm. */
  ["innm", { unit: "N·m", factor: 1e-3 }],
  ["inlbfin", { unit: "lbf·in", factor: 1e-3 / NEWTON_METERS_PER_POUND_FORCE_INCH }],
  /** From W, and from lbf·in per minute. */
  ["inkw", { unit: "kW", factor: 1e-3 }],
  ["inhp", { unit: "hp", factor: 1 / 396_000 }],
  /** From bar, and from psi. */
  ["inpascal", { unit: "Pa", factor: 1e5 }],
  ["inpascalfrompsi", { unit: "Pa", factor: PASCALS_PER_PSI }],
  /** From mm²·m/s. */
  ["inlpermin", { unit: "L/min", factor: 0.06 }],
  ["ingpm", { unit: "US gpm", factor: 0.06 / LITERS_PER_GALLON }],
  /** From N/mm². */
  ["inpsi", { unit: "lbf/in²", factor: 1e6 / PASCALS_PER_PSI }],
  /** A difference of temperature in °F. */
  ["inkelvin", { unit: "K", factor: 1 / 1.8 }],
]);

const functions: ReadonlyMap<string, NumberFunction> = new Map<string, NumberFunction>([
  ["min", Math.min],
  ["max", Math.max],
  ["wholedown", wholeDown],
  ["wholeup", wholeUp],
  ["nearesteven", (value) => 2 * Math.floor(value / 2 + 0.5)],
  /** Up to a whole multiple of the step, and to the nearest one. */
  ["roundup", (value, step) => wholeUp(value / step) * step],
  ["roundto", (value, step) => Math.round(value / step) * step],
  /** What is left over whole turns, from 0 to under `turn`. */
  ["mod", (value, turn) => value - turn * Math.floor(value / turn)],
  ["sqrt", Math.sqrt],
  // 0 at right angles, not the last digits of floating point.
  ["sind", (angle) => (angle % 180 === 0 ? 0 : Math.sin(angle * degrees))],
  ["cosd", (angle) => ((angle - 90) % 180 === 0 ? 0 : Math.cos(angle * degrees))],
  ["tand", (angle) => Math.tan(angle * degrees)],
  ["atan2d", (y, x) => Math.atan2(y, x) / degrees],
  ["ln", Math.log],
  ["exp", Math.exp],
  ["abs", Math.abs],
  ["normal", standardNormal],
  ...[...conversions].map(([name, { factor }]): [string, NumberFunction] => [
    name,
    (value) => value * factor,
  ]),
]);

type Scope = Readonly<Record<string, unknown>> | ReadonlyMap<string, unknown>;

const token = /\s*(?:(\d+\.?\d*(?:e[+-]?\d+)?|\.\d+(?:e[+-]?\d+)?)|([A-Za-z_]\w*)|([-+*/^(),]))/y;

/**
 * The value of an expression. Names are looked up in `scope`, own keys only; `pi` is always known.
 * Throws an Error on an unknown name or a malformed expression: that is a mistake in a formula, not in an input.
 */
export function evaluate(expression: string, scope: Scope): number {
  const tokens: string[] = [];
  token.lastIndex = 0;
  const end = expression.trimEnd().length;
  while (token.lastIndex < end) {
    const at = token.lastIndex;
    const match = token.exec(expression);
    if (match === null) throw new Error(`cannot read "${expression}" at ${at}`);
    tokens.push(match[1] ?? match[2] ?? match[3]);
  }
  let next = 0;

  function take(expected: string): void {
    if (tokens[next++] !== expected) throw new Error(`"${expected}" expected in "${expression}"`);
  }

  function sum(): number {
    let value = product();
    for (;;) {
      if (tokens[next] === "+") {
        next++;
        value += product();
      } else if (tokens[next] === "-") {
        next++;
        value -= product();
      } else return value;
    }
  }

  function product(): number {
    let value = signed();
    for (;;) {
      if (tokens[next] === "*") {
        next++;
        value *= signed();
      } else if (tokens[next] === "/") {
        next++;
        value /= signed();
      } else return value;
    }
  }

  function signed(): number {
    if (tokens[next] === "-") {
      next++;
      return -signed();
    }
    return power();
  }

  function power(): number {
    const base = operand();
    if (tokens[next] !== "^") return base;
    next++;
    return base ** signed();
  }

  function operand(): number {
    const word = tokens[next++];
    if (word === "(") {
      const value = sum();
      take(")");
      return value;
    }
    if (word !== undefined && /^[\d.]/.test(word)) return Number(word);
    if (word === undefined || !/^[A-Za-z_]/.test(word))
      throw new Error(`a value expected in "${expression}"`);
    return tokens[next] === "(" ? called(word) : named(word, scope);
  }

  function called(word: string): number {
    const calculation = functions.get(word);
    if (calculation === undefined) throw new Error(`no function "${word}"`);
    take("(");
    const numbers = [sum()];
    while (tokens[next] === ",") {
      next++;
      numbers.push(sum());
    }
    take(")");
    return calculation(...numbers);
  }

  const value = sum();
  if (next < tokens.length) throw new Error(`"${tokens[next]}" not expected in "${expression}"`);
  return value;
}

function named(name: string, scope: Scope): number {
  const value =
    scope instanceof Map
      ? scope.get(name)
      : hasOwn(scope, name)
        ? (scope as Record<string, unknown>)[name]
        : undefined;
  if (typeof value === "number") return value;
  if (name === "pi") return Math.PI;
  throw new Error(`no value for "${name}"`);
}
