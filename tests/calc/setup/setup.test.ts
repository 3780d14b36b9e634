import fc from "fast-check";
import { mean, standardDeviation as populationDeviation, sampleStandardDeviation } from "simple-statistics";
import { describe, expect, test } from "vitest";
import { erf } from "../../../src/build/mathjs.ts";
import { readCallout } from "../../../src/calc/callouts/read-callout.ts";
import { chipPath, toolFor } from "../../../src/calc/setup/choosing.ts";
import { capability, gaugeShare, inspect, inTolerance } from "../../../src/calc/setup/inspection.ts";
import { sizeAt20, stackUp, vBlock } from "../../../src/calc/setup/measuring.ts";
import { complementaryError, standardNormal } from "../../../src/calc/setup/normal.ts";
import { runout, runoutCheck } from "../../../src/calc/setup/runout.ts";
import { materials } from "../../../src/data/materials/materials.ts";
import { goldenSheet } from "../../support/golden-sheet.ts";
import { golden, problemOf } from "../golden-file.ts";

golden("runout", runout);
goldenSheet("runout-at", "RUNOUTAT");
goldenSheet("screw-moves", "SCREWMOVES");
golden("runout-check", runoutCheck);
golden("v-block", vBlock);
golden("stack-up", stackUp);
golden("inspect", inspect);
golden("capability", capability, new Set(["measured"]));
golden("in-tolerance", inTolerance);
golden("gauge-share", gaugeShare);
golden("size-at-20", sizeAt20);

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const hole = readCallout("10 H7", "callout", "mm");

describe("run-out", () => {
  test("a set of readings turned by one mark turns the high side by 90° and changes nothing else", () => {
    fc.assert(
      fc.property(between(0.001, 0.05), between(0, 360), between(-1, 1), (eccentricity, high, offset) => {
        const at = (mark: number) => offset + eccentricity * Math.cos(((mark - high) * Math.PI) / 180);
        const [total, angle, move] = runout(at(0), at(90), at(180), at(270));
        const [turnedTotal, turnedAngle] = runout(at(-90), at(0), at(90), at(180));
        expect(total).toBeCloseTo(2 * eccentricity, 6);
        expect(move).toBeCloseTo(eccentricity, 6);
        expect(turnedTotal).toBeCloseTo(total, 6);
        const turn = (((turnedAngle - angle - 90) % 360) + 540) % 360;
        expect(turn).toBeCloseTo(180, 1);
        expect(angle).toBeGreaterThanOrEqual(0);
        expect(angle).toBeLessThan(360);
      }),
    );
  });

  test("an angle a hair under 0 is not 360", () => {
    const [, angle] = runout(0.01, -1e-9, -0.01, 1e-9);
    expect(angle).toBe(0);
  });

  test("unsound readings are refused with the difference", () => {
    expect(problemOf(() => runout(0.01, 0, 0.01, 0))?.message).toMatch(
      /differ by 0\.02\. Clean the tool and the indicator/,
    );
  });
});

describe("unsound readings", () => {
  test("opposite sums may differ by a quarter of the run-out, and by the least amount whatever it is", () => {
    // Eccentricity 0.05: half of it is 0.025.
    expect(runout(0.05, 0.01, -0.05, 0.01)[0]).toBeCloseTo(0.1, 9);
    expect(runout(0.05, 0.0125, -0.05, 0.0125)[0]).toBeCloseTo(0.1, 9);
    expect(problemOf(() => runout(0.05, 0.0128, -0.05, 0.0128))?.kind).toBe("wrong");
    // 0.002 mm and 0.0001 in are let pass without any run-out.
    expect(runout(0.002, 0, 0, 0)[0]).toBeCloseTo(0.002, 9);
    expect(runout(0.002, 0.001, 0, 0)[0]).toBeGreaterThan(0);
    expect(problemOf(() => runout(0.0011, 0, 0.0011, 0))?.kind).toBe("wrong");
    expect(runout(0.00005, 0, 0.00005, 0, "in")[0]).toBe(0);
    expect(problemOf(() => runout(0.0001, 0, 0.0001, 0, "in"))?.kind).toBe("wrong");
  });
});

