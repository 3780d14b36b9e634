// tests: stock allowance and the drill before the reamer.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Units } from "../../../src/calc/lengths.ts";
import { drillFor, drillName } from "../../../src/calc/stock/drill-name.ts";
import type { DrillSeries } from "../../../src/calc/stock/standard-drills.ts";
import {
  cleanUp,
  drillDepth,
  preReamDrill,
  stock,
  stockCheck,
  stockRange,
} from "../../../src/calc/stock/stock.ts";
import { materials } from "../../../src/data/materials/materials.ts";
import { goldenSheet } from "../../support/golden-sheet.ts";
import { row } from "../../support/sheet.ts";
import { problemOf, workedOut } from "../golden-file.ts";

goldenSheet("stock-range", "STOCKRANGE");
goldenSheet("stock", "STOCK");
goldenSheet("pre-drill", "PREDRILL");
goldenSheet("drill-names", "DRILLNAME");
goldenSheet("drill-for", "DRILLFOR");
goldenSheet("stock-check", "STOCKCHECK");
goldenSheet("clean-up", "CLEANUP");
goldenSheet("drill-depth", "DRILLDEPTH");

const units = fc.constantFrom<Units>("mm", "in");
const material = fc.constantFrom(...materials);
const diameters = fc.integer({ min: 100, max: 11_000 }).map((size) => size / 100);

test("without a drill DRILLDEPTH gives the first depth alone", () => {
  expect(row("DRILLDEPTH", 30, 2, 3)).toEqual([35, ""]);
});

describe("properties", () => {
  test("the drill of the middle of the range is ok, in every material and unit", () => {
    fc.assert(
      fc.property(diameters, material, units, (size, of, unit) => {
        const diameter = unit === "mm" ? size : size / 40;
        const drill = preReamDrill(diameter, of, undefined, unit);
        expect(drill).toBeLessThan(diameter);
        expect(stockCheck(diameter, drill, of, undefined, unit)).toBe("ok");
        const [minimum, maximum] = stockRange(diameter, of, unit);
        expect(minimum).toBeLessThan(maximum);
        expect(stock(diameter, of, unit)).toBeCloseTo((minimum + maximum) / 2, 6);
      }),
      { numRuns: 200 },
    );
  });

  test("where DRILLFOR answers, STOCKCHECK of its drill is ok and no standard drill is nearer the middle", () => {
    const series = fc.constantFrom<DrillSeries | undefined>(undefined, "metric", "fraction", "inch");
    const sizes = fc.oneof(
      fc.integer({ min: 40, max: 11_000 }).map((size) => size / 100),
      fc.integer({ min: 400, max: 99_000 }).map((size) => size / 1000),
    );
    fc.assert(
      fc.property(sizes, material, units, series, (size, of, unit, drills) => {
        const diameter = unit === "mm" ? size : size / 40;
        if (problemOf(() => drillFor(diameter, of, drills, unit))) return;
        const [, drill, left] = drillFor(diameter, of, drills, unit);
        expect(stockCheck(diameter, drill, of, undefined, unit)).toBe("ok");
        expect(left).toBeCloseTo(diameter - drill, 6);
        const middle = stock(diameter, of, unit);
        for (const other of [diameter - middle, drill - 1e-6, drill + 2 * Math.abs(left - middle)]) {
          if (problemOf(() => drillName(other, drills, unit))) continue;
          const [, neighbor] = drillName(other, drills, unit);
          expect(Math.abs(diameter - neighbor - middle)).toBeGreaterThanOrEqual(
            Math.abs(left - middle) - 1.5e-7,
          );
        }
      }),
      { numRuns: 400 },
    );
  });

  test("the standard drill is at or under the diameter, and the next one over it", () => {
    const series = fc.constantFrom<DrillSeries>("metric", "fraction", "number", "letter", "inch");
    fc.assert(
      fc.property(fc.integer({ min: 3400, max: 250_000 }), series, (size, of) => {
        const diameter = size / 10_000;
        const find = (at: number) => drillName(at, of);
        if (problemOf(() => find(diameter))) return;
        const [name, drill] = find(diameter);
        expect(drill).toBeLessThanOrEqual(diameter);
        expect(find(drill)).toEqual([name, drill]);
        const between = (drill + diameter) / 2;
        expect(find(between)).toEqual([name, drill]);
      }),
      { numRuns: 300 },
    );
  });

  test("names in mm and in inches are those of one drill", () => {
    fc.assert(
      fc.property(fc.integer({ min: 140, max: 9900 }), (size) => {
        const [name, inches] = drillName(size / 1e4, "inch", "in");
        const [metricName, millimetres] = drillName((size * 25.4) / 1e4 + 1e-6, "inch", "mm");
        expect(metricName).toBe(name);
        expect(millimetres / 25.4).toBeCloseTo(inches, 6);
      }),
      { numRuns: 200 },
    );
  });

  test("what is left per side makes up the stock", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 2000 }),
        fc.integer({ min: 0, max: 1000 }),
        units,
        (thick, off, unit) => {
          const [least, greatest] = cleanUp(thick / 1000, off / 1000, unit);
          expect(least + greatest).toBeCloseTo(thick / 1000, 6);
          expect(greatest - least).toBeCloseTo((2 * off) / 1000, 6);
          expect(least < 0).toBe(2 * off > thick);
        },
      ),
      { numRuns: 100 },
    );
  });

  test("a flatter point is a shorter one", () => {
    fc.assert(
      fc.property(
        diameters,
        fc.integer({ min: 40, max: 150 }),
        fc.integer({ min: 1, max: 25 }),
        (drill, angle, more) => {
          const point = (at: number) => (drillDepth(10, 1, 0, drill, at)[1] as number) - 11;
          expect(point(angle + more)).toBeLessThan(point(angle));
          // The point is a cone of that angle.
          expect(Math.atan(drill / 2 / point(angle)) * (360 / Math.PI)).toBeCloseTo(angle, 3);
        },
      ),
      { numRuns: 100 },
    );
  });

  test("the written formulas come to what the calculations give", () => {
    fc.assert(
      fc.property(diameters, material, units, (size, of, unit) => {
        const diameter = unit === "mm" ? size : size / 40;
        const near = (calculate: any, names: string[], args: unknown[]) => {
          const results = [calculate(...args)].flat() as number[];
          workedOut(calculate.formula, names, args, results.length).forEach((value, index) => {
            expect(Math.abs(value - results[index])).toBeLessThanOrEqual(1.1e-7);
          });
        };
        const names = ["diameter", "material", "units"];
        near(stockRange, names, [diameter, of, unit]);
        near(stock, names, [diameter, of, unit]);
        near(preReamDrill, ["diameter", "material", "drilledOver", "units"], [diameter, of, undefined, unit]);
        near(cleanUp, ["stock", "offset", "units"], [0.25, 0.1, unit]);
        near(
          drillDepth,
          ["reamedDepth", "bevelLead", "chipRoom", "drill", "pointAngle", "units"],
          [3, 1, 1, 2, 118, unit],
        );
      }),
      { numRuns: 50 },
    );
  });
});
