// tests: the global that a host gives to functions, as the browser workbook gives it.

import "../../src/browser/shim.ts";

/** What has been registered, by id. */
export const associated: ReadonlyMap<string, (...args: any[]) => any[][]> = (globalThis as any)
  .CustomFunctions.associated;
