// tests: the reamer for the hole.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { limitsOf } from "../../../src/calc/callouts/callout.ts";
import { readCallout } from "../../../src/calc/callouts/read-callout.ts";
import type { Units } from "../../../src/calc/lengths.ts";
import { fromTicks } from "../../../src/calc/lengths.ts";
import { Problem } from "../../../src/calc/problem.ts";
import {
  beforePlating,
  cuttingOversize,
  reamerLimits,
  wearAllowance,
} from "../../../src/calc/reamers/reamer-limits.ts";
import { sharedReamers } from "../../../src/calc/reamers/shared-reamers.ts";
import { reamerSize } from "../../../src/calc/reamers/stepped-series.ts";
import { goldenSheet } from "../../support/golden-sheet.ts";
import { count } from "../../support/ticks.ts";
import { workedOut } from "../golden-file.ts";

goldenSheet("reamer-limits", "REAMERLIMITS");
goldenSheet("reamer-size", "REAMERSIZE");
goldenSheet("wear-allowance", "WEARALLOWANCE");
goldenSheet("cuts-over", "CUTSOVER");
goldenSheet("pre-plate", "PREPLATE");

const hole = (text: string, units: Units = "mm") => readCallout(text, "callout", units);
const sizes = fc.integer({ min: 110, max: 9999 }).map((hundredths) => hundredths / 100);
const classes = fc.constantFrom(
  "H6",
  "H7",
  "H8",
  "H9",
  "H10",
  "N7",
  "P7",
  "F7",
  "F8",
  "G7",
  "K7",
  "JS7",
  "R7",
  "E9",
  "M6",
);
const toleranced = fc.oneof(
  fc.tuple(sizes, classes).map(([size, className]) => `${size} mm ${className}`),
  fc
    .tuple(sizes, fc.integer({ min: -40, max: 40 }), fc.integer({ min: 3, max: 120 }))
    .map(([size, lower, width]) => {
      const signed = (um: number) => `${um < 0 ? "-" : "+"}${(Math.abs(um) / 1000).toFixed(3)}`;
      return `${size} mm ${signed(lower)}/${signed(lower + width)}`;
    }),
);

/** What a call gives, or undefined where there is no answer. */
function answer<T>(call: () => T): T | undefined {
  try {
    return call();
  } catch (thrown) {
    if (thrown instanceof Problem && thrown.kind === "none") return undefined;
    throw thrown;
  }
}

describe("the window of a new reamer", () => {
  test("lies in the hole, with at least 15 % under its maximum and 35 % deep", () => {
    fc.assert(
      fc.property(toleranced, (text) => {
        const callout = hole(text);
        const window = answer(() => reamerLimits(callout));
        if (!window) return;
        const limits = limitsOf(callout, "mm");
        const [lower, upper] = [count(limits.lower), count(limits.upper)];
        const [least, greatest] = window.map((length) => Math.round(length * 1e8)) as [number, number];
        expect(least).toBeGreaterThanOrEqual(lower);
        const tolerance = upper - lower;
        const reserve = upper - greatest;
        expect(reserve).toBeGreaterThanOrEqual(0.15 * tolerance - 1);
        expect(reserve).toBeLessThan(0.15 * tolerance + 1e5);
        expect(greatest - least).toBeGreaterThanOrEqual(0.35 * tolerance - 1);
        expect(greatest - least).toBeLessThan(0.35 * tolerance + 1e5);
      }),
      { numRuns: 300 },
    );
  });

  test("is lowered by what the reamer cuts over", () => {
    fc.assert(
      fc.property(toleranced, fc.integer({ min: -20, max: 40 }), (text, over) => {
        const plain = answer(() => reamerLimits(hole(text)));
        const lowered = answer(() => reamerLimits(hole(text), over / 1000));
        if (!plain) expect(lowered).toBeUndefined();
        else
          expect(lowered!.map((limit) => Math.round(limit * 1e6))).toEqual(
            plain.map((limit) => Math.round(limit * 1e6) - over * 1000),
          );
      }),
      { numRuns: 100 },
    );
  });

  test("is the same reamer in a sheet in inches: to the rounding of a class, or exactly", () => {
    fc.assert(
      fc.property(toleranced, (text) => {
        const callout = hole(text);
        const metric = answer(() => reamerLimits(callout, 0, "mm"));
        const inch = answer(() => reamerLimits(callout, 0, "in"));
        expect(inch === undefined).toBe(metric === undefined);
        const off = callout.iso ? 0.000005 * 25.4 : 0;
        inch?.forEach((limit, index) => {
          expect(Math.abs(limit * 25.4 - metric![index])).toBeLessThanOrEqual(off + 2e-6);
        });
        if (inch) expect((inch[1] - inch[0]) * 25.4).toBeCloseTo(metric![1] - metric![0], 5);
      }),
      { numRuns: 200 },
    );
  });

  test("new reamer at its greatest has the most to wear, at the hole's minimum nothing", () => {
    fc.assert(
      fc.property(toleranced, (text) => {
        const callout = hole(text);
        const window = answer(() => reamerLimits(callout));
        if (!window) return;
        const [most, less] = [wearAllowance(callout, window[1]), wearAllowance(callout, window[0])];
        expect(most).toBeGreaterThan(less);
        expect(less).toBeGreaterThanOrEqual(0);
        expect(wearAllowance(callout, fromTicks(limitsOf(callout, "mm").lower, "mm"))).toBe(0);
      }),
      { numRuns: 100 },
    );
  });
});

