// data: ISO 286-1:2010, Tables 2 to 5 (source key "iso-286-1"): fundamental deviations and Delta in µm.
// The tables for holes (A to ZC) print the numbers of those for shafts (a to zc) with the opposite sign, before
// Delta, so a row stands here once, without sign: a to h lie under the nominal size, k to zc over it; A to H over,
// K to ZC under. Rows are as long as the standard goes; null where it has no value.

/** The ends in mm of the finer steps that a to c and r to zc use: over the one before, up to and including this. */
// biome-ignore format: a row a line
export const finerSizeSteps = [3, 6, 10, 14, 18, 24, 30, 40, 50, 65, 80, 100, 120, 140, 160, 180, 200, 225, 250, 280, 315, 355, 400, 450, 500, 560, 630, 710, 800, 900, 1000, 1120, 1250, 1400, 1600, 1800, 2000, 2240, 2500, 2800, 3150] as const;

/** a to c and r to zc, by the finer steps. a and b are not for sizes up to and including 1 mm. */
// biome-ignore format: a row a line
export const deviationsByFinerStep: Readonly<Record<string, readonly (number | null)[]>> = {
  a: [270, 270, 280, 290, 290, 300, 300, 310, 320, 340, 360, 380, 410, 460, 520, 580, 660, 740, 820, 920, 1050, 1200, 1350, 1500, 1650],
  b: [140, 140, 150, 150, 150, 160, 160, 170, 180, 190, 200, 220, 240, 260, 280, 310, 340, 380, 420, 480, 540, 600, 680, 760, 840],
  c: [60, 70, 80, 95, 95, 110, 110, 120, 130, 140, 150, 170, 180, 200, 210, 230, 240, 260, 280, 300, 330, 360, 400, 440, 480],
  r: [10, 15, 19, 23, 23, 28, 28, 34, 34, 41, 43, 51, 54, 63, 65, 68, 77, 80, 84, 94, 98, 108, 114, 126, 132, 150, 155, 175, 185, 210, 220, 250, 260, 300, 330, 370, 400, 440, 460, 550, 580],
  s: [14, 19, 23, 28, 28, 35, 35, 43, 43, 53, 59, 71, 79, 92, 100, 108, 122, 130, 140, 158, 170, 190, 208, 232, 252, 280, 310, 340, 380, 430, 470, 520, 580, 640, 720, 820, 920, 1000, 1100, 1250, 1400],
  t: [null, null, null, null, null, null, 41, 48, 54, 66, 75, 91, 104, 122, 134, 146, 166, 180, 196, 218, 240, 268, 294, 330, 360, 400, 450, 500, 560, 620, 680, 780, 840, 960, 1050, 1200, 1350, 1500, 1650, 1900, 2100],
  u: [18, 23, 28, 33, 33, 41, 48, 60, 70, 87, 102, 124, 144, 170, 190, 210, 236, 258, 284, 315, 350, 390, 435, 490, 540, 600, 660, 740, 840, 940, 1050, 1150, 1300, 1450, 1600, 1850, 2000, 2300, 2500, 2900, 3200],
  v: [null, null, null, null, 39, 47, 55, 68, 81, 102, 120, 146, 172, 202, 228, 252, 284, 310, 340, 385, 425, 475, 530, 595, 660],
  x: [20, 28, 34, 40, 45, 54, 64, 80, 97, 122, 146, 178, 210, 248, 280, 310, 350, 385, 425, 475, 525, 590, 660, 740, 820],
  y: [null, null, null, null, null, 63, 75, 94, 114, 144, 174, 214, 254, 300, 340, 380, 425, 470, 520, 580, 650, 730, 820, 920, 1000],
  z: [26, 35, 42, 50, 60, 73, 88, 112, 136, 172, 210, 258, 310, 365, 415, 465, 520, 575, 640, 710, 790, 900, 1000, 1100, 1250],
  za: [32, 42, 52, 64, 77, 98, 118, 148, 180, 226, 274, 335, 400, 470, 535, 600, 670, 740, 820, 920, 1000, 1150, 1300, 1450, 1600],
  zb: [40, 50, 67, 90, 108, 136, 160, 200, 242, 300, 360, 445, 525, 620, 700, 780, 880, 960, 1050, 1200, 1300, 1500, 1650, 1850, 2100],
  zc: [60, 80, 97, 130, 150, 188, 218, 274, 325, 405, 480, 585, 690, 800, 900, 1000, 1150, 1250, 1350, 1550, 1700, 1900, 2100, 2400, 2600],
};

