// tests: STEPS writes out what the functions compute. Each line with numbers is worked out by mathjs and must come to
// the line under it; the last lines must be the function's own results.

import { erf, evaluate } from "mathjs";
import { describe, expect, test } from "vitest";
import { sources as citations } from "../../src/data/sources.ts";
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

const calls = declarations
  .filter(({ id }) => id !== "STEPS")
  .flatMap((declaration) => declaration.examples.map(({ formula }) => ({ ...declaration, formula })))
  .map((one) => ({ ...one, args: readFormula(one.formula).args }));

/** The lines that STEPS gives for a call. */
function stepsOf(id: string, args: readonly unknown[]): string[] {
  return sheet("STEPS", id, ...args).map(([line]) => String(line));
}

/** Lines by three: symbols, numbers, result; and the source. Undefined for an error and where there is no formula. */
function writtenOut(id: string, args: readonly unknown[]): { steps: string[][]; source: string } | undefined {
  if (isError(sheet(id, ...args)[0][0])) return undefined;
  const lines = stepsOf(id, args);
  if (/looks its answer up/.test(lines[0]) || lines[0] === "") return undefined;
  const steps = lines.filter((line) => !line.startsWith("source: "));
  expect(lines.length).toBe(steps.length + 1);
  expect(steps.length % 3).toBe(0);
  const rows = Array.from({ length: steps.length / 3 }, (_, at) => steps.slice(3 * at, 3 * at + 3));
  return { steps: rows, source: lines.at(-1)! };
}

/** The calls that are written out. */
const worked = calls.filter(({ id, args }) => writtenOut(id, args));

