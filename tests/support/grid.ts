// tests: the grid's library in Node. It is required, not imported: Node looks through what it imports for names, which takes
// as long again as to load it.

import { createRequire } from "node:module";

// It is made for an engine that has this.
(Object as any).groupBy ??= (items: readonly object[], keyOf: (item: object) => string) => {
  const groups: Record<string, object[]> = {};
  for (const item of items) {
    groups[keyOf(item)] ??= [];
    groups[keyOf(item)].push(item);
  }
  return groups;
};

// It tells how long everything took.
console.debug = () => {};

export const library = createRequire(import.meta.url)(
  "@odoo/o-spreadsheet",
) as typeof import("@odoo/o-spreadsheet");
