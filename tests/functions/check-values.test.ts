// tests: formulas as they would stand in a sheet, against values computed independently.

import { expect, test } from "vitest";
import { readTable } from "../support/csv.ts";
import { readFormula, readResult } from "../support/formula.ts";
import { isError, sheet } from "../support/sheet.ts";

test.each(readTable("check-values"))("$formula gives $expected", (row) => {
  const { id, args } = readFormula(row.formula);
  const cells = sheet(id, ...args);
  readResult(row.expected).forEach((wanted, y) => {
    if (!wanted[0].startsWith("#") && id !== "GRADEFOR") expect(cells[y].length).toBe(wanted.length);
    wanted.forEach((want, x) => {
      const cell = cells[y][x];
      if (want.startsWith("#")) expect(isError(cell) && cell.code).toBe(want);
      else if (want.startsWith('"')) expect(cell).toBe(JSON.parse(want));
      else
        expect(Math.abs((cell as number) - Number(want)), `${cell}`).toBeLessThanOrEqual(
          Number(row.tolerance),
        );
    });
  });
});
