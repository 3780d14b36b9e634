// tests: what is said where a calculation has no result, word for word: the argument, what came, what is asked for.

import { describe, expect, test } from "vitest";
import { readCallout } from "../../src/calc/callouts/read-callout.ts";
import { convert } from "../../src/calc/checking/convert.ts";
import { compare } from "../../src/calc/cost/compare.ts";
import { breakEven, payback } from "../../src/calc/cost/part-cost.ts";
import { costAtSpeed, economicSpeed, taylorFit } from "../../src/calc/cost/tool-life.ts";
import { evaluate } from "../../src/calc/evaluate.ts";
import { inchFit } from "../../src/calc/fits/ansi-b41.ts";
import { clearance } from "../../src/calc/fits/clearance.ts";
import { gradeFor, limitDeviations } from "../../src/calc/fits/iso286.ts";
import { plugGaugeFor } from "../../src/calc/fits/plug-gauge.ts";
import { findMaterial } from "../../src/calc/materials/find-material.ts";
import { Problem, shown } from "../../src/calc/problem.ts";
import { reamerLimits } from "../../src/calc/reamers/reamer-limits.ts";
import { sharedReamers } from "../../src/calc/reamers/shared-reamers.ts";
import { reamerSize } from "../../src/calc/reamers/stepped-series.ts";
import { toolFor } from "../../src/calc/setup/choosing.ts";
import { runout } from "../../src/calc/setup/runout.ts";
import { drillName } from "../../src/calc/stock/drill-name.ts";
import { findTool } from "../../src/calc/tools.ts";
import { inTicks } from "../support/ticks.ts";
import { problemOf } from "./golden-file.ts";

const mm = (text: string) => readCallout(text, "callout", "mm");

