// tests: lengths held as whole ticks.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fromTicks, lengthText, roundLength, toTicks } from "../../src/calc/lengths.ts";
import { INCH, plus, roundedTo } from "../../src/calc/ticks.ts";
import { inTicks } from "../support/ticks.ts";

describe("ticks", () => {
  test("what a drawing states is whole", () => {
    expect(toTicks(0.0001, "mm")).toBe(10_000);
    expect(toTicks(0.000001, "in")).toBe(2540);
    // 1/64 in is 0.396875 mm.
    expect(toTicks(1 / 64, "in")).toBe(39_687_500);
    expect(toTicks(1, "in")).toBe(INCH);
  });

  test("an inch is 25.4 mm, exactly", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1_240_000 }), (size) => {
        expect(fromTicks(toTicks(size / 1e4, "in"), "mm")).toBe(Math.round(size * 25_400) / 1e7);
      }),
    );
  });

  test("a decimal comes back as it went in", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -31_500_000, max: 31_500_000 }),
        fc.constantFrom("mm", "in"),
        (size, units) => {
          fc.pre(units === "mm" || Math.abs(size) <= 1_240_000);
          expect(fromTicks(toTicks(size / 1e4, units), units)).toBe(size / 1e4);
        },
      ),
    );
  });

  test("no sum is off by a hair, and zero has no sign", () => {
    expect(fromTicks(plus(toTicks(12, "mm"), toTicks(0.018, "mm")), "mm")).toBe(12.018);
    expect(Object.is(fromTicks(inTicks(-0), "mm"), 0)).toBe(true);
    expect(Object.is(roundLength(-1e-9), 0)).toBe(true);
  });
});

describe("rounding", () => {
  test("half goes away from zero", () => {
    const toTen = (length: number) => roundedTo(inTicks(10), inTicks(length));
    expect([15, -15, 14, -14].map(toTen)).toEqual([20, -20, 10, -10]);
  });

  test("to 1e-7 of the unit", () => {
    expect(roundLength(12.018000000000001)).toBe(12.018);
    expect(roundLength(0.12345678)).toBe(0.1234568);
  });

  test("a message writes no exponent and no trailing zeros", () => {
    expect(lengthText(toTicks(0.002, "mm"), "mm")).toBe("0.002");
    expect(lengthText(toTicks(12, "mm"), "mm")).toBe("12");
    expect(lengthText(toTicks(0.00005, "in"), "in")).toBe("0.00005");
    expect(lengthText(toTicks(1e-7, "mm"), "mm")).toBe("0.0000001");
    expect(lengthText(toTicks(-1e-8, "mm"), "mm")).toBe("0");
    expect(lengthText(toTicks(-100, "mm"), "mm")).toBe("-100");
  });
});
