// functions: what the built script registers with the host, and the list that STEPS and SOURCES look things up in.

import type { SourceKey } from "../src/data/sources.ts";

export type Matrix = any[][];
export type WorksheetFunction = (...args: any[]) => Matrix;

export interface Registered {
  readonly id: string;
  readonly call: WorksheetFunction;
  readonly sources: readonly SourceKey[];
}

/** Every registered function by its id, without the namespace. */
export const registered = new Map<string, Registered>();

export function register(id: string, call: WorksheetFunction, sources: readonly SourceKey[]): void {
  registered.set(id, { id, call, sources });
  CustomFunctions.associate(id, call);
}
