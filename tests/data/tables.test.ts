import { describe, expect, it } from "vitest";
import { inchFits } from "../../src/data/inch-fits/fits.ts";
import { inchSizeSteps, inchStandardTolerances } from "../../src/data/inch-fits/standard-tolerances.ts";
import {
  deltas,
  deviationsByFinerStep,
  deviationsByStep,
  finerSizeSteps,
} from "../../src/data/iso286/fundamental-deviations.ts";
import { sizeSteps, standardTolerances } from "../../src/data/iso286/standard-tolerances.ts";
import { materials } from "../../src/data/materials/materials.ts";
import { materialNames } from "../../src/data/materials/names.ts";
import { plugGauges } from "../../src/data/plug-gauges.ts";
import { readTable } from "../support/csv.ts";

function rises(numbers: readonly number[], strictly: boolean): boolean {
  return numbers.every(
    (value, index) =>
      index === 0 || value > numbers[index - 1] || (!strictly && value === numbers[index - 1]),
  );
}

describe("ISO 286 tables", () => {
  it("have rows as long as their steps", () => {
    for (const [grade, row] of Object.entries(standardTolerances))
      expect(row.length, grade).toBe(grade === "01" || grade === "0" ? 13 : 21);
    expect(Object.keys(standardTolerances).length).toBe(20);
    expect(sizeSteps.length).toBe(21);
    expect(finerSizeSteps.length).toBe(41);
    for (const [letter, row] of Object.entries(deviationsByFinerStep))
      expect(row.length, letter).toBe("rstu".includes(letter) ? 41 : 25);
    for (const [letter, row] of Object.entries(deviationsByStep))
      expect(row.length, letter).toBe(/^(cd|ef|fg)$/.test(letter) ? 3 : 21);
    for (const row of Object.values(deltas)) expect(row.length).toBe(13);
  });

  it("have steps that rise, the standard ones among the finer", () => {
    expect(rises(sizeSteps, true)).toBe(true);
    expect(rises(finerSizeSteps, true)).toBe(true);
    expect(sizeSteps.filter((end) => !(finerSizeSteps as readonly number[]).includes(end))).toEqual([]);
  });

  it("have deviations that rise with the size, k above 500 mm apart", () => {
    for (const [letter, row] of Object.entries({ ...deviationsByFinerStep, ...deviationsByStep })) {
      const printed = row.slice(0, letter === "k" ? 13 : undefined).filter((value) => value !== null);
      expect(rises(printed, false), letter).toBe(true);
    }
  });

  it("have deviations that rise from letter to letter at every size", () => {
    for (const size of finerSizeSteps) {
      const at = (letter: string) =>
        deviationsByFinerStep[letter]?.[finerSizeSteps.indexOf(size)] ??
        deviationsByStep[letter]?.[sizeSteps.findIndex((end) => end >= size)];
      for (const letters of ["h g fg f ef e d cd c b a", "k m n p r s t u v x y z za zb zc"]) {
        const row = letters
          .split(" ")
          .map(at)
          .filter((value) => value !== undefined && value !== null);
        expect(rises(row, true), `${size}: ${row}`).toBe(true);
      }
    }
  });
});

