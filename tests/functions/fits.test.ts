// tests: fits, grades and deviations as a sheet gets them.

import fc from "fast-check";
import { expect, test } from "vitest";
import { goldenSheet } from "../support/golden-sheet.ts";
import { cell, row } from "../support/sheet.ts";

goldenSheet("clearance", "CLEARANCE");
goldenSheet("fit-type", "FITTYPE");
goldenSheet("grade-for", "GRADEFOR");
goldenSheet("accept-limits", "ACCEPTLIMITS");
goldenSheet("upper-deviation", "UPPERDEV");
goldenSheet("lower-deviation", "LOWERDEV");
goldenSheet("it-width", "ITWIDTH");

const sizes = fc.integer({ min: 110, max: 49_999 }).map((hundredths) => hundredths / 100);
const holes = fc.constantFrom("H6", "H7", "H8", "G7", "F8", "K7", "N7", "P7", "JS7", "R7", "H11");
const shafts = fc.constantFrom("g6", "f7", "h6", "h9", "k6", "n6", "p6", "s6", "js6", "d9");
const units = fc.constantFrom("mm", "in");

test("size plus deviation is the limit, and the width of the grade lies between", () => {
  fc.assert(
    fc.property(sizes, holes, units, (size, className, unit) => {
      const nominal = unit === "mm" ? size : Math.round((size / 25.4) * 1000) / 1000;
      const [upper, lower] = [
        cell("UPPERDEV", nominal, className, unit),
        cell("LOWERDEV", nominal, className, unit),
      ];
      const [least, greatest] = row("LIMITS", `${nominal} ${unit} ${className}`, unit);
      expect(nominal + upper).toBeCloseTo(greatest, 6);
      expect(nominal + lower).toBeCloseTo(least, 6);
      const width = cell("ITWIDTH", nominal, className.replace(/[A-Z]/g, ""), unit);
      // Each deviation is rounded to 0.00001 in by itself.
      expect(Math.abs(upper - lower - width)).toBeLessThanOrEqual(unit === "mm" ? 1e-9 : 0.0000101);
    }),
    { numRuns: 150 },
  );
});

test("the kind of a fit is that of its clearances", () => {
  fc.assert(
    fc.property(sizes, holes, shafts, units, (size, hole, shaft, unit) => {
      const text = `${size} mm ${hole}/${shaft}`;
      const [least, greatest] = row("CLEARANCE", text, undefined, unit);
      expect(least).toBeLessThan(greatest);
      const kind = least >= 0 ? "clearance" : greatest <= 0 ? "interference" : "transition";
      expect(cell("FITTYPE", text, undefined, unit)).toBe(kind);
      const parted = row("CLEARANCE", `${size} mm ${hole}`, `${size} mm ${shaft}`, unit);
      expect(parted).toEqual([least, greatest]);
    }),
    { numRuns: 150 },
  );
});

test("the grade of a class is its own, in a sheet of either unit", () => {
  fc.assert(
    fc.property(
      sizes,
      fc.constantFrom("H", "G", "F", "JS"),
      fc.integer({ min: 5, max: 9 }),
      units,
      (size, letters, grade, unit) => {
        expect(cell("GRADEFOR", `${size} mm ${letters}${grade}`, unit)).toBe(`IT${grade}`);
      },
    ),
    { numRuns: 150 },
  );
});
