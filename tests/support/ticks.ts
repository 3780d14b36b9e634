// tests: ticks of 1e-8 mm as the numbers that they are when they run, so that what is expected is worked out apart from
// the arithmetic of the code.

import type { Ticks } from "../../src/calc/ticks.ts";

export const inTicks = (count: number) => count as unknown as Ticks;
export const count = (length: Ticks) => length as unknown as number;