describe("ANSI B4.1 tables", () => {
  it("hold the standard tolerances as printed", () => {
    const rows = readTable("ansi-b41-standard-tolerances");
    expect(rows.length).toBe(210);
    for (const row of rows) {
      const step = (inchSizeSteps as readonly number[]).indexOf(Number(row.to_in));
      expect((inchSizeSteps as readonly number[])[step - 1] ?? 0).toBe(Number(row.over_in));
      expect(inchStandardTolerances[row.grade][step], `${row.grade} to ${row.to_in}`).toBe(
        Math.round(Number(row.tolerance) * 1000),
      );
    }
  });

  it("give every hole of a fit the standard tolerance of its grade, but for the smallest RC1", () => {
    const grades: Record<string, readonly number[]> = {
      RC: [5, 6, 7, 8, 8, 9, 9, 10, 11],
      LC: [6, 7, 8, 10, 7, 9, 10, 10, 11, 12, 13],
      LT: [7, 8, 7, 8, 7, 7],
      LN: [6, 7, 7],
      FN: [6, 7, 7, 7, 8],
    };
    const odd: string[] = [];
    for (const [fit, rows] of Object.entries(inchFits))
      for (const [, upTo, hole] of rows) {
        const grade = grades[fit.slice(0, 2)][Number(fit.slice(2)) - 1];
        const step = inchSizeSteps.findIndex((end) => end >= upTo);
        if (inchStandardTolerances[grade][step] !== hole) odd.push(`${fit} ${upTo}`);
      }
    expect(odd).toEqual(["RC1 0.12"]);
  });

  it("have a shaft limit under the other in every row", () => {
    for (const [fit, rows] of Object.entries(inchFits))
      for (const [over, upTo, hole, lower, upper] of rows) {
        expect(lower, `${fit} ${upTo}`).toBeLessThan(upper);
        expect(over, `${fit} ${upTo}`).toBeLessThan(upTo);
        expect(hole, `${fit} ${upTo}`).toBeGreaterThan(0);
      }
  });
});

describe("plug gauges", () => {
  it("cover 0 to 180 mm in unbroken steps with constants that never fall", () => {
    for (const rows of Object.values(plugGauges)) {
      expect(rows[0][0]).toBe(0);
      expect(rows.at(-1)![1]).toBe(180);
      rows.slice(1).forEach((row, index) => {
        expect(row[0]).toBe(rows[index][1]);
      });
      for (const column of [2, 3, 4] as const)
        expect(
          rises(
            rows.map((row) => row[column]),
            false,
          ),
        ).toBe(true);
    }
  });
});

describe("materials", () => {
  it("have keys that stand once, each with its names", () => {
    expect(new Set(materials.map(({ key }) => key)).size).toBe(32);
    expect(Object.keys(materialNames).sort()).toEqual(materials.map(({ key }) => key).sort());
  });

  it("have a whole row each, with a source", () => {
    for (const material of materials) {
      expect(material.what, material.key).not.toBe("");
      expect(material.speedSource, material.key).not.toBe("");
      expect("PMKNSH", material.key).toContain(material.iso513);
      if (material.key === "hardened steel" || material.key === "austempered iron")
        expect([material.hssLow, material.hssHigh]).toEqual([null, null]);
      else expect(material.hssLow!, material.key).toBeLessThan(material.hssHigh!);
      expect([0.5, 1, 1.5], material.key).toContain(material.stockFactor);
    }
  });

  it("take up to half as much stock again where the metal is light, soft or tough, half where it is hard", () => {
    const keys = (factor: number) =>
      materials.filter(({ stockFactor }) => stockFactor === factor).map(({ key }) => key);
    expect(keys(0.5)).toEqual(["hardened steel"]);
    expect(keys(1.5).sort()).toEqual([
      "aluminum",
      "austenitic stainless",
      "cast aluminum",
      "cobalt alloy",
      "copper",
      "duplex stainless",
      "magnesium",
      "nickel alloy",
      "plastic",
      "silicon aluminum",
      "titanium",
    ]);
  });

  // Speeds: USCTI Metal Cutting Tool Handbook; kc1.1 and mc of C45, 42CrMo4, GJL-250: König. Values from memory.
  it.each([
    ["low-carbon steel", 50, 70, 1780, 0.17],
    ["medium-carbon steel", 40, 50, 2220, 0.14],
    ["tool steel", 35, 40, 2100, 0.26],
    ["alloy steel", 25, 35, 2500, 0.26],
    ["gray iron", 70, 100, 1160, 0.26],
    ["brass", 130, 200, 780, 0.18],
    ["magnesium", 170, 270, 350, 0.25],
    ["titanium", 10, 20, 1370, 0.21],
  ])("%s", (key, hssLow, hssHigh, kc11, mc) => {
    expect(materials.find((material) => material.key === key)).toMatchObject({ hssLow, hssHigh, kc11, mc });
  });
});
