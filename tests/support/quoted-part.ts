// tests: the first part of the example quote, as it is quoted.

import type { QuotedPart } from "../../src/papers/quoted-part.ts";

export const quotedPart = (changes: Partial<QuotedPart> = {}): QuotedPart => ({
  rowNumber: 9,
  part: "PB-12",
  drawing: "",
  callout: "2X ⌀12 H7 x 30 deep",
  units: "mm",
  lower: 12,
  upper: 12.018,
  depth: 30,
  holes: 2,
  material: "medium-carbon steel",
  quantity: 250,
  breaks: [50, 1000],
  cost: 2.28067,
  drill: "11.8",
  stock: 0.2,
  ...changes,
});
