import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { defaultFlutes } from "../../../src/calc/cutting/flutes.ts";
import {
  depthRatio,
  feedFromTooth,
  feedPerRevolution,
  feedPerTooth,
  feedRate,
  spindleSpeed,
  surfaceSpeedOf,
} from "../../../src/calc/cutting/spindle.ts";
import { cuttingData, startingFeed, startingSpeed } from "../../../src/calc/cutting/starting-values.ts";
import {
  cycleTime,
  holeTime,
  hoursSaved,
  machinesNeeded,
  partsPerShift,
} from "../../../src/calc/cutting/time.ts";
import { power, torque } from "../../../src/calc/cutting/torque.ts";
import { materials } from "../../../src/data/materials/materials.ts";
import { goldenSheet } from "../../support/golden-sheet.ts";
import { golden, problemOf } from "../golden-file.ts";

golden("spindle-speed", spindleSpeed);
golden("surface-speed", surfaceSpeedOf);
golden("feed-rate", feedRate);
golden("feed-per-revolution", feedPerRevolution);
golden("feed-per-tooth", feedPerTooth);
golden("feed-from-tooth", feedFromTooth);
golden("depth-ratio", depthRatio);
goldenSheet("flutes", "FLUTES");
golden("starting-speed", startingSpeed);
golden("starting-feed", startingFeed);
golden("cutting-data", cuttingData);
golden("hole-time", holeTime);
golden("cycle-time", cycleTime);
golden("parts-per-shift", partsPerShift);
golden("machines-needed", machinesNeeded);
golden("hours-saved", hoursSaved);
golden("torque", torque);
golden("power", power);

const positive = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const near = (value: number, wanted: number) =>
  expect(Math.abs(value - wanted)).toBeLessThanOrEqual(1e-9 * Math.abs(wanted));

describe("properties", () => {
  test("rev/min and surface speed are inverse, in both units", () => {
    fc.assert(
      fc.property(
        positive(1, 500),
        positive(0.5, 100),
        fc.constantFrom("mm", "in"),
        (speed, diameter, units) => {
          near(surfaceSpeedOf(spindleSpeed(speed, diameter, undefined, units), diameter, units), speed);
        },
      ),
    );
  });

  test("feeds are inverse", () => {
    fc.assert(
      fc.property(
        positive(0.01, 2),
        positive(10, 9999),
        fc.integer({ min: 1, max: 20 }),
        (feed, rpm, flutes) => {
          near(feedPerRevolution(feedRate(feed, rpm), rpm), feed);
          near(feedFromTooth(feedPerTooth(feed, flutes), flutes), feed);
        },
      ),
    );
  });

  test("inch and metric agree", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...materials.filter(({ hssLow }) => hssLow !== null)),
        positive(0.05, 3),
        fc.constantFrom("HSS" as const, "carbide" as const),
        (material, inches, tool) => {
          near(startingSpeed(material, tool, "in") * 0.3048, startingSpeed(material, tool, "mm"));
          near(
            startingFeed(material, inches, tool, 6, "in") * 25.4,
            startingFeed(material, inches * 25.4, tool, 6),
          );
          near(spindleSpeed(100, inches, undefined, "in"), spindleSpeed(30.48, inches * 25.4));
          const metric = torque(material, inches * 25.4, inches * 25, 0.2, 6);
          const inch = torque(material, inches, (inches * 25) / 25.4, 0.2 / 25.4, 6, 45, "in");
          near(inch * 4.4482216152605 * 0.0254, metric);
          near(power(inch, 500, 1, "in") * 0.55 * 0.3048 * 4.4482216152605, power(metric, 500));
        },
      ),
    );
  });

  test("torque rises with diameter and feed, and falls with a larger drill", () => {
    const [material] = materials;
    fc.assert(
      fc.property(positive(5, 40), positive(0.05, 1), positive(1.001, 2), (diameter, feed, factor) => {
        const base = torque(material, diameter, diameter * 0.95, feed, 6);
        expect(torque(material, diameter * factor, diameter * 0.95, feed, 6)).toBeGreaterThan(base);
        expect(torque(material, diameter, diameter * 0.95, feed * factor, 6)).toBeGreaterThan(base);
        expect(torque(material, diameter, diameter * (0.95 + 0.04 * (factor - 1)), feed, 6)).toBeLessThan(
          base,
        );
      }),
    );
  });

  test("whole machines carry the load and one less would not", () => {
    fc.assert(
      fc.property(positive(1, 1e6), positive(1, 600), positive(100, 8000), (parts, cycle, hours) => {
        const [load, machines] = machinesNeeded(parts, cycle, hours);
        expect(machines).toBeGreaterThanOrEqual(load - 1e-9);
        expect(machines - 1).toBeLessThan(load);
      }),
    );
  });

  test.each([
    // 1.5·√D + 2, D in mm, to the nearest even number.
    [3, "HSS", 4],
    [10, "HSS", 6],
    [20, "HSS", 8],
    [30, "carbide", 10],
    [55, "brazed carbide", 14],
    [60, "coated carbide", 12],
    [60, "cermet", 12],
    [60, "PCD", 12],
    [60, "CBN", 12],
    [60, "guided blade", 1],
  ] as const)("the usual flutes of %d mm in %s are %d", (diameter, tool, flutes) => {
    expect(defaultFlutes(diameter, tool)).toBe(flutes);
    expect(defaultFlutes(diameter / 25.4, tool, "in")).toBe(flutes);
  });

  test("default flutes are even and do not fall with the diameter", () => {
    fc.assert(
      fc.property(positive(0.3, 200), positive(1, 2), (diameter, factor) => {
        const flutes = defaultFlutes(diameter);
        expect(flutes % 2).toBe(0);
        expect(defaultFlutes(diameter * factor)).toBeGreaterThanOrEqual(flutes);
      }),
    );
  });
});

describe("messages", () => {
  test("name the argument and what is accepted", () => {
    const hardened = materials.find(({ key }) => key === "hardened steel")!;
    expect(problemOf(() => startingSpeed(hardened))?.message).toMatch(/hardened steel.*carbide/);
    expect(problemOf(() => partsPerShift(0, 8))?.message).toMatch(/^cycleTime is empty or 0/);
    expect(problemOf(() => torque(hardened, 10, 11, 0.2, 6))?.message).toMatch(
      /^drill is 11, not smaller than the diameter 10/,
    );
  });
});
