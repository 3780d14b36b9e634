// data: metric drills, BS 328 (source key "drill-sizes"), diameters in 0.01 mm.

import type { DrillStep } from "./taper-shank-drills.ts";

// biome-ignore format: as they follow one another in a tenth
export const smallMetricDrills = [
  20, 22, 25, 28, 30, 32, 35, 38, 40, 42, 45, 48, 50, 52, 55, 58, 60, 62, 65, 68, 70, 72, 75, 78, 80, 82, 85, 88, 90, 92, 95, 98,
  100,
] as const;

export const metricDrills: readonly DrillStep[] = [
  { over: 100, upTo: 300, step: 5 },
  { over: 300, upTo: 1400, step: 10 },
  { over: 1400, upTo: 2500, step: 25 },
];
