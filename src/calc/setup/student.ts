// calc: quantiles of the normal distribution and of Student's t, by solving their distribution functions. Student's t by
// the regularized incomplete beta function (Abramowitz & Stegun, Handbook of Mathematical Functions, 26.5.8 and 26.7.1).

import { standardNormal } from "./normal.ts";

/** Where a rising function reaches `share`, by bisection to the last digits. */
function solve(rising: (x: number) => number, share: number): number {
  let [low, high] = [-1, 1];
  while (rising(low) > share) low *= 2;
  while (rising(high) < share) high *= 2;
  for (let step = 0; step < 200 && high - low > Number.EPSILON * Math.max(1, Math.abs(low)); step++) {
    const middle = (low + high) / 2;
    if (rising(middle) < share) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** The value that a standard normal one stays under in `share` of the cases, 0 < share < 1. */
export function normalQuantile(share: number): number {
  return solve(standardNormal, share);
}

/** The value that Student's t with `freedom` degrees stays under in `share` of the cases, 0 < share < 1. */
export function studentQuantile(share: number, freedom: number): number {
  return solve((t) => studentShare(t, freedom), share);
}

function studentShare(t: number, freedom: number): number {
  const tail = incompleteBeta(freedom / (freedom + t * t), freedom / 2, 1 / 2) / 2;
  return t > 0 ? 1 - tail : tail;
}

/** Regularized incomplete beta function by its continued fraction, evaluated by Lentz's method. */
function incompleteBeta(x: number, a: number, b: number): number {
  if (x > (a + 1) / (a + b + 2)) return 1 - incompleteBeta(1 - x, b, a);
  const front = Math.exp(a * Math.log(x) + b * Math.log(1 - x) - logBeta(a, b)) / a;
  const tiny = 1e-300;
  let c = 1;
  let d = 1 - ((a + b) * x) / (a + 1);
  d = 1 / (Math.abs(d) < tiny ? tiny : d);
  let fraction = d;
  for (let m = 1; m < 500; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    let change = 1;
    for (const term of [even, odd]) {
      d = 1 + term * d;
      d = 1 / (Math.abs(d) < tiny ? tiny : d);
      c = 1 + term / c;
      if (Math.abs(c) < tiny) c = tiny;
      change = c * d;
      fraction *= change;
    }
    if (Math.abs(change - 1) < 1e-16) break;
  }
  return front * fraction;
}

const logBeta = (a: number, b: number) => logGamma(a) + logGamma(b) - logGamma(a + b);

/** ln Γ(x) by Stirling's series, after shifting x above 10 (Abramowitz & Stegun, 6.1.40). */
function logGamma(x: number): number {
  let shift = 0;
  let z = x;
  while (z < 10) shift -= Math.log(z++);
  const inverse = 1 / (z * z);
  const series = (1 / 12 - inverse * (1 / 360 - inverse * (1 / 1260 - inverse / 1680))) / z;
  return shift + (z - 0.5) * Math.log(z) - z + Math.log(2 * Math.PI) / 2 + series;
}
