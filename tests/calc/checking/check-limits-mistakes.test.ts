// tests: each mistake on limits of size without a class, made by hand on 12 +0.024/+0.006 and .5000 +.0010/+.0004.

import { expect, test } from "vitest";
import { readCallout } from "../../../src/calc/callouts/read-callout.ts";
import { checkLimits } from "../../../src/calc/checking/check-limits.ts";

const metric = readCallout("12 +0.024/+0.006", "callout", "mm");
const inch = readCallout(".5000 +.0010/+.0004", "callout", "in");

test.each<[string, number, number]>([
  ["sign turned", 12 - 0.024, 12 - 0.006],
  ["deviations ten times too large", 12.06, 12.24],
  ["deviations ten times too small", 12.0006, 12.0024],
  ["µm for mm: deviations 1000 times too large", 12 + 6, 12 + 24],
  // 0.006/25.4 and 0.024/25.4; 0.006·25.4 and 0.024·25.4.
  ["deviations in inches for mm", 12.000236, 12.000945],
  ["deviations in mm for inches", 12.1524, 12.6096],
  ["deviations for limits of size", 0.006, 0.024],
  // 12.006/25.4 and 12.024/25.4.
  ["limits in inches for mm", 0.472677, 0.473386],
])("%s", (mistake, lower, upper) => {
  expect(checkLimits(lower, upper, metric)).toBe(mistake);
  expect(checkLimits(upper, lower, metric)).toBe(`${mistake}, upper and lower exchanged`);
});

test("limits of an inch size in mm", () => {
  // .5004·25.4 and .5010·25.4.
  expect(checkLimits(12.71016, 12.7254, inch, "in")).toBe("limits in mm for inches");
  expect(checkLimits(0.5004, 0.5011, inch, "in")).toBe("lower limit ok, upper limit 0.0001 high");
  expect(checkLimits(0.5002, 0.501, inch, "in")).toBe("lower limit 0.0002 low, upper limit ok");
});

test("the mistakes of an inch class are those of its family", () => {
  // ANSI B4.1: hole of RC4 over .40 to .71 in is 0 to +1.0 thousandths, of RC3 0 to +.7, shaft of RC4 −.6 to −1.3.
  const callout = readCallout(".5000 RC4", "callout", "in");
  expect(checkLimits(0.5, 0.5007, callout, "in")).toMatch(/^RC[123] for RC4$/);
  expect(checkLimits(0.4987, 0.4994, callout, "in")).toBe("shaft of RC4: shaft for hole");
});

test("Δ is left out of holes K to ZC alone", () => {
  // ISO 286-1: Δ of IT7 over 10 to 18 mm is 7 µm; 12 P7 is −11 and −29, 12 H7 is +18 and 0.
  expect(checkLimits(11.964, 11.982, readCallout("12 P7", "callout", "mm"))).toBe("Δ left out");
  for (const className of ["H7", "h7"])
    expect(checkLimits(11.993, 12.011, readCallout(`12 ${className}`, "callout", "mm"))).not.toContain("Δ");
  expect(checkLimits(11.993, 12.011, readCallout("12 H7", "callout", "mm"))).toBe(
    "lower limit 0.007 low, upper limit 0.007 low",
  );
});

test("a limit is ok to 0.0005 mm and 0.00002 in", () => {
  const hole = readCallout("12 H7", "callout", "mm");
  const inchHole = readCallout(".5000 +.0010/0", "callout", "in");
  expect(checkLimits(12.0005, 12.0185, hole)).toBe("ok");
  expect(checkLimits(11.9995, 12.0175, hole)).toBe("ok");
  expect(checkLimits(12.0006, 12.018, hole)).toBe("lower limit 0.0006 high, upper limit ok");
  expect(checkLimits(12.0005, 12.0174, hole)).toBe("lower limit ok, upper limit 0.0006 low");
  expect(checkLimits(0.50002, 0.50102, inchHole, "in")).toBe("ok");
  expect(checkLimits(0.49998, 0.50098, inchHole, "in")).toBe("ok");
  expect(checkLimits(0.50003, 0.50102, inchHole, "in")).toBe("lower limit 0.00003 high, upper limit ok");
});
