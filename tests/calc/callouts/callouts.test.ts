// tests: what a callout on a drawing means, and what is refused.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Callout, deviationsOf, limitsOf } from "../../../src/calc/callouts/callout.ts";
import { calloutPart, limits, middleSize, toleranceOf } from "../../../src/calc/callouts/limits.ts";
import { readPlainCallout } from "../../../src/calc/callouts/plain-callout.ts";
import { readCallout } from "../../../src/calc/callouts/read-callout.ts";
import { fromTicks, type Units } from "../../../src/calc/lengths.ts";
import { Problem } from "../../../src/calc/problem.ts";
import { reamerLimits } from "../../../src/calc/reamers/reamer-limits.ts";
import { readTable } from "../../support/csv.ts";
import { expectSentences } from "../../support/refusal.ts";
import { longTest, runs } from "../../support/share.ts";
import { count } from "../../support/ticks.ts";
import { problemOf } from "../golden-file.ts";

const read = (text: string, units: Units = "mm") => readCallout(text, "callout", units);

describe("read", () => {
  test.each(readTable("callouts"))("$callout ($units)", (row) => {
    const units = row.units as Units;
    const callout = read(row.callout, units);
    expect(limits(callout, units)).toEqual([Number(row.least), Number(row.greatest)]);
    expect(calloutPart(callout, "class")).toBe(row.class);
    expect(calloutPart(callout, "count")).toBe(Number(row.count));
    expect(calloutPart(callout, "depth", units)).toBe(row.depth === "" ? "" : Number(row.depth));
    expect(String(calloutPart(callout, "through")).toUpperCase()).toBe(row.through);
    expect(calloutPart(callout, "marks")).toBe(row.marks);
  });
});

describe("refused", () => {
  test.each(readTable("callouts-refused"))("$callout ($units): $source", (row) => {
    const problem = problemOf(() => read(row.callout, row.units as Units));
    expect(problem?.kind).toBe(row.code === "#N/A" ? "none" : "wrong");
    expectSentences(problem?.message, ["callout"]);
    expect(problem?.message).toContain(row.words);
  });

  test("a long text, before any pattern runs", () => {
    for (const text of ["12 H7 ".repeat(40), "(".repeat(50_000), "9".repeat(50_000), "12 +".repeat(9999)])
      expect(problemOf(() => read(text))?.message).toBe(
        `callout is a text of ${text.length} characters. Write a callout of at most 200.`,
      );
  });

  test.each([
    ["\u0007", "control character 7"],
    ["\u001f", "control character 31"],
    ["\u007f", "control character 127"],
    ["§", 'has "§"'],
  ])("a character of no meaning is named: %j", (character, name) => {
    expect(problemOf(() => read(`12 H7${character}`))?.message).toContain(name);
  });

  test("a text of 200 characters is read", () => {
    expect(limits(read(`12 H7${" ".repeat(195)}`))).toEqual([12, 12.018]);
  });

  test("the message shortens what came, and shows no control characters", () => {
    const message = problemOf(() => read(`12 H7 \u0007\n\t${"long words ".repeat(10)}`))!.message;
    expect(message).not.toMatch(/[\u0000-\u001f]/);
    expect(message.length).toBeLessThan(140);
    expect(message).toContain("…");
  });
});

describe("parts", () => {
  test("nominal and deviations of limits: the lower limit is the nominal", () => {
    const callout = read("12.018/12.000");
    expect(calloutPart(callout, "nominal")).toBe(12);
    expect([calloutPart(callout, "lower"), calloutPart(callout, "upper")]).toEqual([0, 0.018]);
  });

  test("nominal and deviations of a class, in both units", () => {
    const callout = read("20 P7");
    expect([calloutPart(callout, "lower"), calloutPart(callout, "upper")]).toEqual([-0.035, -0.014]);
    // 0.035 mm is 0.001378 in, 0.014 mm is 0.000551 in; the nominal is not rounded to 0.00001 in.
    expect(calloutPart(callout, "nominal", "in")).toBe(0.7874016);
    expect([calloutPart(callout, "lower", "in"), calloutPart(callout, "upper", "in")]).toEqual([
      -0.00138, -0.00055,
    ]);
  });

  test("deviations that are written are not rounded in inches", () => {
    // 0.018 mm is 0.00070866 in.
    expect(calloutPart(read("12 mm +0.018/0"), "upper", "in")).toBe(0.0007087);
  });

  test("a depth is in the unit of the result", () => {
    const callout = read("12 H7 x 25.4 deep");
    expect([calloutPart(callout, "depth", "mm"), calloutPart(callout, "depth", "in")]).toEqual([25.4, 1]);
    expect(calloutPart(read("12 mm H7 x 1 in deep"), "depth", "mm")).toBe(25.4);
  });

  test("what is not written is an empty text", () => {
    const callout = read("12 ±0.01");
    for (const part of ["class", "depth", "through", "marks"] as const)
      expect(calloutPart(callout, part)).toBe("");
  });
});

