// tests: each line of a calculation written out has its name and its unit, by what the quantity is; and each number
// that a function gives is one of the lines.

import { expect, test } from "vitest";
import { readFormula } from "../support/formula.ts";
import { declarations, isError, sheet } from "../support/sheet.ts";

/** The units of the contract, by quantity; both sets where they differ. */
const quantities: readonly (readonly [mm: string, inch: string, symbols: string])[] = [
  [
    "mm",
    "in",
    `areaMoment@4 average barrel bellMouth chipThickness cutsOver deflection deviation diameter drill ex ey feedPerRev
    fullDepth goMaximum goMinimum goWorn hotSize lowerLimit maximum mean middle minimum move notGoMaximum
    notGoMinimum oversizeAllowance reamerTolerance runout screw0 screw90 screw180 screw270 size spread stock taper
    toPoint tolerance travel upperLimit wearAllowance feedPerTooth`,
  ],
  ["m/min", "ft/min", "startSpeed surfaceSpeed"],
  ["mm/min", "in/min", "feedRate"],
  ["N·m", "lbf·in", "torque"],
  ["kW", "hp", "power"],
  ["L/min", "US gpm", "flow"],
  ["s", "s", "cutTime cycleTime holeTime"],
  ["min", "min", "life"],
  ["rev/min", "rev/min", "rpm"],
  ["°", "°", "angle beta"],
  [
    "money",
    "money",
    `changeCost cost costPerYear costPresent costProposed edgeChangePresent edgeChangeProposed edgeCost edgePresent
    edgeProposed machineTimePresent machineTimeProposed price saving savingPerYear toolCost`,
  ],
  ["per hour", "per hour", "machineRate"],
  ["h/year", "h/year", "hoursSaved"],
  ["months", "months", "payback"],
  ["parts", "parts", "parts partsPerEdge quantity"],
  ["machines", "machines", "load machines"],
  ["edges", "edges", "edgesNeeded"],
  ["tools", "tools", "tools"],
  ["diameters", "diameters", "depthRatio"],
  ["N/mm²", "N/mm²", "specificForce"],
  ["m/s", "m/s", "jetSpeed"],
  ["as the lives", "as the lives", "halfRange high low meanLife"],
  ["", "", "cp cpk inTolerance lowerBound n rSquared ratio share flutes"],
];
const unitsOf = new Map(
  quantities.flatMap(([mm, inch, symbols]) =>
    symbols.split(/\s+/).map((symbol) => {
      const [name, power] = symbol.split("@");
      return [name, power ? ["mm⁴", "in⁴"] : [mm, inch]] as const;
    }),
  ),
);

const calls = declarations
  .filter(({ id }) => !["STEPS", "CONVERT"].includes(id))
  .flatMap(({ id, parameters, examples }) => {
    const { args } = readFormula(examples[0].formula);
    const place = parameters.findIndex(({ name }) => name === "units");
    return (["mm", "in"] as const).map((system, at) => {
      const given = place < 0 ? [...args] : Array.from({ length: place + 1 }, (_, one) => args[one]);
      if (place >= 0) given[place] = system;
      return { id, system, at, args: given };
    });
  })
  .filter(({ id, args }) => !isError(sheet(id, ...args)[0][0]));

/** The lines of a call by three: symbols, numbers, result. */
function stepsOf(id: string, args: readonly unknown[]) {
  const lines = sheet("STEPS", id, ...args).map(([line]) => String(line));
  const nameOf = (line = "") => /^([A-Za-z]\w*) = ./.exec(line)?.[1];
  const steps: { symbol: string; result: string }[] = [];
  for (let at = 0; at + 2 < lines.length; at++) {
    const symbol = nameOf(lines[at]);
    if (!symbol || nameOf(lines[at + 1]) !== symbol || nameOf(lines[at + 2]) !== symbol) continue;
    steps.push({ symbol, result: lines[at + 2] });
    at += 2;
  }
  return { lines, steps };
}

/** What has no units of its own has those of its inputs; torque is worked in mm in both sets. */
const otherUnits: Readonly<Record<string, string>> = {
  "FEEDRATE feedRate": "length/min",
  "FEEDPERREV feedPerRev": "length/rev",
  "FEEDFROMTOOTH feedPerRev": "length/rev",
  "FEEDPERTOOTH feedPerTooth": "length/tooth",
  "RUNOUTAT runout": "as the readings",
  "STACKUP stackUp": "as the contributions",
  "TAYLORSPEED surfaceSpeed": "m/min or ft/min",
  "ECONOMICSPEED surfaceSpeed": "m/min or ft/min",
  "FASTESTSPEED surfaceSpeed": "m/min or ft/min",
  "TAYLORFIT C": "m/min or ft/min",
  "TORQUE chipThickness": "mm",
  "TORQUE feedInMm": "mm",
  "TORQUE diameterInMm": "mm",
  "TORQUE drillInMm": "mm",
};

test.each(calls)("$id $system: each line has its name and its unit", ({ id, at, args }) => {
  const { lines, steps } = stepsOf(id, args);
  for (const line of lines) expect(line).toMatch(/^[^\s=]/);
  expect(lines.filter((line) => !line.startsWith("source: ")).length).toBeGreaterThan(0);
  for (const { symbol, result } of steps) {
    const unit = otherUnits[`${id} ${symbol}`] ?? unitsOf.get(symbol)?.[at];
    expect(/^\S+ = −?[\d.]+(?:e[+-]?\d+)? ?(.*)$/.exec(result)?.[1], `${id} ${result}`).toBe(unit);
  }
});

/** The numbers that a line holds, as they are shown. */
const numbersIn = (line: string) =>
  (line.match(/(?<![\d.A-Za-z])−?\d+(?:\.\d+)?(?:e[+-]?\d+)?/g) ?? []).map((text) =>
    Number(text.replace("−", "-")),
  );

test.each(calls.filter(({ id }) => id !== "PLAN"))(
  "$id $system: each cell that it gives is in a line",
  ({ id, args }) => {
    const own = sheet(id, ...args);
    const { lines, steps } = stepsOf(id, args);
    if (own.length > 1 || lines[0].endsWith("looks its answer up in a table.")) return;
    const shown = steps.length > 0 ? steps.map(({ result }) => result) : lines;
    for (const one of own[0])
      if (typeof one === "number") {
        // Twelve figures are shown, of the number that the function gives.
        expect([...shown, ...lines].flatMap(numbersIn)).toContain(Number(one.toPrecision(12)));
      } else expect(lines.join("\n")).toContain(String(one));
  },
);
