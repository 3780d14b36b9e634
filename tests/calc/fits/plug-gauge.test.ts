import { describe, expect, it } from "vitest";
import { readCallout } from "../../../src/calc/callouts/read-callout.ts";
import { limitDeviations } from "../../../src/calc/fits/iso286.ts";
import { plugGauge, plugGaugeFor } from "../../../src/calc/fits/plug-gauge.ts";
import { fromTicks, toTicks } from "../../../src/calc/lengths.ts";
import { workedOut } from "../golden-file.ts";

function gauge(size: number, className: string, grade: string): number[] {
  const nominal = toTicks(size, "mm");
  const deviations = limitDeviations(nominal, className);
  const { goMinimum, goMaximum, goWorn, notGoMinimum, notGoMaximum } = plugGaugeFor(
    nominal,
    deviations,
    grade,
  );
  return [goMinimum, goMaximum, goWorn, notGoMinimum, notGoMaximum].map((ticks) => fromTicks(ticks, "mm"));
}

describe("plug gauges", () => {
  // GOST 24853-81, Table 2, worked by hand from z, y and H.
  it.each([
    [25, "H7", "7", [25.001, 25.005, 24.997, 25.019, 25.023]],
    [10, "H6", "6", [10.00075, 10.00225, 9.999, 10.00825, 10.00975]],
    [3, "H7", "7", [3.0005, 3.0025, 2.9985, 3.009, 3.011]],
    [3.001, "H7", "7", [3.00175, 3.00425, 2.9995, 3.01175, 3.01425]],
    [180, "H7", "7", [180.002, 180.01, 179.996, 180.036, 180.044]],
    [20, "P7", "7", [19.966, 19.97, 19.962, 19.984, 19.988]],
  ])("of %d %s", (size, className, grade, limits) => {
    expect(gauge(size, className, grade)).toEqual(limits);
  });

  it.each([
    [180.001, "H7", "7"],
    [25, "H8", "8"],
    [25, "H5", "5"],
  ])("are not tabulated for %d %s", (size, className, grade) => {
    expect(() => gauge(size, className, grade)).toThrow(expect.objectContaining({ kind: "none" }));
  });

  it("of a callout come in its order, and the written formula agrees", () => {
    const callout = readCallout("10 H6", "callout", "mm");
    expect(plugGauge(callout)).toEqual([10.00075, 10.00225, 9.999, 10.00825, 10.00975]);
    for (const units of ["mm", "in"] as const) {
      const written = workedOut(plugGauge.formula, ["callout", "units"], [callout, units], 5);
      plugGauge(callout, units).forEach((limit, index) => {
        expect(limit).toBeCloseTo(written[index], 7);
      });
    }
  });

  it.each([
    // z 3, y 3, H 4 µm over 18 to 30 mm; JS7 is ±10.5 µm. 180 mm is the end of the table.
    ["20 JS7", [19.9905, 19.9945, 19.9865, 20.0085, 20.0125]],
    ["180 H7", [180.002, 180.01, 179.996, 180.036, 180.044]],
  ])("of %s are tabulated", (text, limits) => {
    expect(plugGauge(readCallout(text, "callout", "mm"))).toEqual(limits);
  });

  it("in inches are rounded to 0.00001 from the nominal size", () => {
    // At 12.7 mm z 2.5, y 2, H 3 and H7 18 µm: +1, +4, −2, +16.5, +19.5 µm.
    const callout = readCallout("12.7 mm H7", "callout", "in");
    expect(plugGauge(callout, "in")).toEqual([0.50004, 0.50016, 0.49992, 0.50065, 0.50077]);
  });

  // 5 % of the tolerance at each end, common practice: for what the table does not have.
  it.each([
    ["12 +0.020/0", [12, 12.001, 12, 12.019, 12.02]],
    ["200 H7", [200, 200.0023, 200, 200.0437, 200.046]],
    ["25 H8", [25, 25.00165, 25, 25.03135, 25.033]],
    [".5000 in +.0010/-.0000", [12.7, 12.70127, 12.7, 12.72413, 12.7254]],
  ])("of %s go by the 10 %% rule", (text, expected) => {
    expect(plugGauge(readCallout(text, "callout", "mm"))).toEqual(expected);
  });

  it("of an inch callout go by the rule, of a class too", () => {
    // H7 at 12.7 mm is 18 µm, in inches .00071.
    const callout = readCallout("0.5 in H7", "callout", "in");
    expect(plugGauge(callout, "in")).toEqual([0.5, 0.5000355, 0.5, 0.5006745, 0.50071]);
  });

  it("of a shaft are refused", () => {
    expect(() => plugGauge(readCallout("25 h7", "callout", "mm"))).toThrow(
      expect.objectContaining({ kind: "wrong", message: expect.stringMatching(/h7 is a shaft class/) }),
    );
  });
});
