// tests: what must hold for every registered function, whatever it computes.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type ArgumentName, vocabulary } from "../functions/arguments.ts";
import { FAULT } from "../functions/cells.ts";
import { isCellAddress, storedName } from "../src/build/check-declarations.ts";
import { tasks } from "../src/build/reference/topics.ts";
import { sources } from "../src/data/sources.ts";
import { associated } from "./support/custom-functions.ts";
import { isAsWritten, readFormula, readResult } from "./support/formula.ts";
import { runs, share } from "./support/share.ts";
import { type Cells, declarations, handedOver, isError, messageOf, said, sheet } from "./support/sheet.ts";

const functions = declarations.map((declaration) => [declaration.id, declaration] as const);
const wordOf = (name: string) => name.replace(/_$/, "");

/** The arguments of a function's first example: values that are right together. */
const exampleOf = (id: string): unknown[] => [
  ...readFormula(declarations.find((declaration) => declaration.id === id)!.examples[0].formula).args,
];

/** The same values, with every argument of the function given. */
function fullArgs(id: string): unknown[] {
  const args = exampleOf(id);
  const { parameters } = declarations.find((declaration) => declaration.id === id)!;
  while (args.length < parameters.length) args.push(undefined);
  return args;
}

describe("declarations", () => {
  test("there are functions, each registered", () => {
    expect(declarations.length).toBeGreaterThan(60);
    expect([...associated.keys()].sort()).toEqual(declarations.map(({ id }) => id).sort());
  });

  test.each(functions)("%s has no faults", (_, { faults }) => {
    expect(faults).toEqual([]);
  });

  test.each(functions)("%s stands in a task of the reference", (id) => {
    expect(tasks.flatMap(([, ids]) => ids)).toContain(id);
  });

  test.each(functions)("%s: every argument is a word of the vocabulary", (_, { parameters }) => {
    for (const { name } of parameters) expect(Object.keys(vocabulary)).toContain(wordOf(name));
  });

  test.each(functions)("%s: every number among its arguments says its unit", (_, { parameters }) => {
    for (const { name, description } of parameters)
      expect(saysUnitOf(wordOf(name), description), `${name}: ${description}`).toBe(true);
  });

  test.each(functions)("%s: its result says its unit, or what it is", (_, { returns }) => {
    expect(saysUnit(returns), returns).toBe(true);
  });

  test.each([
    ["Time in the hole over time in the cut", false],
    ["How far the tool goes in", false],
    ["The first entry whose range covers the size", false],
    ["Minutes until the shift ends", false],
    ["Depth of the hole, mm or in", true],
    ["Time per part, s", true],
    ["Runout (mm or in), angle (degrees)", true],
    ["Share of the shift, no unit", true],
    ['"ok", or "over"', true],
  ])("%s: a unit? %s", (text, isUnit) => {
    expect(saysUnit(text)).toBe(isUnit);
  });

  test.each(functions)("%s: the id is one that Excel takes", (id) => {
    expect(id).toMatch(/^[A-Z][A-Z0-9._]{2,63}$/);
    expect(isCellAddress(id)).toBe(false);
  });

  test("cell addresses are known as such", () => {
    for (const address of ["A1", "XFD1048576", "R1C1", "RC", "RPM1"])
      expect(isCellAddress(address)).toBe(true);
    for (const name of ["RPM", "XFE1", "A1048577", "STARTSPEED", "SIZEAT20"])
      expect(isCellAddress(name)).toBe(false);
  });

  test("no two names are one in a file", () => {
    const names = declarations.map(({ id }) => storedName(id));
    expect(new Set(names).size).toBe(names.length);
  });

  test.each(functions)("%s: units comes last and may be left out", (_, { parameters }) => {
    const at = parameters.findIndex(({ name }) => name === "units");
    if (at < 0) return;
    expect(at).toBe(parameters.length - 1);
    expect(parameters[at].optional).toBe(true);
  });

  test.each(functions)("%s: the sources exist", (_, declaration) => {
    expect(declaration.sources.length).toBeGreaterThan(0);
    for (const key of declaration.sources) expect(Object.keys(sources)).toContain(key);
  });

  test("every source is used", () => {
    const used = new Set(declarations.flatMap((declaration) => declaration.sources));
    expect(Object.keys(sources).filter((key) => !used.has(key))).toEqual([]);
  });
});

const examples = declarations.flatMap(({ id, examples, row }) =>
  examples.map(({ formula, result }) => [formula, result, id, row.length] as const),
);

/** The tables show their first cell alone. */
const SHORTENED = new Set(["MATERIALS", "SOURCES", "REMEDIES"]);

describe("examples", () => {
  test.each(examples)("%s gives %s", (formula, result, id, width) => {
    const { id: called, args } = readFormula(formula);
    expect(called).toBe(id);
    const cells = sheet(id, ...args);
    const written = readResult(result);
    if (SHORTENED.has(id)) {
      expect(cells[0][0]).toBe("key" === written[0][0] ? "key" : JSON.parse(written[0][0]));
      return;
    }
    const error = written[0][0].startsWith("#");
    if (!error) expect(cells.map((row) => row.length)).toEqual(written.map((row) => row.length));
    if (width > 0) expect(cells[0].length).toBe(width);
    written.forEach((row, y) => {
      row.forEach((cell, x) => {
        expect(isAsWritten(cells[y][x], cell), `${JSON.stringify(said(cells[y][x]))} for ${cell}`).toBe(true);
      });
    });
  });
});

