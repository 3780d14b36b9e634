// tests: calls of worksheet functions drawn at random, plausible and hostile cells mixed.

import fc from "fast-check";
import type { ArgumentName } from "../../functions/arguments.ts";
import { materials } from "../../src/data/materials/materials.ts";
import { anySign } from "../support/any-sign.ts";
import { type Cells, declarations } from "../support/sheet.ts";

const error = (code: string) => Object.assign(Object.create(null), { code });

const hostile = fc.oneof(
  fc.constantFrom<unknown>(
    ...[null, "", "   ", 0, -0, -1, 1e308, -1e308, 5e-324, 1e-9, true, false, 3151, 2 ** 53],
    ...[
      "__proto__",
      "constructor",
      "NaN",
      "Infinity",
      "1e5",
      "0x10",
      "١٢",
      "１２",
      "12 H7\u0000",
      "((((((((",
      "H7",
      "M12",
      "1/0",
    ],
    ...[
      "=1+1",
      "<img src=x>",
      "1,250",
      "1.250,5",
      "12,5",
      "1-1/2",
      "31/64",
      '1/2"',
      "12.5 mm",
      "0.5 in",
      "x".repeat(300),
    ],
    ...["#DIV/0!", "#SPILL!", "#N/A", "#REF!"].map(error),
  ),
  fc.string({ maxLength: 30 }),
  fc.string({ unit: anySign, maxLength: 20 }),
  fc.double({ noNaN: true, noDefaultInfinity: true }),
);

const smallNumber = fc.integer({ min: 1, max: 60_000 }).map((number) => number / 1000);
const callouts = fc
  .tuple(
    fc.constantFrom("3", "8", "12", "12.5", "20", "63", "0.5 in", "Ø16", "250"),
    fc.constantFrom(
      " H7",
      "H8",
      " h6",
      " P7",
      " JS9",
      " +0.018/0",
      " ±0.01",
      " H7/g6",
      " K7 THRU",
      " F7 x 30 DEEP",
      " T7",
      " RC4",
    ),
  )
  .map(([size, tolerance]) => size + tolerance);

/** Words of the arguments that take words. */
const words: Partial<Record<ArgumentName, fc.Arbitrary<unknown>>> = {
  callout: callouts,
  hole: callouts,
  shaft: callouts,
  callouts,
  units: fc.constantFrom("mm", "in", "inch", "METRIC"),
  material: fc.constantFrom(
    ...materials.map(({ key }) => key),
    "4140",
    "6061-T6",
    "EN AW-1050",
    "58 HRC",
    "A2",
  ),
  gaugeMaterial: fc.constantFrom(...materials.map(({ key }) => key)),
  tool: fc.constantFrom("HSS", "carbide", "cobalt", "PCD", "coated carbide", "guided blade"),
  drill: fc.oneof(smallNumber, fc.constantFrom("31/64", "#15", "E")),
  series: fc.constantFrom("metric", "fraction", "number", "letter", "inch"),
  part: fc.constantFrom("nominal", "lower", "upper", "class", "count", "depth", "through", "marks"),
  class: fc.constantFrom("H7", "g6", "JS7", "ZC11", "k5", "CD8"),
  grade: fc.constantFrom(7, "IT6", "IT01", 18),
  holeKind: fc.constantFrom("through", "blind"),
  blocked: fc.boolean(),
  interrupted: fc.boolean(),
  retractRate: fc.oneof(smallNumber, fc.constant("rapid")),
  from: fc.constantFrom("mm", "in", "sfm", "m/min", "Nm", "C", "kW", "um"),
  to: fc.constantFrom("mm", "in", "sfm", "m/min", "lbf-in", "F", "hp", "uin"),
  functionName: fc.constantFrom(...declarations.map(({ id }) => id)),
  n: fc.constantFrom(0.125, 0.25, 0.5),
  flutes: fc.integer({ min: 1, max: 16 }),
  scrapRate: fc.constantFrom(0, 0.02, 0.5),
  margin: fc.constantFrom(0, 0.2, 0.9),
  uptime: fc.constantFrom(0.5, 0.85, 1),
};

function cellOf(name: string): fc.Arbitrary<unknown> {
  const plausible = words[name as ArgumentName] ?? smallNumber;
  return fc.oneof({ weight: 6, arbitrary: plausible }, { weight: 1, arbitrary: hostile });
}

export interface FuzzCall {
  readonly id: string;
  /** A range, or null for one left out, or the ranges of a repeating argument. */
  readonly args: readonly (Cells | null)[];
  /** Rows of the columns among them. */
  readonly rows: number;
}

/** Calls of one function: each argument left out, one cell, or a column; all columns of one height. */
export function callsOf({ id, parameters }: (typeof declarations)[number]): fc.Arbitrary<FuzzCall> {
  return fc.integer({ min: 1, max: 8 }).chain((rows) => {
    const args = parameters.map(({ name, optional }) => {
      const range = (height: number) =>
        fc
          .array(cellOf(name), { minLength: height, maxLength: height })
          .map((cells) => cells.map((cell) => [cell]));
      const ways: fc.WeightedArbitrary<Cells | null>[] = [
        { weight: 2, arbitrary: range(1) },
        { weight: 3, arbitrary: range(rows) },
      ];
      if (optional) ways.push({ weight: 2, arbitrary: fc.constant(null) });
      return fc.oneof(...ways);
    });
    return fc.tuple(...args).map((drawn) => ({ id, args: drawn as (Cells | null)[], rows }));
  });
}

/** An argument of this name is read by the vocabulary alone. */
