// calc: ANSI B4.1 inch fits: limit deviations of hole and shaft.

import { inchFits } from "../../data/inch-fits/fits.ts";
import { lengthText } from "../lengths.ts";
import { none, shown, wrong } from "../problem.ts";
import * as ticks from "../ticks.ts";
import { INCH, type Ticks, ZERO } from "../ticks.ts";

/** Limit deviations of an inch fit. */
export interface InchFit {
  readonly holeLower: Ticks;
  readonly holeUpper: Ticks;
  readonly shaftLower: Ticks;
  readonly shaftUpper: Ticks;
}

const MICROINCH = ticks.dividedBy(INCH, 1e6);

interface Step extends InchFit {
  readonly over: Ticks;
  readonly upTo: Ticks;
}

const fits: ReadonlyMap<string, readonly Step[]> = new Map(
  Object.entries(inchFits).map(([name, rows]) => [
    name,
    rows.map(([over, upTo, hole, shaftLower, shaftUpper]) => ({
      over: ticks.rounded(ticks.times(INCH, over)),
      upTo: ticks.rounded(ticks.times(INCH, upTo)),
      holeLower: ZERO,
      holeUpper: ticks.times(MICROINCH, hole),
      shaftLower: ticks.times(MICROINCH, shaftLower),
      shaftUpper: ticks.times(MICROINCH, shaftUpper),
    })),
  ]),
);

export const inchFitNames: readonly string[] = [...fits.keys()];

/** True for an inch fit as ANSI B4.1 writes it: RC4, LC11, LT3, LN2, FN1. */
export function isInchFit(text: string): boolean {
  return fits.has(text);
}

/**
 * Limit deviations of hole and shaft of an inch fit at a nominal size.
 * @throws Problem "wrong" for what is no fit, "none" for a size outside its table
 */
export function inchFit(nominal: Ticks, fit: string): InchFit {
  const steps = fits.get(fit);
  if (!steps)
    return wrong(
      `fit ${shown(fit)} is not one of ANSI B4.1. Write RC1 to RC9, LC1 to LC11, LT1 to LT6, LN1 to LN3, or FN1 to FN5.`,
    );
  if (!(nominal > ZERO)) return wrong(`size is ${lengthText(nominal, "in")} in. Enter a size over 0.`);
  for (const step of steps) if (nominal > step.over && nominal <= step.upTo) return step;
  const from = lengthText(steps[0].over, "in");
  const to = lengthText(steps[steps.length - 1].upTo, "in");
  return none(
    `fit "${fit}" is not tabulated at ${lengthText(nominal, "in")} in. Its table goes over ${from} up to ${to} in.`,
  );
}
