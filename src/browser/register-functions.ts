// browser: registers every function of functions.json with the grid, which then calls what functions.js has associated.
// The grid has its own shapes: cells are objects, ranges stand column by column, some error codes differ.

import type { Metadata, MetadataFunction } from "../build/metadata.ts";
import { fileError, gridError } from "../workbook/xlsx-grid/error-codes.ts";

export type Call = (...args: any[]) => any[][];

/** A cell as the grid gives and takes it. */
export interface GridCell {
  value: string | number | boolean | null;
  message?: string;
}
export type GridArgument = GridCell | GridCell[][] | undefined;

export interface ErrorClass {
  new (code: string, message?: string): { readonly code: string; readonly message?: string };
}

/** What the registration needs of the grid's library. */
export interface GridRegistries {
  readonly functionRegistry: { add(name: string, description: any): unknown };
  readonly errorTypes: Set<string>;
  readonly autoCompleteProviders: {
    get(name: string): any;
    replace(name: string, provider: any): unknown;
  };
}

const namespace = "REAM";

export function registerFunctions(
  metadata: Metadata,
  calls: ReadonlyMap<string, Call>,
  registries: GridRegistries,
  ErrorType: ErrorClass,
): void {
  registries.errorTypes.add("#VALUE!");
  offerAllFunctions(registries);
  for (const described of metadata.functions) {
    const call = calls.get(described.id);
    if (!call) throw new Error(`functions.js has no ${described.id}`);
    registries.functionRegistry.add(
      `${namespace}.${described.name}`,
      gridFunction(described, call, registries.errorTypes, ErrorType),
    );
  }
}

/** Typing =REAM. lists every function in alphabetical order, where the grid alone would stop at ten. */
function offerAllFunctions(registries: GridRegistries): void {
  const all = registries.autoCompleteProviders.get("functions_and_named_ranges");
  registries.autoCompleteProviders.replace("reaming_functions", {
    ...all,
    sequence: all.sequence - 1,
    maxDisplayedProposals: undefined,
    getProposals(token: { value: string }, content: string) {
      const prefix = `${namespace}.`;
      if (!token.value.toUpperCase().startsWith(prefix)) return [];
      const proposals: { text: string }[] = all.getProposals.call(this, token, content);
      return proposals
        .filter(({ text }) => text.startsWith(prefix))
        .sort((a, b) => a.text.localeCompare(b.text, "en"));
    },
  });
}

export function gridFunction(
  described: MetadataFunction,
  call: Call,
  errorTypes: ReadonlySet<string>,
  ErrorType: ErrorClass,
) {
  const single = described.parameters.filter(({ repeating }) => !repeating).length;
  const toExcel = (cell: GridCell | undefined): unknown => {
    const value = cell?.value ?? null;
    if (typeof value !== "string" || !errorTypes.has(value)) return value;
    return new ErrorType(fileError(value), cell?.message);
  };
  const toMatrix = (argument: GridArgument): unknown[][] | null => {
    if (argument === undefined) return null;
    if (!Array.isArray(argument)) return [[toExcel(argument)]];
    return argument[0].map((_, row) => argument.map((column) => toExcel(column[row])));
  };
  return {
    description: described.description ?? "",
    category: "Reaming",
    isExported: true,
    args: described.parameters.map((parameter) => ({
      name: parameter.name,
      description: parameter.description ?? "",
      type: ["ANY", "RANGE<ANY>"],
      optional: parameter.optional === true,
      repeating: parameter.repeating === true,
      acceptMatrix: true,
      acceptErrors: true,
    })),
    compute(...given: GridArgument[]) {
      const args: unknown[] = [];
      for (let index = 0; index < single; index++) args.push(toMatrix(given[index]));
      if (single < described.parameters.length) args.push(given.slice(single).map(toMatrix));
      // Excel's last argument, whatever the function.
      args.push({ functionName: described.id });
      return toGrid(call(...args));
    },
  };
}

/** One cell for a matrix of one, else the grid's columns. */
function toGrid(result: unknown[][]): GridCell | GridCell[][] {
  if (result.length === 1 && result[0].length === 1) return toGridCell(result[0][0]);
  return result[0].map((_, column) => result.map((row) => toGridCell(row[column])));
}

function toGridCell(cell: unknown): GridCell {
  if (typeof cell === "string" || typeof cell === "number" || typeof cell === "boolean")
    return { value: cell };
  const { code = "#VALUE!", message } = (cell ?? {}) as { code?: string; message?: string };
  return { value: gridError(code), ...(message ? { message } : {}) };
}
