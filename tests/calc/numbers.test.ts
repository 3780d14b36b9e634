// tests: whole parts, edges, tools and machines: none lost to the last digits of floating point, none too many.

import { describe, expect, test } from "vitest";
import { partsPerEdge } from "../../src/calc/cost/tool-life.ts";
import { toolsNeeded } from "../../src/calc/cost/tool-stock.ts";
import { machinesNeeded, partsPerShift } from "../../src/calc/cutting/time.ts";

const upTo = (last: number) => Array.from({ length: last }, (_, at) => at + 1);

describe("a quotient that is whole", () => {
  // 0.3/0.1, 2.3/0.1 and more come out under or over the whole number.
  test.each(upTo(60).map((whole) => [whole]))("%d is as many, in tenths too", (whole) => {
    for (const unit of [1, 7, 0.1, 0.7, 0.3]) {
      const all = whole * unit;
      expect(partsPerEdge(all, 60 * unit)).toBe(whole);
      expect(partsPerShift(unit, all / 3600)).toBe(whole);
      expect(toolsNeeded(all, unit)).toEqual([whole, whole]);
      expect(machinesNeeded(all, 3600, unit)[1]).toBe(whole);
    }
  });
});

test("what is begun counts where something is needed, and not where something is made", () => {
  for (const whole of [1, 2, 17, 400])
    for (const more of [0.001, 0.5, 0.999]) {
      expect(partsPerEdge(whole + more, 60)).toBe(whole);
      expect(partsPerShift(1, (whole + more) / 3600)).toBe(whole);
      expect(toolsNeeded(whole + more, 1)).toEqual([whole + 1, whole + 1]);
      expect(machinesNeeded(whole + more, 3600, 1)[1]).toBe(whole + 1);
    }
});

test.each([
  // edges: parts over parts per edge; tools: those over the edges of one tool times its lives.
  [250_000, 750, 1, 3, 334, 84],
  [1500, 750, 2, 0, 2, 1],
  [1501, 750, 2, 0, 3, 2],
  [1500, 750, 1, 1, 2, 1],
  [6000, 750, 2, 3, 8, 1],
  [6001, 750, 2, 3, 9, 2],
])(
  "%d parts, %d to an edge, %d edges, %d regrinds: %d edges and %d tools",
  (parts, own, edges, regrinds, ...needed) => {
    expect(toolsNeeded(parts, own, edges, regrinds)).toEqual(needed);
  },
);

test("of the smallest share of an edge or a machine one is needed", () => {
  expect(toolsNeeded(1, 1e12)).toEqual([1, 1]);
  expect(machinesNeeded(1, 1e-6, 1e6)[1]).toBe(1);
});