describe("properties", () => {
  const sizes = fc.integer({ min: 1, max: 49_999 }).map((hundredths) => hundredths / 100);
  const usualSizes = sizes.filter((size) => size >= 0.5);
  const holes = fc.constantFrom(
    "H6",
    "H7",
    "H8",
    "H9",
    "H11",
    "G6",
    "F7",
    "E8",
    "D9",
    "JS7",
    "P7",
    "N7",
    "K7",
    "R7",
    "S7",
  );
  const shafts = fc.constantFrom("h6", "h7", "g6", "f7", "e8", "d9", "js6", "k6", "n6", "p6", "r6", "s6");
  const units = fc.constantFrom<Units>("mm", "in");

  const all = (callout: Callout) => ({
    ...Object.fromEntries(
      (["nominal", "lower", "upper", "units", "kind", "className", "iso", "shaft", "count"] as const).map(
        (key) => [key, callout[key]],
      ),
    ),
    depth: callout.depth,
    through: callout.through,
    marks: callout.marks,
  });
  const outcome = (call: () => Callout) => {
    try {
      return all(call());
    } catch (thrown) {
      if (!(thrown instanceof Problem)) throw thrown;
      return thrown.kind;
    }
  };

  test("the short way reads a size and a class as the full reader does", () => {
    fc.assert(
      fc.property(
        fc.oneof(
          sizes.map(String),
          fc.integer({ min: 1, max: 4000 }).map(String),
          sizes.map((size) => size.toFixed(4)),
        ),
        fc.oneof(
          holes,
          shafts,
          fc.constantFrom("T7", "ZC11", "cd6", "x7", "X8", "L7", "H19", "h07", "Js6", "A9"),
        ),
        fc.constantFrom("", " ", "  "),
        fc.constantFrom("", "Ø", "⌀ ", "ø"),
        units,
        (size, className, space, mark, unit) => {
          // `4X8` may be four holes: refused.
          fc.pre(!(mark === "" && space === "" && /^x/i.test(className)));
          const text = `${mark}${size}${space}${className}`;
          const long = outcome(() => read(`dia ${size} ${className}`, unit));
          const short = outcome(() => readPlainCallout(text, unit) ?? read(text, unit));
          expect(short).toEqual(long);
        },
      ),
      { numRuns: 400 },
    );
  });

  test("the short way reads deviations as the full reader does, or leaves them to it", () => {
    const deviation = fc.constantFrom(
      "+0.018",
      "-0.018",
      "+.0005",
      "-.0000",
      "0",
      "+0",
      "-0.02",
      "+0.1",
      "0.018",
      "-11.5",
      "+3",
      "",
    );
    fc.assert(
      fc.property(
        fc.constantFrom("12", "12.5", "0.5", ".500", ".5", "100", "1", "12."),
        fc.constantFrom("", " ", "  "),
        fc.oneof(
          fc
            .tuple(deviation, fc.constantFrom("/", " ", "  ", "-", " / ", ""), deviation)
            .map((parts) => parts.join("")),
          fc.constantFrom("±0.01", "± .0005", "±", "±0", "±5", "±0.01 ", "±0,01"),
        ),
        units,
        (size, space, deviations, unit) => {
          const short = readPlainCallout(`${size}${space}${deviations}`, unit);
          if (!short) return;
          expect(outcome(() => short)).toEqual(outcome(() => read(`dia ${size}${space}${deviations}`, unit)));
        },
      ),
      { numRuns: runs(5000, 10) },
    );
    expect(readPlainCallout("12 +0.018/0", "mm")?.upper).toBe(1_800_000);
    expect(readPlainCallout(".500 ±.0005", "in")?.lower).toBe(-1_270_000);
  });

  test("the short way leaves all else to the full reader", () => {
    for (const text of [
      "12",
      "H7",
      "12,5 H7",
      "12 H7 ",
      " 12 H7",
      "12 H7/g6",
      "12 x7",
      "4X 12 H7",
      ".5 H7",
      "12 RC4",
      "0 H7",
      "",
    ])
      expect(readPlainCallout(text, "mm")).toBeUndefined();
  });

  test("a text read again means the same, in either unit", () => {
    for (const text of ["12 mm H7", "1/2 in H7", "4X 12 mm +0.018/0"]) {
      const first = { mm: all(read(text, "mm")), in: all(read(text, "in")) };
      for (let k = 0; k < 3; k++) {
        expect(all(read(text, "in"))).toEqual(first.in);
        expect(all(read(text, "mm"))).toEqual(first.mm);
      }
    }
    // Without a unit the sheet's counts.
    expect(limits(read("0.75 H7", "mm"), "mm")[0]).toBe(0.75);
    expect(limits(read("0.75 H7", "in"), "mm")[0]).toBe(19.05);
    expect(limits(read("0.75 H7", "mm"), "mm")[0]).toBe(0.75);
  });

  longTest("many callouts do not drive out each other's meaning", () => {
    const texts = Array.from(
      { length: 3000 },
      (_, k) => [`dia ${(k / 100 + 1).toFixed(2)} H7`, `${(k / 100 + 1).toFixed(2)} H7`] as const,
    );
    for (const pair of texts) for (const text of pair) read(text);
    for (const [long, short] of texts) expect(all(read(long))).toEqual(all(read(short)));
  });

  test("limits are in order, the tolerance is their difference, the middle lies half-way", () => {
    fc.assert(
      fc.property(usualSizes, fc.oneof(holes, shafts), units, (size, className, unit) => {
        let callout: Callout;
        try {
          callout = read(`${size} mm ${className}`);
        } catch (thrown) {
          if (thrown instanceof Problem && thrown.kind === "none") return;
          throw thrown;
        }
        const [least, greatest] = limits(callout, unit);
        expect(least).toBeLessThan(greatest);
        expect(toleranceOf(callout, unit)).toBeCloseTo(greatest - least, 6);
        expect(middleSize(callout, unit)).toBeCloseTo((least + greatest) / 2, 6);
      }),
      { numRuns: 200 },
    );
  });

  test("deviations, limits and their order on the drawing make no difference", () => {
    fc.assert(
      fc.property(
        // Smaller sizes and tolerances of three decimals may be inches.
        fc.integer({ min: 4100, max: 90_000 }),
        fc.integer({ min: -80, max: 80 }),
        fc.integer({ min: 2, max: 90 }),
        (size, lower, width) => {
          const upper = lower + width;
          const mm = (micrometres: number) => (micrometres / 1000).toFixed(3);
          const signed = (micrometres: number) => (micrometres < 0 ? mm(micrometres) : `+${mm(micrometres)}`);
          const spellings = [
            `${mm(size)} ${signed(lower)}/${signed(upper)}`,
            `${mm(size)} ${signed(upper)} ${signed(lower)}`,
            `Ø${mm(size)} ${signed(upper)}/${signed(lower)} THRU`.replaceAll(".", ","),
            `${mm(size + lower)} - ${mm(size + upper)}`,
            `${mm(size + upper)}/${mm(size + lower)}`,
            `2X ${mm(size + lower)} TO ${mm(size + upper)}`,
          ];
          for (const text of spellings)
            expect(limits(read(text)), text).toEqual([Number(mm(size + lower)), Number(mm(size + upper))]);
        },
      ),
      { numRuns: 150 },
    );
  });

  test("inch and metric agree: a written tolerance exactly, a class to the rounding of its deviations", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 500, max: 30_000 }),
        fc.integer({ min: 1, max: 60 }),
        holes,
        (size, width, className) => {
          const inches = (size / 10_000).toFixed(4);
          const written = read(`${inches} in +${(width / 10_000).toFixed(4)}/0`);
          for (const part of ["lower", "upper"] as const)
            expect(fromTicks(limitsOf(written, "in")[part], "in") * 25.4).toBeCloseTo(
              fromTicks(limitsOf(written, "mm")[part], "mm"),
              5,
            );
          if (size / 10_000 < 0.04) return;
          const toleranced = read(`${inches} in ${className}`);
          for (const part of ["lower", "upper"] as const) {
            const inch = count(deviationsOf(toleranced, toleranced, "in")[part]) / 25.4e8;
            const metric = count(deviationsOf(toleranced, toleranced, "mm")[part]) / 1e8;
            expect(Math.abs(inch * 25.4 - metric)).toBeLessThanOrEqual(0.000005 * 25.4 + 1e-12);
            expect(Math.abs(inch * 1e5 - Math.round(inch * 1e5))).toBeLessThan(1e-9);
          }
        },
      ),
      { numRuns: 150 },
    );
  });

  test("whatever is written, the answer is a callout or a problem, and it comes", () => {
    const piece = fc.constantFrom(
      ...[
        "12",
        "12.5",
        ".500",
        "1/2",
        "12,5",
        "1,250",
        "H7",
        "g6",
        "RC4",
        "+0.018",
        "-0",
        "/",
        "-",
        "±",
        "+",
        "x",
        "4X",
      ],
      ...[
        "Ø",
        "THRU",
        "↧",
        "DEEP",
        "30",
        "REAM",
        "DRILL",
        ",",
        "Ⓔ",
        "⌖",
        "A",
        "Ra",
        "ON",
        "B.C.",
        "TYP",
        "mm",
        "in",
        '"',
      ],
      ...["to", "(", ")", "%%c", "%%p0.01", "M12", "UNC", "⌴", "°", "PL", " ", "\u00a0", "1e9", "__proto__"],
      ...["CBORE", "CHAMFER", "x45", "TWO", "HOLES", "AFTER", "FOR", "MIN", "[", "]", "塗装後", "\n"],
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 9 }), fc.constantFrom("", " "), units, (pieces, gap, unit) => {
        const text = pieces.join(gap);
        const problem = problemOf(() => {
          const { lower, upper } = limitsOf(read(text, unit), unit);
          expect(count(upper)).toBeGreaterThan(count(lower));
          expect(count(lower)).toBeGreaterThan(0);
        });
        if (problem) expect(problem.message).toMatch(/^callout /);
      }),
      { numRuns: runs(3000) },
    );
  });
});

