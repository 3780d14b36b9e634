// tests: worksheet functions called as a sheet calls them: every argument a range, an empty one null.

import { join } from "node:path";
import { register } from "../../functions/register.ts";
import { readDeclarations } from "../../src/build/declarations.ts";
import { projectFolder } from "../../src/build/paths.ts";
import type { SourceKey } from "../../src/data/sources.ts";
import { associated } from "./custom-functions.ts";

export type Cell = unknown;
export type Cells = unknown[][];
export interface ErrorCell {
  readonly code: string;
  readonly message?: string;
}

/** Every declared function; loaded and registered as the built script does it. */
export const declarations = readDeclarations();

for (const { id, exportName, file, sources, cells } of declarations) {
  const module = await import(join(projectFolder, file));
  register(id, module[exportName], sources as SourceKey[], cells);
}

const byId = new Map(declarations.map((declaration) => [declaration.id, declaration]));

const asRange = (arg: unknown) => (arg === undefined ? null : Array.isArray(arg) ? arg : [[arg]]);

/** Arguments as a host hands them over: each a range, those of a repeating parameter together in one array. */
export function handedOver(id: string, args: readonly unknown[]): unknown[] {
  const ranges = args.map(asRange);
  const repeating = byId.get(id)!.parameters.findIndex((parameter) => parameter.repeating);
  if (repeating < 0 || ranges.length <= repeating) return ranges;
  return [...ranges.slice(0, repeating), ranges.slice(repeating).map((range) => range ?? [[null]])];
}

/** The cells that a call gives. An argument is one cell, a range of cells, or undefined where it is left out. */
export function sheet(id: string, ...args: unknown[]): Cells {
  const call = associated.get(id);
  if (!call) throw new Error(`no function ${id}`);
  return call(...handedOver(id, args));
}

/** The first cell that a call gives. */
export const cell = (id: string, ...args: unknown[]): any => sheet(id, ...args)[0][0];

/** The first row that a call gives. */
export const row = (id: string, ...args: unknown[]): any[] => sheet(id, ...args)[0];

/** A column of cells. */
export const down = (...cells: Cell[]): Cells => cells.map((one) => [one]);

/** A row of cells. */
export const across = (...cells: Cell[]): Cells => [cells];

export function isError(value: unknown): value is ErrorCell {
  return typeof value === "object" && value !== null && "code" in value;
}

/** An error cell as code and message, anything else as it is: for comparing. */
export function said(value: unknown): unknown {
  return isError(value) ? `${value.code} ${value.message ?? ""}` : value;
}

/** The message of a #VALUE! or #N/A cell; fails on anything else. */
export function messageOf(value: unknown, code: "#VALUE!" | "#N/A" = "#VALUE!"): string {
  if (!isError(value) || value.code !== code) throw new Error(`${JSON.stringify(value)} is not ${code}`);
  return value.message ?? "";
}
