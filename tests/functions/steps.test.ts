// tests: STEPS writes out what the functions compute. Each line with numbers is worked out by mathjs and must come to
// the line under it; the last lines must be the function's own results.

import { describe, expect, test } from "vitest";
import { erf, evaluate } from "../../src/build/mathjs.ts";
import { sources as citations } from "../../src/data/sources.ts";
import { readFormula } from "../support/formula.ts";
import { cell, declarations, isError, messageOf, sheet } from "../support/sheet.ts";

/** What one of a unit is in the unit that a line is written in: NIST SP 811. */
const factors: Readonly<Record<string, number>> = {
  mm: 25.4,
  in: 1 / 25.4,
  "m/min": 0.3048,
  "ft/min": 1 / 0.3048,
  N·m: 1e-3,
  lbf·in: 1e-3 / 0.1129848290276167,
  kW: 1e-3,
  hp: 1 / 396_000,
  K: 1 / 1.8,
  "L/min": 0.06,
  "US gpm": 0.06 / 3.785411784,
};

/** As mathjs writes the functions and signs of a line; what it has not, as it is defined. */
const scope = {
  π: Math.PI,
  ln: Math.log,
  Φ: (value: number) => (1 + erf(value / Math.SQRT2)) / 2,
  sinOf: (degrees: number) => Math.sin((degrees * Math.PI) / 180),
  cosOf: (degrees: number) => Math.cos((degrees * Math.PI) / 180),
  tanOf: (degrees: number) => Math.tan((degrees * Math.PI) / 180),
  atan2Of: (y: number, x: number) => (Math.atan2(y, x) * 180) / Math.PI,
  mmOf: (value: number) => value * factors.mm,
  inOf: (value: number) => value * factors.in,
  KOf: (value: number) => value * factors.K,
  PaOf: (value: number) => value * pascals,
  psiOf: (value: number) => (value * 25.4 ** 2) / 4.4482216152605,
};

/** Pa in one of the unit of pressure that a line has. */
let pascals = 1e5;

/** What is said behind a line, and what it does to the value. */
const endings: readonly (readonly [RegExp, (value: number, words: RegExpExecArray) => number])[] = [
  [/, rounded down to a whole number$/, (value) => Math.floor(value + 1e-9)],
  [/, rounded up to a whole number$/, (value) => Math.ceil(value - 1e-9)],
  [/, the nearest even number$/, (value) => 2 * Math.floor(value / 2 + 0.5)],
  [/, rounded up to a whole ([\d.]+)$/, (value, [, step]) => Math.ceil(value / +step - 1e-9) * +step],
  [/, rounded to ([\d.]+)$/, (value, [, step]) => Math.round(value / +step) * +step],
  [/, in (\S+|US gpm)$/, (value, [, unit]) => value * factors[unit]],
];

/** The value of a line with numbers, as a person works it out. */
function worksOutTo(text: string): number {
  pascals = / psi\b/.test(text) ? 4.4482216152605 / 0.0254 ** 2 : 1e5;
  for (const [ending, apply] of endings) {
    const words = ending.exec(text);
    if (words) return apply(worksOutTo(text.slice(0, words.index)), words);
  }
  return evaluate(arithmetic(text), { ...scope });
}

