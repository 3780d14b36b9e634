// tests: the quoting sheet computed in the grid, on the invented shop's parts. Figures behind the prices: derived by
// hand in Python from the contract's rules.
import { expect, test } from "vitest";
import { quoteColumns } from "../../src/taskpane/actions/quote-columns.ts";
import { letterOf, quotingSheet } from "../../src/taskpane/actions/quoting-sheet.ts";
import { gridOf } from "../support/function-grid.ts";

test("x", async () => {
  const grid = await gridOf(quotingSheet(12));
  for (const { key } of quoteColumns)
    console.log(
      key,
      grid.shown(`${letterOf(key)}9`),
      "|",
      grid.shown(`${letterOf(key)}10`),
      grid.message(`${letterOf(key)}9`),
    );
  console.log(grid.shown("B3"), grid.shown("B4"), grid.shown("E3"), grid.shown("M6"));
});
