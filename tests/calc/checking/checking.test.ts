import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { check } from "../../../src/calc/checking/check.ts";
import { convert } from "../../../src/calc/checking/convert.ts";
import { placeOf } from "../../../src/calc/checking/written-digits.ts";
import { unitTable } from "../../../src/data/units.ts";
import { runs } from "../../support/share.ts";
import { golden, problemOf } from "../golden-file.ts";

golden("convert", convert);
golden("check", check);

// The place behind 0.2 is 0.1: it is what 0.15 and 0.25 are rounded to, up and to even, and 0.26 is not.
test.each([
  [0.2, 0.15, true],
  [0.2, 0.25, true],
  [0.3, 0.25, true],
  [0.2, 0.26, false],
  [0.2, 0.14, false],
])("%s for %s: rounded to its digits is %s", (figure, exact, isOk) => {
  expect(check(figure, exact, 0.5) === "ok").toBe(isOk);
});

describe("conversion", () => {
  const pairs = unitTable.flatMap(([from, kind]) =>
    unitTable.filter((unit) => unit[1] === kind).map(([to]) => [from, to] as const),
  );

  test("there and back returns, for every pair", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...pairs),
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        ([from, to], value) => {
          const back = convert(convert(value, from, to), to, from);
          expect(Math.abs(back - value)).toBeLessThanOrEqual(1e-12 * (Math.abs(value) + 500));
        },
      ),
    );
  });

  test("decimals of an inch come out as the exact decimals of a millimetre", () => {
    const wrong: number[] = [];
    for (let tenths = 0; tenths <= 20000; tenths++) {
      // 254 hundredths of a micrometre to a ten-thousandth: whole numbers written with a point.
      const exact = Number(
        `${Math.floor((tenths * 254) / 1e5)}.${String((tenths * 254) % 1e5).padStart(5, "0")}`,
      );
      const isRight =
        Object.is(convert(tenths / 1e4, "in", "mm"), exact) &&
        Object.is(convert(exact, "mm", "in"), tenths / 1e4);
      if (!isRight) wrong.push(tenths);
    }
    expect(wrong).toEqual([]);
  });

  test("temperatures to a tenth come out exact", () => {
    const wrong: number[] = [];
    for (let tenths = -400; tenths <= 4000; tenths++)
      if (!Object.is(convert(tenths / 10, "C", "F"), (tenths * 18 + 3200) / 100)) wrong.push(tenths);
    expect(wrong).toEqual([]);
  });

  test("any spelling", () => {
    expect(convert(1, "LBF·IN", "nm")).toBe(convert(1, "lbf-in", "Nm"));
    expect(convert(1, "µin", " UM ")).toBe(0.0254);
    expect(convert(1, "in³/min", "cm³/min")).toBe(16.387064);
    for (const [unit, other] of [
      ...[
        ["inches", "in"],
        ["mil", "thou"],
        ["microns", "um"],
        ["tenths", "tenth"],
        ["in-lb", "lbf-in"],
      ],
      ...[
        ["FT-LB", "lbf-ft"],
        ["inch", "in"],
        ["thous", "thou"],
      ],
    ])
      expect(convert(3, unit, other)).toBe(3);
  });

  test("messages", () => {
    expect(problemOf(() => convert(1, "ipm", "mm/rev"))?.message).toMatch(/needs the rpm/);
    expect(problemOf(() => convert(1, "mm", "kW"))?.message).toMatch(/length.*power/);
    expect(problemOf(() => convert(1, "mm", "furlong"))?.message).toMatch(
      /^to "furlong" is not a known unit/,
    );
    expect(problemOf(() => convert(1, "constructor", "mm"))?.message).toMatch(/^from "constructor"/);
  });
});

