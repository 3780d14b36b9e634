// functions: what the built script registers with the host, and the list that STEPS and SOURCES look things up in.

import type { SourceKey } from "../src/data/sources.ts";
import { calledAs } from "./calling.ts";
import { isErrorCell } from "./cells.ts";

export type Matrix = any[][];
export type WorksheetFunction = (...args: any[]) => Matrix;

/** A cell that a function gives: its name, and its unit in the metric and the inch set, "" for none. */
export interface ResultCell {
  readonly name: string;
  readonly units: readonly [mm: string, inch: string];
}

export interface Registered {
  readonly id: string;
  readonly call: WorksheetFunction;
  readonly sources: readonly SourceKey[];
  /** The cells that it gives for a row; none where its result has a shape of its own. */
  readonly cells: readonly ResultCell[];
}

/** Every registered function by its id, without the namespace. */
export const registered = new Map<string, Registered>();

export function register(
  id: string,
  call: WorksheetFunction,
  sources: readonly SourceKey[],
  cells: readonly ResultCell[],
): void {
  const named = calledAs(id, call);
  registered.set(id, { id, call: named, sources, cells });
  CustomFunctions.associate(id, (...args: any[]) => throwIfError(named(...args)));
}

/** An error that is all of a result is thrown: some Excels show an error inside a matrix without its message. */
function throwIfError(result: Matrix): Matrix {
  const [[cell]] = result;
  if (result.length > 1 || result[0].length > 1 || !isErrorCell(cell)) return result;
  throw cell instanceof CustomFunctions.Error
    ? cell
    : new CustomFunctions.Error(cell.code as CustomFunctions.ErrorCode);
}

/** As a host hands ranges over: what a function has no parameter for belongs to its last one, which repeats. */
export function handedOver(parameters: number, inputs: readonly Matrix[]): unknown[] {
  if (inputs.length <= parameters) return [...inputs];
  return [...inputs.slice(0, parameters - 1), inputs.slice(parameters - 1)];
}
