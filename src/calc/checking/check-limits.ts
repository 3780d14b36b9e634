// calc: hand figures for the limits of size of a callout, and the mistake that gives them: each is made on the callout
// itself and compared with the figures. Which mistakes people make is common practice, no source.

import { type Callout, deviationsOf } from "../callouts/callout.ts";
import { limits } from "../callouts/limits.ts";
import { inchFit, inchFitNames } from "../fits/ansi-b41.ts";
import { deviationIn, grades, limitDeviations } from "../fits/iso286.ts";
import { neighborSizes, withoutDelta } from "../fits/iso286-in-words.ts";
import type { Formula } from "../formula.ts";
import { lengthText, toTicks, type Units } from "../lengths.ts";
import { Problem, resultOrProblem } from "../problem.ts";
import * as ticks from "../ticks.ts";
import { INCH, type Limits, MICROMETER, type Ticks, ZERO } from "../ticks.ts";
import { placeOf } from "./written-digits.ts";

/** Hand figures this close are ok: 0.0005 mm, 0.00002 in. */
export const LENGTH_OK = { mm: ticks.dividedBy(MICROMETER, 2), in: ticks.times(INCH, 0.00002) } as const;

/** As a share of the tolerance. */
const FINE_ENOUGH = 0.04;
/** Grades further off are taken for another mistake: five grades are a factor of ten. */
const NEAR_GRADES = 3;

/** A mistake by name, and the deviations that it gives. */
type Mistake = readonly [name: string, deviations: Limits];

/** `ok`, the mistake, or how far off each limit is. */
export function checkLimits(lower: number, upper: number, callout: Callout, units: Units = "mm"): string {
  const hand = { lower: toTicks(lower, units), upper: toTicks(upper, units) };
  const own = deviationsOf(callout, callout, units);
  const isHand = (deviations: Limits, lowerWithin: Ticks, upperWithin: Ticks) => {
    const made = ticks.moved(deviations, callout.nominal);
    return (
      ticks.apart(made.lower, hand.lower) <= lowerWithin && ticks.apart(made.upper, hand.upper) <= upperWithin
    );
  };
  if (isHand(own, LENGTH_OK[units], LENGTH_OK[units])) return "ok";
  // A mistake is met to the digits written, as long as those are fine enough to tell it from others.
  const within = (figure: number, made: Limits) =>
    ticks.larger(
      LENGTH_OK[units],
      ticks.smaller(
        toTicks(placeOf(figure) / 2, units),
        ticks.times(ticks.absolute(ticks.widthOf(made)), FINE_ENOUGH),
      ),
    );
  const found = mistakesOf(callout, own, units).find(([, made]) =>
    isHand(made, within(lower, made), within(upper, made)),
  );
  if (found) return found[0];
  const off = ticks.moved(hand, ticks.negative(callout.nominal));
  return `lower limit ${offText(ticks.minus(off.lower, own.lower), units)}, upper limit ${offText(ticks.minus(off.upper, own.upper), units)}`;
}
checkLimits.formula = {
  source: "practice",
  steps: () => [],
  lookup: (units: Units, _lower, _upper, callout: Callout) => {
    const [lower, upper] = limits(callout, units);
    return [`limits of ${callout.text.trim()}: ${lower} to ${upper} ${units}`];
  },
  conclusion: (units: Units, lower: number, upper: number, callout: Callout) => [
    `hand figures: ${lower} to ${upper} ${units}`,
    checkLimits(lower, upper, callout, units),
  ],
} satisfies Formula;

function offText(off: Ticks, units: Units): string {
  if (ticks.absolute(off) <= LENGTH_OK[units]) return "ok";
  return `${lengthText(ticks.absolute(off), units)} ${off > ZERO ? "high" : "low"}`;
}