describe("V-block", () => {
  test("reading and diameter are in proportion, and the apex height of a set master comes back", () => {
    fc.assert(
      fc.property(between(2, 100), fc.constantFrom(3, 5, 7, 9, 11), (diameter, flutes) => {
        // The lower two flutes sit on the faces, the upper stands straight up.
        const beta = Math.PI / flutes;
        const half = Math.PI / 2 - beta;
        const reading = (diameter / 2) * (1 + Math.cos(beta) + Math.sin(beta) / Math.tan(half));
        expect(vBlock(reading, flutes)).toBeCloseTo(diameter, 6);
      }),
    );
  });

  test("advice", () => {
    expect(problemOf(() => vBlock(15, 4))?.message).toMatch(/^flutes is 4\. .*micrometer/);
    expect(problemOf(() => vBlock(15, 3, 90))?.message).toMatch(/3 flutes sit in a V of 60°/);
  });
});

describe("normal distribution", () => {
  test("erf agrees with another library", () => {
    for (let x = -5.9; x < 6; x += 0.0173) {
      expect(Math.abs(1 - complementaryError(x) - erf(x))).toBeLessThan(1e-14);
    }
  });

  test.each([
    [1.2815515655446004, 0.9],
    [1.6448536269514722, 0.95],
    [1.959963984540054, 0.975],
    [2.5758293035489004, 0.995],
    [3.090232306167813, 0.999],
  ])("published quantile %f is at %f", (quantile, share) => {
    expect(standardNormal(quantile)).toBeCloseTo(share, 14);
    expect(standardNormal(-quantile)).toBeCloseTo(1 - share, 14);
  });

  test.each([
    [-3, 1.349898031630095e-3],
    [-5, 2.866515718791939e-7],
    [-8, 6.220960574271785e-16],
  ])("the tail keeps its figures at %f", (x, share) => {
    expect(Math.abs(standardNormal(x) / share - 1)).toBeLessThan(1e-12);
  });
});

describe("measured holes", () => {
  test("capability agrees with a statistics library, in mm and in inches", () => {
    const size = fc.integer({ min: -40, max: 40 }).map((micrometres) => 10.0075 + micrometres / 1e4);
    fc.assert(
      fc.property(fc.array(size, { minLength: 2, maxLength: 30 }), (sizes) => {
        fc.pre(populationDeviation(sizes) > 1e-6);
        const deviation = sampleStandardDeviation(sizes);
        const average = mean(sizes);
        const [cp, cpk, givenMean, givenDeviation] = capability(sizes, hole);
        expect(cp).toBeCloseTo(0.015 / 6 / deviation, 6);
        expect(cpk).toBeCloseTo(Math.min(10.015 - average, average - 10) / 3 / deviation, 6);
        expect(givenMean).toBeCloseTo(average, 6);
        expect(givenDeviation).toBeCloseTo(deviation, 6);
      }),
    );
  });

  test("shares in tolerance rise as the deviation falls", () => {
    fc.assert(
      fc.property(between(0.0005, 0.01), between(1.01, 3), (deviation, factor) => {
        expect(inTolerance(10.0075, deviation, hole)).toBeGreaterThanOrEqual(
          inTolerance(10.0075, deviation * factor, hole),
        );
      }),
    );
  });

  test.each([
    // Q(z), the upper tail of the normal distribution, to be had beyond either limit.
    [9.92, 6.220960574271785e-16],
    [10.095, 6.220960574271785e-16],
  ])("a process 8 deviations off keeps the figures of its small share: mean %f", (mean, share) => {
    expect(inTolerance(mean, 0.01, hole) / share).toBeCloseTo(1, 4);
  });

  test("no spread has no index", () => {
    expect(problemOf(() => capability([10.01, 10.01], hole))?.message).toMatch(
      /^measured has 2 equal sizes of 10.01/,
    );
    expect(problemOf(() => capability([], hole))?.message).toMatch(/^measured has no sizes/);
  });

  test("a part at its gauge's temperature and of its metal measures true", () => {
    fc.assert(
      fc.property(
        between(1, 500),
        between(-20, 80),
        fc.constantFrom(...materials),
        (size, temperature, material) => {
          expect(sizeAt20(size, temperature, material, temperature, material)).toBeCloseTo(size, 6);
          const celsius = sizeAt20(size, temperature, material);
          expect(
            sizeAt20(size / 25.4, temperature * 1.8 + 32, material, undefined, undefined, "in") * 25.4,
          ).toBeCloseTo(celsius, 5);
        },
      ),
    );
  });

  test("a stack-up is never more than the sum nor less than the largest", () => {
    fc.assert(
      fc.property(fc.array(between(0, 1), { minLength: 1, maxLength: 9 }), (parts) => {
        const total = stackUp(parts);
        expect(total).toBeLessThanOrEqual(parts.reduce((sum, part) => sum + part, 0) + 1e-7);
        expect(total).toBeGreaterThanOrEqual(Math.max(...parts) - 1e-7);
      }),
    );
  });
});

