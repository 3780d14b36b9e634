// tests: the printed tables against the rules that they were once computed by. The standards round those, and correct
// them here and there, so a rule finds a slip of a digit or a row, not of a unit in the last place.

import { describe, expect, it } from "vitest";
import { inchSizeSteps, inchStandardTolerances } from "../../src/data/inch-fits/standard-tolerances.ts";
import {
  deviationsByFinerStep,
  deviationsByStep,
  finerSizeSteps,
} from "../../src/data/iso286/fundamental-deviations.ts";
import { sizeSteps, standardTolerances } from "../../src/data/iso286/standard-tolerances.ts";
import { plugGauges } from "../../src/data/plug-gauges.ts";
import { reamingFeeds } from "../../src/data/reaming-feeds.ts";

/** The geometric mean of a step's ends; the first step begins at `first`. */
function middle(steps: readonly number[], index: number, first: number): number {
  return Math.sqrt((steps[index - 1] ?? first) * steps[index]);
}

/** IT5 to IT18 in tolerance units. */
const multiples = [7, 10, 16, 25, 40, 64, 100, 160, 250, 400, 640, 1000, 1600, 2500];

// ISO 286-1:1988, Annex A; from memory.
describe("ISO 286 standard tolerances follow the tolerance unit", () => {
  const to500 = (size: number) => 0.45 * Math.cbrt(size) + 0.001 * size;
  const over500 = (size: number) => 0.004 * size + 2.1;

  function expected(grade: number, size: number): number {
    if (grade >= 5) return multiples[grade - 5] * (size < 500 ? to500(size) : over500(size));
    if (size > 500) return [2, 2.7, 3.7, 5][grade - 1] * over500(size);
    const [first, fifth] = [0.8 + 0.02 * size, 7 * to500(size)];
    return first * (fifth / first) ** ((grade - 1) / 4);
  }

  it.each(Array.from({ length: 18 }, (_, index) => index + 1))("IT%d", (grade) => {
    standardTolerances[String(grade)].forEach((width, index) => {
      const size = middle(sizeSteps, index, 1);
      const share = grade < 5 && size < 500 ? 0.22 : index === 0 ? 0.16 : index === 1 ? 0.1 : 0.065;
      expect(Math.abs(width / expected(grade, size) - 1), `to ${sizeSteps[index]}`).toBeLessThan(share);
    });
  });

  it.each([
    ["01", 0.3, 0.008],
    ["0", 0.5, 0.012],
  ])("IT%s", (grade, base, slope) => {
    standardTolerances[grade].forEach((width, index) => {
      const rule = base + slope * middle(sizeSteps, index, 1);
      expect(Math.abs(width - rule), `to ${sizeSteps[index]}`).toBeLessThan(0.4);
    });
  });

  it("five grades coarser is ten times as wide from IT6 on, but for IT11 over 3 to 6 mm", () => {
    const odd: string[] = [];
    for (let grade = 6; grade <= 13; grade++)
      standardTolerances[String(grade)].forEach((width, index) => {
        if (standardTolerances[String(grade + 5)][index] !== 10 * width)
          odd.push(`IT${grade + 5} to ${sizeSteps[index]}`);
      });
    expect(odd).toEqual(["IT11 to 6"]);
  });
});