describe("the stepped reamer", () => {
  test("is the largest step whose band lies in the window", () => {
    fc.assert(
      fc.property(toleranced, fc.constantFrom(0.01, 0.001, 0.005, 0.02), (text, step) => {
        const callout = hole(text);
        const window = answer(() => reamerLimits(callout));
        if (!window) return;
        const band = (nominal: number) => (nominal <= 5.5 ? 0.004 : 0.005);
        const fits = (nominal: number) =>
          nominal >= window[0] - 1e-9 && nominal + band(nominal) <= window[1] + 1e-9;
        const candidates: number[] = [];
        for (let k = Math.floor(window[0] / step) - 1; k * step <= window[1] + step; k++)
          candidates.push(Math.round(k * step * 1e6) / 1e6);
        const wanted = candidates.filter(fits).at(-1);
        expect(answer(() => reamerSize(callout, 0, step))).toBe(wanted);
      }),
      { numRuns: 300 },
    );
  });
});

describe("the stepped inch reamer", () => {
  test("is the largest step whose band of .0002 in lies in the window, in the coarser series if there is one", () => {
    const size = fc.integer({ min: 600, max: 9000 });
    const width = fc.integer({ min: 4, max: 40 });
    fc.assert(
      fc.property(size, width, fc.integer({ min: -9, max: 9 }), (size, width, cutsOver) => {
        const callout = hole(`${(size / 1e4).toFixed(4)} +${(width / 1e4).toFixed(4)}/0`, "in");
        // In 0.00001 in: shares of 15 % and 35 %, each rounded up to 5.
        const share = (percent: number) => 5 * Math.ceil((10 * width * percent) / 500);
        const upper = 10 * (size + width) - share(15) - cutsOver;
        const lower = upper - share(35);
        const steps = [50, 10].map((step) => step * Math.floor((upper - 20) / step));
        const isNone = share(15) + share(35) > 10 * width;
        const wanted = isNone ? undefined : steps.find((nominal) => nominal >= lower);
        expect(answer(() => reamerSize(callout, cutsOver / 1e5, undefined, "in"))).toBe(
          wanted && wanted / 1e5,
        );
      }),
      { numRuns: 300 },
    );
  });
});

describe("before plating", () => {
  test("plating the limits gives the callout back", () => {
    fc.assert(
      fc.property(
        toleranced,
        fc.integer({ min: 1, max: 60 }),
        fc.integer({ min: 0, max: 5 }),
        fc.constantFrom(1, 0.5),
        (text, thick, scatter, buildUp) => {
          const callout = hole(text);
          const before = answer(() => beforePlating(callout, thick / 1000, scatter / 1000, buildUp));
          if (!before) return;
          const shrunk = (size: number, thickness: number) => size - (2 * buildUp * thickness) / 1000;
          const { lower, upper } = limitsOf(callout, "mm");
          expect(shrunk(before[0], thick + scatter)).toBeCloseTo(count(lower) / 1e8, 6);
          expect(shrunk(before[1], thick - scatter)).toBeCloseTo(count(upper) / 1e8, 6);
        },
      ),
      { numRuns: 100 },
    );
  });
});

describe("what a reamer cuts over", () => {
  test("does not depend on the order of the holes", () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 11_900, max: 12_100 }), { minLength: 1, maxLength: 12 }),
        (holes) => {
          const lengths = holes.map((um) => um / 1000);
          expect(cuttingOversize(lengths.toReversed(), 12)).toEqual(cuttingOversize(lengths, 12));
        },
      ),
    );
  });
});

