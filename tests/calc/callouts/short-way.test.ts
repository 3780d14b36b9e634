// tests: what the short way reads by itself, and where it stops. Limits: ISO 286-2:2010, or as written.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Callout } from "../../../src/calc/callouts/callout.ts";
import { readPlainCallout } from "../../../src/calc/callouts/plain-callout.ts";
import { readCallout } from "../../../src/calc/callouts/read-callout.ts";
import type { Units } from "../../../src/calc/lengths.ts";
import { Problem } from "../../../src/calc/problem.ts";

/** As in the test of the grammar. */
const numRuns = Number(process.env.CALLOUT_RUNS ?? 500);

/** Ticks are 1e-8 mm. */
const um = (micrometres: number) => Math.round(micrometres * 1e5);
const mm = (millimetres: number) => Math.round(millimetres * 1e8);

describe("a size and a class", () => {
  test.each([
    ["12 H7", 12, "H7", 0, 18],
    ["12H7", 12, "H7", 0, 18],
    ["12  H7", 12, "H7", 0, 18],
    ["⌀12 H7", 12, "H7", 0, 18],
    ["Ø12 H7", 12, "H7", 0, 18],
    ["ø 12H7", 12, "H7", 0, 18],
    ["Ø  12 H7", 12, "H7", 0, 18],
    ["9 H7", 9, "H7", 0, 15],
    ["3 H7", 3, "H7", 0, 10],
    ["4.000 H7", 4, "H7", 0, 12],
    ["19.99 H9", 19.99, "H9", 0, 52],
    ["12.5 H10", 12.5, "H10", 0, 70],
    ["12.123 H7", 12.123, "H7", 0, 18],
    ["0012.123 H7", 12.123, "H7", 0, 18],
    ["12. H7", 12, "H7", 0, 18],
    ["25 JS6", 25, "JS6", -6.5, 6.5],
    ["40 A11", 40, "A11", 310, 470],
    ["12 a11", 12, "a11", -400, -290],
    ["14 Z8", 14, "Z8", -77, -50],
    ["14 z8", 14, "z8", 50, 77],
    ["20 ZC8", 20, "ZC8", -221, -188],
    ["20 za7", 20, "za7", 98, 119],
    ["12 g6", 12, "g6", -17, -6],
    ["500 H7", 500, "H7", 0, 63],
  ])("%s", (text, size, className, lower, upper) => {
    const read = readPlainCallout(text, "mm")!;
    expect({
      text: read.text,
      nominal: read.nominal,
      lower: read.lower,
      upper: read.upper,
      units: read.units,
      kind: read.kind,
      className: read.className,
      iso: read.iso,
      shaft: read.shaft,
      count: read.count,
      depth: read.depth,
      through: read.through,
      marks: read.marks,
    }).toEqual({
      text,
      nominal: mm(size),
      lower: um(lower),
      upper: um(upper),
      units: "mm",
      kind: className === className.toUpperCase() ? "hole" : "shaft",
      className,
      iso: true,
      shaft: undefined,
      count: 1,
      depth: undefined,
      through: false,
      marks: "",
    });
  });

  test("in inches, a size may begin with its point", () => {
    const read = readPlainCallout(".5 H7", "in")!;
    expect([read.nominal, read.lower, read.upper, read.units]).toEqual([mm(12.7), 0, um(18), "in"]);
  });
});

describe("a size and its deviations", () => {
  test.each<[string, Units, number, number, number]>([
    ["12 +0.018/0", "mm", 12, 0, 18],
    ["12+0.018/0", "mm", 12, 0, 18],
    ["12 +0.018 0", "mm", 12, 0, 18],
    ["12 +0.018/ 0", "mm", 12, 0, 18],
    ["12 0/-0.018", "mm", 12, -18, 0],
    ["12 0 +0.018", "mm", 12, 0, 18],
    ["12 -0.02/-0.01", "mm", 12, -20, -10],
    ["12 ±0.01", "mm", 12, -10, 10],
    ["12 ±0.1", "mm", 12, -100, 100],
    ["12 +0.002/0", "mm", 12, 0, 2],
    ["1 +0.1/0", "mm", 1, 0, 100],
    ["12± 0.01", "mm", 12, -10, 10],
    // A quarter of the size is the most that a deviation and a tolerance may come to.
    ["12 +3.0/+2.9", "mm", 12, 2900, 3000],
    ["12 -3.0/-2.9", "mm", 12, -3000, -2900],
    ["12 +1.5/-1.5", "mm", 12, -1500, 1500],
    ["3150 +0.1/0", "mm", 3150, 0, 100],
    [".500 ±.0005", "in", 12.7, -12.7, 12.7],
    [".5000 +.0005/-.0000", "in", 12.7, 0, 12.7],
  ])("%s (%s)", (text, units, size, lower, upper) => {
    const read = readPlainCallout(text, units)!;
    expect([read.nominal, read.lower, read.upper]).toEqual([mm(size), um(lower), um(upper)]);
    expect([read.kind, read.className, read.iso, read.units, read.text]).toEqual([
      "hole",
      "",
      false,
      units,
      text,
    ]);
  });
});

