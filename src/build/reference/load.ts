// build: the worksheet functions themselves, loaded as the built script loads them, and a call as a sheet writes it.

import { join } from "node:path";
import type { SourceKey } from "../../data/sources.ts";
import type { Declaration } from "../declarations.ts";
import { projectFolder } from "../paths.ts";

/** Loads and registers every declared function; gives the module that holds them by id. */
export async function loadFunctions(declarations: readonly Declaration[]) {
  giveCustomFunctions();
  const { register, registered } = await import("../../../functions/register.ts");
  for (const { id, exportName, file, sources } of declarations) {
    const module = await import(join(projectFolder, file));
    if (!registered.has(id)) register(id, module[exportName], sources as SourceKey[]);
  }
  return registered;
}

function giveCustomFunctions(): void {
  if ("CustomFunctions" in globalThis) return;
  class CellError extends Error {
    constructor(
      readonly code: string,
      message?: string,
    ) {
      super(message);
    }
  }
  const ErrorCode = { invalidValue: "#VALUE!", notAvailable: "#N/A" };
  Object.assign(globalThis, { CustomFunctions: { Error: CellError, ErrorCode, associate() {} } });
}

export type Matrix = any[][];

/**
 * The arguments of `=REAM.NAME(…)` as ranges, in literals only: numbers, texts, TRUE, FALSE, {arrays}, and nothing
 * between commas. Throws on anything else.
 */
export function literalArguments(formula: string): { id: string; inputs: (Matrix | null)[] } {
  const call = /^=REAM\.([A-Z0-9._]+)\((.*)\)$/s.exec(formula);
  if (!call) throw new Error(`${formula} is no call of a function`);
  const inputs = splitOutside(call[2]!, ",").map((text) =>
    text.trim() === "" ? null : rangeOf(text.trim()),
  );
  return { id: call[1]!, inputs: call[2]!.trim() === "" ? [] : inputs };
}

function rangeOf(text: string): Matrix {
  if (!text.startsWith("{")) return [[literal(text)]];
  return splitOutside(text.slice(1, -1), ";").map((row) =>
    splitOutside(row, ",").map((cell) => literal(cell.trim())),
  );
}

function literal(text: string): unknown {
  if (/^".*"$/s.test(text)) return text.slice(1, -1).replaceAll('""', '"');
  if (text === "TRUE" || text === "FALSE") return text === "TRUE";
  const number = Number(text);
  if (text === "" || Number.isNaN(number)) throw new Error(`${text} is no literal`);
  return number;
}

/** Splits at a character that stands outside quotes and braces. */
function splitOutside(text: string, at: string): string[] {
  const parts: string[] = [""];
  let quoted = false;
  let depth = 0;
  for (const character of text) {
    if (character === '"') quoted = !quoted;
    else if (!quoted && character === "{") depth++;
    else if (!quoted && character === "}") depth--;
    if (character === at && !quoted && depth === 0) parts.push("");
    else parts[parts.length - 1] += character;
  }
  return parts;
}
