// tests: the copy of a sheet with values.

import { describe, expect, test } from "vitest";
import { callsOurs } from "../../src/taskpane/actions/formula-calls.ts";
import { freezeSheet } from "../../src/taskpane/actions/freeze-sheet.ts";
import { MemoryWorkbook, refusal } from "../support/memory-workbook.ts";

describe("a frozen copy", () => {
  test("has values where our formulas were", async () => {
    const workbook = new MemoryWorkbook({
      "Job's": {
        A1: { formula: "=REAM.RPM(15,10)", value: 477.4648 },
        A2: { formula: "=A1*2", value: 954.93 },
        A3: 5,
      },
    });
    expect(await freezeSheet(workbook)).toMatchObject({ name: "Job's (values)", replaced: 1, others: 1 });
    expect(workbook.at("A1", "Job's (values)")).toBe(477.4648);
    expect(workbook.at("A2", "Job's (values)")).toBe("=A1*2");
    expect(workbook.at("A1")).toBe("=REAM.RPM(15,10)");
  });

  test("is refused for an empty sheet, one without our formulas and one still at work, without a copy", async () => {
    for (const [cells, words] of [
      [{}, "empty"],
      [{ A1: "=SUM(A2:A3)", A2: "REAM.RPM" }, "no REAM formula"],
      [{ A1: { formula: "=REAM.RPM(15,10)", value: "#BUSY!" } }, "still computing"],
      [{ A1: { formula: "=_xldudf_REAM_RPM(15,10)", value: "#NAME?" } }, "show #NAME?"],
    ] as const) {
      const workbook = new MemoryWorkbook({ Job: cells });
      expect(await refusal(freezeSheet(workbook))).toContain(words);
      expect(workbook.content.size).toBe(1);
    }
  });

  test("knows a formula of ours by its call", () => {
    for (const formula of [
      "=REAM.RPM(1,2)",
      "=1+ream.rpm(1,2)",
      "=IF(A1,REAM.STOCK(B1),0)",
      "=_xldudf_REAM_RPM(1,2)",
      "=[2]!_xldudf_REAM_RPM(1,2)",
    ])
      expect(callsOurs(formula), formula).toBe(true);
    for (const formula of ['="REAM.RPM(1,2)"', "=DREAM.RPM(1)", "REAM.RPM(1,2)", "=A1"])
      expect(callsOurs(formula), formula).toBe(false);
  });
});
