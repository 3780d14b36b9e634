// fill: the operators between single values.

import {
  compare,
  divisionByZero,
  finite,
  fittingText,
  isError,
  numberError,
  type Scalar,
  sameNumber,
  toNumber,
  toText,
  Unsupported,
} from "./values.ts";

export function operate(operator: string, left: Scalar, right: Scalar): Scalar {
  if (isError(left)) return left;
  if (isError(right)) return right;
  if (operator === "&") {
    const [a, b] = [toText(left), toText(right)];
    return isError(a) ? a : isError(b) ? b : fittingText(a + b);
  }
  switch (operator) {
    case "=":
      return compare(left, right) === 0;
    case "<>":
      return compare(left, right) !== 0;
    case "<":
      return compare(left, right) < 0;
    case ">":
      return compare(left, right) > 0;
    case "<=":
      return compare(left, right) <= 0;
    case ">=":
      return compare(left, right) >= 0;
  }
  const a = toNumber(left);
  if (isError(a)) return a;
  const b = toNumber(right);
  if (isError(b)) return b;
  switch (operator) {
    case "+":
      return a !== -b && sameNumber(a, -b) ? 0 : finite(a + b);
    case "-":
      return a !== b && sameNumber(a, b) ? 0 : finite(a - b);
    case "*":
      return finite(a * b);
    case "/":
      return b === 0 ? divisionByZero() : finite(a / b);
    case "^":
      return power(a, b);
  }
  throw new Unsupported(`the operator ${operator}`);
}

export function power(base: number, exponent: number): Scalar {
  if (base === 0 && exponent === 0) return numberError();
  if (base === 0 && exponent < 0) return divisionByZero();
  return finite(base ** exponent);
}

export function sign(operator: "-" | "+" | "%", value: Scalar): Scalar {
  // A plus leaves even a text as it is.
  if (operator === "+" || isError(value)) return value;
  const number = toNumber(value);
  if (isError(number)) return number;
  return operator === "-" ? finite(-number) : number / 100;
}
