// fill: our own worksheet functions, as built for Excel, among the functions that formulas may call.

import type { BuiltFunction } from "../build/built-functions.ts";
import { namespace } from "../workbook/xlsx/stored-names.ts";
import { builtins } from "./builtins/all.ts";
import { type Functions, matrixOf, type SheetFunction } from "./formula/evaluate.ts";
import { CellError, type Matrix, type Scalar, Unsupported, type Value } from "./formula/values.ts";

/** The most cells that ranges may spread to. */
const LARGEST_RESULT = 8_000_000;

/** What the host appends to every call. */
const invocation = {};

/** As much as has to be known of our functions to call them. */
export interface Described {
  readonly functions: readonly {
    readonly id: string;
    readonly name: string;
    readonly parameters: readonly { readonly repeating?: boolean }[];
  }[];
}

export function withWorksheetFunctions(
  metadata: Described,
  calls: ReadonlyMap<string, BuiltFunction>,
): Functions {
  const functions = new Map(builtins);
  for (const { id, name, parameters } of metadata.functions) {
    const call = calls.get(id);
    if (!call) throw new Error(`functions.js has no ${id}`);
    const repeating = parameters.some((parameter) => parameter.repeating);
    functions.set(`${namespace}.${name}`, worksheetFunction(call, parameters.length, repeating));
  }
  return functions;
}

function worksheetFunction(call: BuiltFunction, count: number, repeating: boolean): SheetFunction {
  const single = repeating ? count - 1 : count;
  return {
    kind: "range",
    fewestArguments: 0,
    mostArguments: repeating ? Number.POSITIVE_INFINITY : count,
    takes: "a",
    call(args, context) {
      const matrices = args.map((arg) => (arg === undefined ? null : matrixOf(arg, context)));
      const rows = Math.max(1, ...matrices.map((matrix) => matrix?.length ?? 0));
      const columns = Math.max(1, ...matrices.map((matrix) => matrix?.[0]?.length ?? 0));
      if (rows * columns > LARGEST_RESULT) throw new Unsupported("a result of too many cells");
      const given: unknown[] = Array.from({ length: single }, (_, i) => matrices[i] ?? null);
      if (repeating) given.push(matrices.slice(single).filter((matrix) => matrix !== null));
      return fromHost(call(...given, invocation));
    },
  };
}

/** The result of a call, its error cells as ours; one cell is a single value. */
function fromHost(result: unknown[][]): Value {
  for (const line of result)
    for (let i = 0; i < line.length; i++) {
      const cell = line[i];
      if (typeof cell !== "object" || cell === null || cell instanceof CellError) continue;
      const { code, message } = cell as { code: string; message?: string };
      line[i] = new CellError(code, message);
    }
  const matrix = result as Matrix;
  return matrix.length === 1 && matrix[0].length === 1 ? (matrix[0][0] as Scalar) : matrix;
}

export const isWorksheetFunction = (name: string): boolean => name.startsWith(`${namespace}.`);
