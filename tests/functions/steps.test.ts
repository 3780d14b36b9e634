// tests: STEPS writes out what the functions compute. Each line with numbers is worked out by mathjs and must come to
// the line under it; the last lines must be the function's own results.

import { erf, evaluate } from "mathjs";
import { describe, expect, test } from "vitest";
import { readFormula } from "../support/formula.ts";
import { cell, declarations, isError, messageOf, sheet } from "../support/sheet.ts";

/** As mathjs writes the functions and signs of a line; what it has not, as it is defined. */
const scope = {
  π: Math.PI,
  ln: Math.log,
  normal: (value: number) => (1 + erf(value / Math.SQRT2)) / 2,
  roundup: (value: number, step: number) => Math.ceil(value / step - 1e-9) * step,
  sind: (degrees: number) => Math.sin((degrees * Math.PI) / 180),
  cosd: (degrees: number) => Math.cos((degrees * Math.PI) / 180),
  tand: (degrees: number) => Math.tan((degrees * Math.PI) / 180),
  atan2d: (y: number, x: number) => (Math.atan2(y, x) * 180) / Math.PI,
};

const UNITS = [
  ...["µm/(m·K)", "per hour", "N/mm²", "rev/min", "mm/min", "in/min", "ft/min", "m/min", "lbf·in", "N·m"],
  ...[
    "mm^2",
    "in^2",
    "machines",
    "money",
    "holes",
    "parts",
    "mm",
    "in",
    "min",
    "kW",
    "hp",
    "°C",
    "°F",
    "°",
    "h",
    "s",
  ],
].map((unit) => unit.replace(/[()^/]/g, "\\$&"));
const UNIT = new RegExp(`(?<=\\d) (?:${UNITS.join("|")})(?![A-Za-z])`, "g");

/** Units are written behind numbers: `15 m/min`, `2220 N/mm²`. Without them the line is plain arithmetic. */
function withoutUnits(text: string): string {
  return text.replace(UNIT, "").replaceAll("·", "*").replaceAll("√", "sqrt");
}

const numberIn = (line: string) => Number(/= (-?[\d.]+(?:e[+-]?\d+)?)/.exec(line)![1]);

const written = declarations
  .filter(({ id }) => id !== "STEPS")
  .flatMap(({ id, examples }) => examples.map(({ formula }) => ({ id, formula })))
  .map(({ id, formula }) => ({ id, formula, args: readFormula(formula).args }))
  .filter(({ id, args }) => !isError(sheet(id, ...args)[0]![0]))
  .map((one) => ({ ...one, lines: stepsOf(one.id, one.args) }))
  .filter(({ lines }) => lines.length > 0 && !/looks its answer up/.test(lines[0]!));

function stepsOf(id: string, args: readonly unknown[]): string[] {
  return sheet("STEPS", id, ...args).map(([line]) => String(line));
}

describe("steps", () => {
  test("are there for most functions", () => {
    expect(new Set(written.map(({ id }) => id)).size).toBeGreaterThan(45);
  });

  test.each(written)("$formula", ({ id, args, lines }) => {
    const steps = lines.filter((line) => !line.startsWith("source: "));
    expect(steps.length % 3).toBe(0);
    expect(lines.length).toBe(steps.length + 1);
    for (let at = 0; at < steps.length; at += 3) {
      const [symbols, numbers, result] = steps.slice(at, at + 3) as [string, string, string];
      const name = symbols.split(" = ")[0];
      expect(numbers.startsWith(`${name} = `) && result.startsWith(`${name} = `)).toBe(true);
      const worked = evaluate(withoutUnits(numbers.slice(numbers.indexOf(" = ") + 3)), { ...scope });
      // A length is rounded to 1e-7 where it leaves a function.
      expect(Math.abs(worked - numberIn(result))).toBeLessThan(6e-8 + 1e-9 * Math.abs(worked));
    }
    const own = sheet(id, ...args)[0]!.filter((result) => typeof result === "number");
    const last = steps.filter((_, at) => at % 3 === 2).slice(-own.length);
    own.forEach((result, at) => {
      expect(numberIn(last[at]!) / result || 1).toBeCloseTo(1, 10);
    });
  });
});

describe("what has no steps", () => {
  test("a function without a formula says so and gives its sources", () => {
    expect(stepsOf("FITTYPE", [[["12 H7/g6"]]])).toEqual([
      "FITTYPE looks its answer up: it has no formula",
      "source: ISO 286-1:2010, Tables 1 to 5",
      "source: ANSI B4.1-1967 (R1987), as printed in Machinery's Handbook",
    ]);
  });
  test("an unknown function, a column, and a wrong input each get a sentence", () => {
    expect(messageOf(cell("STEPS", "TURN", 1))).toContain('functionName "TURN"');
    expect(messageOf(cell("STEPS", "RPM", [[15], [20]], 10))).toContain("one cell for each argument");
    expect(messageOf(cell("STEPS", "RPM", "x", 10))).toContain('surfaceSpeed "x"');
    expect(messageOf(cell("STEPS", "STEPS", "RPM"))).toContain("functionName");
  });
  test("a name is read with its namespace and in any case", () => {
    expect(stepsOf("ream.rpm", [15, 10])).toEqual(stepsOf("RPM", [15, 10]));
  });
});
