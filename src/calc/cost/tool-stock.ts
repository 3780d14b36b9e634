// calc: the range of a mean tool life, tools for a quantity, the hourly rate of a machine, and a bound on Cpk.

import type { Formula } from "../formula.ts";
import { wholeUp } from "../numbers.ts";
import { none, shown, wrong } from "../problem.ts";
import { normalQuantile, studentQuantile } from "../setup/student.ts";

const CONFIDENCE = 0.95;

interface LifeSample {
  readonly mean: number;
  readonly deviation: number;
  readonly count: number;
}

function sampleOf(lives: readonly number[]): LifeSample {
  const count = lives.length;
  const mean = lives.reduce((sum, life) => sum + life, 0) / count;
  const squares = lives.reduce((sum, life) => sum + (life - mean) ** 2, 0);
  return { mean, deviation: Math.sqrt(squares / (count - 1)), count };
}

/** Row: mean, low, high of the mean life: mean ± t·s/√k. @throws Problem "none" for too few lives */
export function lifeRange(lives: readonly number[], confidence = CONFIDENCE): [number, number, number] {
  if (lives.length < 2)
    none(`lives has ${lives.length === 1 ? "one life" : "no lives"}, too few for a range.`);
  const { mean, deviation, count } = sampleOf(lives);
  const half = (studentQuantile((1 + confidence) / 2, count - 1) * deviation) / Math.sqrt(count);
  if (mean - half <= 0)
    none(`lives has ${count} lives, too few for their scatter: the range would begin at 0 or below.`);
  return [mean, mean - half, mean + half];
}
lifeRange.formula = {
  source: "student",
  defaults: { confidence: CONFIDENCE },
  given: (lives: readonly number[], confidence = CONFIDENCE) => ({
    ...sampleOf(lives),
    t: studentQuantile((1 + confidence) / 2, lives.length - 1),
  }),
  steps: () => [
    { symbol: "halfRange", expression: "t * deviation / sqrt(count)", unit: "as the lives" },
    { symbol: "meanLife", expression: "mean", unit: "as the lives", result: 0 },
    { symbol: "low", expression: "mean - halfRange", unit: "as the lives", result: 1 },
    { symbol: "high", expression: "mean + halfRange", unit: "as the lives", result: 2 },
  ],
} satisfies Formula;

/** Row: edges, tools, both whole. */
export function toolsNeeded(parts: number, partsPerEdge: number, edges = 1, regrinds = 0): [number, number] {
  const edgesNeeded = wholeUp(parts / partsPerEdge);
  return [edgesNeeded, wholeUp(edgesNeeded / (edges * (regrinds + 1)))];
}
toolsNeeded.formula = {
  source: "derived",
  defaults: { edges: 1, regrinds: 0 },
  steps: () => [
    { symbol: "edgesNeeded", expression: "wholeup(parts / partsPerEdge)", unit: "edges" },
    { symbol: "tools", expression: "wholeup(edgesNeeded / (edges * (regrinds + 1)))", unit: "tools" },
  ],
} satisfies Formula;

/** Per hour: (price/years + price/2·interest + space + energy + upkeep)/(hours·uptime); costs per year. */
export function machineRate(
  price: number,
  years: number,
  hours: number,
  interest = 0,
  space = 0,
  energy = 0,
  upkeep = 0,
  uptime = 1,
): number {
  return (price / years + (price / 2) * interest + space + energy + upkeep) / (hours * uptime);
}
machineRate.formula = {
  source: "cost",
  defaults: { interest: 0, space: 0, energy: 0, upkeep: 0, uptime: 1 },
  steps: () => [
    {
      symbol: "costPerYear",
      expression: "price / years + price / 2 * interest + space + energy + upkeep",
      unit: "money",
    },
    { symbol: "machineRate", expression: "costPerYear / (hours * uptime)", unit: "per hour" },
  ],
} satisfies Formula;

/** Lower bound of Cpk, one-sided: Cpk − z·√(1/(9n) + Cpk²/(2(n − 1))). */
export function cpkBound(cpk: number, count: number, confidence = CONFIDENCE): number {
  if (count < 2) wrong(`count is ${shown(count)}. Enter how many parts were measured, 2 or more.`);
  const z = normalQuantile(confidence);
  return cpk - z * Math.sqrt(1 / (9 * count) + cpk ** 2 / (2 * (count - 1)));
}
cpkBound.formula = {
  source: "cpk-bound",
  defaults: { confidence: CONFIDENCE },
  given: (_cpk: number, _count: number, confidence = CONFIDENCE) => ({ z: normalQuantile(confidence) }),
  steps: () => [
    {
      symbol: "lowerBound",
      expression: "cpk - z * sqrt(1 / (9 * count) + cpk ^ 2 / (2 * (count - 1)))",
      unit: "",
    },
  ],
} satisfies Formula;
