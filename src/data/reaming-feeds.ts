// data: starting feeds for reaming, and the starting speeds in carbide that the material table does not give.

/**
 * Diameter, in, and feed per revolution, in/rev: twice the middle of the drilling feeds of US Navy course 14345
 * (No. 80 to 1/8 .001–.002, to 1/4 .002–.004, to 1/2 .004–.007, to 1 .007–.015, over 1 .015–.025), set at about
 * the middle of each range of diameters.
 */
export const reamingFeeds: readonly (readonly [diameter: number, feed: number])[] = [
  [0.094, 0.003],
  [0.1875, 0.006],
  [0.375, 0.011],
  [0.75, 0.022],
  [1.5, 0.04],
];

/** Carbide from twice the lower to three times the upper HSS speed: US Navy course 14345 for drills, common practice for reamers. */
export const carbideSpeedFactors = { low: 2, high: 3 } as const;

/** Cutting speed in solid carbide, ft/min, of the materials without an HSS speed: common practice, no source. */
export const hardCarbideSpeeds: Readonly<Record<string, { readonly low: number; readonly high: number }>> = {
  "hardened steel": { low: 30, high: 60 },
  "austempered iron": { low: 40, high: 80 },
};
