import { describe, expect, it } from "vitest";
import { unit } from "../../src/build/mathjs.ts";
import { type UnitKind, unitTable } from "../../src/data/units.ts";

// Each base unit, and the others in the words of mathjs, an independent implementation.
const baseUnits: Record<UnitKind, string> = {
  length: "mm",
  "surface speed": "m/minute",
  "feed per revolution": "mm",
  "feed per tooth": "mm",
  "feed rate": "mm/minute",
  torque: "N m",
  power: "kW",
  temperature: "degC",
  pressure: "MPa",
  force: "N",
  flow: "L/minute",
  "removal rate": "cm^3/minute",
};
const named: Record<string, string> = {
  thou: "mil",
  tenth: "1e-4 in",
  uin: "1e-6 in",
  "m/min": "m/minute",
  sfm: "ft/minute",
  "mm/rev": "mm",
  ipr: "in",
  "mm/tooth": "mm",
  ipt: "in",
  "L/min": "L/minute",
  gpm: "gal/minute",
  "mm/min": "mm/minute",
  ipm: "in/minute",
  Nm: "N m",
  Ncm: "N cm",
  "lbf-in": "lbf in",
  "lbf-ft": "lbf ft",
  PS: "735.49875 W",
  C: "degC",
  F: "degF",
  "cm3/min": "cm^3/minute",
  "in3/min": "in^3/minute",
};

describe("units", () => {
  it.each(unitTable.map((row) => [row[0], row] as const))(
    "%s agrees with an independent library",
    (name, row) => {
      const [, kind, numerator, denominator, zero] = row;
      const text = named[name] ?? name;
      for (const value of [1, 250]) {
        const expected = unit(
          /^\d/.test(text) ? `${value * Number.parseFloat(text)} ${text.split(" ")[1]}` : `${value} ${text}`,
        ).toNumber(baseUnits[kind]);
        const computed = ((value - zero) * numerator) / denominator;
        // mathjs holds a pound-force per square inch and a horsepower to ten digits.
        expect(Math.abs(computed / expected - 1)).toBeLessThan(2e-9);
      }
    },
  );

  // NIST SP 811, Appendix B.
  it.each([
    ["in", 25.4],
    ["ft", 304.8],
    ["lbf-in", 0.1129848290276167],
    ["lbf-ft", 1.3558179483314],
    ["hp", 0.7456998715822702],
    ["PS", 0.73549875],
    ["psi", 0.0068947572931684],
    ["in3/min", 16.387064],
    ["sfm", 0.3048],
  ])("one %s is %d", (name, value) => {
    const [, , numerator, denominator] = unitTable.find((row) => row[0] === name)!;
    expect(numerator / denominator).toBeCloseTo(value, 15);
  });

  it("are named once, the first of each kind its base", () => {
    expect(new Set(unitTable.map(([name]) => name.toLowerCase())).size).toBe(unitTable.length);
    for (const kind of Object.keys(baseUnits)) {
      const [, , numerator, denominator, zero] = unitTable.find((row) => row[1] === kind)!;
      expect([kind, numerator, denominator, zero]).toEqual([kind, 1, 1, 0]);
    }
  });
});