/** Every mistake with what it gives, those with the fewest changes and the likeliest first. */
function mistakesOf(callout: Callout, own: Limits, units: Units): Mistake[] {
  const { nominal } = callout;
  const scaled = (factor: number) => ({
    lower: ticks.times(own.lower, factor),
    upper: ticks.times(own.upper, factor),
  });
  const mirrored = { lower: ticks.negative(own.upper), upper: ticks.negative(own.lower) };
  const single: Mistake[] = [
    ...classMistakes(callout, units),
    ["sign turned", mirrored],
    ["deviations ten times too large", scaled(10)],
    ["deviations ten times too small", scaled(0.1)],
    ["µm for mm: deviations 1000 times too large", scaled(1000)],
    ["deviations in inches for mm", scaled(1 / 25.4)],
    ["deviations in mm for inches", scaled(25.4)],
    ["deviations for limits of size", ticks.moved(own, ticks.negative(nominal))],
    [`limits in ${units === "mm" ? "inches for mm" : "mm for inches"}`, otherUnit(callout, own, units)],
  ];
  const exchanged = ({ lower, upper }: Limits) => ({ lower: upper, upper: lower });
  return [
    ["upper and lower exchanged", exchanged(own)],
    ...single,
    ...single.map(([name, both]): Mistake => [`${name}, upper and lower exchanged`, exchanged(both)]),
  ];
}

/** The limits themselves in the other unit, as deviations from the nominal size. */
function otherUnit({ nominal }: Callout, own: Limits, units: Units): Limits {
  const factor = units === "mm" ? 1 / 25.4 : 25.4;
  const at = (deviation: Ticks) => ticks.minus(ticks.times(ticks.plus(nominal, deviation), factor), nominal);
  return { lower: at(own.lower), upper: at(own.upper) };
}

function classMistakes(callout: Callout, units: Units): Mistake[] {
  if (callout.className === "") return [];
  return callout.iso ? isoMistakes(callout, units) : inchMistakes(callout);
}

function isoMistakes({ nominal, className, kind }: Callout, units: Units): Mistake[] {
  const [, letters, grade] = /^([A-Za-z]+)(\d+)$/.exec(className) as unknown as [string, string, string];
  const other = kind === "hole" ? letters.toLowerCase() : letters.toUpperCase();
  const turned = kind === "hole" ? "shaft for hole" : "hole for shaft";
  const at = (size: Ticks, name: string): Limits | undefined => {
    const own = resultOrProblem(() => limitDeviations(size, name));
    if (own instanceof Problem) return undefined;
    return { lower: deviationIn(own.lower, units), upper: deviationIn(own.upper, units) };
  };
  const near = grades
    .filter((one) => one !== grade && Math.abs(Number(one) - Number(grade)) <= NEAR_GRADES)
    .sort((a, b) => Math.abs(Number(a) - Number(grade)) - Math.abs(Number(b) - Number(grade)));
  const candidates: (readonly [string, Limits | undefined])[] = [
    ...near.map((one) => [`${letters}${one} for ${className}`, at(nominal, `${letters}${one}`)] as const),
    [`${other}${grade}: ${turned}`, at(nominal, `${other}${grade}`)],
    ...neighborSizes(nominal).map(
      ({ size, text }) => [`the size range next to it, ${text}`, at(size, className)] as const,
    ),
    ["Δ left out", withoutDelta(nominal, className, units)],
    [`JS${grade} for ${className}: tolerance split evenly`, at(nominal, `JS${grade}`)],
  ];
  return candidates.filter((one): one is Mistake => one[1] !== undefined);
}

function inchMistakes({ nominal, className, shaft }: Callout): Mistake[] {
  const family = className.replace(/\d+$/, "");
  const others = inchFitNames.filter((name) => name !== className && name.replace(/\d+$/, "") === family);
  const mistakes: Mistake[] = shaft ? [[`shaft of ${className}: shaft for hole`, shaft]] : [];
  for (const name of others) {
    const fit = resultOrProblem(() => inchFit(nominal, name));
    if (!(fit instanceof Problem))
      mistakes.push([`${name} for ${className}`, { lower: fit.holeLower, upper: fit.holeUpper }]);
  }
  return mistakes;
}