describe("required and optional", () => {
  const withArguments = functions.filter(([, { parameters }]) => parameters.length > 0);

  test.each(withArguments)("%s: the example is right, also with optional arguments blank", (id) => {
    const [[first]] = sheet(id, ...fullArgs(id)) as [[unknown]];
    expect(isError(first) ? said(first) : "").toBe("");
    const blank = fullArgs(id).map((arg) => (arg === undefined ? "  " : arg));
    expect(
      sheet(id, ...blank)
        .flat()
        .map(said),
    ).toEqual(
      sheet(id, ...fullArgs(id))
        .flat()
        .map(said),
    );
  });

  test.each(withArguments)("%s: all blank gives an empty text in every cell", (id, { parameters, row }) => {
    for (const blank of [undefined, null, "", " \u00a0\t"]) {
      const cells = sheet(id, ...parameters.map(() => blank));
      expect(cells.length).toBe(1);
      expect(cells[0]).toEqual(new Array(row.length || 1).fill(""));
    }
  });

  test.each(withArguments)("%s: a required blank among filled cells is named", (id, { parameters }) => {
    const required = parameters.filter(({ optional, repeating }) => !optional && !repeating);
    if (required.length < 2) return;
    for (const { name } of required) {
      const args = fullArgs(id);
      args[parameters.findIndex((parameter) => parameter.name === name)] = null;
      for (const cell of sheet(id, ...args).flat())
        expect(messageOf(cell)).toMatch(new RegExp(`^${wordOf(name)} is empty|Make them the same size`));
    }
  });

  test.each(withArguments)("%s: an optional argument is asked for in no other way", (id, { parameters }) => {
    parameters.forEach(({ name, optional }, index) => {
      if (!optional) return;
      const args = fullArgs(id);
      args[index] = null;
      for (const cell of sheet(id, ...args).flat())
        if (isError(cell)) expect(cell.message).not.toMatch(new RegExp(`^${wordOf(name)} is (0 or )?blank$`));
    });
  });
});

/** A unit as it stands in a text: "in" only after "or", since it is a word of English too. */
const UNIT =
  /\b(?:mm or in|mm\/min or in\/min|m\/min or ft\/min|rev\/min|N·m or lbf·in|kW or hp|degrees|L\/min or US gpm|N or lbf|bar or psi)\b|°C or °F|(?:^|, |\()(?:s|min|h|parts|months)\b/i;
/** What has no unit, or one that the sheet says. */
const KIND =
  /\b(?:no unit|money|shares?|whole|(?:a|whole) number|numbers?|parts|edges|holes|how often|fit|in the same unit|in any unit|(?:its|their) own unit|in the (?:same )?unit|unit (?:from|to|of)|TRUE or FALSE|text|table|words|names?|ok)\b|÷|"[^"]+"/i;

const saysUnit = (text: string) => UNIT.test(text) || KIND.test(text);

/** A number says the unit that the vocabulary gives it; what takes words alone has none to say. */
function saysUnitOf(name: string, text: string): boolean {
  if (name === "units") return true;
  const { unit, max, min } = vocabulary[name as ArgumentName];
  if (unit === "") return (Number.isNaN(min) && Number.isNaN(max)) || saysUnit(text);
  const written = typeof unit === "string" ? unit : unit.join(" or ");
  const others: Readonly<Record<string, RegExp>> = { "°": /\bdegrees\b|°/, parts: /\b(?:parts|a number)\b/i };
  return (others[written] ?? new RegExp(`(?:^|[ (])${written}(?=$|[ .,;:)])`)).test(text);
}

/** Cells that a sheet may hold and a function must not be surprised by. */
const nasty: readonly unknown[] = [
  ...[0, -0, -1, 1e-300, 1e300, -1e300, 5e-324, 4000, 46000, 0.1, 7, 1.5],
  ...[Number.NaN, Number.POSITIVE_INFINITY, true, false, null, undefined, "", " ", "\u00a0", "\u200b"],
  ...["abc", "12 H7", "12", "1,250", "1.250,5", "0.5 in", "1/2", "1/0", "-1", "0", "TRUE", "#N/A", "=1+1"],
  ...[
    "__proto__",
    "constructor",
    "toString",
    "٣",
    "１２",
    "12\u0000",
    "\u0007",
    "\ud800",
    "½",
    "🙂",
    "mm",
    "in",
  ],
  ...[
    "(".repeat(5000),
    "9".repeat(400),
    "x".repeat(50_000),
    "1/".repeat(99),
    "+".repeat(199),
    "12 H7 ".repeat(33),
  ],
  { code: "#DIV/0!" },
  { code: "#SPILL!" },
  { address: "Sheet1!A1" },
  new Date(0),
];

