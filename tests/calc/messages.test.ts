// tests: what is said where a calculation has no result, word for word: the argument, what came, what is asked for.

import { describe, expect, test } from "vitest";
import { readCallout } from "../../src/calc/callouts/read-callout.ts";
import { convert } from "../../src/calc/checking/convert.ts";
import { compare } from "../../src/calc/cost/compare.ts";
import { breakEven, payback } from "../../src/calc/cost/part-cost.ts";
import { costAtSpeed, economicSpeed, taylorFit } from "../../src/calc/cost/tool-life.ts";
import { evaluate } from "../../src/calc/evaluate.ts";
import { inchFit } from "../../src/calc/fits/ansi-b41.ts";
import { limitDeviations } from "../../src/calc/fits/iso286.ts";
import { findMaterial } from "../../src/calc/materials/find-material.ts";
import { Problem, shown } from "../../src/calc/problem.ts";
import { sharedReamers } from "../../src/calc/reamers/shared-reamers.ts";
import { reamerSize } from "../../src/calc/reamers/stepped-series.ts";
import { toolFor } from "../../src/calc/setup/choosing.ts";
import { runout } from "../../src/calc/setup/runout.ts";
import { drillName } from "../../src/calc/stock/drill-name.ts";
import { findTool } from "../../src/calc/tools.ts";
import { problemOf } from "./golden-file.ts";

const mm = (text: string) => readCallout(text, "callout", "mm");
const MM = 1e8;

describe("messages", () => {
  test.each<[string, "wrong" | "none", () => unknown]>([
    [
      'fit "RC10" is not one of ANSI B4.1: RC1–RC9, LC1–LC11, LT1–LT6, LN1–LN3, FN1–FN5',
      "wrong",
      () => inchFit(25.4 * MM, "RC10"),
    ],
    ["size 0 in is not a size: write one over 0", "wrong", () => inchFit(0, "RC4")],
    ["size 0 mm is not a size: write one over 0", "wrong", () => limitDeviations(0, "H7")],
    ['tool "ceramic" is not known: write HSS or carbide', "wrong", () => findTool("ceramic")],
    [
      'to "furlong" is not a unit known here: write mm, um, m, in, thou, tenth, uin, ft, m/min, sfm, m/s, mm/rev, ipr, mm/min, mm/s, ipm, in/s, Nm, Ncm, lbf-in, lbf-ft, kW, hp, PS, C, F, MPa, psi, cm3/min, in3/min',
      "wrong",
      () => convert(1, "mm", "furlong"),
    ],
    [
      'from "mm" (length) and to "Nm" (torque) differ in kind: give two units of one kind',
      "wrong",
      () => convert(1, "mm", "Nm"),
    ],
    [
      'from "ipm" to "ipr" needs the rpm: use FEEDRATE or FEEDPERREV',
      "wrong",
      () => convert(1, "ipm", "ipr"),
    ],
    [
      'from "ipm" (feed rate) and to "mm" (length) differ in kind: give two units of one kind',
      "wrong",
      () => convert(1, "ipm", "mm"),
    ],
    ["diameter 0.1 is under the smallest metric drill, 0.2 mm", "none", () => drillName(0.1)],
    [
      "diameter 0.001 is under the smallest inch drill, 0.0059 in",
      "none",
      () => drillName(0.001, undefined, "in"),
    ],
    [
      "speeds and lives do not follow Taylor's law: the lives are all the same, and n lies between 0 and 1",
      "none",
      () => taylorFit([10, 20], [5, 5]),
    ],
    [
      "speeds and lives do not follow Taylor's law: n is 1, and n lies between 0 and 1",
      "none",
      () => taylorFit([10, 20], [20, 10]),
    ],
    [
      "machineRate is 0 or blank: give the rate of the machine per hour",
      "wrong",
      () => economicSpeed(0.25, 60, 120, 40, 0),
    ],
    [
      "diameter or depth is too small against surfaceSpeed to compute with",
      "wrong",
      () => costAtSpeed(1e300, 0.25, 60, 1e-300, 0.3, 1, 120, 40, 90),
    ],
    ["savingPerPart is 0: without a saving nothing is paid back", "none", () => payback(1000, 0, 10)],
    [
      "proposedCost is more per part and proposedFixed is less: cheaper only below 100 parts",
      "none",
      () => breakEven(300, 2, 200, 3),
    ],
    [
      "the proposed costs equal the present ones: no quantity separates them",
      "none",
      () => breakEven(100, 2, 100, 2),
    ],
    [
      "proposedCost equals presentCost and proposedFixed is more: the two costs are parallel and never meet",
      "none",
      () => breakEven(100, 2, 200, 2),
    ],
    [
      "proposedCost is more per part and proposedFixed is not less: the proposal is dearer at every quantity",
      "none",
      () => breakEven(100, 2, 100, 3),
    ],
    [
      "proposed has the scrap rate 1: give a share from 0 to under 1",
      "wrong",
      () => compare([60, 60, 20, 100, 60, 0, 0], [60, 60, 20, 100, 60, 0, 1]),
    ],
    [
      "present has the scrap rate -0.1: give a share from 0 to under 1",
      "wrong",
      () => compare([60, 60, 20, 100, 60, 0, -0.1], [60, 60, 20, 100, 60, 0, 0]),
    ],
    [
      "no 0.01 step fits: grind to 9.998–10.001 or order an H5 reamer",
      "none",
      () => reamerSize(mm("10 H5"), 0.004),
    ],
    ["no 0.01 step fits: grind to 10.007–10.01 or order a G5 reamer", "none", () => reamerSize(mm("10 G5"))],
    ["no 0.01 step fits: grind to 10.002–10.005", "none", () => reamerSize(mm("10 +0.006/0"))],
    [
      "no 1e-12 step fits: grind to 12.008–12.015 or order an H7 reamer",
      "none",
      () => reamerSize(mm("12 H7"), 0, 1e-12),
    ],
    [
      "12 JS1: callout leaves a reamer 11.9986 to 11.9996, under the hole's minimum 11.9994: the tolerance is too narrow for the rule",
      "none",
      () => sharedReamers([mm("12 H7"), mm("12 JS1 ")], 0),
    ],
    [
      "at0 + at180 and at90 + at270 differ by 0.01: the surface or the indicator is not sound, so clean both and read again",
      "wrong",
      () => runout(0.01, 0, 0, 0),
    ],
    ["over 6 at position 2 is not less than upTo 6", "wrong", () => toolFor(5, [3, 6], [6, 6], ["a", "b"])],
    ["size 19 lies in no range of over and upTo", "none", () => toolFor(19, [3, 6], [6, 18], ["a", "b"])],
  ])("%s", (message, kind, call) => {
    const problem = problemOf(call);
    expect(problem).toBeInstanceOf(Problem);
    expect([problem!.name, problem!.kind]).toEqual(["Problem", kind]);
    expect(problem!.message).toBe(message);
  });
});

