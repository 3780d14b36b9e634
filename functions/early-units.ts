// functions: a word for units in the place of another argument, the commonest mistake of all.

import type { Stated } from "./columns.ts";

export const isUnitsWord = (cell: unknown) =>
  typeof cell === "string" && cell.length < 20 && /^\s*(?:mm|in|inch|inches|metric)\s*$/i.test(cell);

/** `=REAM.RPM(15, 10, "in")`: the units one place too early. */
export function unitsTooEarly(
  { name, argument, required }: Stated,
  word: string,
  call: readonly Stated[],
): string {
  if (required) return `${name} is "${word}". Enter ${argument.accepts}, and give units last.`;
  const before = call.slice(
    0,
    call.findIndex((one) => one.name === name),
  );
  const places = [...before.map((one) => one.name), "", `"${word}"`].join(", ");
  return `${name} is "${word}". Leave ${name} empty: (${places}).`;
}
