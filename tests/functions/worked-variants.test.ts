// tests: the formula that STEPS writes out gives what the function gives, in both units, with each optional argument
// given, with all of them, and with none.

import { describe, expect, test } from "vitest";
import { explanationOf } from "../../functions/map-rows.ts";
import { registered } from "../../functions/register.ts";
import type { Formula } from "../../src/calc/formula.ts";
import { workedOut } from "../calc/golden-file.ts";
import { readFormula } from "../support/formula.ts";
import { handedOver as asHandedOver, declarations, isError } from "../support/sheet.ts";

/** A value for each optional argument that a formula reads, other than its default. */
const values: Readonly<Record<string, unknown>> = {
  ...{ allowedShare: 0.02, edges: 2, regrinds: 3, regrindCost: 12, edgeCost: 30, partsPerEdge: 200 },
  ...{ changeTime: 90, otherCost: 2.5, scrapRate: 0.03, setupTime: 20, setupRate: 70, batch: 40 },
  ...{ overhead: 0.12, margin: 0.2, partsPerYear: 5000, interest: 0.05, space: 900, energy: 700 },
  ...{ upkeep: 400, uptime: 0.85, shaft: "12 g6", angle: 62, gaugeTemperature: 25, gaugeMaterial: "GG25" },
  ...{ confidence: 0.9, tool: "carbide", maxRpm: 300, cutsOver: 0.001, thicknessTolerance: 0.001 },
  ...{ buildUp: 0.5, angle1: 20, angle2: 75, limit: 0.003, bores: 3, coefficient: 0.8 },
  ...{ toolMaterial: "carbide", flutes: 4, material: "6061", drilledOver: 0.01, chipRoom: 4, drill: 9.5 },
  ...{ pointAngle: 130, leadIn: 2, overrun: 3, retractRate: 900, holes: 3, moveTime: 2, toolChange: 4 },
  ...{ loadTime: 15, timeFactor: 2, chamferAngle: 30, efficiency: 0.8 },
};

/** The numbers of a call beside those of its formula; undefined where there is an error, or no formula of lines. */
function bothOf(id: string, args: readonly unknown[]) {
  let result: any[][];
  try {
    result = registered.get(id)!.call(...asHandedOver(id, args));
  } catch (thrown) {
    if (isError(thrown)) return undefined;
    throw thrown;
  }
  const how = explanationOf(result);
  const formula = (how?.calculate as { formula?: Formula } | undefined)?.formula;
  const numbers = result[0].filter((cell): cell is number => typeof cell === "number");
  if (!how || !formula || result.length > 1 || isError(result[0][0]) || numbers.length === 0)
    return undefined;
  const units = how.values[how.names.indexOf("units")] ?? "mm";
  if (formula.steps(units, ...how.values).length === 0) return undefined;
  return { numbers, worked: workedOut(formula, how.names, how.values, numbers.length) };
}

const variants = declarations.flatMap(({ id, parameters, examples }) => {
  const { args } = readFormula(examples[0].formula);
  const required = parameters.map(({ optional }, at) => (optional ? undefined : args[at]));
  const places = parameters.flatMap(({ optional, name }, at) => (optional && name in values ? [at] : []));
  const sets = [
    [],
    ...places.map((place) => [place]),
    places,
    ...places.map((place) => places.filter((at) => at !== place)),
  ];
  const unitsAt = parameters.findIndex(({ name }) => name === "units");
  return sets.flatMap((set) =>
    (unitsAt < 0 ? [undefined] : ["mm", "in"]).map((units) => ({
      id,
      args: required.map((one, at) =>
        at === unitsAt ? units : set.includes(at) ? values[parameters[at].name] : one,
      ),
    })),
  );
});
const ids = [...new Set(variants.map(({ id }) => id))];

describe("the written formula gives the function's numbers", () => {
  test.each(ids)("%s", (id) => {
    for (const { args } of variants.filter((one) => one.id === id)) {
      const both = bothOf(id, args);
      if (!both) continue;
      both.numbers.forEach((number, at) => {
        expect(Math.abs(both.worked[at] - number), `${id}(${args})`).toBeLessThanOrEqual(
          5.1e-8 + 1e-12 * Math.abs(number),
        );
      });
    }
  });

  test("in most functions, and in most of their variants", () => {
    const compared = variants.filter(({ id, args }) => bothOf(id, args));
    expect(new Set(compared.map(({ id }) => id)).size).toBeGreaterThan(50);
    expect(compared.length).toBeGreaterThan(200);
  });
});
