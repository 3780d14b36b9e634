// calc: ISO 286-1 in words: how the limit deviations of a class come about at a size, for the steps that people read, and
// what they would be in the size range next to it or without Δ, for the checks of hand figures.

import { deviationsByFinerStep, finerSizeSteps } from "../../data/iso286/fundamental-deviations.ts";
import { sizeSteps } from "../../data/iso286/standard-tolerances.ts";
import type { Formula } from "../formula.ts";
import { lengthText, micrometers, toTicks, type Units } from "../lengths.ts";
import * as ticks from "../ticks.ts";
import { type Limits, MICROMETER, MILLIMETER, type Ticks } from "../ticks.ts";
import {
  CLASS,
  deltaAt,
  deviationIn,
  grades,
  isHoleClass,
  limitDeviations,
  lowerDeviation,
  parseGrade,
  standardStep,
  standardTolerance,
  standardToleranceWidth,
  stepEnds,
  stepOf,
  upperDeviation,
} from "./iso286.ts";

const inMicrometers = (length: Ticks) => `${String(ticks.ratio(length, MICROMETER)).replace("-", "−")} µm`;

function stepText(ends: readonly number[], step: number): string {
  return `over ${step === 0 ? 0 : ends[step - 1]} up to ${ends[step]} mm`;
}

function gradeLine(nominal: Ticks, grade: string): string {
  const step = standardStep[stepOf(nominal)];
  return `IT${grade} ${stepText(sizeSteps, step)}: ${inMicrometers(standardTolerance(nominal, grade))}`;
}

/** How the limit deviations of a class come about at a size: tolerance, fundamental deviation, Δ, and the other limit. */
export function classLines(nominal: Ticks, className: string): string[] {
  const { lower, upper } = limitDeviations(nominal, className);
  const [, letters, grade] = CLASS.exec(className) as unknown as [string, string, string];
  const isHole = isHoleClass(letters);
  const key = letters.toLowerCase();
  const [low, high] = isHole ? ["EI", "ES"] : ["ei", "es"];
  const lines = [gradeLine(nominal, grade)];
  if (key === "js") return [...lines, `${high} = +IT${grade}/2, ${low} = −IT${grade}/2`];
  const step = stepOf(nominal);
  const where = deviationsByFinerStep[key]
    ? stepText(finerSizeSteps, Math.max(step - 1, 0))
    : stepText(sizeSteps, standardStep[step]);
  // Holes from J on lie by their upper limit deviation, shafts by the lower; before that the other way around.
  const byUpper = isHole === key > "i";
  const [name, value] = byUpper ? [high, upper] : [low, lower];
  const stated = isHole ? deltaAt(key, grades.indexOf(grade) - 1, step) : undefined;
  const fundamental = `fundamental deviation ${letters}, ${where}: ${name} =`;
  if (stated === undefined) lines.push(`${fundamental} ${inMicrometers(value)}`);
  else {
    const delta = inMicrometers(micrometers(stated));
    const without = inMicrometers(ticks.minus(value, micrometers(stated)));
    lines.push(
      `${fundamental} ${without} + Δ`,
      `Δ of IT${grade}, ${stepText(sizeSteps, standardStep[step])}: ${delta}`,
      `${name} = ${without} + ${delta} = ${inMicrometers(value)}`,
    );
  }
  return [
    ...lines,
    byUpper
      ? `${low} = ${high} − IT${grade} = ${inMicrometers(lower)}`
      : `${high} = ${low} + IT${grade} = ${inMicrometers(upper)}`,
  ];
}

/** A size in each size range next to that of a nominal size, the finer ones too, and the range in words. */
export function neighborSizes(nominal: Ticks): { readonly size: Ticks; readonly text: string }[] {
  const fine = stepOf(nominal);
  const standard = standardStep[fine];
  const ranges = [
    ...[standard + 1, standard - 1].map((step) => [sizeSteps, step] as const),
    ...[fine + 1, fine - 1].map((step) => [stepEnds, step] as const),
  ];
  return ranges
    .filter(([ends, step]) => step >= 0 && step < ends.length)
    .map(([ends, step]) => ({ size: ticks.times(MILLIMETER, ends[step]), text: stepText(ends, step) }));
}

/** What a hole K to ZC would have without Δ; undefined where the class takes none. */
export function withoutDelta(nominal: Ticks, className: string, units: Units): Limits | undefined {
  const [, letters, grade] = CLASS.exec(className) as unknown as [string, string, string];
  const delta = isHoleClass(letters)
    ? deltaAt(letters.toLowerCase(), grades.indexOf(grade) - 1, stepOf(nominal))
    : undefined;
  if (delta === undefined) return undefined;
  const { lower, upper } = limitDeviations(nominal, className);
  const less = (deviation: Ticks) => deviationIn(ticks.minus(deviation, micrometers(delta)), units);
  return { lower: less(lower), upper: less(upper) };
}

function deviationFormula(which: "lower" | "upper") {
  return {
    source: "iso-286-1",
    steps: () => [],
    lookup: (units: Units, size: number, className: string) => classLines(toTicks(size, units), className),
    conclusion: (units: Units, size: number, className: string) => {
      const deviation = limitDeviations(toTicks(size, units), className)[which];
      const text = lengthText(deviationIn(deviation, units), units).replace("-", "−");
      return [`${which} limit deviation = ${text} ${units}`];
    },
  } satisfies Formula;
}

/** The worksheet functions' calculations, each with its formula in words. */
export const upperDeviationInWords = Object.assign(upperDeviation, { formula: deviationFormula("upper") });
export const lowerDeviationInWords = Object.assign(lowerDeviation, { formula: deviationFormula("lower") });
export const standardToleranceInWords = Object.assign(standardToleranceWidth, {
  formula: {
    source: "iso-286-1",
    steps: () => [],
    lookup: (units: Units, size: number, grade: string | number) => [
      gradeLine(toTicks(size, units), parseGrade(grade)),
    ],
    conclusion: (units: Units, size: number, grade: string | number) => [
      `IT${parseGrade(grade)} = ${standardToleranceWidth(size, grade, units)} ${units}`,
    ],
  } satisfies Formula,
});