describe("chip path", () => {
  test("is free and not interrupted unless it is said", () => {
    for (const kind of ["through", "blind"] as const) {
      expect(chipPath(kind)).toBe(chipPath(kind, false, false));
      expect(chipPath(kind, false)).toBe(chipPath(kind, false, false));
      expect(chipPath(kind, false, true)).not.toBe(chipPath(kind));
    }
  });

  test("a left-hand helix only where the chips can leave forward", () => {
    for (const interrupted of [false, true]) {
      expect(chipPath("through", false, interrupted)).toMatch(/^flush forward: left-hand helix/);
      expect(chipPath("through", true, interrupted)).toBe(chipPath("blind", false, interrupted));
      expect(chipPath("blind", false, interrupted)).toMatch(/never left-hand helix/);
    }
    expect(chipPath("through", false, true)).toMatch(/at least one edge always bearing/);
  });
});

describe("the shop's own tool list, at the ends of its ranges", () => {
  test.each([
    [3, "a"],
    [3 - 5e-10, "a"],
    [6, "a"],
    [6 + 5e-10, "a"],
    [6 + 1e-6, "b"],
    [10, "b"],
    [10 + 5e-10, "b"],
  ])("%f", (size, entry) => {
    expect(toolFor(size, [3, 6], [6, 10], ["a", "b"])).toBe(entry);
    expect(toolFor(size, [6, 3], [10, 6], ["b", "a"])).toBe(entry);
  });
  test("beyond them there is none", () => {
    for (const size of [3 - 1e-6, 10 + 1e-6])
      expect(problemOf(() => toolFor(size, [6, 3], [10, 6], ["b", "a"]))?.kind).toBe("none");
  });
});

describe("the shop's own tool list", () => {
  const over = [3, 6, 10];
  const upTo = [6, 10, 18];
  const entries = ["A", "B", "C"];
  test.each([
    [3, "A"],
    [6, "A"],
    [6.001, "B"],
    [10, "B"],
    [18, "C"],
  ])("%f takes %s", (size, entry) => {
    expect(toolFor(size, over, upTo, entries)).toBe(entry);
  });

  test("of two that overlap the first; outside none; a range upside down is wrong", () => {
    expect(toolFor(5, [3, 4], [6, 8], ["first", "second"])).toBe("first");
    expect(problemOf(() => toolFor(2.9, over, upTo, entries))?.kind).toBe("none");
    expect(problemOf(() => toolFor(18.001, over, upTo, entries))?.kind).toBe("none");
    expect(problemOf(() => toolFor(5, [3, 8], [6, 7], ["a", "b"]))?.message).toMatch(
      /^over is 8 in position 2/,
    );
  });
});
