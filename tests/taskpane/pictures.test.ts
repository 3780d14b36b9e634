// tests: the pictures as data: sizes, places and texts. Limits of 12 H7: ISO 286-1:2010, IT7 over 10 to 18 mm is 18 µm.
// Reamer: ISO 522, 15 % of 18 is 2.7, up to 3 µm; 35 % is 6.3, up to 7 µm. Curve: v·T^n = C by hand.

import { describe, expect, test } from "vitest";
import { niceSteps, type Scene, spread } from "../../src/papers/pictures/scene.ts";
import { costCurve, curveFacts, curveFigures } from "../../src/taskpane/pictures/cost-curve.ts";
import { holeFacts, holeFigures, holePicture } from "../../src/taskpane/pictures/hole-picture.ts";

type Rect = Extract<Scene["shapes"][number], { kind: "rect" }>;
const rects = (scene: Scene) => scene.shapes.filter((shape): shape is Rect => shape.kind === "rect");
const texts = (scene: Scene) =>
  scene.shapes.filter((shape) => shape.kind === "text").map((shape) => (shape as { text: string }).text);

describe("the hole", () => {
  const facts = holeFacts("12 H7", "mm");

  test("has the sizes of hole, reamer and wear", () => {
    expect(facts).toMatchObject({
      nominal: 12,
      lower: 12,
      upper: 12.018,
      reamerMinimum: 12.008,
      reamerMaximum: 12.015,
      wornOut: 12,
    });
    const rows = new Map(holeFigures(facts).rows.map(([what, size]) => [what, size]));
    expect(rows.get("Tolerance of the hole")).toBe("0.018");
    expect(rows.get("Wear allowance of the smallest new reamer")).toBe("0.008");
  });

  test("is drawn to scale", () => {
    const scene = holePicture(facts);
    const [hole, reamer, free, wear] = rects(scene);
    expect(reamer.height / hole.height).toBeCloseTo(7 / 18, 9);
    expect(free.height / hole.height).toBeCloseTo(3 / 18, 9);
    expect(wear.height / hole.height).toBeCloseTo(8 / 18, 9);
    expect(free.y).toBeCloseTo(hole.y, 9);
    expect(wear.y + wear.height).toBeCloseTo(hole.y + hole.height, 9);
    expect(texts(scene)).toEqual(
      expect.arrayContaining(["12.018", "12.000", "12.015 new, maximum", "wear allowance"]),
    );
    expect(scene.description).toContain("from 12.000 mm to 12.018 mm");
    expect(scene.description).toContain("from 12.008 mm to 12.015 mm");
  });

  test("what the reamer cuts over moves it down, and the size at which it is worn out", () => {
    const over = holeFacts("12 H7", "mm", 0.002);
    expect(over).toMatchObject({ reamerMinimum: 12.006, reamerMaximum: 12.013, wornOut: 11.998 });
    expect(holePicture(over).description).toContain("cut 0.002 mm over");
  });

  test("in inches, and with the zone off the nominal size", () => {
    const inch = holeFacts(".5000 +.0005/-.0000", "in");
    // 15 % of .0005 is .000075, up to .0001; 35 % is .000175, up to .0002.
    expect(inch).toMatchObject({ lower: 0.5, upper: 0.5005, reamerMaximum: 0.5004, reamerMinimum: 0.5002 });
    const off = holePicture(holeFacts("14 F7", "mm"));
    expect(off.shapes.some((shape) => shape.kind === "line" && shape.dash)).toBe(false);
    for (const { y, height } of rects(off)) {
      expect(y).toBeGreaterThanOrEqual(0);
      expect(y + height).toBeLessThanOrEqual(off.height);
    }
  });

  test("what can't be read or leaves no reamer is told in the words of the calculation", () => {
    expect(() => holeFacts("M12", "mm")).toThrow(/thread/);
    expect(() => holeFacts("12 h7", "mm")).toThrow(/shaft/);
    expect(() => holeFacts("12 mm +0.001/0", "mm")).toThrow(/too narrow/);
  });
});

describe("the curve", () => {
  const inputs = {
    n: 0.25,
    c: 60,
    diameter: 12,
    feedPerRev: 0.3,
    depth: 30,
    changeTime: 120,
    edgeCost: 40,
    machineRate: 90,
    timeFactor: 2,
    units: "mm",
  } as const;
  const facts = curveFacts(inputs);

  test("marks the speeds of minimum cost and of most holes", () => {
    // n/(1−n) = 1/3; Co = 1.5 a minute; change 2 min: (1/3·2·1.5/(1.5·2+40))^¼·60 and (1/3·2/2)^¼·60.
    expect(facts.minimumCost.speed).toBeCloseTo(60 * (1 / 43) ** 0.25, 9);
    expect(facts.fastest.speed).toBeCloseTo(60 * (1 / 3) ** 0.25, 9);
  });

  test("no point of it costs less than the minimum, but for the whole holes of an edge", () => {
    const least = Math.min(...facts.points.map(({ cost }) => cost));
    expect(facts.minimumCost.cost).toBeLessThanOrEqual(least * 1.01);
    expect(facts.points[0].cost).toBeGreaterThan(facts.minimumCost.cost * 1.1);
    expect(facts.fastest.cost).toBeGreaterThan(facts.minimumCost.cost);
  });

  test("stays inside its frame, with both marks named", () => {
    const scene = costCurve(facts);
    for (const shape of scene.shapes) {
      if (shape.kind !== "curve") continue;
      for (const [x, y] of shape.points) {
        expect(x).toBeGreaterThanOrEqual(0);
        expect(x).toBeLessThanOrEqual(scene.width);
        expect(y).toBeGreaterThanOrEqual(0);
        expect(y).toBeLessThanOrEqual(scene.height);
      }
    }
    expect(texts(scene)).toEqual(
      expect.arrayContaining(["minimum cost: 23.4 m/min", "most holes per hour: 45.6 m/min"]),
    );
    const figures = curveFigures(facts);
    expect(figures.rows.map((row) => row[4])).toEqual(
      expect.arrayContaining(["minimum cost", "most holes per hour"]),
    );
    const speeds = figures.rows.map(([speed]) => Number(speed));
    expect(speeds).toEqual([...speeds].sort((a, b) => a - b));
  });

  test("figures that give no curve are told by name", () => {
    expect(() => curveFacts({ ...inputs, n: 1.2 })).toThrow(/^n is 1.2/);
    expect(() => curveFacts({ ...inputs, depth: 0 })).toThrow(/^depth is 0/);
    expect(() => curveFacts({ ...inputs, changeTime: 0 })).toThrow(/changeTime/);
    expect(() => curveFacts({ ...inputs, depth: 1e6 })).toThrow(/less than one hole/);
  });
});

test("steps of a scale are round and cover the span", () => {
  expect(niceSteps(0, 1.5, 5)).toEqual([0, 0.5, 1, 1.5]);
  expect(niceSteps(11.7, 57, 5)).toEqual([20, 30, 40, 50]);
  expect(niceSteps(0, 0.07, 5)).toEqual([0, 0.02, 0.04, 0.06]);
});

test("labels that lie close are moved apart, those that do not stay", () => {
  expect(spread([10, 100], 14)).toEqual([10, 100]);
  const [first, second, third] = spread([50, 52, 53], 14);
  expect(second - first).toBeGreaterThanOrEqual(13.9);
  expect(third - second).toBeGreaterThanOrEqual(13.9);
  const [low, high] = spread([60, 50], 14);
  expect(low).toBeGreaterThan(high);
});
