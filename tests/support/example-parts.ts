// tests: the parts that the invented shop quotes, as they are typed into the quoting sheet.

import type { quoteColumns } from "../../src/taskpane/actions/quote-columns.ts";
import { letterOf } from "../../src/taskpane/actions/quoting-sheet.ts";
import type { FunctionGrid } from "./function-grid.ts";

type Typed = Partial<Record<(typeof quoteColumns)[number]["key"], string | number>>;

export const exampleParts: readonly Typed[] = [
  {
    part: "PB-12",
    callout: "2X ⌀12 H7 x 30 deep",
    units: "mm",
    material: "medium-carbon steel",
    tool: "HSS",
    batch: 250,
    toolPrice: 42,
    regrinds: 3,
    regrindCost: 11,
    partsPerEdge: 300,
    break1: 50,
    break2: 1000,
  },
  {
    part: "VB-40",
    callout: "4X ⌀16 H7 THRU",
    units: "mm",
    depth: 40,
    material: "ductile iron",
    tool: "carbide",
    batch: 250,
    toolPrice: 165,
    regrinds: 3,
    regrindCost: 32,
    partsPerEdge: 450,
    otherCost: 0.6,
    break1: 50,
    break2: 1000,
  },
  {
    part: "LV-5",
    callout: "⌀.5000 +.0005/-.0000 THRU",
    units: "in",
    depth: 1.25,
    material: "alloy steel",
    tool: "HSS",
    batch: 100,
    toolPrice: 38,
    regrinds: 2,
    regrindCost: 10,
    partsPerEdge: 400,
    break1: 500,
  },
];

/** Types parts into rows of the shown quoting sheet. */
export function typeParts(grid: FunctionGrid, parts: readonly Typed[] = exampleParts, firstRow = 9): void {
  parts.forEach((part, index) => {
    for (const [key, content] of Object.entries(part))
      grid.type(`${letterOf(key as keyof Typed)}${firstRow + index}`, content as string | number);
  });
}

/** A row of the quote, as the papers made from it take it. */
export const exampleRow = {
  part: "VB-40",
  drawing: "",
  callout: "4X ⌀16 H7 THRU",
  units: "mm",
  material: "ductile iron",
  tool: "carbide",
  depth: 40,
  holes: 4,
} as const;