/** cd to h and k to p, by the steps of the standard tolerances. k is that of k4 to k7 and of K up to IT8. */
// biome-ignore format: a row a line
export const deviationsByStep: Readonly<Record<string, readonly number[]>> = {
  cd: [34, 46, 56],
  d: [20, 30, 40, 50, 65, 80, 100, 120, 145, 170, 190, 210, 230, 260, 290, 320, 350, 390, 430, 480, 520],
  e: [14, 20, 25, 32, 40, 50, 60, 72, 85, 100, 110, 125, 135, 145, 160, 170, 195, 220, 240, 260, 290],
  ef: [10, 14, 18],
  f: [6, 10, 13, 16, 20, 25, 30, 36, 43, 50, 56, 62, 68, 76, 80, 86, 98, 110, 120, 130, 145],
  fg: [4, 6, 8],
  g: [2, 4, 5, 6, 7, 9, 10, 12, 14, 15, 17, 18, 20, 22, 24, 26, 28, 30, 32, 34, 38],
  h: [0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0],
  k: [0, 1, 1, 1, 2, 2, 2, 3, 3, 4, 4, 4, 5, 0, 0, 0, 0, 0, 0, 0, 0],
  m: [2, 4, 6, 7, 8, 9, 11, 13, 15, 17, 20, 21, 23, 26, 30, 34, 40, 48, 58, 68, 76],
  n: [4, 8, 10, 12, 15, 17, 20, 23, 27, 31, 34, 37, 40, 44, 50, 56, 66, 78, 92, 110, 135],
  p: [6, 12, 15, 18, 22, 26, 32, 37, 43, 50, 56, 62, 68, 78, 88, 100, 120, 140, 170, 195, 240],
};

/** j: how far the lower limit deviation lies under the nominal size, by the steps of the standard tolerances. */
export const lowerDeviationsOfj: Readonly<Record<string, readonly number[]>> = {
  5: [2, 2, 2, 3, 4, 5, 7, 9, 11, 13, 16, 18, 20],
  6: [2, 2, 2, 3, 4, 5, 7, 9, 11, 13, 16, 18, 20],
  7: [4, 4, 5, 6, 8, 10, 12, 15, 18, 21, 26, 28, 32],
  8: [6],
};

/** J: how far the upper limit deviation lies over the nominal size, by the steps of the standard tolerances. */
export const upperDeviationsOfJ: Readonly<Record<string, readonly number[]>> = {
  6: [2, 5, 5, 6, 8, 10, 13, 16, 18, 22, 25, 29, 33],
  7: [4, 6, 8, 10, 12, 14, 18, 22, 26, 30, 36, 39, 43],
  8: [6, 10, 12, 15, 20, 24, 28, 34, 41, 47, 55, 60, 66],
};

/** Delta by grade and the steps of the standard tolerances to 500 mm, for K, M, N up to IT8 and P to ZC up to IT7. */
export const deltas: Readonly<Record<string, readonly number[]>> = {
  3: [0, 1, 1, 1, 1.5, 1.5, 2, 2, 3, 3, 4, 4, 5],
  4: [0, 1.5, 1.5, 2, 2, 3, 3, 4, 4, 4, 4, 5, 5],
  5: [0, 1, 2, 3, 3, 4, 5, 5, 6, 6, 7, 7, 7],
  6: [0, 3, 3, 3, 4, 5, 6, 7, 7, 9, 9, 11, 13],
  7: [0, 4, 6, 7, 8, 9, 11, 13, 15, 17, 20, 21, 23],
  8: [0, 6, 7, 9, 12, 14, 16, 19, 23, 26, 29, 32, 34],
};

/** The one class that departs from the Delta rule: upper limit deviation in µm of M6 over 250 up to 315 mm. */
export const exceptionM6 = { over: 250, upTo: 315, upper: -9 } as const;
