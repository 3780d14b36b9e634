// build: the worksheet functions themselves, loaded as the built script loads them, and a call as a sheet writes it.

import { basename } from "node:path";
import type { SourceKey } from "../../data/sources.ts";
import "../../browser/shim.ts";
import type { Declaration } from "../declarations.ts";
import { readCall } from "../example-call.ts";

/** Loads and registers every declared function; gives the module that holds them by id. */
export async function loadFunctions(declarations: readonly Declaration[]) {
  const { register, registered } = await import("../../../functions/register.ts");
  for (const { id, exportName, file, sources, cells } of declarations) {
    // Written so that a bundler finds the modules.
    const module = await import(`../../../functions/${basename(file, ".ts")}.ts`);
    if (!registered.has(id)) register(id, module[exportName], sources as SourceKey[], cells);
  }
  return registered;
}

export type Matrix = any[][];

/** The arguments of `=REAM.NAME(…)` as ranges, null for one left out. Throws where one is itself a call. */
export function literalArguments(formula: string): { id: string; inputs: (Matrix | null)[] } {
  const { id, args } = readCall(formula);
  const inputs = args.map((arg) => {
    if (arg === undefined) return null;
    if (typeof arg !== "object") return [[arg]];
    if (!Array.isArray(arg)) throw new Error(`${formula} has a call inside`);
    return arg;
  });
  return { id, inputs };
}
