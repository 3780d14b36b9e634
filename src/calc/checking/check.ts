// calc: which mistake a wrong hand figure is, guessed from the ratio of the two figures alone. Which mistakes people
// make is common practice, no source; the ratios are definitions (NIST SP 811) or arithmetic.

import { METERS_PER_FOOT, MM_PER_INCH, WATTS_PER_HORSEPOWER } from "../../data/units.ts";
import type { Formula } from "../formula.ts";
import { shown, wrong } from "../problem.ts";
import { offBy, verdictInside } from "./written-digits.ts";

/** A mistake is named if the figures' ratio, either way up, is this close to its own. */
const WITHIN = 0.005;
const HAIR = 1e-9;
const MOST_NAMES = 3;
const ALLOWED_SHARE = 0.01;

/** The likeliest first where several have one ratio. */
const mistakes: readonly (readonly [ratio: number, name: string])[] = [
  [MM_PER_INCH, "mm for inch"],
  [1 / METERS_PER_FOOT, "m/min for ft/min"],
  [Math.PI, "π forgotten"],
  [Math.PI / 3, "4 for 12/π"],
  [2, "radius for diameter"],
  [2, "per side for on diameter"],
  [2, "TIR for eccentricity"],
  [12, "12 left out"],
  [60, "60 (minutes for seconds or hours)"],
  [1000 / WATTS_PER_HORSEPOWER, "kW for hp"],
  [10, "thou for tenth"],
  [1000, "1000 (mm for µm or m)"],
  ...Array.from(
    { length: 15 },
    (_, i) => [i + 2, `per tooth for per revolution with ${i + 2} flutes`] as const,
  ),
];

/**
 * `ok` where the hand figure is the expected one rounded to the digits written and within the share of it; inside the
 * share otherwise how far off; else how far off and at most three mistakes with that ratio.
 */
export function check(handFigure: number, expected: number, allowedShare = ALLOWED_SHARE): string {
  if (expected === 0) {
    if (handFigure === 0) return "ok";
    wrong(`expected is 0 and handFigure is ${shown(handFigure)}. A share of 0 is not defined.`);
  }
  const inside = verdictInside(handFigure, expected, allowedShare);
  if (inside) return inside;
  const names = mistakesOf(handFigure / expected);
  const off = offBy(handFigure, expected);
  return names.length === 0 ? off : `${off}: ${names.join(" or ")}`;
}
check.formula = {
  source: "practice",
  defaults: { allowedShare: ALLOWED_SHARE },
  steps: (_units, _hand, expected: number) =>
    expected === 0 ? [] : [{ symbol: "ratio", expression: "handFigure / expected", unit: "" }],
  conclusion: (_units, handFigure: number, expected: number, allowedShare?: number) => [
    check(handFigure, expected, allowedShare),
  ],
} satisfies Formula;

function mistakesOf(quotient: number): string[] {
  if (!(quotient > 0)) return [];
  const ratio = Math.max(quotient, 1 / quotient);
  return mistakes
    .filter(([own]) => Math.abs(ratio / own - 1) <= WITHIN + HAIR)
    .slice(0, MOST_NAMES)
    .map(([, name]) => name);
}
