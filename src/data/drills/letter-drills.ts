// data: letter drills, handbook drill tables (source key "drill-sizes"), diameters in 0.0001 in.

// biome-ignore format: a few to a line
export const letterDrills = {
  A: 2340, B: 2380, C: 2420, D: 2460, E: 2500, F: 2570, G: 2610,
  H: 2660, I: 2720, J: 2770, K: 2810, L: 2900, M: 2950, N: 3020,
  O: 3160, P: 3230, Q: 3320, R: 3390, S: 3480, T: 3580, U: 3680,
  V: 3770, W: 3860, X: 3970, Y: 4040, Z: 4130,
} as const;