describe("limits that hold after coating", () => {
  test.each([
    ...[
      "12 H7 AFTER PLATING",
      "12 H7 AFTER NITRIDING",
      "12 H7 POST PLATE",
      "12 H7 PLATED",
      "12 H7 AFTER FINISH",
    ],
    ...["12 H7 INCLUDES PLATING", "12 H7 nach Verzinkung", "12 H7 verzinkt", "12 H7 après traitement"],
    ...["12 H7 dopo il trattamento", "φ12H7 アルマイト後", "Φ12H7 阳极氧化后"],
  ])("%s", (text) => {
    expect(read(text).coated).toBe(true);
  });
  test.each([
    ...[
      "12 H7 BEFORE PLATING",
      "12 H7 PRIOR TO PLATING",
      "12 H7 vor dem Beschichten",
      "12 H7 avant traitement",
    ],
    ...["12 H7 AFTER WELDING", "12 H7 nach DIN 7168", "φ12H7 メッキ前", "12 H7 WITH PIN"],
  ])("not %s", (text) => {
    expect(read(text).coated).toBe(false);
  });
  test.each([
    "12 H7 AFTER HARDCOAT",
    "12 H7 POST HARDCOAT",
    "12 H7 POST-ANODIZE",
    "12 H7 PLATING INCLUDED",
    "12 H7 hartverchromt",
    "12 H7 im beschichteten Zustand",
    "12 H7 AFTER BONDERIZING",
  ])("%s, too", (text) => {
    expect(read(text).coated).toBe(true);
  });
  test.each([
    "12 H7 AFTER CHEM FILM",
    "12 H7 AFTER PARKERIZING",
    "12 H7 AFTER TIN",
    "12 H7 nach dem Hartverchromen",
    "12 H7 nach KTL",
    "12 H7 après cadmiage",
    "12 H7 dopo brunitura",
    "12 H7 después de pintar",
    "φ12H7 塗装後",
    "Φ12H7 镀锌后",
  ])("perhaps %s", (text) => {
    expect(read(text).coated).toBe("perhaps");
    expect(problemOf(() => reamerLimits(read(text)))?.message).toMatch(
      /may hold after coating.*PREPLATE.*delete the words/,
    );
  });
  test.each([
    "12 H7 AFTER FINAL ASSEMBLY",
    "12 H7 AFTER H.T.",
    "12 H7 AFTER SHOT PEENING",
    "12 H7 nach Zeichnung 4711",
    "12 H7 nach EN 22768",
    "12 H7 nach dem Härten",
    "12 H7 après soudage",
    "12 H7 dopo saldatura",
    "12 H7 después de soldar",
    "12 H7 GUIDE POST",
    "φ12H7 組立後",
    "Φ12H7 装配后",
  ])("nor %s", (text) => {
    expect(read(text).coated).toBe(false);
  });
});

