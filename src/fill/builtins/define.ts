// fill: how a function of the spreadsheet is declared here, and how its arguments are read.

import type { Argument, Context, RangeFunction, SheetFunction } from "../formula/evaluate.ts";
import {
  Area,
  CellError,
  isError,
  isMatrix,
  type Matrix,
  type Scalar,
  toBoolean,
  toNumber,
  toText,
  Unsupported,
  type Value,
} from "../formula/values.ts";

export type Named = readonly [name: string, function_: SheetFunction];

/** Of numbers; the arguments are read as numbers first. */
export const numeric = (
  name: string,
  call: (...numbers: number[]) => Scalar,
  fewestArguments = call.length,
  mostArguments = fewestArguments,
): Named => [
  name,
  {
    kind: "scalar",
    fewestArguments,
    mostArguments,
    call: (...values: Scalar[]) => {
      const numbers = values.map(toNumber);
      return numbers.find(isError) ?? call(...(numbers as number[]));
    },
  },
];

/** Of single values as they are. */
export const scalar = (
  name: string,
  call: (...values: Scalar[]) => Scalar,
  fewestArguments = call.length,
  mostArguments = fewestArguments,
): Named => [name, { kind: "scalar", fewestArguments, mostArguments, call }];

/** Of single values, errors among them. */
export const test = (name: string, call: (value: Scalar) => Scalar): Named => [
  name,
  { kind: "scalar", fewestArguments: 1, mostArguments: 1, call, takesErrors: true },
];

/** Of whole ranges. An error that is thrown is the result. */
export const ranged = (
  name: string,
  fewestArguments: number,
  mostArguments: number,
  takes: string,
  call: (args: readonly Argument[], context: Context) => Value,
  more: Partial<RangeFunction> = {},
): Named => [
  name,
  {
    kind: "range",
    fewestArguments,
    mostArguments,
    takes,
    call: (args, context) => {
      try {
        return call(args, context);
      } catch (thrown) {
        if (thrown instanceof CellError) return thrown;
        throw thrown;
      }
    },
    ...more,
  },
];

export const many = Number.POSITIVE_INFINITY;

/** Throws the error cell that a value is. */
export function throwIfError<T>(value: T | CellError): T {
  if (value instanceof CellError) throw value;
  return value;
}

/** An argument that is one value; null if it is left out. */
export function value(args: readonly Argument[], i: number): Scalar {
  const given = args[i] ?? null;
  if (given instanceof Area || isMatrix(given)) throw new Unsupported("an array where a value belongs");
  return given;
}

/** A single argument as a number, the default if it is left out. */
export const number = (args: readonly Argument[], i: number, otherwise = 0): number =>
  args[i] === undefined ? otherwise : throwIfError(toNumber(value(args, i)));

export const text = (args: readonly Argument[], i: number): string => throwIfError(toText(value(args, i)));

export const truth = (args: readonly Argument[], i: number, otherwise: boolean): boolean =>
  args[i] === undefined ? otherwise : throwIfError(toBoolean(value(args, i)));

/** Visits every cell of the arguments in reading order; `isDirect` are values that stand in the formula itself. */
export function eachCell(
  args: readonly Argument[],
  context: Context,
  visit: (value: Scalar, isDirect: boolean) => void,
): void {
  for (const arg of args) {
    if (arg instanceof Area) context.cells.each(arg, (value) => visit(value, false));
    else if (isMatrix(arg ?? null))
      for (const line of arg as Matrix) for (const value of line) visit(value, false);
    else visit((arg as Scalar | undefined) ?? null, true);
  }
}

/** What sums and the like take: of ranges the numbers alone, of the formula's own values also what reads as one. */
export function numbers(args: readonly Argument[], context: Context): number[] {
  const found: number[] = [];
  eachCell(args, context, (value, isDirect) => {
    if (typeof value === "number") found.push(value);
    else if (value instanceof CellError) throw value;
    else if (isDirect) found.push(throwIfError(toNumber(value)));
  });
  return found;
}
