// workbook: the commands that make a sheet, with one for each cell. The grid tells all its parts of every change of a cell,
// and that is what a new sheet costs.

import type { Step } from "./grid-steps.ts";
import type { Box } from "./xlsx/addresses.ts";

/** Commands for a sheet that has no cells yet: content, style and format of a cell together, behind all the others. */
export function oneStepPerCell(steps: readonly Step[]): Step[] {
  const others: Step[] = [];
  const cells = new Map<string, Step>();
  const change = (sheetId: unknown, row: number, col: number, to: object) => {
    const key = `${row},${col}`;
    cells.set(key, { type: "UPDATE_CELL", sheetId, row, col, ...cells.get(key), ...to });
  };
  for (const step of steps) {
    const { type, sheetId, ...rest } = step;
    if (type === "UPDATE_CELL") {
      const { row, col, ...to } = rest as { row: number; col: number };
      change(sheetId, row, col, to);
    } else if (type === "SET_FORMATTING") {
      const { target, style, ...to } = rest as { target: readonly Box[]; style?: object };
      for (const { top, bottom, left, right } of target)
        for (let row = top; row <= bottom; row++)
          for (let col = left; col <= right; col++) {
            const before = cells.get(`${row},${col}`)?.style as object | undefined;
            change(sheetId, row, col, style ? { ...to, style: { ...before, ...style } } : to);
          }
    } else others.push(step);
  }
  return [...others, ...cells.values()];
}