describe("check", () => {
  test("chance hits: over ratios even in logarithm from 1/50 to 50 a mistake is named in under 6 % of cases", () => {
    const count = 100000;
    let named = 0;
    for (let i = 0; i < count; i++) {
      const ratio = Math.exp((2 * ((i + 0.5) / count) - 1) * Math.log(50));
      if (check(ratio, 1).includes(":")) named++;
    }
    expect(named / count).toBeLessThan(0.06);
    expect(named / count).toBeGreaterThan(0.04);
  });

  test("a mistake is named either way up, and the scale does not matter", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(25.4, Math.PI, 2, 6, 12, 60, 1000, 1.341022, 3.28084, 10),
        fc.double({ min: 0.001, max: 1e4, noNaN: true }),
        (ratio, expected) => {
          const names = (text: string) => text.split(": ")[1];
          expect(names(check(ratio * expected, expected))).toBe(names(check(expected, ratio * expected)));
          expect(names(check(ratio * expected, expected))).toBeTruthy();
        },
      ),
    );
  });

  test("names within half a percent and not beyond, at most three of them, the likeliest first", () => {
    expect(check(25.4 * 1.0049, 1)).toMatch(/mm for inch/);
    expect(check(25.4 * 1.0051, 1)).not.toMatch(/mm for inch/);
    expect(check(12, 1)).toBe(
      "12 times too high: 12 left out or per tooth for per revolution with 12 flutes",
    );
    expect(check(2, 1)).toBe(
      "2 times too high: radius for diameter or per side for on diameter or TIR for eccentricity",
    );
    expect(check(1.8, 1)).toBe("80 % high");
  });

  test("ok is the expected figure rounded to the digits written, and within the share", () => {
    expect(check(611, 611.155)).toBe("ok");
    expect(check(611.2, 611.155)).toBe("ok");
    expect(check(380, 381.97)).toBe("ok");
    expect(check(400, 381.97)).not.toBe("ok");
    expect(check(12.027, 12.018)).toBe("within 1 %: 0.0749 % high");
    expect(check(12.02, 12.018)).toBe("ok");
    expect(check(-611, -611.155)).toBe("ok");
  });

  test("the share itself is still inside, on both sides, floating point or not", () => {
    expect(check(101, 100)).toBe("within 1 %: 1 % high");
    expect(check(99, 100)).toBe("within 1 %: 1 % low");
    expect(check(1.01, 1)).toBe("within 1 %: 1 % high");
    expect(check(-1.01, -1)).toBe("within 1 %: 1 % low");
    expect(check(101.0001, 100)).toBe("1 % high");
    expect(check(1.05, 1, 0.05)).toBe("within 5 %: 5 % high");
    expect(check(0.95, 1, 0.05)).toBe("within 5 %: 5 % low");
  });

  test("figures of opposite sign have no slip between them", () => {
    expect(check(-254, 10)).toBe("2640 % low");
    expect(check(0, 10)).toBe("100 % low");
  });

  test("the difference is in percent under a factor of 2", () => {
    expect(check(400, 381.972)).toMatch(/^4.72 % high: /);
    expect(check(0, 5)).toBe("100 % low");
    expect(problemOf(() => check(5, 0))?.message).toMatch(/^expected is 0 and handFigure is 5/);
  });
});

describe("the place of the last digit written", () => {
  test("is where the decimal ends, zeros at its end not counted", () => {
    const decimal = fc.tuple(fc.integer({ min: 1, max: 999_999_999 }), fc.integer({ min: -14, max: 12 }));
    fc.assert(
      fc.property(decimal, fc.boolean(), ([digits, exponent], isNegative) => {
        const zeros = /0*$/.exec(String(digits))![0].length;
        const figure = Number(`${isNegative ? "-" : ""}${digits}e${exponent}`);
        expect(placeOf(figure)).toBe(10 ** (zeros + exponent));
      }),
      { numRuns: runs(1000, 10) },
    );
    expect([0, 3.14, 611, 600, 0.1 + 0.2, 1 / 3].map(placeOf)).toEqual([1, 0.01, 1, 100, 0.1, 1e-15]);
  });
});