// As above: ISO 286-1:1988, Annex A; from memory.
describe("ISO 286 fundamental deviations follow their formulas", () => {
  const tolerance = (grade: number, size: number) =>
    standardTolerances[String(grade)][sizeSteps.findIndex((end) => end >= size)];
  const p = (size: number) => (size < 500 ? tolerance(7, size) + 2.5 : 0.072 * size + 37.8);
  const s = (size: number) => (size < 50 ? tolerance(8, size) + 2.5 : tolerance(7, size) + 0.4 * size);
  const over = (grade: number, slope: number) => (size: number) => tolerance(grade, size) + slope * size;

  const rules: Record<string, readonly [from: number, rule: (size: number) => number]> = {
    a: [1, (size) => (size < 120 ? 265 + 1.3 * size : 3.5 * size)],
    b: [1, (size) => (size < 160 ? 140 + 0.85 * size : 1.8 * size)],
    c: [40, (size) => 95 + 0.8 * size],
    d: [1, (size) => 16 * size ** 0.44],
    e: [1, (size) => 11 * size ** 0.41],
    f: [1, (size) => 5.5 * size ** 0.41],
    g: [1, (size) => 2.5 * size ** 0.34],
    k: [1, (size) => (size < 500 ? 0.6 * Math.cbrt(size) : 0)],
    m: [3, (size) => (size < 500 ? tolerance(7, size) - tolerance(6, size) : 0.024 * size + 12.6)],
    n: [3, (size) => (size < 500 ? 5 * size ** 0.34 : 0.04 * size + 21)],
    p: [3, p],
    r: [3, (size) => Math.sqrt(p(size) * s(size))],
    s: [1, s],
    t: [24, over(7, 0.63)],
    u: [10, over(7, 1)],
    v: [14, over(7, 1.25)],
    x: [10, over(7, 1.6)],
    y: [18, over(7, 2)],
    z: [10, over(7, 2.5)],
    za: [10, over(8, 3.15)],
    zb: [6, over(9, 4)],
    zc: [6, over(10, 5)],
  };

  it.each(Object.entries(rules))("%s", (letter, [from, rule]) => {
    const finer = letter in deviationsByFinerStep;
    const steps = finer ? finerSizeSteps : sizeSteps;
    const row = finer ? deviationsByFinerStep[letter] : deviationsByStep[letter];
    let compared = 0;
    row.forEach((deviation, index) => {
      const size = middle(steps, index, 1);
      if (deviation === null || (steps[index - 1] ?? 1) < from) return;
      compared++;
      const room = Math.max(letter < "p" ? 1.2 : 3.2, 0.05 * rule(size));
      expect(Math.abs(deviation - rule(size)), `${letter} to ${steps[index]}`).toBeLessThan(room);
    });
    expect(compared).toBeGreaterThan(12);
  });

  it.each([
    ["cd", "c", "d"],
    ["ef", "e", "f"],
    ["fg", "f", "g"],
  ])("%s is the geometric mean of %s and %s", (letter, one, other) => {
    [3, 6, 10].forEach((end, index) => {
      const at = (name: string) =>
        deviationsByFinerStep[name]?.[(finerSizeSteps as readonly number[]).indexOf(end)] ??
        deviationsByStep[name][index];
      expect(Math.abs(at(letter) - Math.sqrt(at(one) * at(other))), `to ${end}`).toBeLessThan(1);
    });
  });
});

// ISO/R 1938: the tolerance of a plug gauge is IT2 for a hole of IT6 and IT3 for one of IT7; from memory.
describe("plug gauges", () => {
  it.each([
    ["6", "2"],
    ["7", "3"],
  ] as const)("for IT%s have a tolerance of IT%s", (hole, gauge) => {
    expect(plugGauges[hole].map(([, , , , tolerance]) => tolerance)).toEqual(
      standardTolerances[gauge].slice(0, plugGauges[hole].length),
    );
    expect(plugGauges[hole].map(([, upTo]) => upTo)).toEqual(sizeSteps.slice(0, plugGauges[hole].length));
  });
});

// ANSI B4.1, the tolerance unit in thousandths of an inch, 0.052·∛D + 0.001·D; from memory.
describe("ANSI B4.1 standard tolerances follow the tolerance unit over 0.12 to 15.75 in", () => {
  it.each([5, 6, 7, 8, 9, 10, 11, 12, 13])("grade %d", (grade) => {
    inchStandardTolerances[String(grade)].slice(1, 12).forEach((width, index) => {
      const size = middle(inchSizeSteps, index + 1, 0);
      const rule = multiples[grade - 5] * (0.052 * Math.cbrt(size) + 0.001 * size);
      expect(Math.abs(width / 1000 / rule - 1), `to ${inchSizeSteps[index + 1]}`).toBeLessThan(0.15);
    });
  });
});

// US Navy course 14345, drilling feeds by range of diameters, in/rev.
describe("reaming feeds", () => {
  it("are twice the middle of the drilling feeds", () => {
    const drilling = [
      [0.001, 0.002],
      [0.002, 0.004],
      [0.004, 0.007],
      [0.007, 0.015],
      [0.015, 0.025],
    ] as const;
    expect(reamingFeeds.map(([, feed]) => feed)).toEqual(
      drilling.map(([low, high]) => Number((2 * ((low + high) / 2)).toFixed(4))),
    );
  });
});
