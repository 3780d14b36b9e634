// build: the symbols of a formula, each with its meaning and its unit.

import type { MathNode } from "mathjs";
import { type ArgumentName, vocabulary } from "../../../functions/arguments.ts";
import type { Explanation } from "../../../functions/map-rows.ts";
import { type Formula, resultsOf, scopeOf } from "../../calc/formula.ts";
import type { Units } from "../../calc/lengths.ts";
import type { Declaration } from "../declarations.ts";
import { parse } from "../mathjs.ts";
import { symbolInWords } from "./formulas.ts";
import { escaped } from "./page.ts";

export function symbolTable(
  { parameters, cells, returns }: Declaration,
  formula: Formula,
  how: Explanation,
): string {
  const [metric, inch] = [unitsIn("mm"), unitsIn("in")];
  const hasUnits = how.names.includes("units");
  const meaning = new Map(parameters.map(({ name, description }) => [name, description]));
  const steps = formula.steps("mm", ...how.values);
  const results = new Map(
    resultsOf(steps, Math.max(1, cells.length)).flatMap((at, line) =>
      at === undefined ? [] : [[steps[line].symbol, cells[at]?.name ?? returns]],
    ),
  );
  const rows = [...metric].map(([name, unit]) => {
    const other = inch.get(name) ?? unit;
    // A size that the example gave in mm keeps that unit in both.
    const units =
      hasUnits && other === unit && unit === "mm"
        ? "mm or in"
        : other !== unit
          ? `${unit} or ${other}`
          : unit;
    const said = meaning.get(name) ?? meaning.get(name.replace(/\d$/, "1")) ?? results.get(name);
    const what = said
      ? said.split(/, (?=mm|m\/min|rev|N·m|kW|°C)|\. /)[0]
      : "value on the way, see the steps";
    return `<tr><th scope="row">${escaped(symbolInWords(name))}</th><td>${escaped(what)}</td><td>${escaped(units)}</td></tr>`;
  });
  if (rows.length === 0) return "";
  return `<table class="symbols"><thead><tr><th>Symbol</th><th>What it is</th><th>Unit</th></tr></thead><tbody>${rows.join("")}</tbody></table>`;

  function unitsIn(units: Units): Map<string, string> {
    const scope = scopeOf(formula, how.names, how.values, units);
    const found = new Map<string, string>();
    for (const { symbol, expression, unit } of formula.steps(units, ...how.values)) {
      for (const name of symbolsOf(expression)) {
        if (found.has(name)) continue;
        const own = vocabulary[name as ArgumentName]?.unit ?? "";
        const ofArgument = typeof own === "string" ? own : own[units === "mm" ? 0 : 1];
        found.set(name, scope.get(name)?.[1] ?? ofArgument);
      }
      found.set(symbol, unit);
    }
    return found;
  }
}

function symbolsOf(expression: string): string[] {
  const names: string[] = [];
  parse(expression).traverse((node: MathNode, path: string) => {
    const { isSymbolNode, name } = node as any;
    if (isSymbolNode && path !== "fn" && name !== "pi") names.push(name);
  });
  return names;
}
