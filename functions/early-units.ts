// functions: a word for units in the place of another argument, the commonest mistake of all.

import { calledFunction } from "./calling.ts";
import { isBlank } from "./cells.ts";
import type { CallArgument } from "./columns.ts";

export const isUnitsWord = (cell: unknown) =>
  typeof cell === "string" && cell.length < 20 && /^\s*(?:mm|in|inch|inches|metric)\s*$/i.test(cell);

/** `=REAM.RPM(15, 10, "in")`: the units one place too early. */
export function unitsTooEarly(
  { name, argument, required }: CallArgument,
  word: string,
  call: readonly CallArgument[],
): string {
  if (required) return `${name} is "${word}". Enter ${argument.accepts}, and give units last.`;
  const at = call.findIndex((one) => one.name === name);
  const units = call.findIndex((one) => one.name === "units");
  const places = [...call.slice(0, at).map(asTyped), ...new Array(units - at).fill(""), `"${word}"`];
  return `${name} is "${word}". Leave ${name} empty: =REAM.${calledFunction()}(${places.join(", ")}).`;
}

/** A single value as it would be typed, a range by the name of its argument. */
function asTyped({ name, matrix }: CallArgument): string {
  const [[cell]] = matrix;
  if (matrix.length > 1 || matrix[0].length > 1) return name;
  if (isBlank(cell)) return "";
  if (Number.isFinite(cell)) return String(cell);
  const isTyped = typeof cell === "string" && cell.length < 30 && !/[\u0000-\u001f\u007f]/.test(cell);
  return isTyped ? `"${cell.replaceAll('"', '""')}"` : name;
}
