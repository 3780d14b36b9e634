// tests: refusals exactly at their limit, just inside it, and just outside.

import { describe, expect, test } from "vitest";
import { acceptanceLimits } from "../../src/calc/callouts/limits.ts";
import { readCallout } from "../../src/calc/callouts/read-callout.ts";
import { upperDeviation } from "../../src/calc/fits/iso286.ts";
import { toolFor } from "../../src/calc/setup/choosing.ts";
import { drillName } from "../../src/calc/stock/drill-name.ts";
import { problemOf } from "./golden-file.ts";

const messageOf = (call: () => unknown) => problemOf(call)?.message;

test("ISO 286 goes from over 0 to 3150 mm", () => {
  // IT7 over 2500 to 3150 mm is 210 µm.
  expect(upperDeviation(3150, "H7")).toBe(0.21);
  expect(messageOf(() => upperDeviation(3150.1, "H7"))).toBe("size is 3150.1 mm. ISO 286 ends at 3150 mm.");
  expect(messageOf(() => upperDeviation(0, "H7"))).toBe("size is 0 mm. Enter a size over 0.");
  expect(upperDeviation(0.001, "H7")).toBe(0.01);
  // Each step includes its upper end: IT7 is 10 µm to 3 mm, 12 to 6, 15 to 10.
  for (const [size, width] of [
    [3, 0.01],
    [3.0001, 0.012],
    [6, 0.012],
    [6.0001, 0.015],
  ])
    expect(upperDeviation(size, "H7")).toBe(width);
});

describe("a tool list", () => {
  const choose = (size: number) => toolFor(size, [20, 10], [30, 20], ["second", "first"]);
  test.each([
    [10, "first"],
    [10.5, "first"],
    [20, "first"],
    [20.0000000005, "first"],
    [20.00001, "second"],
    [30, "second"],
  ])("covers %d: %s", (size, entry) => {
    expect(choose(size)).toBe(entry);
  });
  test.each([9.99, 30.01])("does not cover %d", (size) => {
    expect(problemOf(() => choose(size))).toMatchObject({
      kind: "none",
      message: `size is ${size}. No range of over and upTo covers it.`,
    });
  });
  test("has ranges that rise, and the first of two that overlap", () => {
    expect(messageOf(() => toolFor(5, [0, 20], [10, 20], ["a", "b"]))).toBe(
      "over is 20 in position 2, not less than upTo 20.",
    );
    expect(toolFor(5, [0, 0], [10, 10], ["a", "b"])).toBe("a");
    expect(toolFor(10, [0, 10], [10, 20], ["a", "b"])).toBe("a");
    // Only the lowest range includes its lower end.
    expect(problemOf(() => toolFor(20, [0, 20], [10, 30], ["a", "b"]))?.kind).toBe("none");
  });
});

test("metric drills go from 0.2 mm to 100, and 100 serves up to the next step of 1 mm", () => {
  expect(drillName(0.2)).toEqual(["0.2", 0.2]);
  expect(drillName(100.999)).toEqual(["100", 100]);
  expect(problemOf(() => drillName(0.199))).toMatchObject({
    kind: "none",
    message: "diameter is 0.199. The smallest metric drill is 0.2 mm.",
  });
  expect(problemOf(() => drillName(101))).toMatchObject({
    kind: "none",
    message: "diameter is 101. The table of metric drills ends at 100 mm.",
  });
});

test("acceptance limits may meet, not cross", () => {
  // 10 H7 is 15 µm wide.
  const callout = readCallout("10 H7", "callout", "mm");
  expect(acceptanceLimits(callout, 0.0075)).toEqual([10.0075, 10.0075]);
  expect(messageOf(() => acceptanceLimits(callout, 0.0076))).toBe(
    "uncertainty is 0.0076, which leaves nothing of 10 to 10.015. Measure with less uncertainty.",
  );
});
