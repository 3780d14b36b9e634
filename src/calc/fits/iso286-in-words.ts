// calc: ISO 286-1 in words: how the limit deviations of a class come about at a size, for the steps that people read, and
// what they would be in the size range next to it or without Δ, for the checks of hand figures. In ticks.

import { deviationsByFinerStep, finerSizeSteps } from "../../data/iso286/fundamental-deviations.ts";
import { sizeSteps } from "../../data/iso286/standard-tolerances.ts";
import type { Formula } from "../formula.ts";
import { lengthText, TICKS_PER_MM, TICKS_PER_UM, toTicks, type Units } from "../lengths.ts";
import {
  CLASS,
  deltaAt,
  deviationIn,
  grades,
  inTicks,
  isHoleClass,
  type LimitDeviations,
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

const micrometers = (ticks: number) => `${String(ticks / TICKS_PER_UM).replace("-", "−")} µm`;

function stepText(ends: readonly number[], step: number): string {
  return `over ${step === 0 ? 0 : ends[step - 1]} up to ${ends[step]} mm`;
}

function gradeLine(nominal: number, grade: string): string {
  const step = standardStep[stepOf(nominal)];
  return `IT${grade} ${stepText(sizeSteps, step)}: ${micrometers(standardTolerance(nominal, grade))}`;
}

/** How the limit deviations of a class come about at a size: tolerance, fundamental deviation, Δ, and the other limit. */
export function classLines(nominal: number, className: string): string[] {
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
  const delta = isHole && key >= "k" ? deltaAt(key, grades.indexOf(grade) - 1, step) : undefined;
  if (delta === undefined)
    lines.push(`fundamental deviation ${letters}, ${where}: ${name} = ${micrometers(value)}`);
  else {
    lines.push(
      `fundamental deviation ${letters}, ${where}: ${name} = ${micrometers(value - inTicks(delta))} + Δ`,
    );
    lines.push(`Δ of IT${grade}, ${stepText(sizeSteps, standardStep[step])}: ${micrometers(inTicks(delta))}`);
    lines.push(
      `${name} = ${micrometers(value - inTicks(delta))} + ${micrometers(inTicks(delta))} = ${micrometers(value)}`,
    );
  }
  return [
    ...lines,
    byUpper
      ? `${low} = ${high} − IT${grade} = ${micrometers(lower)}`
      : `${high} = ${low} + IT${grade} = ${micrometers(upper)}`,
  ];
}

/** A size in each size range next to that of a nominal size, the finer ones too, in ticks, and the range in words. */
export function neighborSizes(nominal: number): { readonly size: number; readonly text: string }[] {
  const fine = stepOf(nominal);
  const standard = standardStep[fine];
  const ranges = [
    ...[standard + 1, standard - 1].map((step) => [sizeSteps, step] as const),
    ...[fine + 1, fine - 1].map((step) => [stepEnds, step] as const),
  ];
  return ranges
    .filter(([ends, step]) => step >= 0 && step < ends.length)
    .map(([ends, step]) => ({ size: ends[step] * TICKS_PER_MM, text: stepText(ends, step) }));
}

/** What a hole K to ZC would have without Δ; undefined where the class takes none. */
export function withoutDelta(nominal: number, className: string, units: Units): LimitDeviations | undefined {
  const [, letters, grade] = CLASS.exec(className) as unknown as [string, string, string];
  const delta = deltaAt(letters.toLowerCase(), grades.indexOf(grade) - 1, stepOf(nominal));
  if (delta === undefined) return undefined;
  const { lower, upper } = limitDeviations(nominal, className);
  const less = (deviation: number) => deviationIn(deviation - inTicks(delta), units);
  return { lower: less(lower), upper: less(upper) };
}

function deviationFormula(which: "lower" | "upper") {
  return {
    source: "iso-286-1",
    steps: () => [],
    lookup: (units: Units, size: number, className: string) =>
      classLines(toTicks(size, units), className.trim()),
    conclusion: (units: Units, size: number, className: string) => {
      const deviation = limitDeviations(toTicks(size, units), className.trim())[which];
      return [`${which} limit deviation = ${lengthText(deviationIn(deviation, units), units)} ${units}`];
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
