// tests: every callout that the written grammar makes is read back as what it means, and every broken one refused.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { calloutPart, limits } from "../../../src/calc/callouts/limits.ts";
import { readCallout } from "../../../src/calc/callouts/read-callout.ts";
import { Problem } from "../../../src/calc/problem.ts";
import { type Meaning, spell } from "../../support/callout-generator.ts";

/** `npm run test:long` asks for more, mutation testing for fewer: it runs them for each of a thousand faults. */
const numRuns = Number(process.env.CALLOUT_RUNS ?? 500);

/** Limits of the classes by ISO 286-2 for their size, mm. */
const classes: readonly (readonly [size: string, className: string, least: number, greatest: number])[] = [
  ["3", "H7", 3, 3.01],
  ["8", "H8", 8, 8.022],
  ["10", "F7", 10.013, 10.028],
  ["12", "H7", 12, 12.018],
  ["12.5", "H9", 12.5, 12.543],
  ["16", "JS6", 15.9945, 16.0055],
  ["20", "P7", 19.965, 19.986],
  ["25", "N9", 24.948, 25],
  ["40", "K7", 39.982, 40.007],
];

const meaning = fc.oneof(
  fc.constantFrom(...classes).map(([size, className, least, greatest]) => ({
    units: "mm",
    size,
    className,
    deviations: { lower: signedText(least - Number(size)), upper: signedText(greatest - Number(size)) },
    limits: [String(least), String(greatest)],
    least,
    greatest,
  })),
  fc
    .record({
      size: fc.integer({ min: 40, max: 40_000 }),
      low: fc.integer({ min: -40, max: 40 }),
      width: fc.integer({ min: 2, max: 60 }),
    })
    .map(({ size, low, width }) => ({
      units: "mm",
      size: fixed(size, 2),
      deviations: { lower: signed(low, 3), upper: signed(low + width, 3) },
      least: (size * 10 + low) / 1000,
      greatest: (size * 10 + low + width) / 1000,
    })),
  fc
    .record({ size: fc.integer({ min: 300, max: 60_000 }), width: fc.integer({ min: 1, max: 60 }) })
    .map(({ size, width }) => ({
      units: "in",
      size: fixed(size, 4).replace(/^0/, ""),
      deviations: { lower: "-.0000", upper: signed(width, 4).replace("+0", "+") },
      least: size / 10_000,
      greatest: (size + width) / 10_000,
    })),
  fc
    .record({ size: fc.integer({ min: 4000, max: 400_000 }), width: fc.integer({ min: 2, max: 300 }) })
    .map(({ size, width }) => ({
      units: "mm",
      size: fixed(size, 3),
      limits: [fixed(size, 3), fixed(size + width, 3)],
      least: size / 1000,
      greatest: (size + width) / 1000,
    })),
) as fc.Arbitrary<Omit<Meaning, "count" | "depth"> & { least: number; greatest: number }>;

const callout = fc.record({
  meaning,
  count: fc.integer({ min: 1, max: 99 }),
  depth: fc.constantFrom("30", "12.5", "1.25"),
  drawn: fc.infiniteStream(fc.nat(1_000_000)),
});

function fixed(number: number, decimals: number): string {
  return (number / 10 ** decimals).toFixed(decimals);
}
function signed(number: number, decimals: number): string {
  return number === 0 ? "0" : (number > 0 ? "+" : "") + fixed(number, decimals);
}
/** `+0.0055`, `0`: four decimals at the most, as a class's deviations are written. */
function signedText(millimetres: number): string {
  const number = Number(millimetres.toFixed(4));
  return number > 0 ? `+${number}` : String(number + 0);
}
function spelled({
  meaning,
  count,
  depth,
  drawn,
}: {
  meaning: any;
  count: number;
  depth: string;
  drawn: Iterator<number>;
}) {
  return spell({ ...meaning, count, depth }, (below) => drawn.next().value % below);
}

describe("the grammar", () => {
  test("what it makes is read back whole", () => {
    fc.assert(
      fc.property(callout, (one) => {
        const { units, least, greatest } = one.meaning;
        const { text, told } = spelled(one);
        const read = readCallout(text, "callout", units);
        expect(limits(read, units), text).toEqual([least, greatest]);
        expect(calloutPart(read, "count"), text).toBe(told.count ? one.count : 1);
        expect(calloutPart(read, "depth", units), text).toBe(told.depth ? Number(one.depth) : "");
        expect(calloutPart(read, "through"), text).toBe(told.through ? true : told.depth ? false : "");
        const note = String(calloutPart(read, "note"));
        for (const one of told.notes) expect(note, text).toContain(one);
        if (told.notes.length === 0) expect(note, text).toBe("");
        expect(read.coated, text).toBe(told.notes.includes("AFTER PLATING"));
        expect(calloutPart(read, "marks").toString().toUpperCase(), text).toBe(told.marks.join(" "));
      }),
      { numRuns },
    );
  });

  const breaks: readonly (readonly [how: string, broken: (text: string, one: any) => string])[] = [
    ["a word of no meaning before it", (text) => `FOO ${text}`],
    ["another size before it", (text) => `77.7 ${text}`],
    ["the tolerance taken off", (_, { meaning }) => `⌀${meaning.size}`],
    [
      "the size taken off",
      (_, { meaning }) => meaning.className ?? meaning.deviations?.upper ?? meaning.limits[0],
    ],
    ["one deviation alone", (_, { meaning }) => `${meaning.size} +0.0101`],
    ["a class of no letter", (_, { meaning }) => `${meaning.size} L7`],
    ["the class the wrong way round", (_, { meaning }) => `${meaning.size} 7H`],
    ["a grade beyond 18", (_, { meaning }) => `${meaning.size} H19`],
    ["two points in the size", (_, { meaning }) => `${meaning.size.replace(/^(\d*)/, "$1.1.")} H7`],
    ["a thread", (_, { meaning }) => `M${Math.ceil(Number(meaning.size))}x1.5`],
    ["other digits", (_, { meaning }) => `${meaning.size} H٧`],
    [
      "a tolerance wider than a quarter",
      (_, { meaning }) => `${meaning.size} +${(Number(meaning.size) * 0.3).toFixed(3)}/0`,
    ],
    ["two units", (_, { meaning }) => `${meaning.size} mm +.0005 in/0`],
    ["a control character", (text) => text.replace(/^/, "\u0007")],
  ];
  test.each(breaks)("%s is refused", (_, broken) => {
    fc.assert(
      fc.property(callout, (one) => {
        const text = broken(spelled(one).text, one);
        let read: unknown;
        try {
          read = readCallout(text, "callout", one.meaning.units);
        } catch (thrown) {
          expect(thrown).toBeInstanceOf(Problem);
          expect((thrown as Problem).message).toMatch(/^callout /);
          return;
        }
        throw new Error(`${JSON.stringify(text)} was read as ${JSON.stringify(read)}`);
      }),
      { numRuns: Math.ceil(numRuns / 20) },
    );
  });
});