/** Every other one in the quick tests. */
const someNasty = (first: number): readonly unknown[] =>
  share(
    nasty.filter((_, at) => (at + first) % 2 === 0),
    nasty,
  );

/** What is wrong with a result cell, if anything is. */
function faultOf(cell: unknown): string | undefined {
  if (typeof cell === "string" || typeof cell === "boolean") return undefined;
  if (typeof cell === "number")
    return Number.isFinite(cell) && !Object.is(cell, -0) ? undefined : "no plain number";
  if (!isError(cell)) return "neither a value nor an error";
  const { code, message } = cell;
  if (code === "#DIV/0!" && !message) return undefined;
  if (code !== "#VALUE!" && code !== "#N/A") return "an error that shows no message";
  if (!message || message.length > 600) return "no message, or a long one";
  if (message.includes(FAULT)) return "a fault";
  if (/\[object|[\n\u0000]/.test(message)) return "a message with rubbish";
  if (/NaN|Infinity|undefined/.test(message.replace(/"[^"]*"/g, ""))) return "a message with no number";
  if (!/[.?!]\)?"?$/.test(message)) return "a message that is no whole sentence";
  const inner = message.replace(/"[^"]*"/g, "").match(/\b[a-z]{2,}[A-Z][A-Za-z]*\b/g) ?? [];
  if (inner.some((word) => !Object.hasOwn(vocabulary, word) && !nasty.includes(word)))
    return `an inner name (${inner})`;
  const sentences = message.replace(/"[^"]*"/g, "").split(/[.!?] (?=[A-Z])/);
  return sentences.length > 2 ? "more than two sentences" : undefined;
}

function expectSound(id: string, cells: Cells, given: readonly unknown[]): void {
  const width = cells[0]?.length ?? 0;
  for (const row of cells)
    for (const cell of row) {
      const fault = row.length === width ? faultOf(cell) : "not rectangular";
      if (fault)
        throw new Error(
          `${id}(${JSON.stringify(given).slice(0, 300)}): ${fault}: ${JSON.stringify(said(cell))}`,
        );
    }
  if (width === 0) throw new Error(`${id} gives no cell`);
}

describe("nasty cells", () => {
  const withArguments = functions.filter(([, { parameters }]) => parameters.length > 0);

  test.each(withArguments)("%s: one nasty argument among right ones", (id, { parameters }) => {
    parameters.forEach((_, index) => {
      someNasty(index).forEach((cell, at) => {
        const shapes = [[[cell]], [[cell], [cell]], [[cell, cell]]];
        for (const range of share([shapes[(at + index) % 3]], shapes)) {
          const args = fullArgs(id);
          args[index] = range;
          expectSound(id, sheet(id, ...args), args);
        }
      });
    });
  });

  test.each(withArguments)("%s: a message names an argument", (id, { parameters }) => {
    // STEPS passes on what the function that it shows says.
    const names =
      id === "STEPS" || id === "CHECKOF"
        ? Object.keys(vocabulary)
        : parameters.map(({ name }) => wordOf(name));
    const named = new RegExp(`\\b(${names.join("|")})\\b|^The numbers are too large to compute with`);
    const unnamed = new Set<string>();
    parameters.forEach((_, index) => {
      for (const cell of someNasty(index + 1)) {
        const args = fullArgs(id);
        args[index] = cell;
        for (const result of sheet(id, ...args).flat())
          if (isError(result) && result.message && !named.test(result.message))
            unnamed.add(`${result.code} ${result.message}`);
      }
    });
    expect([...unnamed]).toEqual([]);
  });

  test.each(functions)("%s: any cells in any ranges", (id, { parameters }) => {
    const right = fullArgs(id).flatMap((arg) => (Array.isArray(arg) ? (arg as Cells).flat() : [arg]));
    const cell = fc.constantFrom(...nasty, ...right, ...right);
    const range = fc.oneof(
      cell.map((one) => [[one]]),
      fc.array(cell, { minLength: 1, maxLength: 3 }).map((column) => column.map((one) => [one])),
      fc.array(cell, { minLength: 1, maxLength: 3 }).map((row) => [row]),
      fc.constant(undefined),
    );
    fc.assert(
      fc.property(fc.tuple(...parameters.map(() => range)), fc.boolean(), (args, invoked) => {
        const given = handedOver(id, args);
        const cells = associated.get(id)!(...given, ...(invoked ? [{ address: "Sheet1!A1" }] : []));
        expectSound(id, cells, args);
      }),
      { numRuns: runs(60) },
    );
  });

  test.each(functions)("%s: what stands for an argument left out does not matter", (id) => {
    const args = exampleOf(id);
    const given = handedOver(id, args).map((arg) => arg ?? null);
    const plain = associated.get(id)!(...given)
      .flat()
      .map(said);
    for (const left of [undefined, [[null]], [[""]], [], [[]], {}])
      expect(
        associated.get(id)!(...given.map((arg) => (arg === null ? left : arg)))
          .flat()
          .map(said),
      ).toEqual(plain);
    expect(
      associated.get(id)!(...given, { address: "Sheet1!A1", functionName: id })
        .flat()
        .map(said),
    ).toEqual(plain);
  });
});
