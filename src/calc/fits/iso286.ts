// calc: ISO 286-1:2010: standard tolerances and limit deviations of tolerance classes.
// A class is compiled once to its limit deviations at every size step; after that a size costs one search.

import {
  deltas,
  deviationsByFinerStep,
  deviationsByStep,
  exceptionM6,
  finerSizeSteps,
  lowerDeviationsOfj,
  upperDeviationsOfJ,
} from "../../data/iso286/fundamental-deviations.ts";
import { sizeSteps, standardTolerances } from "../../data/iso286/standard-tolerances.ts";
import { fromTicks, lengthText, micrometers, toTicks, type Units } from "../lengths.ts";
import { none, shown, wrong } from "../problem.ts";
import * as ticks from "../ticks.ts";
import { INCH, type Limits, MILLIMETER, type Ticks, ZERO } from "../ticks.ts";

/** Names of the standard tolerance grades, finest first. */
export const grades: readonly string[] = [
  "01",
  "0",
  ...Array.from({ length: 18 }, (_, index) => String(index + 1)),
];
export const CLASS =
  /^(CD|EF|FG|JS|Z[ABC]|[A-HJKMNPR-VX-Z]|cd|ef|fg|js|z[abc]|[a-hjkmnpr-vx-z])(01|0|1[0-8]?|[2-9])$/;

// The finer steps, the first cut at 1 mm, where IT14 to IT18, A, B and N9 begin.
export const stepEnds = [1, ...finerSizeSteps];
const stepEndTicks = stepEnds.map((end) => ticks.times(MILLIMETER, end));
export const standardStep = stepEnds.map((end) => sizeSteps.findIndex((standardEnd) => standardEnd >= end));
const UP_TO_1_MM = 0;
const UP_TO_3_MM = 1;
const UP_TO_500_MM = stepEnds.indexOf(500);

