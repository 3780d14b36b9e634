// tests: numbers written as text.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readLengthText, readNumberText, readOwnNumberText } from "../../src/calc/number-text.ts";
import { problemOf } from "./golden-file.ts";

const read = (text: string) => readNumberText(text, "diameter");

describe("read", () => {
  test.each([
    ["12.5", 12.5],
    ["12,5", 12.5],
    [" 12.5 ", 12.5],
    ["\u00a012.5\u202f", 12.5],
    ["\t12.5\r\n", 12.5],
    [".500", 0.5],
    [",500", 0.5],
    ["0,500", 0.5],
    ["12.", 12],
    ["1,25", 1.25],
    ["1,2500", 1.25],
    ["1/2", 0.5],
    ["31/64", 0.484375],
    ["3/2", 1.5],
    ["1 1/2", 1.5],
    ["1-1/2", 1.5],
    ["1–1/2", 1.5],
    ["1\u00a01/2", 1.5],
    ["+12.5", 12.5],
    ["-12.5", -12.5],
    ["−12.5", -12.5],
    ["Ø12.5", 12.5],
  ])("%j is %d", (text, value) => {
    expect(read(text)).toMatchObject({ value, units: undefined });
  });

  test.each([
    ["12.5 mm", 12.5, "mm"],
    ["12.5mm", 12.5, "mm"],
    ["12,5 MM", 12.5, "mm"],
    ["0.5 in", 0.5, "in"],
    ["0.5 IN", 0.5, "in"],
    ["0.5 inches", 0.5, "in"],
    ['1/2"', 0.5, "in"],
    ["1/2 ″", 0.5, "in"],
    ["1-1/2 in", 1.5, "in"],
    [".500 in", 0.5, "in"],
  ] as const)("%j is %d %s", (text, value, units) => {
    expect(read(text)).toMatchObject({ value, units });
  });
});

describe("refused", () => {
  test.each([
    ["1,250", "1.250 or 1250"],
    ["-1,250", "1.250 or 1250"],
    ["3,151", "3.151 or 3151"],
    ["12345,678", "12345.678 or 12345678"],
    ["1.250,5", "both a comma and a point"],
    ["1,250.5", "both a comma and a point"],
    ["1,250,000", "not a number"],
    ["12.5.3", "not a number"],
    ["1/0", "not a number"],
    ["1 3/2", "not a number"],
    ["1 2/2", "not a number"],
    ["1/2/3", "not a number"],
    ["12 13", "not a number"],
    ["1 000", "not a number"],
    ["abc 12", "not a number"],
    ["12 abc", "not a number"],
    ["12x", "not a number"],
    ["12.5%", "not a number"],
    ["=1+1", "not a number"],
    ["1e3", "not a number"],
    ["0x10", "not a number"],
    ["Infinity", "not a number"],
    ["NaN", "not a number"],
    ["12 mm mm", "not a number"],
    ["12 ft", "not a number"],
    ["٣", "not a number"],
    ["１２", "not a number"],
    ["½", "not a number"],
    ["12\u0000", "not a number"],
    ["__proto__", "not a number"],
    ["TRUE", "not a number"],
    [".", "not a number"],
    [",", "not a number"],
    ["-", "not a number"],
    ["", "not a number"],
  ])("%j: %s", (text, words) => {
    const problem = problemOf(() => read(text));
    expect(problem?.kind).toBe("wrong");
    expect(problem?.message).toMatch(/^diameter /);
    expect(problem?.message).toContain(words);
  });

  test("a long text is not looked through", () => {
    for (const text of ["1".repeat(201), " ".repeat(50_000), "1/".repeat(25_000)])
      expect(problemOf(() => read(text))?.message).toBe(
        `diameter is a text of ${text.length} characters. Write one number.`,
      );
    expect(read(`12${" ".repeat(198)}`).value).toBe(12);
  });
});

describe("properties", () => {
  test("a decimal reads with either mark, unless a comma could part thousands", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 99_999 }),
        fc.integer({ min: 1, max: 6 }),
        fc.nat(),
        (whole, digits, rest) => {
          const text = `${whole}.${String(rest % 10 ** digits).padStart(digits, "0")}`;
          expect(read(text).value).toBe(Number(text));
          const comma = text.replace(".", ",");
          if (digits === 3 && whole > 0) expect(problemOf(() => read(comma))?.kind).toBe("wrong");
          else expect(read(comma).value).toBe(Number(text));
        },
      ),
    );
  });

  test("sixty-fourths read as their quotient", () => {
    fc.assert(
      fc.property(
        fc.nat({ max: 9 }),
        fc.integer({ min: 1, max: 63 }),
        fc.constantFrom(" ", "-"),
        (whole, over, joint) => {
          expect(read(`${over}/64`).value).toBe(over / 64);
          expect(read(`${whole}${joint}${over}/64"`)).toMatchObject({
            value: whole + over / 64,
            units: "in",
          });
        },
      ),
    );
  });

  test("any text is a finite number or a problem", () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(..."0123456789.,/- +mi n\"'eE()Ø\u00a0") }), (text) => {
        const problem = problemOf(() => expect(Number.isFinite(read(text).value)).toBe(true));
        if (problem) expect(problem.message).toMatch(/^diameter /);
      }),
      { numRuns: 500 },
    );
  });
});

describe("read for one argument", () => {
  test("a length is converted to the unit asked for", () => {
    expect(readLengthText("0.5 in", "depth", "mm")).toBe(12.7);
    expect(readLengthText("8 µm", "depth", "in")).toBeCloseTo(0.008 / 25.4, 15);
    expect(readLengthText("1/2", "depth", "in")).toBe(0.5);
    expect(problemOf(() => readLengthText("1/2", "depth", "mm"))?.message).toMatch(
      /^depth "1\/2" is an inch size/,
    );
  });

  test("any other number may carry its own unit alone", () => {
    expect(readOwnNumberText("0.3 mm/rev", "feed", "0.2", "mm")).toBe(0.3);
    expect(readOwnNumberText("15 %", "share", "0.2", "%")).toBe(0.15);
    for (const text of ["0.04 mm/tooth", "0.01 in", "8 µm"])
      expect(problemOf(() => readOwnNumberText(text, "feed", "0.2", "mm"))?.message, text).toMatch(/^feed /);
  });
});
