// data: GOST 24853-81, the ISO/R 1938 scheme (source key "plug-gauges"): plain plug gauges for IT6 and IT7 holes to
// 180 mm, in µm. z: how far the middle of a new GO gauge lies inside the lower limit of the hole; y: how far a worn one
// may lie outside it; H: the tolerance of the gauge.

/** Over and up to and including, mm; z, y and H, µm. */
export type PlugGaugeRow = readonly [over: number, upTo: number, z: number, y: number, tolerance: number];

/** By the hole's standard tolerance grade. */
export const plugGauges: Readonly<Record<"6" | "7", readonly PlugGaugeRow[]>> = {
  6: [
    [0, 3, 1, 1, 1.2],
    [3, 6, 1.5, 1, 1.5],
    [6, 10, 1.5, 1, 1.5],
    [10, 18, 2, 1.5, 2],
    [18, 30, 2, 1.5, 2.5],
    [30, 50, 2.5, 2, 2.5],
    [50, 80, 2.5, 2, 3],
    [80, 120, 3, 3, 4],
    [120, 180, 4, 3, 5],
  ],
  7: [
    [0, 3, 1.5, 1.5, 2],
    [3, 6, 2, 1.5, 2.5],
    [6, 10, 2, 1.5, 2.5],
    [10, 18, 2.5, 2, 3],
    [18, 30, 3, 3, 4],
    [30, 50, 3.5, 3, 4],
    [50, 80, 4, 3, 5],
    [80, 120, 5, 4, 6],
    [120, 180, 6, 4, 8],
  ],
};