describe("a material that is not known", () => {
  test("the keys that share a word with it are offered, or all of them", () => {
    expect(problemOf(() => findMaterial("blue iron"))?.message).toMatch(
      /^material "blue iron" is not known: write one of [^,]*iron(?:, [^,]*iron)*$/,
    );
    const all = problemOf(() => findMaterial("xyzzy"))!.message;
    expect(all.split(", ").length).toBeGreaterThan(10);
    expect(problemOf(() => findMaterial("12"))?.message.split(", ").length).toBe(all.split(", ").length);
  });
});

describe("a mistake in a written formula", () => {
  test.each([
    ["1 $ 2", 'cannot read "1 $ 2" at 1'],
    ["(1", '")" expected in "(1"'],
    ["1 +", 'a value expected in "1 +"'],
    ["* 2", 'a value expected in "* 2"'],
    ["2 * )", 'a value expected in "2 * )"'],
    ["turn(1)", 'no function "turn"'],
    ["1 2", '"2" not expected in "1 2"'],
    ["rate", 'no value for "rate"'],
    ["constructor", 'no value for "constructor"'],
  ])("%s", (expression, message) => {
    expect(() => evaluate(expression, {})).toThrow(new Error(message));
  });

  test("blanks around it are none", () => {
    expect(evaluate("  1 + 1  ", {})).toBe(2);
  });
});

describe("what came, as a message quotes it", () => {
  test.each<[unknown, string]>([
    [12.5, "12.5"],
    [true, "TRUE"],
    [Number.NaN, "NAN"],
    ["12 H7", '"12 H7"'],
    [" 12\t\nH7\u0000\u007f ", '"12 H7"'],
    ["a".repeat(40), `"${"a".repeat(40)}"`],
    ["a".repeat(41), `"${"a".repeat(40)}…"`],
    [{}, "a cell of another kind"],
    [null, '"null"'],
    [undefined, '"undefined"'],
  ])("%j", (value, text) => {
    expect(shown(value)).toBe(text);
  });
});

describe("a comparison", () => {
  test("has a header and ten lines in order", () => {
    const rows = compare([60, 60, 20, 100, 60, 1, 0.02], [50, 60, 30, 100, 60, 1, 0.01], 1000);
    expect(rows.map(([line]) => line)).toEqual([
      "line",
      "machine time",
      "edge",
      "edge change",
      "other operations",
      "scrap",
      "cost per part",
      "saving, % of present",
      "parts per hour",
      "cost per year",
    ]);
    expect(rows[0]).toEqual(["line", "present", "proposed", "saving"]);
    expect(rows[7].slice(1, 3)).toEqual(["", ""]);
    expect(rows[8]).toEqual(["parts per hour", 60, 72, ""]);
    expect(compare([60, 60, 20, 100, 60, 1, 0.02], [50, 60, 30, 100, 60, 1, 0.01]).at(-1)).toEqual([
      "cost per year",
      "",
      "",
      "",
    ]);
  });

  test("without an edge or a change no parts per edge are asked for", () => {
    const rows = compare([60, 60, 0, 0, 0, 0, 0], [30, 60, 0, 0, 0, 0, 0]);
    expect(rows.slice(1, 8).map((row) => row.slice(1))).toEqual([
      [1, 0.5, 0.5],
      [0, 0, 0],
      [0, 0, 0],
      [0, 0, 0],
      [0, 0, 0],
      [1, 0.5, 0.5],
      ["", "", 50],
    ]);
  });
});
