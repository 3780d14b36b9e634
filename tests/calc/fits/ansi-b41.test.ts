import { describe, expect, it } from "vitest";
import { inchFit, isInchFit } from "../../../src/calc/fits/ansi-b41.ts";
import { toTicks } from "../../../src/calc/lengths.ts";
import { readTable } from "../../support/csv.ts";
import { count } from "../../support/ticks.ts";

const inches = (size: number) => toTicks(size, "in");
/** Thousandths of an inch in ticks. */
const thou = (value: string | number) => Math.round(Number(value) * 100) * 25_400;
const rows = readTable("ansi-b41-fits");

describe("inch fits", () => {
  it("are those of ANSI B4.1 in every row, throughout the step", () => {
    expect(new Set(rows.map((row) => row.fit)).size).toBe(34);
    for (const row of rows) {
      const [over, upTo] = [Number(row.over_in), Number(row.to_in)];
      for (const size of [over + 0.0001, (over + upTo) / 2, upTo])
        expect([row.fit, size, inchFit(inches(size), row.fit)]).toEqual([
          row.fit,
          size,
          expect.objectContaining({
            holeLower: thou(row.hole_lower),
            holeUpper: thou(row.hole_upper),
            shaftLower: thou(row.shaft_lower),
            shaftUpper: thou(row.shaft_upper),
          }),
        ]);
    }
  });

  it("agree with the clearances printed beside the limits", () => {
    for (const row of rows) {
      const fit = inchFit(inches(Number(row.to_in)), row.fit);
      const least = count(fit.holeLower) - count(fit.shaftUpper);
      const greatest = count(fit.holeUpper) - count(fit.shaftLower);
      expect([row.fit, row.to_in, least, greatest]).toEqual([
        row.fit,
        row.to_in,
        thou(row.least_clearance) + 0,
        thou(row.greatest_clearance) + 0,
      ]);
    }
  });

  it("leave no gap between the steps of a fit", () => {
    rows.forEach((row, index) => {
      const before = rows[index - 1];
      if (before?.fit === row.fit) expect([row.fit, row.over_in]).toEqual([row.fit, before.to_in]);
    });
  });

  // Machinery's Handbook: 1.000 RC4, LN2, FN2.
  it.each([
    ["RC4", 0, 1.2, -1.6, -0.8],
    ["LN2", 0, 0.8, 0.8, 1.3],
    ["FN2", 0, 0.8, 1.4, 1.9],
  ])("1.000 %s", (fit, holeLower, holeUpper, shaftLower, shaftUpper) => {
    expect(inchFit(inches(1), fit)).toMatchObject({
      holeLower: thou(holeLower),
      holeUpper: thou(holeUpper),
      shaftLower: thou(shaftLower),
      shaftUpper: thou(shaftUpper),
    });
  });

  it("have no answer outside their table", () => {
    for (const [size, fit] of [
      [19.7, "RC4"],
      [0.24, "LT3"],
      [0.95, "FN3"],
      [9.86, "FN1"],
    ] as const)
      expect(() => inchFit(inches(size), fit)).toThrow(expect.objectContaining({ kind: "none" }));
    expect(() => inchFit(inches(0.24), "LT3")).toThrow("over 0.24 up to 19.69 in");
    expect(inchFit(inches(0.2401), "LT3").holeUpper).toBe(thou(0.6));
  });

  it("are known by name", () => {
    expect(["RC1", "RC9", "LC11", "LT6", "LN3", "FN5"].map(isInchFit)).not.toContain(false);
    for (const text of ["RC10", "RC0", "LC12", "FN6", "RC", "H7", "rc4", "__proto__", "constructor"]) {
      expect(isInchFit(text)).toBe(false);
      expect(() => inchFit(inches(1), text)).toThrow(expect.objectContaining({ kind: "wrong" }));
    }
    expect(() => inchFit(inches(0), "RC4")).toThrow(expect.objectContaining({ kind: "wrong" }));
  });
});
