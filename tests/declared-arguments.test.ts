// tests: each argument that a formula gives reaches the parameter of its name in the calculation, whatever its place;
// and each function is held to golden values.

import ts from "typescript";
import { describe, expect, test } from "vitest";
import { type ArgumentName, units, vocabulary } from "../functions/arguments.ts";
import { explanationOf } from "../functions/map-rows.ts";
import { registered } from "../functions/register.ts";
import { argumentName } from "../src/build/declarations.ts";
import type { Formula } from "../src/calc/formula.ts";
import { materials } from "../src/data/materials/materials.ts";
import { readTable } from "./support/csv.ts";
import { readFormula } from "./support/formula.ts";
import { files, nodesIn, parse, textOf } from "./support/modules.ts";
import { handedOver as asHandedOver, declarations } from "./support/sheet.ts";

/** Functions that list, show or advise, and compute nothing of their own. */
const tables = new Set(["MATERIALS", "SOURCES", "STEPS", "CHIPPATH", "REMEDIES", "HEADERS"]);
const computing = declarations
  .filter(({ id }) => !tables.has(id))
  .map((declaration) => [declaration.id, declaration] as const);

type Calculation = (...values: never[]) => unknown;

/** What the calculation calls its parameters; one that it leaves unread has `_` before its name. */
function parameterNames(calculation: Calculation): string[] {
  const [declared] = [...nodesIn(parse(`(${calculation})`))].filter(ts.isFunctionLike);
  return declared.parameters.map(({ name }) => name.getText().replace(/^_/, ""));
}

/** A cell that an argument takes. */
function cellFor(name: string): unknown {
  const argument = name === "units" ? units : vocabulary[name as ArgumentName];
  const cells = [
    0.5,
    2,
    7,
    "mm",
    "HSS",
    materials[0].key,
    "12 H7",
    "H7",
    "through",
    "metric",
    true,
    "count",
    "x",
  ];
  return cells.find((cell) => {
    try {
      return argument.read(cell, name, "mm", true) !== undefined;
    } catch {
      return false;
    }
  });
}

/** What the function itself gives, an error that the host would be thrown included. */
const called = (id: string, args: readonly unknown[]) => registered.get(id)!.call(...asHandedOver(id, args));

describe.each(computing)("%s", (id, { parameters, examples }) => {
  const given = readFormula(examples[0].formula).args;
  const required = parameters.map(({ optional }, index) => (optional ? undefined : given[index]));
  const handedOver = (args: readonly unknown[]) => {
    const seen = explanationOf(called(id, args));
    if (!seen) throw new Error(`${id} hands nothing over`);
    return seen;
  };

  test("hands its arguments over in the order in which they are declared and the calculation takes them", () => {
    const declared = parameters.map(({ name }) => name);
    const { calculate, names } = handedOver(required);
    expect(names.map(argumentName)).toEqual(declared);
    const taken = parameterNames(calculate);
    expect(declared.slice(0, taken.length).map(sameWord)).toEqual(taken.map(sameWord));
  });

  test("hands each optional argument over under its own name", () => {
    parameters.forEach(({ name, optional }, index) => {
      if (!optional) return;
      const args = [...required];
      args[index] = cellFor(name);
      expect(args[index], name).toBeDefined();
      const { names, values } = handedOver(args);
      const reached = names.filter(
        (_, at) => parameters[at].optional && values[at] !== handedOver(required).values[at],
      );
      expect(reached).toEqual([name]);
    });
  });
});

/** The default that an argument's text states, for mm: a number, a text in quotes, TRUE or FALSE, or a material's key. */
function statedDefault(description: string): unknown {
  const [, stated] = /\bDefault ("[^"]+"|[^.,]+(?:\.\d+)?)/.exec(description) ?? [];
  if (stated === undefined || materials.some(({ key }) => key === stated)) return stated;
  if (stated.startsWith('"')) return stated.slice(1, -1);
  if (/^(?:TRUE|FALSE)$/.test(stated)) return stated === "TRUE";
  const [number] = /^-?\d+(?:\.\d+)?(?=$| mm or | °C or )/.exec(stated) ?? [];
  return number === undefined ? undefined : Number(number);
}

const defaults = declarations.flatMap(({ id, parameters, examples }) =>
  parameters.flatMap(({ name, description }, index) => {
    const value = statedDefault(description);
    return value === undefined
      ? []
      : [{ id, name, index, value, given: readFormula(examples[0].formula).args }];
  }),
);

test("most defaults are stated as a value", () => {
  const optional = declarations.flatMap(({ parameters }) => parameters.filter(({ optional }) => optional));
  expect(defaults.length).toBeGreaterThan(0.8 * optional.length);
});

test.each(defaults)(
  "$id: $name left out is $value, as its text says",
  ({ id, name, index, value, given }) => {
    const givenAs = (cell: unknown) => {
      const args = [...given];
      args[index] = cell;
      return called(id, args);
    };
    const leftOut = givenAs(undefined);
    expect(givenAs(value)).toEqual(leftOut);
    const { defaults } =
      (explanationOf(leftOut)?.calculate as { formula?: Formula } | undefined)?.formula ?? {};
    const own = defaults?.[name];
    if (own !== undefined) expect(typeof own === "object" ? own.mm : own).toBe(value);
  },
);

/** The calculation's own word for an argument, where it needs another. */
const otherWords: Readonly<Record<string, string>> = {
  className: "class",
  KnownMaterial: "material",
  of: "series",
  contributions: "contribution1",
};
const sameWord = (name: string) => otherWords[name] ?? name;

/** What tests run golden files over: a function by its id, or a calculation by its name. */
const held = new Set(readTable("check-values").map(({ formula }) => readFormula(formula).id));
for (const file of files.filter((name) => name.endsWith(".test.ts")))
  for (const [, of] of textOf(file).matchAll(/\bgolden(?:Sheet)?\(\s*"[^"]+",\s*"?(\w+)/g)) held.add(of);

test.each(computing)("%s is held to golden values", (id, { examples }) => {
  const seen = explanationOf(called(id, readFormula(examples[0].formula).args));
  expect([...held]).toEqual(
    expect.arrayContaining([held.has(id) ? id : (seen?.calculate.name ?? "no calculation")]),
  );
});