const UNITS = [
  ...["µm/(m·K)", "per hour", "N/mm²", "rev/min", "mm/min", "in/min", "ft/min", "m/min", "lbf·in", "N·m"],
  ...[
    "mm²",
    "in²",
    "mm⁴",
    "in⁴",
    "kg/m³",
    "lbf/in²",
    "US gpm",
    "L/min",
    "m/s",
    "bar",
    "psi",
    "lbf",
    "N",
    "edges",
    "tools",
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
function arithmetic(text: string): string {
  return text
    .replace(UNIT, "")
    .replace(/(?<=\d)°/g, "")
    .replace(/lbf\/in²\(/g, "psiOf(")
    .replace(/\b(sin|cos|tan|atan2|mm|in|K|Pa)\(/g, "$1Of(")
    .replaceAll("·", "*")
    .replaceAll("−", "-")
    .replaceAll("²", "^2")
    .replaceAll("√", "sqrt");
}

/** How many times as large the numbers of a unit are where lengths are twice as long, times three, forces five. */
const [LENGTH, TIME, FORCE] = [2, 3, 5];
const PRESSURE = FORCE / LENGTH ** 2;
const growth: Readonly<Record<string, number>> = {
  ...{
    mm: LENGTH,
    in: LENGTH,
    "mm²": LENGTH ** 2,
    "in²": LENGTH ** 2,
    "mm⁴": LENGTH ** 4,
    "in⁴": LENGTH ** 4,
  },
  ...{ s: TIME, min: TIME, h: TIME, "h/year": TIME, "rev/min": 1 / TIME, "per hour": 1 / TIME },
  ...{ "m/min": LENGTH / TIME, "ft/min": LENGTH / TIME, "m/s": LENGTH / TIME },
  ...{ "mm/min": LENGTH / TIME, "in/min": LENGTH / TIME, "length/min": 1 / TIME },
  ...{ "L/min": LENGTH ** 3 / TIME, "US gpm": LENGTH ** 3 / TIME },
  ...{ N: FORCE, lbf: FORCE, N·m: FORCE * LENGTH, lbf·in: FORCE * LENGTH },
  ...{ kW: (FORCE * LENGTH) / TIME, hp: (FORCE * LENGTH) / TIME },
  ...{ "N/mm²": PRESSURE, "lbf/in²": PRESSURE, bar: PRESSURE, psi: PRESSURE },
  "kg/m³": (FORCE * TIME ** 2) / LENGTH ** 4,
};
/** Powers that were fitted, a rule for numbers of flutes, and what has no unit in a sheet: a feed rate without `units`. */
const HAS_NO_DIMENSION = /\^ (?!2)|√\(.+ (?:mm|in)\)+ \+ 2|^\S+ \/ \S+ rev\/min$/;
const NUMBER_AND_UNIT = new RegExp(`(\\d[\\d.]*(?:e[+-]?\\d+)?) (${UNITS.join("|")})(?![A-Za-z])`, "g");

/** How many times as large a line comes out then. */
function growthOf(text: string): number {
  const ending = endings.map(([pattern]) => pattern.exec(text)).find((one) => one !== null);
  if (ending) return growthOf(text.slice(0, ending.index));
  const grown = text.replace(
    NUMBER_AND_UNIT,
    (_, number, unit) => `(${number}*${growth[unit] ?? 1} ${unit})`,
  );
  return worksOutTo(grown) / worksOutTo(text);
}

const numberIn = (line: string) => Number(/= (−?[\d.]+(?:e[+-]?\d+)?)/.exec(line)![1].replace("−", "-"));

/** What no example shows. */
const more: Readonly<Record<string, readonly string[]>> = {
  PLUGGAUGE: ['=REAM.PLUGGAUGE("12 +0.020/0")'],
  STARTSPEED: ['=REAM.STARTSPEED("6061", "PCD")', '=REAM.STARTSPEED("C45", "carbide")'],
  STARTFEED: ['=REAM.STARTFEED("6061", 8, "PCD")', '=REAM.STARTFEED("C45", 12, "HSS", 4)'],
  CUTTINGDATA: ['=REAM.CUTTINGDATA("6061", 8, "PCD", 4, 1000)'],
  HOLETIME: ["=REAM.HOLETIME(30, 290, 2, 3, 900)"],
  PARTCOST: ["=REAM.PARTCOST(60, 90)"],
  PRICE: ["=REAM.PRICE(1.64, 45, 90, 250, 0.15, 0.2)"],
  RUNOUTAT: [
    "=REAM.RUNOUTAT(0.004, 20, 0.004, 120, 160)",
    "=REAM.RUNOUTAT(0.004, 20, 0.004, 120, 160, 0, 90)",
  ],
  SIZEAT20: ['=REAM.SIZEAT20(50, 30, "aluminum", 25, "GG25")'],
  REAMERLIMITS: ['=REAM.REAMERLIMITS("12 H7", 0.002)'],
  PREPLATE: ['=REAM.PREPLATE("10 H7", 0.05, 0.005, 0.5)'],
};
const calls = declarations
  .filter(({ id }) => id !== "STEPS")
  .flatMap((declaration) =>
    [...declaration.examples.map(({ formula }) => formula), ...(more[declaration.id] ?? [])].map(
      (formula) => ({
        ...declaration,
        formula,
      }),
    ),
  )
  .map((one) => ({ ...one, args: readFormula(one.formula).args }));

/** The lines that STEPS gives for a call. */
function stepsOf(id: string, args: readonly unknown[]): string[] {
  return sheet("STEPS", id, ...args).map(([line]) => String(line));
}

/** Lines by three: symbols, numbers, result; what is said in words; and the sources. Undefined for an error. */
function writtenOut(
  id: string,
  args: readonly unknown[],
): { steps: string[][]; words: string[]; sources: string[] } | undefined {
  if (isError(sheet(id, ...args)[0][0])) return undefined;
  const lines = stepsOf(id, args);
  if (lines[0] === "") return undefined;
  const sources = lines.filter((line) => line.startsWith("source: "));
  const rest = lines.filter((line) => !line.startsWith("source: "));
  const nameOf = (at: number) => /^([A-Za-z]\w*) = /.exec(rest[at] ?? "")?.[1];
  const steps: string[][] = [];
  const words: string[] = [];
  for (let at = 0; at < rest.length; ) {
    const name = nameOf(at);
    if (name && nameOf(at + 1) === name && nameOf(at + 2) === name) {
      steps.push(rest.slice(at, at + 3));
      at += 3;
    } else words.push(rest[at++]);
  }
  return { steps, words, sources };
}

/** Tables have no calculation. */
const TABLES = new Set([
  ...["MATERIALS", "SOURCES", "CHIPPATH", "TOOLFOR", "CHECKOF"],
  ...["DATAFOR", "HEADERS", "REMEDIES"],
]);

/** The calls that are written out. */
const worked = calls.filter(({ id, args }) => writtenOut(id, args));

describe("steps", () => {
  test("are there for every function that computes", () => {
    const silent = worked.filter(({ id, args }) => /^[A-Z]+ looks its answer up/.test(stepsOf(id, args)[0]));
    expect(silent.map(({ id }) => id).filter((id) => !TABLES.has(id))).toEqual([]);
  });

  test.each(worked)("$formula", ({ id, args, sources: keys }) => {
    const { steps, words, sources } = writtenOut(id, args)!;
    for (const [symbols, numbers, result] of steps as [string, string, string][]) {
      const name = symbols.split(" = ")[0];
      expect(symbols).not.toMatch(/\*|\bpi\b|sqrt|floor|ceil|1e-?\d|\b(?:sin|cos|tan)d\b/);
      const text = numbers.slice(name.length + 3);
      const value = worksOutTo(text);
      // A length is rounded to 1e-7 where it leaves a function.
      expect(Math.abs(value - numberIn(result)), numbers).toBeLessThan(6e-8 + 1e-9 * Math.abs(value));
    }
    for (const line of words) expect(line).not.toMatch(/undefined|NaN|\[object/);
    expect(new Set(steps.map(([symbols]) => symbols.split(" = ")[0])).size).toBe(steps.length);
    const own = sheet(id, ...args);
    const results = own.length > 1 ? [] : own[0].filter((result) => typeof result === "number");
    const lines = steps.map(([, , result]) => numberIn(result));
    if (steps.length > 0)
      for (const result of results)
        expect(
          lines.some((line) => Math.abs(line - result) <= 6e-8 + 1e-10 * Math.abs(result)),
          `${result}`,
        ).toBe(true);
    expect(sources).toEqual(keys.map((key) => `source: ${citations[key as keyof typeof citations].text}`));
  });

  test.each(worked)("$formula: the units of its numbers make that of its result", ({ id, args }) => {
    for (const system of ["mm", "in"] as const)
      for (const [symbols, numbers, result] of writtenOut(id, inUnits(id, args, system) ?? args)?.steps ??
        []) {
        const [name] = symbols.split(" = ");
        const text = numbers.slice(name.length + 3);
        const unit = /^\S+ = −?[\d.]+(?:e[+-]?\d+)? ?(.*)$/.exec(result)![1];
        if (id === "CONVERT" || numberIn(result) === 0 || HAS_NO_DIMENSION.test(text)) continue;
        expect(growthOf(text), `${numbers}: ${unit}`).toBeCloseTo(growth[unit] ?? 1, 9);
      }
  });

  /** How a unit of a line is said in the text of the result. */
  const said: Readonly<Record<string, string>> = {
    "": "",
    "°": "degrees",
    months: "Months",
    diameters: "depth ÷ diameter",
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
        const own = sheet(id, ...call);
        const results = own.length > 1 ? [] : own[0].filter((result) => typeof result === "number");
        const lines = written.steps.filter(([, , line]) => results.some((one) => one === numberIn(line)));
        for (const [, , result] of lines) {
          const unit = /^\S+ = −?[\d.]+(?:e[+-]?\d+)? ?(.*)$/.exec(result)![1];
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
  const last = (id: string, ...args: unknown[]) =>
    stepsOf(id, args)
      .filter((line) => !line.startsWith("source: "))
      .slice(-3);
  test("lengths with units of their own are set in one unit", () => {
    expect(last("DEPTHRATIO", "1 in", "10 in")).toEqual([
      "depthRatio = depth / diameter",
      "depthRatio = 1 in / 10 in",
      "depthRatio = 0.1 diameters",
    ]);
    expect(last("DEPTHRATIO", "1 in", "10 mm")[2]).toBe("depthRatio = 2.54 diameters");
    expect(last("DEPTHRATIO", "10 mm", "1 in")[1]).toBe("depthRatio = 10 mm / 25.4 mm");
    expect(last("DEPTHRATIO", "10 mm", "5 mm")[1]).toBe("depthRatio = 10 mm / 5 mm");
    expect(last("DEPTHRATIO", "2 in", "1 in")[1]).toBe("depthRatio = 2 in / 1 in");
    expect(last("DEPTHRATIO", 30, "10 mm")[1]).toBe("depthRatio = 30 mm / 10 mm");
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
    expect(last("BREAKEVEN", 100, 3, 300, 2)[1]).toBe("quantity = (300 − 100) / (3 − 2)");
  });
  test("a negative value stands in brackets, zero and π do not", () => {
    expect(last("RUNOUT", 0.01, 0, -0.01, 0)).toEqual(expect.arrayContaining(["move = 0.01 mm"]));
    expect(stepsOf("RUNOUT", [0.01, 0, -0.01, 0])[1]).toBe("ex = (0.01 mm − (−0.01 mm)) / 2");
    expect(stepsOf("RUNOUT", [0.01, 0, -0.01, 0])[4]).toBe("ey = (0 mm − 0 mm) / 2");
    expect(stepsOf("RPM", [15, 10])[0]).toBe("rpm = 1000 · surfaceSpeed / (π · diameter)");
  });
  test("a conversion says its factor, or its shift", () => {
    expect(last("CONVERT", 5, "mm", "um")[0]).toBe("converted = value · 1000");
    expect(last("CONVERT", 5, "um", "mm")[0]).toBe("converted = value / 1000");
    expect(last("CONVERT", 5, "mm", "mm")[0]).toBe("converted = value");
    expect(last("CONVERT", 20, "C", "F")[0]).toBe("converted = value · 1.8 + 32");
    expect(last("CONVERT", 68, "F", "C")[0]).toBe("converted = (value − 32) / 1.8");
  });
});

describe("what has no steps", () => {
  test("a table says so and gives its sources", () => {
    expect(stepsOf("CHIPPATH", ["through"])).toEqual([
      "CHIPPATH looks its answer up in a table.",
      "source: common practice, no source",
    ]);
  });
  test("an unknown function, a column, and a wrong input each get a sentence", () => {
    expect(messageOf(cell("STEPS", "TURN", 1))).toContain('functionName is "TURN"');
    expect(messageOf(cell("STEPS", "RPM", [[15], [20]], 10))).toContain("one cell for each argument");
    expect(messageOf(cell("STEPS", "RPM", "x", 10))).toContain('surfaceSpeed "x"');
    expect(messageOf(cell("STEPS", "STEPS", "RPM"))).toContain("functionName");
  });
  test("an argument left out in the middle is the same calculation", () => {
    expect(stepsOf("RPM", [80, 0.5, undefined, "in"])).toEqual(stepsOf("RPM", [80, 0.5, null, "in"]));
    expect(stepsOf("RPM", [80, 0.5, undefined, "in"])[2]).toMatch(/^rpm = 611\.1549/);
    expect(stepsOf("HOLETIME", [1.225, 4.58366, undefined, undefined, undefined, "in"])[5]).toMatch(/ s$/);
  });
  test("a class shows its table steps, the fundamental deviation and Δ", () => {
    // ISO 286-1: IT7 over 18 to 30 mm 21 µm, K −2 + Δ, Δ 8 µm.
    expect(stepsOf("UPPERDEV", [20, "K7"]).slice(0, 5)).toEqual([
      "IT7 over 18 up to 30 mm: 21 µm",
      "fundamental deviation K, over 18 up to 30 mm: ES = −2 µm + Δ",
      "Δ of IT7, over 18 up to 30 mm: 8 µm",
      "ES = −2 µm + 8 µm = 6 µm",
      "EI = ES − IT7 = −15 µm",
    ]);
  });
  test("a family of holes shows the window of each", () => {
    // 15 % and 35 % of 18 and 27 µm, rounded up: 3 and 7, 5 and 10.
    expect(stepsOf("SHAREDREAMERS", [[["12 H7"], ["12 H8"]]]).slice(0, 4)).toEqual([
      "window for 12 H7: 12.008 to 12.015 mm",
      "window for 12 H8: 12.012 to 12.022 mm",
      "one reamer of 12.008 to 12.015 mm for 12 H7",
      "one reamer of 12.012 to 12.022 mm for 12 H8",
    ]);
  });
  test("a verdict shows what it compares", () => {
    expect(stepsOf("STOCKCHECK", [12, 11.9]).slice(0, 5)).toEqual([
      "stock = diameter − drill − drilledOver",
      "stock = 12 mm − 11.9 mm − 0 mm",
      "stock = 0.1 mm",
      "usual stock: 0.2 to 0.3 mm",
      "too little: 0.1 left, at least 0.2",
    ]);
    expect(stepsOf("INSPECT", [12.02, "12 H7"]).slice(0, 2)).toEqual([
      "12.02 mm beside the limits 12 to 12.018 mm",
      "over by 0.002",
    ]);
    expect(stepsOf("REAMERSIZE", ["10 H7"])[0]).toBe("window of a new reamer: 10.006 mm to 10.012 mm");
  });
  test("a name is read with its namespace and in any case", () => {
    expect(stepsOf("ream.rpm", [15, 10])).toEqual(stepsOf("RPM", [15, 10]));
  });
});
