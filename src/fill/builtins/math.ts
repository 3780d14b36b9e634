// fill: the spreadsheet's arithmetic, rounding and angles.

import { power } from "../formula/operators.ts";
import { divisionByZero, finite, numberError, type Scalar, Unsupported } from "../formula/values.ts";
import { type Named, numeric } from "./define.ts";

/** A number with its last digits, which are chance, made whole: what people see is what is rounded. */
const settled = (value: number) => Number(value.toPrecision(15));

function rounded(value: number, digits: number, round: (size: number) => number): Scalar {
  const places = Math.trunc(digits);
  if (places > 300 || places < -300) return places > 0 ? value : 0;
  const [mantissa, exponent = "0"] = Math.abs(settled(value)).toExponential().split("e");
  // Through the decimal digits, so that 1.005 to two places is 1.01.
  const scaled = Number(`${mantissa}e${Number(exponent) + places}`);
  const [whole, power = "0"] = round(scaled).toExponential().split("e");
  return finite(Math.sign(value) * Number(`${whole}e${Number(power) - places}`));
}

const half = (size: number) => Math.floor(size + 0.5);
const up = (size: number) => Math.ceil(settled(size));
const down = (size: number) => Math.floor(settled(size));

function multiple(value: number, step: number, round: (count: number) => number): Scalar {
  if (step === 0 || value === 0) return 0;
  return finite(settled(round(settled(value / step)) * step));
}

/** CEILING and FLOOR: a negative step for a positive number is refused. */
const stepped = (round: (count: number) => number) => (value: number, step: number) =>
  value > 0 && step < 0 ? numberError() : multiple(value, step, round);

const steppedMath =
  (round: (count: number) => number, away: (count: number) => number) =>
  (value: number, step = 1, mode = 0) =>
    multiple(value, Math.abs(step), value < 0 && mode !== 0 ? away : round);

function floorWithStep(value: number, step: number): Scalar {
  if (step === 0 && value !== 0) return divisionByZero();
  return stepped(Math.floor)(value, step);
}

function remainder(value: number, divisor: number): Scalar {
  if (divisor === 0) return divisionByZero();
  const quotient = value / divisor;
  if (Math.abs(quotient) >= 2 ** 40) throw new Unsupported("MOD of a number so much larger than its divisor");
  const nearest = Math.round(quotient);
  // A quotient that is whole but for its last digits, which are chance, leaves nothing.
  if (Math.abs(quotient - nearest) <= Math.abs(quotient) * 2 ** -50) return 0;
  return finite(settled(value - divisor * Math.floor(quotient)));
}

const within = (low: number, high: number, call: (value: number) => number) => (value: number) =>
  value < low || value > high ? numberError() : finite(call(value));
const all = (call: (value: number) => number) => (value: number) => finite(call(value));

const logarithm = (value: number, base = 10): Scalar => {
  if (value <= 0 || base <= 0) return numberError();
  if (base === 1) return divisionByZero();
  return finite(
    base === 10 ? Math.log10(value) : base === 2 ? Math.log2(value) : Math.log(value) / Math.log(base),
  );
};

export const math: readonly Named[] = [
  numeric("ABS", all(Math.abs), 1),
  numeric("SIGN", all(Math.sign), 1),
  numeric("SQRT", within(0, Number.MAX_VALUE, Math.sqrt), 1),
  numeric("EXP", all(Math.exp), 1),
  numeric("LN", within(Number.MIN_VALUE, Number.MAX_VALUE, Math.log), 1),
  numeric("LOG10", (value) => logarithm(value)),
  numeric("LOG", logarithm, 1, 2),
  numeric("POWER", power),
  numeric("PI", () => Math.PI),
  numeric("RADIANS", (degrees) => finite((degrees * Math.PI) / 180)),
  numeric("DEGREES", (radians) => finite((radians * 180) / Math.PI)),
  ...(["sin", "cos", "tan", "atan", "sinh", "cosh", "tanh", "asinh"] as const).map((name) =>
    numeric(name.toUpperCase(), all(Math[name]), 1),
  ),
  numeric("ASIN", within(-1, 1, Math.asin), 1),
  numeric("ACOS", within(-1, 1, Math.acos), 1),
  numeric("ATAN2", (x, y) => (x === 0 && y === 0 ? divisionByZero() : finite(Math.atan2(y, x)))),
  numeric("INT", (value) => finite(Math.floor(settled(value)))),
  numeric("TRUNC", (value, digits = 0) => rounded(value, digits, down), 1, 2),
  numeric("ROUND", (value, digits) => rounded(value, digits, half)),
  numeric("ROUNDUP", (value, digits) => rounded(value, digits, up)),
  numeric("ROUNDDOWN", (value, digits) => rounded(value, digits, down)),
  numeric("MROUND", (value, step) =>
    value * step < 0 ? numberError() : multiple(value, step, (count) => Math.floor(count + 0.5)),
  ),
  numeric("CEILING", stepped(Math.ceil), 2),
  numeric("FLOOR", floorWithStep),
  numeric("CEILING.MATH", steppedMath(Math.ceil, Math.floor), 1, 3),
  numeric("FLOOR.MATH", steppedMath(Math.floor, Math.ceil), 1, 3),
  numeric("EVEN", (value) => finite(Math.sign(value) * 2 * Math.ceil(settled(Math.abs(value) / 2)))),
  numeric("ODD", (value) =>
    value === 0 ? 1 : Math.sign(value) * (2 * Math.ceil(settled((Math.abs(value) - 1) / 2)) + 1),
  ),
  numeric("MOD", remainder),
  numeric("QUOTIENT", (value, divisor) =>
    divisor === 0 ? divisionByZero() : finite(Math.trunc(value / divisor)),
  ),
  numeric("ISEVEN", (value) => Math.trunc(value) % 2 === 0),
  numeric("ISODD", (value) => Math.trunc(value) % 2 !== 0),
];
