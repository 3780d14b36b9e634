// build: the errors of a page, as the function really gives them: each argument of its first example is spoiled in turn.

import type { Declaration } from "../declarations.ts";
import type { Matrix } from "./load.ts";

export interface RealError {
  readonly argument: string;
  /** What stood in the cell, in words. */
  readonly content: string;
  readonly code: string;
  readonly message: string;
}

const MOST = 5;

/** In the order in which they are tried: what people leave, type, and mistake. */
const spoiled: readonly (readonly [content: string, cell: unknown])[] = [
  ["nothing", ""],
  ['"abc"', "abc"],
  ["-1", -1],
  ["1000000", 1e6],
  ['"1,250"', "1,250"],
];

/** Up to five errors with different messages, from as many arguments as there are. */
export function realErrors(
  { parameters }: Declaration,
  inputs: readonly (Matrix | null)[],
  call: (...inputs: any[]) => Matrix,
): RealError[] {
  const found: RealError[] = [];
  const said = new Set<string>();
  for (const [content, cell] of spoiled)
    for (const [at, { name, optional }] of parameters.entries()) {
      if (at >= inputs.length && name !== "units") continue;
      if (content === "nothing" && optional) continue;
      const tried: (Matrix | null)[] = Array.from({ length: Math.max(inputs.length, at + 1) }, (_, index) =>
        index === at ? [[cell]] : (inputs[index] ?? null),
      );
      const first = call(...tried)[0][0];
      if (typeof first !== "object" || first === null || !first.message) continue;
      // "stock is blank" and "offset is blank" are one error.
      const shape = first.message.replaceAll(name, "…");
      if (said.has(shape) || found.length === MOST) continue;
      said.add(shape);
      found.push({ argument: name, content, code: first.code, message: first.message });
    }
  return found;
}
