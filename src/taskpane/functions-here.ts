// taskpane: the functions that functions.js has registered in this same page, called as a cell calls them.

export interface ErrorCell {
  readonly code: string;
  readonly message?: string;
}
type Call = (...args: unknown[]) => unknown[][];

/** A function of the page by its name without the namespace, or undefined where functions.js is not there. */
export function functionHere(id: string): Call | undefined {
  const registered = (globalThis as { reamwrightFunctions?: ReadonlyMap<string, { readonly call: Call }> })
    .reamwrightFunctions;
  return registered?.get(id)?.call;
}

export const isErrorCell = (cell: unknown): cell is ErrorCell =>
  typeof cell === "object" && cell !== null && typeof (cell as { code?: unknown }).code === "string";

/** The code of an error that a cell shows; undefined for any other value. */
export const errorCode = (value: unknown): string | undefined =>
  typeof value === "string" && /^#(?:N\/A|[A-Z]+(?:\/0)?[!?])$/.test(value) ? value : undefined;
