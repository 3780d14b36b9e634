// tests: a paper as it is printed: found by its labels, typed into as at the bench.

import type { NewSheet } from "../../src/workbook/workbook.ts";
import { cellAddress } from "../../src/workbook/workbook.ts";
import { readBox } from "../../src/workbook/xlsx/addresses.ts";
import { type FunctionGrid, gridOf } from "./function-grid.ts";

export interface PaperPage {
  readonly grid: FunctionGrid;
  /** What stands right of a label, as printed. */
  beside(label: string | RegExp): string;
  /** All filled cells of the row of a label, as printed. */
  line(label: string | RegExp): string[];
  /** Types into the cells right of a label. */
  fill(label: string | RegExp, ...contents: (string | number)[]): void;
  text(): string;
}

/** A paper in the grid, other sheets before it. */
export function paperPage(sheet: NewSheet, ...before: readonly NewSheet[]): PaperPage {
  const grid = gridOf(...before, sheet);
  const spans = new Map((sheet.merges ?? []).map((area) => [area.split(":")[0], readBox(area)!.right]));
  const cellsOf = (row: number) => {
    const cells: { address: string; shown: string }[] = [];
    // What stands beside the page is not printed.
    const width = readBox(sheet.print!.area!)!.right + 1;
    for (let column = 0; column < width; column++) {
      const address = cellAddress(row, column);
      cells.push({ address, shown: grid.shown(address) });
      column = spans.get(address) ?? column;
    }
    return cells;
  };
  const place = (label: string | RegExp) => {
    for (let row = 0; row < sheet.top.length; row++) {
      const cells = cellsOf(row);
      const at = cells.findIndex(({ shown }) =>
        typeof label === "string" ? shown === label : label.test(shown),
      );
      if (at >= 0) return { cells, at };
    }
    throw new Error(`the paper has no ${label}`);
  };
  return {
    grid,
    beside: (label) => {
      const { cells, at } = place(label);
      return cells[at + 1].shown;
    },
    line: (label) =>
      place(label)
        .cells.map(({ shown }) => shown)
        .filter((shown) => shown !== ""),
    fill: (label, ...contents) => {
      const { cells, at } = place(label);
      contents.forEach((content, index) => {
        if (content !== "") grid.type(cells[at + 1 + index].address, content);
      });
    },
    text: () =>
      sheet.top
        .map((_, row) =>
          cellsOf(row)
            .map(({ shown }) => shown)
            .filter((shown) => shown !== "")
            .join(" | "),
        )
        .join("\n"),
  };
}