describe("reamers shared by a family of holes", () => {
  const groups = (texts: readonly string[], cutsOver = 0, units: Units = "mm") =>
    sharedReamers(
      texts.map((text) => hole(text, units)),
      cutsOver,
      units,
    );

  test("two windows with 0.003 mm in common need two reamers", () => {
    // 12 H7 12.008–12.015, 12 H8 12.012–12.022.
    expect(groups(["12 H7", "12 H8"])).toEqual([
      [12.008, 12.015, 1, "12 H7"],
      [12.012, 12.022, 1, "12 H8"],
    ]);
  });

  test("with 0.005 mm in common they share one, and the holes are counted", () => {
    // 12 +0.020/0 12.010–12.017.
    expect(groups(["4X 12 H7", "12 +0.020/0"])).toEqual([[12.01, 12.015, 5, "4X 12 H7; 12 +0.020/0"]]);
  });

  test("exactly 0.004 mm in common is enough", () => {
    // 12 +0.023/+0.003: shares 3 and 7: 12.013–12.020; with 12 +0.020/0 (12.010–12.017) 0.004 in common.
    expect(groups(["12 +0.023/+0.003", "12 +0.020/0"])).toEqual([
      [12.013, 12.017, 2, "12 +0.023/+0.003; 12 +0.020/0"],
    ]);
  });

  test("a window narrower than that is shared whole", () => {
    // 12 +0.008/0: shares 2 and 3: 12.003–12.006. 12 +0.014/-0.012: shares 4 and 10: 12.000–12.010.
    expect(groups(["12 +0.014/-0.012", "12 +0.008/0"])).toEqual([
      [12.003, 12.006, 2, "12 +0.014/-0.012; 12 +0.008/0"],
    ]);
  });

  test("in inches 0.00015 in is enough, and what they cut over lowers all", () => {
    // .5000 +.0005/0: .5002–.5004; .5000 +.00055/0: shares .0001 and .0002: .50025–.50045.
    expect(groups([".5000 +.0005/0", ".5000 +.00055/0"], 0.0001, "in")).toEqual([
      [0.50015, 0.5003, 2, ".5000 +.0005/0; .5000 +.00055/0"],
    ]);
  });

  /** The windows in µm, as the rule gives them. */
  const windowsOf = (texts: readonly string[]) =>
    texts.map(
      (text) => reamerLimits(hole(text)).map((length) => Math.round(length * 1e4)) as [number, number],
    );

  function isShared(windows: readonly (readonly [number, number])[]): boolean {
    const common =
      Math.min(...windows.map(([, greatest]) => greatest)) - Math.max(...windows.map(([least]) => least));
    return common >= Math.min(40, ...windows.map(([least, greatest]) => greatest - least));
  }

  /** The fewest groups of all ways to part a family, by trying them all. */
  function fewest(windows: readonly (readonly [number, number])[]): number {
    let best = windows.length;
    const place = (next: number, parts: (readonly [number, number])[][]): void => {
      if (parts.length >= best) return;
      if (next === windows.length) {
        if (parts.every(isShared)) best = parts.length;
        return;
      }
      for (const part of parts) {
        part.push(windows[next]);
        place(next + 1, parts);
        part.pop();
      }
      place(next + 1, [...parts, [windows[next]]]);
    };
    place(0, []);
    return best;
  }

  const family = fc.array(
    fc
      .tuple(fc.integer({ min: 0, max: 30 }), fc.integer({ min: 3, max: 40 }))
      .map(([lower, width]) => `12 +${((lower + width) / 1000).toFixed(3)}/+${(lower / 1000).toFixed(3)}`),
    { minLength: 1, maxLength: 7 },
  );

  test("no way to part the family has fewer", () => {
    fc.assert(
      fc.property(family, (texts) => {
        const found = groups(texts);
        const windows = windowsOf(texts);
        expect(found.length).toBe(fewest(windows));
        const used: string[] = [];
        for (const [least, greatest, count, names] of found as [number, number, number, string][]) {
          const members = names.split("; ");
          used.push(...members);
          expect(count).toBe(members.length);
          const own = members.map((name) => windows[texts.indexOf(name)]);
          expect(isShared(own)).toBe(true);
          expect(Math.round(least * 1e4)).toBe(Math.max(...own.map(([lower]) => lower)));
          expect(Math.round(greatest * 1e4)).toBe(Math.min(...own.map(([, upper]) => upper)));
        }
        expect(used.sort()).toEqual([...texts].sort());
        expect(found.map(([least]) => least)).toEqual(
          found.map(([least]) => least as number).sort((a, b) => a - b),
        );
      }),
      { numRuns: 400 },
    );
  });

  test("the order of the callouts does not change the windows", () => {
    fc.assert(
      fc.property(family, (texts) => {
        const windows = (all: readonly string[]) => groups(all).map((line) => line.slice(0, 3));
        expect(windows(texts.toReversed())).toEqual(windows(texts));
      }),
      { numRuns: 200 },
    );
  });
});

describe("the written formula", () => {
  test("comes to what the calculation gives, in either unit", () => {
    fc.assert(
      fc.property(
        toleranced,
        fc.integer({ min: -10, max: 10 }),
        fc.constantFrom<Units>("mm", "in"),
        (text, over, units) => {
          const args = [hole(text), over / 10_000, units] as const;
          const results = answer(() => reamerLimits(...args));
          if (!results) return;
          const worked = workedOut(reamerLimits.formula, ["callout", "cutsOver", "units"], args, 2);
          results.forEach((result, index) => {
            expect(Math.abs(worked[index] - result)).toBeLessThanOrEqual(1.1e-7);
          });
        },
      ),
      { numRuns: 200 },
    );
  });
});