describe("a size and its tolerance in the other unit, in brackets", () => {
  test.each([
    "12.7 ±0.01 mm (.500 ±.0004 in)",
    "12.700-12.718 mm (.5000-.5007 in)",
    "12.700-12.718 mm (.500-.5007 in)",
    "12.7 +0.018/0 mm (.500 +.0007/0 in)",
    "12.7 ±0.01 mm (.500)",
    "12.7 ±0.01 [.5]",
    // Of a tolerance alone: 0.013 mm is 0.00051 in.
    "12.7 +0.013/0 [+.0005/-.0000]",
    "12.7 ±0.013 [±.0005]",
  ])("%s agrees", (text) => {
    expect(calloutPart(read(text), "nominal")).toBe(12.7);
  });

  test.each([
    ["another size without a unit", "12.7 ±0.01 [12.7]"],
    ["another upper limit", "12.700-12.718 mm (.5000-.5060 in)"],
    ["another lower limit", "12.700-12.718 mm (.4960-.5007 in)"],
    ["a class", "12.7 H7 mm (.500 H7)"],
    ["another size", "12.7 ±0.01 mm (.506)"],
    ["limits of two units", "12.700-12.718 mm (.500 in-.5007 mm)"],
  ])("%s contradicts", (_, text) => {
    expect(problemOf(() => read(text))?.message).toContain("in brackets, and 12.7");
  });

  // 0.01 mm is 0.0003937 in, 0.013 mm 0.0005118 in, and 0.018 mm 0.0007087 in.
  test.each([
    [
      "12.7 ±0.01 mm (.500 ±.004 in)",
      "-0.004 to 0.004 in, and those of 12.7 mm are -0.0003937 to 0.0003937 in",
    ],
    [
      "12.7 +0.018/0 mm (.500 +.0007/-.0007 in)",
      "-0.0007 to 0.0007 in, and those of 12.7 mm are 0 to 0.0007087 in",
    ],
    [
      "12.7 +0.018/-0.018 mm (.500 +.0007/0 in)",
      "0 to 0.0007 in, and those of 12.7 mm are -0.0007087 to 0.0007087 in",
    ],
    ["12.7 +0.013/0 [+.0050/-.0000]", "0 to 0.005 in, and those of 12.7 mm are 0 to 0.0005118 in"],
    ["12.7 ±0.013 [±.005]", "-0.005 to 0.005 in, and those of 12.7 mm are -0.0005118 to 0.0005118 in"],
  ])("%s: both tolerances are told", (text, both) => {
    expect(problemOf(() => read(text))?.message).toContain(`brackets with deviations of ${both}`);
  });

  // A comma is decimal where thousands would be longer than any length: 1250 in is, 1250 mm is not.
  test.each<[string, "mm" | "in", number]>([
    ["31.75 ±0.02 [1,250]", "mm", 31.75],
    ["31.75 mm ±0.02 [1,250]", "in", 1.25],
    ["1.250 in ±.001 [31,750]", "mm", 31.75],
  ])("the comma in %s (%s) is decimal", (text, units, nominal) => {
    expect(calloutPart(read(text, units), "nominal", units)).toBe(nominal);
  });

  test.each<[string, "mm" | "in"]>([
    [".0492 ±.0005 [1,250]", "in"],
    [".0492 in ±.0005 [1,250]", "mm"],
  ])("the comma in %s (%s) could part thousands", (text, units) => {
    expect(problemOf(() => read(text, units))?.message).toContain("has 1,250, which could be 1.250 or 1250");
  });

  test.each(["12 H7 [SEE NOTE 3]", "12 H7 [TYP]", "12 H7 [NEAR END] 4 HOLES"])(
    "%s is no second size",
    (text) => {
      expect(limits(read(text))).toEqual([12, 12.018]);
    },
  );
});

describe("a number with a roughness behind it", () => {
  test.each(["63√", "32 FINISH", "32 µin", "0.8 µin", "32 UIN"])("%s is set aside", (roughness) => {
    for (const [text, count] of [
      [`12 H7 ${roughness}`, 1],
      [`12 H7 ${roughness} 4 HOLES`, 4],
      [`4X 12 H7 ${roughness}`, 4],
    ] as const) {
      expect(limits(read(text)), text).toEqual([12, 12.018]);
      expect(calloutPart(read(text), "count"), text).toBe(count);
    }
  });

  test.each(["4 √ 1.6", "4 Ra 1.6", "4 Rz 6.3", "63 √ 4"])(
    "%s: the roughness has a number of its own, and the other is not placed",
    (text) => {
      expect(problemOf(() => read(`12 H7 ${text}`))?.message).toContain(
        `can't be read at "${text.split(" ")[0]}"`,
      );
    },
  );
});
