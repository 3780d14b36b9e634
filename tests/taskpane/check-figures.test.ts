// tests: hand figures against formulas.

import { describe, expect, test } from "vitest";
import { planCheck, twoColumns } from "../../src/taskpane/actions/check-figures.ts";
import type { Area } from "../../src/workbook/workbook.ts";
import { MemoryWorkbook, refusal } from "../support/memory-workbook.ts";

const area = (row: number, column: number, rows: number, columns = 1): Area => ({
  sheet: "Job",
  row,
  column,
  rows,
  columns,
});

const sheet = () =>
  new MemoryWorkbook({
    Job: {
      B1: "By hand",
      C1: "Formula",
      B2: 477,
      C2: { formula: "=REAM.RPM(15,10)", value: 477.4648 },
      // Twice: radius for diameter and the like.
      B3: 954.93,
      C3: { value: 477.4648, fixed: "spilled" },
      // 1.5 times fits no mistake.
      B4: 716.2,
      C4: { value: 477.4648, fixed: "spilled" },
      C5: { value: 477.4648, fixed: "spilled" },
      B7: "fast",
      C7: 12,
      B8: "1 1/2",
      C8: 1.5,
      B9: 12,
      C9: { formula: "=1/0", value: "#DIV/0!" },
      D3: "a note",
    },
  });

test("figures that are still being computed are not counted", async () => {
  const workbook = sheet();
  workbook.isComputing = true;
  expect(await refusal(planCheck(workbook, area(1, 1, 8), area(1, 2, 8)))).toContain("still computing");
});

describe("the plan", () => {
  test("one formula in the next empty column, its header, and the summary", async () => {
    const workbook = sheet();
    const plan = await planCheck(workbook, area(1, 1, 8), area(1, 2, 8));
    expect(plan.formula).toBe("=REAM.CHECK(B2:B9,C2:C9)");
    // D3 holds a note, so E is the next empty column.
    expect(plan.target).toEqual(area(1, 4, 8));
    expect(plan.changes.map(({ row, column, formulas }) => [row, column, formulas])).toEqual([
      [1, 4, [["=REAM.CHECK(B2:B9,C2:C9)"]]],
      [0, 4, [["Check"]]],
    ]);
    const { ok, off, blank, unread, mistakes, rows } = plan.summary;
    expect({ ok, off, blank, unread }).toEqual({ ok: 2, off: 2, blank: 1, unread: 3 });
    expect(rows.map(({ address }) => address)).toEqual(["B3", "B4"]);
    expect(rows[0].verdict).toMatch(/^2 times too high: radius for diameter/);
    expect(mistakes.map(({ rows: count }) => count)).toEqual([1, 1]);
    expect(mistakes.map(({ name }) => name)).toContain("no known mistake");
  });

  test("headers inside the selection are left out, another share is written", async () => {
    const plan = await planCheck(sheet(), area(0, 1, 9), area(0, 2, 9), 0.02);
    expect(plan.formula).toBe("=REAM.CHECK(B2:B9,C2:C9,0.02)");
  });

  test("columns on another sheet are named", async () => {
    const workbook = new MemoryWorkbook({ Job: { A1: 1 }, "Other one": { C3: 1 } });
    const plan = await planCheck(workbook, area(0, 0, 1), { ...area(2, 2, 1), sheet: "Other one" });
    expect(plan.formula).toBe("=REAM.CHECK(A1,'Other one'!C3)");
    expect(plan.target).toEqual(area(0, 1, 1));
    expect(plan.changes.length).toBe(1);
  });
});

test("refusals", async () => {
  expect(await refusal(planCheck(sheet(), area(1, 1, 3), area(1, 2, 4)))).toContain(
    "B2:B4 has 3 rows and C2:C5 4",
  );
  expect(await refusal(planCheck(sheet(), area(1, 1, 3, 2), area(1, 2, 3)))).toContain("several columns");
  expect(await refusal(planCheck(sheet(), area(1, 1, 3), area(1, 2, 3), 0))).toContain("100 %");
  expect(await refusal(planCheck(sheet(), area(20, 1, 3), area(20, 2, 3)))).toContain("no figures");
  const full = Object.fromEntries(
    Array.from({ length: 40 }, (_, index) => [
      `${index < 26 ? "" : "A"}${String.fromCharCode(65 + (index % 26))}1`,
      index,
    ]),
  );
  expect(await refusal(planCheck(new MemoryWorkbook({ Job: full }), area(0, 0, 1), area(0, 1, 1)))).toContain(
    "No column is empty",
  );
});

test("two selected columns, the first by hand", () => {
  expect(twoColumns([area(1, 1, 8, 2)])).toEqual({ hand: area(1, 1, 8), expected: area(1, 2, 8) });
  expect(twoColumns([area(1, 5, 8), area(1, 2, 8)])).toEqual({
    hand: area(1, 5, 8),
    expected: area(1, 2, 8),
  });
  for (const areas of [
    [],
    [area(1, 1, 8)],
    [area(1, 1, 8), area(1, 2, 8), area(1, 3, 8)],
    [area(1, 1, 8, 3)],
  ])
    expect(() => twoColumns(areas)).toThrow(/^Select two columns/);
});