export function stepOf(nominal: Ticks): number {
  if (!(nominal > ZERO)) wrong(`size is ${lengthText(nominal, "mm")} mm. Enter a size over 0.`);
  if (nominal > stepEndTicks[stepEndTicks.length - 1])
    none(`size is ${lengthText(nominal, "mm")} mm. ISO 286 ends at 3150 mm.`);
  let low = 0;
  let high = stepEndTicks.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (stepEndTicks[middle] < nominal) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** By grade, the standard tolerance at each step; undefined where there is none. */
const tolerances = new Map(
  grades.map((grade, index) => [
    grade,
    standardStep.map((step, fine) => {
      const width = standardTolerances[grade][step];
      return width === undefined || (index > 14 && fine === UP_TO_1_MM) ? undefined : micrometers(width);
    }),
  ]),
);

/**
 * A standard tolerance grade as written in a sheet: 7, "7", "IT7", "IT01".
 * @returns "01", "0", "1" … "18"
 */
export function parseGrade(grade: string | number): string {
  const name = String(grade).trim().replace(/^IT ?/i, "");
  if (!tolerances.has(name))
    wrong(`grade ${shown(grade)} is not a standard tolerance grade. Write 1 to 18, "IT0", or "IT01".`);
  return name;
}

/**
 * The standard tolerance of a grade at a nominal size.
 * @param grade as parseGrade gives it
 */
export function standardTolerance(nominal: Ticks, grade: string): Ticks {
  const tolerance = tolerances.get(grade)?.[stepOf(nominal)];
  if (tolerance !== undefined) return tolerance;
  const why = parseGrade(grade).startsWith("0")
    ? "IT01 and IT0 end at 500 mm"
    : "IT14 to IT18 begin above 1 mm";
  return none(`grade "IT${grade}" is not defined at ${lengthText(nominal, "mm")} mm. ${why}.`);
}

/** The coarsest standard tolerance grade no wider than a tolerance: "IT7". */
export function gradeFor(tolerance: Ticks, nominal: Ticks): string {
  const step = stepOf(nominal);
  for (let index = grades.length - 1; index >= 0; index--) {
    const width = tolerances.get(grades[index])![step];
    if (width !== undefined && width <= tolerance) return `IT${grades[index]}`;
  }
  return none(
    `callout has a tolerance of ${lengthText(tolerance, "mm")} mm, finer than every standard tolerance grade at ${lengthText(nominal, "mm")} mm.`,
  );
}

/** True for a tolerance class as ISO 286 writes it: H7, js6, ZC11; not 7H, L7, H19, Js7. */
export function isClassName(text: string): boolean {
  return classes.has(text) || CLASS.test(text);
}

/** True where a class name is that of a hole, false for a shaft. */
export function isHoleClass(className: string): boolean {
  return className < "a";
}

/** The limit deviations of a class at every size step. */
export type CompiledClass = readonly (Limits | undefined)[];
const classes = new Map<string, CompiledClass>();

/**
 * Limit deviations (EI and ES, ei and es) of a tolerance class at a nominal size.
 * @param className upper case for a hole, lower case for a shaft
 * @throws Problem "wrong" for what is no class, "none" for a class not defined at that size
 */
export function limitDeviations(nominal: Ticks, className: string): Limits {
  return deviationsAt(classes.get(className) ?? compile(className), nominal, className);
}

/** Limit deviations of a compiled class at a nominal size. @throws Problem as limitDeviations does */
export function deviationsAt(compiled: CompiledClass, nominal: Ticks, className: string): Limits {
  return compiled[stepOf(nominal)] ?? undefinedThere(nominal, className, compiled);
}

/** Compiles a class for `deviationsAt`. @throws Problem "wrong" for what is no class */
export function compile(className: string): CompiledClass {
  const parts = CLASS.exec(className);
  if (!parts) return wrong(notAClass(className));
  const [, letters, grade] = parts as unknown as [string, string, string];
  const number = grades.indexOf(grade) - 1;
  const deviations = tolerances
    .get(grade)!
    .map((tolerance, step) =>
      tolerance === undefined ? undefined : atStep(letters, number, step, tolerance),
    );
  classes.set(className, deviations);
  return deviations;
}

const over = (lower: Ticks, tolerance: Ticks) => ({
  lower: ticks.plus(lower, ZERO),
  upper: ticks.plus(lower, tolerance),
});
const under = (upper: Ticks, tolerance: Ticks) => ({
  lower: ticks.minus(upper, tolerance),
  upper: ticks.plus(upper, ZERO),
});

/** The class `letters` + `grade` at one step; undefined where the standard has none. */
function atStep(letters: string, grade: number, step: number, tolerance: Ticks): Limits | undefined {
  const isHole = isHoleClass(letters);
  const key = letters.toLowerCase();
  if (key === "js") return { lower: ticks.dividedBy(tolerance, -2), upper: ticks.dividedBy(tolerance, 2) };
  if (key === "j") {
    const deviation = (isHole ? upperDeviationsOfJ : lowerDeviationsOfj)[grade]?.[standardStep[step]];
    if (deviation === undefined) return undefined;
    return isHole ? under(micrometers(deviation), tolerance) : over(micrometers(-deviation), tolerance);
  }
  // Finer steps count from 3 mm too: the step that ends at 1 mm is part of their first.
  const magnitude = deviationsByFinerStep[key]
    ? deviationsByFinerStep[key][Math.max(step - 1, 0)]
    : deviationsByStep[key][standardStep[step]];
  if (magnitude === undefined || magnitude === null) return undefined;
  if (key < "i") {
    if (key < "c" && step === UP_TO_1_MM) return undefined;
    return isHole ? over(micrometers(magnitude), tolerance) : under(micrometers(-magnitude), tolerance);
  }
  if (!isHole)
    return over(key !== "k" || (grade >= 4 && grade <= 7) ? micrometers(magnitude) : ZERO, tolerance);
  const upper = upperDeviationFromK(key, grade, step, magnitude);
  return upper === undefined ? undefined : under(micrometers(upper), tolerance);
}

/** ES of the holes K to ZC in µm: the tabled magnitude under the nominal size, and Delta where it applies. */
function upperDeviationFromK(
  key: string,
  grade: number,
  step: number,
  magnitude: number,
): number | undefined {
  const hasDeltaSize = step > UP_TO_3_MM && step <= UP_TO_500_MM;
  if (key === "k" && grade > 8) return step <= UP_TO_3_MM ? 0 : undefined;
  if (key === "n" && grade > 8) return step === UP_TO_1_MM ? undefined : hasDeltaSize ? 0 : -magnitude;
  if (isExceptionM6(key, grade, step)) return exceptionM6.upper;
  if (!takesDelta(key, grade, step)) return -magnitude;
  const delta = deltaAt(key, grade, step);
  return delta === undefined ? undefined : delta - magnitude;
}

const isExceptionM6 = (key: string, grade: number, step: number) =>
  key === "m" && grade === 6 && stepEnds[step] > exceptionM6.over && stepEnds[step] <= exceptionM6.upTo;

function takesDelta(key: string, grade: number, step: number): boolean {
  return key >= "k" && step > UP_TO_3_MM && step <= UP_TO_500_MM && grade <= (key < "p" ? 8 : 7);
}

/** Δ in µm where a hole K to ZC takes it, else undefined. */
export function deltaAt(key: string, grade: number, step: number): number | undefined {
  if (!takesDelta(key, grade, step) || isExceptionM6(key, grade, step)) return undefined;
  return deltas[grade]?.[standardStep[step]];
}

function notAClass(className: string): string {
  const received = `class ${shown(className)} is not an ISO 286 class`;
  const [, letters, grade] = /^([a-z]{1,2}) ?(\d+)$/i.exec(className) ?? [];
  if (letters && /^[iloqw]$/i.test(letters))
    return `${received}. The letters I, L, O, Q, and W are not used.`;
  if (CLASS.test(`${letters}${grade}`)) return `${received}. Write ${letters}${grade} without a space.`;
  const [hole, shaft] = [letters?.toUpperCase(), letters?.toLowerCase()];
  if (CLASS.test(`${hole}${grade}`))
    return `${received}. Write ${hole}${grade} for a hole or ${shaft}${grade} for a shaft.`;
  if (CLASS.test(`${hole}7`)) return `${received}. There is no grade ${grade}: grades go from 01 to 18.`;
  const turned = /^(\d{1,2}) ?([a-z]{1,2})$/i.exec(className);
  if (turned && CLASS.test(`${turned[2]}${turned[1]}`))
    return `${received}. Is ${turned[2]}${turned[1]} meant? The letter comes first.`;
  return `${received}. Write a letter and a grade: "H7" for a hole, "g6" for a shaft.`;
}

function undefinedThere(nominal: Ticks, className: string, deviations: CompiledClass): never {
  const ranges: string[] = [];
  for (let step = 0; step < deviations.length; step++) {
    if (!deviations[step]) continue;
    const from = step === 0 ? 0 : stepEnds[step - 1];
    while (deviations[step + 1]) step++;
    ranges.push(`over ${from} to ${stepEnds[step]} mm`);
  }
  const where = ranges.length ? ranges.join(" and ") : "at no size";
  return none(
    `class "${className}" is not defined in ISO 286 at ${lengthText(nominal, "mm")} mm. It is defined ${where}.`,
  );
}

const DEVIATION_STEP_IN = ticks.dividedBy(INCH, 1e5);

/** A class's deviation as it counts in a unit: in inches rounded, half away from zero, to 0.00001 in. */
export function deviationIn(deviation: Ticks, units: Units): Ticks {
  return units === "mm" ? deviation : ticks.roundedTo(DEVIATION_STEP_IN, deviation);
}

/** ES or es of a class at a size, mm or in. */
export function upperDeviation(size: number, className: string, units: Units = "mm"): number {
  return fromTicks(deviationIn(limitDeviations(toTicks(size, units), className.trim()).upper, units), units);
}

/** EI or ei of a class at a size, mm or in. */
export function lowerDeviation(size: number, className: string, units: Units = "mm"): number {
  return fromTicks(deviationIn(limitDeviations(toTicks(size, units), className.trim()).lower, units), units);
}

/** Standard tolerance of a grade (7, "IT7", "IT01") at a size, mm or in. */
export function standardToleranceWidth(size: number, grade: string | number, units: Units = "mm"): number {
  return fromTicks(deviationIn(standardTolerance(toTicks(size, units), parseGrade(grade)), units), units);
}
