// calc: the normal distribution function, by W. J. Cody's rational approximations of erfc
// (Rational Chebyshev approximations for the error function, Mathematics of Computation 23, 1969), good to 1e-15.

const NEAR_ABOVE = [
  0.18577770618460315, 3.1611237438705655, 113.86415415105016, 377.485237685302, 3209.3775891384694,
];
const NEAR_BELOW = [1, 23.601290952344122, 244.02463793444417, 1282.6165260773723, 2844.236833439171];
const MIDDLE_ABOVE = [
  2.1531153547440383e-8, 0.5641884969886701, 8.883149794388377, 66.11919063714163, 298.6351381974001,
  881.952221241769, 1712.0476126340707, 2051.0783778260716, 1230.3393547979972,
];
const MIDDLE_BELOW = [
  1, 15.744926110709835, 117.6939508913125, 537.1811018620099, 1621.3895745666903, 3290.7992357334597,
  4362.619090143247, 3439.3676741437216, 1230.3393548037495,
];
const FAR_ABOVE = [
  0.016315387137302097, 0.30532663496123236, 0.36034489994980445, 0.12578172611122926, 0.016083785148742275,
  0.0006587491615298378,
];
const FAR_BELOW = [
  1, 2.568520192289822, 1.8729528499234673, 0.5279051029514285, 0.06051834131244132, 0.0023352049762686918,
];

/** Highest power first. */
function polynomial(coefficients: readonly number[], x: number): number {
  let value = 0;
  for (const coefficient of coefficients) value = value * x + coefficient;
  return value;
}

/** 1 − erf(x), without loss of figures in the tail. */
export function complementaryError(x: number): number {
  const y = Math.abs(x);
  if (y <= 0.46875) return 1 - (x * polynomial(NEAR_ABOVE, y * y)) / polynomial(NEAR_BELOW, y * y);
  let tail: number;
  if (y <= 4) {
    tail = polynomial(MIDDLE_ABOVE, y) / polynomial(MIDDLE_BELOW, y);
  } else {
    const z = 1 / (y * y);
    tail = (1 / Math.sqrt(Math.PI) - (z * polynomial(FAR_ABOVE, z)) / polynomial(FAR_BELOW, z)) / y;
  }
  // exp(−y²) in two parts, the first exact, so that a large y² costs no figures.
  const head = Math.trunc(y * 16) / 16;
  tail *= Math.exp(-head * head) * Math.exp(-(y - head) * (y + head));
  return x < 0 ? 2 - tail : tail;
}

/** Share of a standard normal distribution below `x`. */
export function standardNormal(x: number): number {
  return complementaryError(-x / Math.SQRT2) / 2;
}