describe("messages", () => {
  test.each<[string, "wrong" | "none", () => unknown]>([
    [
      'fit "RC10" is not one of ANSI B4.1. Write RC1 to RC9, LC1 to LC11, LT1 to LT6, LN1 to LN3, or FN1 to FN5.',
      "wrong",
      () => inchFit(inTicks(25.4e8), "RC10"),
    ],
    ["size is 0 in. Enter a size over 0.", "wrong", () => inchFit(inTicks(0), "RC4")],
    ["size is 0 mm. Enter a size over 0.", "wrong", () => limitDeviations(inTicks(0), "H7")],
    [
      'tool "ceramic" is not known. Write HSS, carbide, brazed carbide, coated carbide, cermet, PCD, CBN, or guided blade.',
      "wrong",
      () => findTool("ceramic"),
    ],
    [
      'to "furlong" is not a known unit. Write one of mm, um, m, in, thou, tenth, uin, ft, m/min, sfm, m/s, mm/rev, ipr, mm/tooth, ipt, mm/min, mm/s, ipm, in/s, Nm, Ncm, lbf-in, lbf-ft, N, kN, lbf, kW, hp, PS, C, F, MPa, bar, kPa, psi, L/min, gpm, cm3/min, in3/min.',
      "wrong",
      () => convert(1, "mm", "furlong"),
    ],
    [
      'from is "mm" (length) and to is "Nm" (torque). Write two units of one kind.',
      "wrong",
      () => convert(1, "mm", "Nm"),
    ],
    [
      'from "ipm" to "ipr" needs the rpm. Use FEEDRATE or FEEDPERREV.',
      "wrong",
      () => convert(1, "ipm", "ipr"),
    ],
    [
      'from is "ipm" (feed rate) and to is "mm" (length). Write two units of one kind.',
      "wrong",
      () => convert(1, "ipm", "mm"),
    ],
    ["diameter is 0.1. The smallest metric drill is 0.2 mm.", "none", () => drillName(0.1)],
    [
      "diameter is 0.001. The smallest inch drill is 0.0059 in.",
      "none",
      () => drillName(0.001, undefined, "in"),
    ],
    [
      "speeds and lives do not follow Taylor's law: the lives are all the same. n lies between 0 and 1.",
      "none",
      () => taylorFit([10, 20], [5, 5]),
    ],
    [
      "speeds and lives do not follow Taylor's law: n is 1. n lies between 0 and 1.",
      "none",
      () => taylorFit([10, 20], [20, 10]),
    ],
    [
      "machineRate is empty or 0. Enter the machine rate per hour.",
      "wrong",
      () => economicSpeed(0.25, 60, 120, 40, 0),
    ],
    [
      "diameter or depth is too small beside surfaceSpeed to compute with.",
      "wrong",
      () => costAtSpeed(1e300, 0.25, 60, 1e-300, 0.3, 1, 120, 40, 90),
    ],
    ["savingPerPart is 0. Without a saving there is no payback.", "none", () => payback(1000, 0, 10)],
    [
      "proposedCost is more per part and proposedFixed is less. The proposal is cheaper only below 100 parts.",
      "none",
      () => breakEven(300, 2, 200, 3),
    ],
    [
      "proposedFixed and proposedCost equal the present costs. No quantity separates them.",
      "none",
      () => breakEven(100, 2, 100, 2),
    ],
    [
      "proposedCost equals presentCost and proposedFixed is more. The proposal costs more at every quantity.",
      "none",
      () => breakEven(100, 2, 200, 2),
    ],
    [
      "proposedCost is more per part and proposedFixed is not less. The proposal costs more at every quantity.",
      "none",
      () => breakEven(100, 2, 100, 3),
    ],
    [
      "proposed has the scrap rate 1. Enter a share from 0 to under 1, such as 0.02 for 2 %.",
      "wrong",
      () => compare([60, 60, 20, 100, 60, 0, 0], [60, 60, 20, 100, 60, 0, 1]),
    ],
    [
      "present has the scrap rate -0.1. Enter a share from 0 to under 1, such as 0.02 for 2 %.",
      "wrong",
      () => compare([60, 60, 20, 100, 60, 0, -0.1], [60, 60, 20, 100, 60, 0, 0]),
    ],
    [
      "callout leaves a window of 9.998 to 10.001 mm, too narrow for a stepped reamer. Grind a reamer to it.",
      "none",
      () => reamerSize(mm("10 H5"), 0.004),
    ],
    [
      "callout leaves a window of 10.002 to 10.005 mm, too narrow for a stepped reamer. Grind a reamer to it.",
      "none",
      () => reamerSize(mm("10 +0.006/0")),
    ],
    [
      "step is 1e-12. No such step lies in the window 12.008 to 12.015 mm: leave step empty, or grind a reamer to the window.",
      "none",
      () => reamerSize(mm("12 H7"), 0, 1e-12),
    ],
    [
      `callouts "12 JS1" leaves a reamer of 11.9986 to 11.9996 mm, under the hole's minimum of 11.9994. The tolerance is too narrow for the rule.`,
      "none",
      () => sharedReamers([mm("12 H7"), mm("12 JS1 ")], 0),
    ],
    [
      "grade is IT8. Plug gauges are tabulated for holes of IT6 and IT7.",
      "none",
      () => plugGaugeFor(inTicks(25e8), limitDeviations(inTicks(25e8), "H8"), "8"),
    ],
    [
      "nominal size is 200 mm. Plug gauges are tabulated to 180 mm.",
      "none",
      () => plugGaugeFor(inTicks(200e8), limitDeviations(inTicks(200e8), "H7"), "7"),
    ],
    [
      "cutsOver is 12.008, larger than the hole. Enter how much larger than itself the reamer cuts.",
      "wrong",
      // The window is 12.008 to 12.015.
      () => reamerLimits(mm("12 H7"), 12.008),
    ],
    [`callouts "12 h7" h7 is a shaft class. Is H7 meant?`, "wrong", () => sharedReamers([mm("12 h7")])],
    [
      `callouts "12 H7 AFTER PLATING" holds after coating. Calculate the limits before it with PREPLATE, and ream to those.`,
      "wrong",
      () => sharedReamers([mm("12 H7 AFTER PLATING")]),
    ],
    ["hole is g6, a shaft class. Is G6 meant?", "wrong", () => clearance(mm("12 g6"), mm("12 h6"))],
    ["shaft is H7, a hole class. Is h7 meant?", "wrong", () => clearance(mm("12 H7"), mm("12 H7"))],
    [
      "hole carries the shaft g6 already. Leave shaft empty.",
      "wrong",
      () => clearance(mm("12 H7/g6"), mm("12 h6")),
    ],
    [
      'fit "RC4" is not tabulated at 25 in. Its table goes over 0 up to 19.69 in.',
      "none",
      () => inchFit(inTicks(25 * 25.4e8), "RC4"),
    ],
    [
      "callout has a tolerance of 0.0001 mm, finer than every standard tolerance grade at 10 mm.",
      "none",
      () => gradeFor(inTicks(0.1e5), inTicks(10e8)),
    ],
    [
      "The readings at0 to at270 do not fit a round tool: opposite pairs differ by 0.01. Clean the tool and the indicator, then read again.",
      "wrong",
      () => runout(0.01, 0, 0, 0),
    ],
    ["over is 6 in position 2, not less than upTo 6.", "wrong", () => toolFor(5, [3, 6], [6, 6], ["a", "b"])],
    [
      "size is 19. No range of over and upTo covers it.",
      "none",
      () => toolFor(19, [3, 6], [6, 18], ["a", "b"]),
    ],
  ])("%s", (message, kind, call) => {
    const problem = problemOf(call);
    expect(problem).toBeInstanceOf(Problem);
    expect([problem!.name, problem!.kind]).toEqual(["Problem", kind]);
    expect(problem!.message).toBe(message);
  });
});

describe("a material that is not known", () => {
  test("the keys that share a word with it are offered, or names that differ by one character", () => {
    expect(problemOf(() => findMaterial("blue iron"))?.message).toBe(
      'material "blue iron" is not known. Did you mean gray iron, ductile iron, malleable iron, compacted iron or austempered iron?',
    );
    expect(problemOf(() => findMaterial("4141"))?.message).toMatch(/Did you mean .*4140/);
    expect(problemOf(() => findMaterial("xyzzy"))?.message).toBe(
      'material "xyzzy" is not known. Write a designation such as 4140 or 1.4301, or a key of MATERIALS().',
    );
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
