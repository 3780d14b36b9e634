// tests: hand figures for limits of size, and which mistake is named.

import fc from "fast-check";
import { expect, test } from "vitest";
import { limits } from "../../../src/calc/callouts/limits.ts";
import { readCallout } from "../../../src/calc/callouts/read-callout.ts";
import { checkLimits } from "../../../src/calc/checking/check-limits.ts";
import { goldenSheet } from "../../support/golden-sheet.ts";
import { count } from "../../support/ticks.ts";

goldenSheet("check-limits", "CHECKLIMITS");

const callouts = ["12 H7", "20 P7", "35 JS6", "6 H8", "100 H7", "16 F7", "12 +0.018/-0.005", "40 K7"];

test("ok is said to the limits themselves and to no size more than 0.0005 mm off", () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...callouts),
      fc.integer({ min: -30, max: 30 }),
      fc.integer({ min: -30, max: 30 }),
      (text, low, high) => {
        const callout = readCallout(text, "callout", "mm");
        const [lower, upper] = limits(callout);
        const verdict = checkLimits(lower + low / 1e4, upper + high / 1e4, callout);
        expect(verdict === "ok").toBe(Math.abs(low) <= 5 && Math.abs(high) <= 5);
      },
    ),
  );
});

test.each([
  [12, 12.027, "lower limit ok, upper limit 0.009 high"],
  [11.5, 12.4, "lower limit 0.5 low, upper limit 0.382 high"],
])("%s and %s for 12 +0.018/0, which has no class to take for another", (lower, upper, verdict) => {
  expect(checkLimits(lower, upper, readCallout("12 +0.018/0", "callout", "mm"))).toBe(verdict);
});

test("a mistake made on a callout is named first", () => {
  for (const text of callouts) {
    const callout = readCallout(text, "callout", "mm");
    const [lower, upper] = limits(callout);
    expect(checkLimits(upper, lower, callout), text).toBe("upper and lower exchanged");
    const nominal = count(callout.nominal) / 1e8;
    const times = (factor: number) =>
      checkLimits(nominal + (lower - nominal) * factor, nominal + (upper - nominal) * factor, callout);
    expect(times(1000)).toMatch(/µm for mm/);
    expect(times(0.1)).toMatch(/ten times too small/);
  }
});