describe("steps", () => {
  test("are there for most functions", () => {
    expect(new Set(worked.map(({ id }) => id)).size).toBeGreaterThan(45);
  });

  test.each(worked)("$formula", ({ id, args, sources: keys }) => {
    const written = writtenOut(id, args)!;
    for (const [symbols, numbers, result] of written.steps as [string, string, string][]) {
      const name = symbols.split(" = ")[0];
      expect(name).toMatch(/^[A-Za-z][A-Za-z0-9]*$/);
      expect(symbols).not.toMatch(/\*|\bpi\b|sqrt/);
      expect(numbers.startsWith(`${name} = `) && result.startsWith(`${name} = `)).toBe(true);
      // No name is left in the line with numbers but those of functions.
      const left =
        withoutUnits(numbers.slice(name.length + 3)).match(/(?<![\w.])[A-Za-z_]\w*(?![\w(])/g) ?? [];
      expect(left).toEqual([]);
      const value = evaluate(withoutUnits(numbers.slice(name.length + 3)), { ...scope });
      // A length is rounded to 1e-7 where it leaves a function.
      expect(Math.abs(value - numberIn(result))).toBeLessThan(6e-8 + 1e-9 * Math.abs(value));
    }
    expect(new Set(written.steps.map(([symbols]) => symbols.split(" = ")[0])).size).toBe(
      written.steps.length,
    );
    const own = sheet(id, ...args)[0].filter((result) => typeof result === "number");
    const last = written.steps.map(([, , result]) => result).slice(-own.length);
    own.forEach((result, at) => {
      expect(numberIn(last[at]) / result || 1).toBeCloseTo(1, 10);
    });
    expect(keys.map((key) => `source: ${citations[key as keyof typeof citations].text}`)).toContain(
      written.source,
    );
  });

  /** How a unit of a line is said in the text of the result. */
  const said: Readonly<Record<string, string>> = {
    "": "no unit",
    "°": "degrees",
    months: "Months",
    diameters: "no unit",
    "h/year": "per year, h",
    "length/min": "mm/min or in/min",
    "length/rev": "mm or in, as the feed",
    "length/tooth": "mm or in, as the feed",
    machines: "machines",
    holes: "a whole number",
  };
  const METRIC = /^(?:mm|m\/min|mm\/min|N·m|kW)$/;
  const INCH = /^(?:in|ft\/min|in\/min|lbf·in|hp)$/;

  /** A call in a unit system, the last argument of a function that has one. */
  function inUnits(id: string, args: readonly unknown[], system: "mm" | "in"): unknown[] | undefined {
    const { parameters } = declarations.find((declaration) => declaration.id === id)!;
    const place = parameters.findIndex(({ name }) => name === "units");
    if (place < 0) return undefined;
    return Array.from({ length: place + 1 }, (_, at) => (at === place ? system : args[at]));
  }

  test.each(worked)(
    "$formula: the unit of each result is the declared one, in its system",
    ({ id, args, returns }) => {
      for (const system of ["mm", "in"] as const) {
        const call = inUnits(id, args, system) ?? args;
        const written = writtenOut(id, call);
        if (!written) continue;
        const { length } = sheet(id, ...call)[0].filter((result) => typeof result === "number");
        for (const [, , result] of written.steps.slice(-length)) {
          const unit = /^\S+ = -?[\d.]+(?:e[+-]?\d+)? ?(.*)$/.exec(result)![1];
          if (id === "CONVERT") {
            expect(unit).toBe(args[2]);
            continue;
          }
          expect(returns.toLowerCase(), `${result}`).toContain((said[unit] ?? unit).toLowerCase());
          if (call !== args) expect(unit).not.toMatch(system === "mm" ? INCH : METRIC);
        }
      }
    },
  );
});

describe("steps that depend on what came", () => {
  const last = (id: string, ...args: unknown[]) => stepsOf(id, args).slice(-4, -1);
  test("lengths with units of their own are set in one unit", () => {
    expect(last("DEPTHRATIO", "1 in", 10)).toEqual([
      "depthRatio = depth / diameter",
      "depthRatio = 1 / 10",
      "depthRatio = 0.1 diameters",
    ]);
    expect(last("DEPTHRATIO", "1 in", "10 mm")[2]).toBe("depthRatio = 2.54 diameters");
    expect(last("DEPTHRATIO", "10 mm", "1 in")[1]).toBe("depthRatio = 10 / 25.4");
    expect(last("DEPTHRATIO", "10 mm", "5 mm")[1]).toBe("depthRatio = 10 / 5");
    expect(last("DEPTHRATIO", "2 in", "1 in")[1]).toBe("depthRatio = 2 / 1");
    expect(last("DEPTHRATIO", 30, "10 mm")[1]).toBe("depthRatio = 30 / 10");
  });
  test("a rapid way back takes no time", () => {
    expect(last("HOLETIME", 30, 100, 2, 3, "rapid")).toEqual([
      "holeTime = 60 · travel / feedRate",
      "holeTime = 60 · 35 mm / 100 mm/min",
      "holeTime = 21 s",
    ]);
  });
  test("without a drill the depth at its point is left out", () => {
    expect(stepsOf("DRILLDEPTH", [30, 2])).toEqual([
      "fullDepth = reamedDepth + bevelLead + chipRoom",
      "fullDepth = 30 mm + 2 mm + 0 mm",
      "fullDepth = 32 mm",
      expect.stringMatching(/^source: /),
    ]);
  });
  test("a proposal that is cheaper from the first part breaks even at 0", () => {
    expect(last("BREAKEVEN", 200, 2, 100, 2)).toEqual(["quantity = 0", "quantity = 0", "quantity = 0 parts"]);
    expect(last("BREAKEVEN", 100, 3, 100, 2)[2]).toBe("quantity = 0 parts");
    expect(last("BREAKEVEN", 100, 3, 300, 2)[1]).toBe("quantity = (300 - 100) / (3 - 2)");
  });
  test("a negative value stands in brackets, zero and π do not", () => {
    expect(last("RUNOUT", 0.01, 0, -0.01, 0)).toEqual(expect.arrayContaining(["move = 0.01 mm"]));
    expect(stepsOf("RUNOUT", [0.01, 0, -0.01, 0])[1]).toBe("ex = (0.01 mm - (-0.01 mm)) / 2");
    expect(stepsOf("RUNOUT", [0.01, 0, -0.01, 0])[4]).toBe("ey = (0 mm - 0 mm) / 2");
    expect(stepsOf("RPM", [15, 10])[0]).toBe("rpm = 1000 · surfaceSpeed / (π · diameter)");
  });
  test("a conversion says its factor, or its shift", () => {
    expect(last("CONVERT", 5, "mm", "um")[0]).toBe("converted = value · 1000");
    expect(last("CONVERT", 5, "um", "mm")[0]).toBe("converted = value / 1000");
    expect(last("CONVERT", 5, "mm", "mm")[0]).toBe("converted = value");
    expect(last("CONVERT", 20, "C", "F")[0]).toBe("converted = value · 1.8 + 32");
    expect(last("CONVERT", 68, "F", "C")[0]).toBe("converted = (value - 32) / 1.8");
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
