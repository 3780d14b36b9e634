// tests: the written formula gives what the calculation gives in its variants too: other tools, units, what is left out.

import { expect, test } from "vitest";
import { defaultFlutes } from "../../src/calc/cutting/flutes.ts";
import { startingFeed, startingSpeed } from "../../src/calc/cutting/starting-values.ts";
import { findMaterial } from "../../src/calc/materials/find-material.ts";
import { sizeAt20 } from "../../src/calc/setup/measuring.ts";
import { runoutAt } from "../../src/calc/setup/runout.ts";
import { workedOut } from "./golden-file.ts";

const [steel, aluminum, iron] = ["C45", "6061", "GG25"].map((name) => findMaterial(name));

const calls: [string, any, readonly string[], readonly unknown[]][] = [
  ...(["mm", "in"] as const).flatMap((units): typeof calls => {
    const size = units === "mm" ? 12 : 0.5;
    const small = units === "mm" ? 4 : 0.15;
    const feed = ["material", "diameter", "tool", "flutes", "units"];
    const speed = ["material", "tool", "units"];
    const at20 = ["measured", "temperature", "material", "gaugeTemperature", "gaugeMaterial", "units"];
    return [
      ["STARTFEED", startingFeed, feed, [steel, size, "HSS", undefined, units]],
      ["STARTFEED", startingFeed, feed, [steel, size, "HSS", 4, units]],
      ["STARTFEED", startingFeed, feed, [aluminum, size, "PCD", undefined, units]],
      ["STARTFEED", startingFeed, feed, [aluminum, small, "PCD", 4, units]],
      ["STARTFEED", startingFeed, feed, [iron, small, "coated carbide", undefined, units]],
      ["STARTSPEED", startingSpeed, speed, [steel, "HSS", units]],
      ["STARTSPEED", startingSpeed, speed, [steel, "carbide", units]],
      ["STARTSPEED", startingSpeed, speed, [aluminum, "PCD", units]],
      ["FLUTES", defaultFlutes, ["diameter", "tool", "units"], [size, "HSS", units]],
      ["SIZEAT20", sizeAt20, at20, [size, 30, steel, undefined, undefined, units]],
      ["SIZEAT20", sizeAt20, at20, [size, 90, aluminum, 25, iron, units]],
    ];
  }),
  [
    "RUNOUTAT",
    runoutAt,
    ["reading1", "distance1", "reading2", "distance2", "distance", "angle1", "angle2"],
    [0.004, 20, 0.003, 120, 160, 20, 75],
  ],
  [
    "RUNOUTAT",
    runoutAt,
    ["reading1", "distance1", "reading2", "distance2", "distance"],
    [0.004, 20, -0.003, 120, 160],
  ],
];

test.each(calls)("%s %#", (_, calculation, names, args) => {
  const result = calculation(...args);
  const [worked] = workedOut(calculation.formula, names, args, 1);
  expect(Math.abs(worked - result)).toBeLessThanOrEqual(5.1e-8 + 1e-12 * Math.abs(result));
});