describe("what it leaves to the full reader", () => {
  test.each([
    // more digits than it counts in whole ticks
    "12..5 H7",
    "12.12345678 H7",
    "00012.1234567 H7",
    // what may be in the other unit
    "12.1234 H7",
    "3.999 H7",
    "0.99 +0.01/0",
    "12 +0.001/0",
    "12 +3/0",
    "12 ±3",
    // no class
    "12 @7",
    "12 [7",
    "12 `7",
    "12 {7",
    "12 H",
    "12 HH",
    "12 7",
    "12 H123",
    "12 HHH7",
    "12 H7x",
    "12 H7 ",
    "12 H7/g6",
    "12 H/",
    "12 H:",
    "12 RC4",
    "12 L7",
    // an x may be "times"
    "12 x7",
    "12 X7",
    // deviations that are none, or may be limits
    "12 ±0",
    "12 +./-0.018",
    "12 +0.01234/-0.001",
    "12 ±-0.01",
    "12 ±0.01 ",
    "12 ±",
    "12 0/0",
    "12 +0.01/+0.01",
    "12 0.018/0",
    "12 +0.018",
    "12 +0.018/",
    "12 +0.018/0 ",
    "12 +0.018,0",
    "12 +0.018+0.01",
    "12 +3.1/+3",
    "12 -3.1/-3",
    "12 -3/+3.1",
    "12 +1.6/-1.5",
    "12 ±1.6",
    "12.5.0/-0.1",
    "12 -12/0",
    "3151 +0.1/0",
    ".5 +0.1/0",
    "0 +0.1/0",
    ". H7",
    "",
    "+12 H7",
  ])("%s", (text) => {
    expect(readPlainCallout(text, "mm")).toBeUndefined();
  });
});

const manyDigits = ["00000.1234567 H7", "0.12345678 H7", ".5 ±0.000000000001"];
test.each(["1 H7", "2.99 H7", "3.000 H7", "8.0001 H7", "2 +0.01/0", ...manyDigits])(
  "%s is left to it in inches",
  (text) => {
    expect(readPlainCallout(text, "in")).toBeUndefined();
  },
);

test.each(["0.9999 H7", "0000.1234567 H7", "1.000 H7", "2.999 H7", "3.0000 H7", "8.0000 H7"])(
  "%s is not, in inches",
  (text) => {
    expect(readPlainCallout(text, "in")?.className).toBe("H7");
  },
);

describe("the short way and the full reader", () => {
  const usually = <T>(plausible: fc.Arbitrary<T>, odd: fc.Arbitrary<T>) =>
    fc.oneof({ weight: 4, arbitrary: plausible }, { weight: 1, arbitrary: odd });
  const size = usually(
    fc.constantFrom("12", "12.5", "4.000", "25.00", "63", "250", "9.", ".5000", "0.5000", "2.500", "007"),
    fc.string({ unit: fc.constantFrom(..."0123456789.,"), minLength: 1, maxLength: 9 }),
  );
  const className = usually(
    fc.constantFrom("H7", "H8", "g6", "JS9", "P7", "ZC8", "k6", "F11", "h01"),
    fc
      .tuple(
        fc.constantFrom(..."ACDMTXZabcimxzILOQ", "CD", "RC", "Hh", ""),
        fc.constantFrom("0", "8", "18", "19", "007"),
      )
      .map((parts) => parts.join("")),
  );
  const deviations = usually(
    fc.constantFrom(
      "+0.018/0",
      "+0.018 -0.002",
      "±0.01",
      "0/-0.018",
      "-.0005 +.0005",
      "+.0005/-.0000",
      "+3/0",
      "+0.5/+0.4",
    ),
    fc.string({ unit: fc.constantFrom(..."+-±/ .00125,"), minLength: 1, maxLength: 9 }),
  );
  const plain = fc
    .tuple(
      usually(fc.constantFrom("", "Ø", "⌀ ", "ø"), fc.constantFrom(" ", "x", "R", "+")),
      size,
      usually(fc.constantFrom(" ", "", "  "), fc.constantFrom("\t", "-", "/")),
      fc.oneof(className, deviations),
      usually(fc.constant(""), fc.constantFrom(" ", "x", "/g6", "0")),
    )
    .map((parts) => parts.join(""));

  const all = (read: Callout) => {
    const { nominal, lower, upper, units, kind, className, iso, shaft, count, depth, through } = read;
    const { coated, marks, note } = read;
    return {
      nominal,
      lower,
      upper,
      units,
      kind,
      className,
      iso,
      shaft,
      count,
      depth,
      through,
      coated,
      marks,
      note,
    };
  };
  const said = (read: () => Callout | undefined) => {
    try {
      const callout = read();
      return callout && all(callout);
    } catch (thrown) {
      if (thrown instanceof Problem) return thrown.message;
      throw thrown;
    }
  };

  test("read the same, or the short way reads nothing", () => {
    let both = 0;
    fc.assert(
      fc.property(plain, fc.constantFrom<Units>("mm", "in"), (text, units) => {
        const short = said(() => readPlainCallout(text, units));
        if (short === undefined) return;
        both++;
        // A space before it is nothing to the full reader, and not for the short way.
        const full = said(() => readCallout(` ${text}`, "callout", units));
        if (typeof short === "string") expect(full, text).toContain(short);
        else expect(full, text).toEqual(short);
      }),
      { numRuns },
    );
    expect(both).toBeGreaterThan(numRuns / 10);
  });
});
