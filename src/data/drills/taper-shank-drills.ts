// data: the longer drills with taper shanks, by step (source key "taper-shank-drills", values from memory): metric
// ISO 235 and DIN 345, inch ANSI B94.11M. Each series runs on from the table of the smaller drills.

export interface DrillStep {
  /** Size over which the step holds, and the last size it reaches. */
  readonly over: number;
  readonly upTo: number;
  readonly step: number;
}

/** mm. */
export const longMetricDrills: readonly DrillStep[] = [
  { over: 25, upTo: 32, step: 0.25 },
  { over: 32, upTo: 50, step: 0.5 },
  { over: 50, upTo: 100, step: 1 },
];

/** in. */
export const longInchDrills: readonly DrillStep[] = [
  { over: 1, upTo: 1.75, step: 1 / 64 },
  { over: 1.75, upTo: 2.25, step: 1 / 32 },
  { over: 2.25, upTo: 3.5, step: 1 / 16 },
];
