// calc: the usual number of flutes of a reamer.

import type { Formula } from "../formula.ts";
import type { Units } from "../lengths.ts";
import type { Tool } from "../tools.ts";

/** Heads and blades have no room for more; a guided blade has one. Common practice, no source. */
const MOST_FLUTES: Partial<Record<Tool, number>> = {
  "coated carbide": 12,
  cermet: 12,
  PCD: 12,
  CBN: 12,
  "guided blade": 1,
};

/** The even number nearest 1.5·√D + 2, D in mm, halves up; at most 12 in some tools, 1 in a guided blade. */
export function defaultFlutes(diameter: number, tool: Tool = "HSS", units: Units = "mm"): number {
  const millimeters = units === "mm" ? diameter : diameter * 25.4;
  const even = 2 * Math.floor((1.5 * Math.sqrt(millimeters) + 2) / 2 + 0.5);
  return Math.min(even, MOST_FLUTES[tool] ?? even);
}
defaultFlutes.formula = {
  source: "reamer-teeth",
  steps: (units, _diameter, tool: Tool = "HSS") => {
    const even = `nearesteven(1.5 * sqrt(${units === "mm" ? "diameter" : "inmm(diameter)"}) + 2)`;
    const most = MOST_FLUTES[tool];
    if (most === undefined) return [{ symbol: "flutes", expression: even, unit: "" }];
    return [
      { symbol: "evenNumber", expression: even, unit: "" },
      { symbol: "flutes", expression: `min(evenNumber, ${most})`, unit: "" },
    ];
  },
} satisfies Formula;
