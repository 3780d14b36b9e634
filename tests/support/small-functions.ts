// tests: functions in place of the built ones, so that filling is tested without a build.

import type { BuiltFunction } from "../../src/build/built-functions.ts";
import type { Metadata, MetadataParameter } from "../../src/build/metadata.ts";
import { withWorksheetFunctions } from "../../src/fill/worksheet-functions.ts";

const problem = (code: string, message: string) => ({ code, message });
const cell = (matrix: any[][] | null, row: number) =>
  matrix?.length === 1 ? matrix[0][0] : matrix?.[row]?.[0];
const parameter = (name: string, more: Partial<MetadataParameter> = {}): MetadataParameter => ({
  name,
  type: "any",
  dimensionality: "matrix",
  ...more,
});

/** Row by row, over columns; an error that comes in goes out. */
const perRow =
  (call: (...values: any[]) => unknown[]): BuiltFunction =>
  (...given) => {
    const matrices = given.slice(0, -1) as (any[][] | null)[];
    const rows = Math.max(1, ...matrices.map((matrix) => matrix?.length ?? 0));
    return Array.from({ length: rows }, (_, row) => {
      const values = matrices.map((matrix) => cell(matrix, row));
      const error = values.find((value) => value?.code);
      return error ? [error] : call(...values);
    });
  };

const smallFunctions: Record<string, { call: BuiltFunction; parameters: MetadataParameter[] }> = {
  /** Twice a number. */
  TWICE: {
    parameters: [parameter("value"), parameter("units", { optional: true })],
    call: perRow((value, units) => [
      typeof value === "number"
        ? value * (units === "in" ? 20 : 2)
        : value === null || value === undefined || value === ""
          ? ""
          : problem("#VALUE!", `value "${value}" is not a number`),
    ]),
  },
  /** A number, and the one after it. */
  PAIR: { parameters: [parameter("value")], call: perRow((value) => [value, value + 1]) },
  /** The numbers from 1 to its argument, down. */
  DOWN: {
    parameters: [parameter("count")],
    call: ([[count]]) => Array.from({ length: count }, (_, i) => [i + 1]),
  },
  /** All of them added: a list. */
  TOTAL: {
    parameters: [parameter("values", { repeating: true })],
    call: (matrices: any[][][]) => [[matrices.flat(2).reduce((sum, value) => sum + Number(value ?? 0), 0)]],
  },
  /** A text with all that a file must escape. */
  TEXT: { parameters: [], call: () => [[' <a href="x">&amp; "b", c\u0001']] },
  NONE: { parameters: [], call: () => [[problem("#N/A", "there is none")]] },
  YES: { parameters: [], call: () => [[true]] },
};

export const metadata: Metadata = {
  allowErrorForDataTypeAny: true,
  functions: Object.entries(smallFunctions).map(([id, { parameters }]) => ({
    id,
    name: id,
    parameters,
    result: { type: "any", dimensionality: "matrix" },
  })),
};

export const functions = withWorksheetFunctions(
  metadata,
  new Map(Object.entries(smallFunctions).map(([id, { call }]) => [id, call])),
);
