// calc: Taylor's tool life v·T^n = C, from the user's own records. Speeds in the sheet's unit, lives in minutes.
// An edge is one life of a reamer, from grind to grind.

import type { Formula } from "../formula.ts";
import type { Units } from "../lengths.ts";
import { wholeDown } from "../numbers.ts";
import { none, shown, wrong } from "../problem.ts";

interface Sums {
  readonly meanLogSpeed: number;
  readonly meanLogLife: number;
  readonly speedSquares: number;
  readonly lifeSquares: number;
  readonly products: number;
}

/** Means of ln v and ln T, and their sums of squares and products about the means. */
function logSums(speeds: readonly number[], lives: readonly number[]): Sums {
  if (speeds.length < 2) {
    wrong(
      `speeds and lives hold ${speeds.length} ${speeds.length === 1 ? "pair" : "pairs"}. A fit needs two or more.`,
    );
  }
  if (speeds.every((speed) => speed === speeds[0])) {
    wrong(`speeds are all ${shown(speeds[0])}. A fit needs lives at two speeds or more.`);
  }
  const mean = (values: readonly number[]) =>
    values.reduce((sum, value) => sum + Math.log(value), 0) / values.length;
  const meanLogSpeed = mean(speeds);
  const meanLogLife = mean(lives);
  let speedSquares = 0;
  let lifeSquares = 0;
  let products = 0;
  for (let i = 0; i < speeds.length; i++) {
    const speed = Math.log(speeds[i]) - meanLogSpeed;
    const life = Math.log(lives[i]) - meanLogLife;
    speedSquares += speed * speed;
    lifeSquares += life * life;
    products += speed * life;
  }
  return { meanLogSpeed, meanLogLife, speedSquares, lifeSquares, products };
}

/** Row: n, C, r², by least squares of ln T on ln v. */
export function taylorFit(speeds: readonly number[], lives: readonly number[]): number[] {
  const { meanLogSpeed, meanLogLife, speedSquares, lifeSquares, products } = logSums(speeds, lives);
  const n = -speedSquares / products;
  if (!(n > 0 && n < 1)) {
    const found = Number.isFinite(n) ? `n is ${Number(n.toPrecision(3))}` : "the lives are all the same";
    none(`speeds and lives do not follow Taylor's law: ${found}. n lies between 0 and 1.`);
  }
  const fit = Math.min(1, (products * products) / (speedSquares * lifeSquares));
  return [n, Math.exp(meanLogSpeed + n * meanLogLife), fit];
}
taylorFit.formula = {
  source: "taylor",
  given: (speeds: readonly number[], lives: readonly number[]) => ({ ...logSums(speeds, lives) }),
  steps: () => [
    { symbol: "n", expression: "-speedSquares / products", unit: "" },
    { symbol: "C", expression: "exp(meanLogSpeed + n * meanLogLife)", unit: "m/min or ft/min" },
    { symbol: "rSquared", expression: "products ^ 2 / (speedSquares * lifeSquares)", unit: "" },
  ],
} satisfies Formula;

/** Life of an edge, min: (C/v)^(1/n). */
export function taylorLife(surfaceSpeed: number, n: number, c: number): number {
  return (c / surfaceSpeed) ** (1 / n);
}
taylorLife.formula = {
  source: "taylor",
  steps: () => [{ symbol: "life", expression: "(c / surfaceSpeed) ^ (1 / n)", unit: "min" }],
} satisfies Formula;

/** Cutting speed at which an edge lasts `life` minutes: C/T^n. */
export function taylorSpeed(life: number, n: number, c: number): number {
  return c / life ** n;
}
taylorSpeed.formula = {
  source: "taylor",
  steps: () => [{ symbol: "surfaceSpeed", expression: "c / life ^ n", unit: "m/min or ft/min" }],
} satisfies Formula;

/** Whole parts per edge; life in min, the time in the cut per part in s. */
export function partsPerEdge(life: number, cutTime: number): number {
  if (cutTime === 0) wrong("cutTime is empty or 0. Enter the seconds in the cut per part.");
  return wholeDown((60 * life) / cutTime);
}
partsPerEdge.formula = {
  source: "derived",
  steps: () => [{ symbol: "partsPerEdge", expression: "wholedown(60 * life / cutTime)", unit: "parts" }],
} satisfies Formula;

