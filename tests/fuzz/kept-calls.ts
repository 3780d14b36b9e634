// tests: calls that random testing found wrong, kept as cases.

import type { FuzzCall } from "./calls.ts";

export const keptCalls: readonly FuzzCall[] = [
  { id: "RPM", args: [[["15"]], [["10"]], null, null], rows: 1 },
];
