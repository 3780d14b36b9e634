// functions: cells as the host gives them, and the two errors as the host takes them.

import { CellError, Problem } from "../src/calc/problem.ts";

/** Text of spaces is blank too; whether a 0 is blank depends on the argument. */
export function isBlank(cell: unknown): boolean {
  if (typeof cell !== "string") return cell === null || cell === undefined;
  const first = cell.charCodeAt(0);
  return !(first > 32 && first < 127) && /^[\s\u200b]*$/.test(cell);
}

/** An error cell, recognized by its code and never by its class. */
export function isErrorCell(cell: unknown): cell is { code: string } {
  return typeof cell === "object" && cell !== null && typeof (cell as { code?: unknown }).code === "string";
}

export function valueError(message: string): CustomFunctions.Error {
  return new CustomFunctions.Error(CustomFunctions.ErrorCode.invalidValue, message);
}

export function notAvailable(message: string): CustomFunctions.Error {
  return new CustomFunctions.Error(CustomFunctions.ErrorCode.notAvailable, message);
}

/** The error cell for whatever a calculation threw. A bug of ours says so, and tests look for its words. */
export function errorCell(thrown: unknown): unknown {
  if (thrown instanceof CellError) return passedOn(thrown.cell, "table");
  if (!(thrown instanceof Problem)) return valueError(`${FAULT} (${thrown}): please report it`);
  return thrown.kind === "none" ? notAvailable(thrown.message) : valueError(thrown.message);
}

export const FAULT = "an internal error of this function";

const RAISABLE = new Set(["#VALUE!", "#N/A", "#DIV/0!", "#NUM!", "#NULL!"]);

/** An error cell given as input, as it comes back: itself, or #VALUE! for one that a function cannot raise. */
export function passedOn(cell: { code: string }, name: string): unknown {
  return RAISABLE.has(cell.code)
    ? cell
    : valueError(`${name} holds the error ${cell.code}. Correct that cell first.`);
}

/** A result as the host takes it: finite numbers, texts, booleans and error cells pass, never null, NaN or −0. */
export function resultCell(result: unknown): unknown {
  if (typeof result === "number") {
    return Number.isFinite(result)
      ? result + 0
      : valueError("The numbers are too large to compute with. Check the units of the inputs.");
  }
  if (result instanceof Problem) return errorCell(result);
  return typeof result === "string" || typeof result === "boolean" || isErrorCell(result)
    ? result
    : valueError(`${FAULT} (no result): please report it`);
}