/**
 * Speed of minimum cost per part: C·{[n/(1−n)]·k·Co/(Co·Tt + Ct)}^n, Co the rate per minute, Tt the change in
 * minutes, k the time in the hole over the time in the cut. `changeTime` in s, `machineRate` per hour.
 */
export function economicSpeed(
  n: number,
  c: number,
  changeTime: number,
  edgeCost: number,
  machineRate: number,
  timeFactor = 1,
): number {
  if (machineRate === 0) wrong("machineRate is empty or 0. Enter the machine rate per hour.");
  const change = (machineRate * changeTime) / 3600 + edgeCost;
  if (change === 0)
    wrong("changeTime and edgeCost are both empty or 0. A change that costs nothing has no best speed.");
  return c * (((n / (1 - n)) * timeFactor * (machineRate / 60)) / change) ** n;
}
economicSpeed.formula = {
  source: "economic-speed",
  defaults: { timeFactor: 1 },
  steps: () => [
    { symbol: "changeCost", expression: "machineRate * changeTime / 3600 + edgeCost", unit: "money" },
    {
      symbol: "surfaceSpeed",
      expression: "c * (n / (1 - n) * timeFactor * (machineRate / 60) / changeCost) ^ n",
      unit: "m/min or ft/min",
    },
  ],
} satisfies Formula;

/** Speed of most parts per hour: C·{[n/(1−n)]·k/Tt}^n, Tt in minutes; `changeTime` in s. */
export function fastestSpeed(n: number, c: number, changeTime: number, timeFactor = 1): number {
  if (changeTime === 0) wrong("changeTime is empty or 0. A change that takes no time has no fastest speed.");
  return c * (((n / (1 - n)) * timeFactor * 60) / changeTime) ** n;
}
fastestSpeed.formula = {
  source: "economic-speed",
  defaults: { timeFactor: 1 },
  steps: () => [
    {
      symbol: "surfaceSpeed",
      expression: "c * (n / (1 - n) * timeFactor * 60 / changeTime) ^ n",
      unit: "m/min or ft/min",
    },
  ],
} satisfies Formula;

/** Row: cut time (s), life (min), parts per edge, cost per hole, at a cutting speed. */
export function costAtSpeed(
  surfaceSpeed: number,
  n: number,
  c: number,
  diameter: number,
  feedPerRev: number,
  depth: number,
  changeTime: number,
  edgeCost: number,
  machineRate: number,
  timeFactor = 1,
  units: Units = "mm",
): number[] {
  const cutTime =
    (60 * Math.PI * diameter * depth) / ((units === "mm" ? 1000 : 12) * surfaceSpeed * feedPerRev);
  if (cutTime === 0) wrong("diameter or depth is too small beside surfaceSpeed to compute with.");
  const life = taylorLife(surfaceSpeed, n, c);
  const parts = partsPerEdge(life, cutTime);
  if (parts < 1) {
    none(
      `surfaceSpeed is ${shown(surfaceSpeed)}. An edge would last ${Number(life.toPrecision(3))} min, less than one hole.`,
    );
  }
  const edge = (edgeCost + (machineRate * changeTime) / 3600) / parts;
  return [cutTime, life, parts, (machineRate * timeFactor * cutTime) / 3600 + edge];
}
costAtSpeed.formula = {
  source: "economic-speed",
  defaults: { timeFactor: 1 },
  steps: (units) => [
    {
      symbol: "cutTime",
      expression: `60 * pi * diameter * depth / (${units === "mm" ? 1000 : 12} * surfaceSpeed * feedPerRev)`,
      unit: "s",
    },
    { symbol: "life", expression: "(c / surfaceSpeed) ^ (1 / n)", unit: "min" },
    { symbol: "partsPerEdge", expression: "wholedown(60 * life / cutTime)", unit: "parts" },
    {
      symbol: "cost",
      expression:
        "machineRate * timeFactor * cutTime / 3600 + (edgeCost + machineRate * changeTime / 3600) / partsPerEdge",
      unit: "money",
    },
  ],
} satisfies Formula;
