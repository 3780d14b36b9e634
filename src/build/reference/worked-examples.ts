// build: the worked examples of a page: the inputs under their names, and what the function gives for them.

import type { Declaration } from "../declarations.ts";
import { literalArguments, type Matrix } from "./load.ts";
import { escaped } from "./page.ts";

/** An example in the units that a function's own examples lack; the page shows what the function gives. */
const otherExamples: Readonly<Record<string, string>> = {
  CHECKLIMITS: '=REAM.CHECKLIMITS(0.5, 0.5005, ".5000 +.0005/-0", "in")',
  MINSIZE: '=REAM.MINSIZE(".5000 +.0005/-0", "in")',
  MAXSIZE: '=REAM.MAXSIZE(".5000 +.0005/-0", "in")',
  MIDSIZE: '=REAM.MIDSIZE(".5000 +.0005/-0", "in")',
  TOLERANCE: '=REAM.TOLERANCE(".5000 +.0005/-0", "in")',
  CALLOUT: '=REAM.CALLOUT("2X .500 +.0005/-.0000 THRU", "count", "in")',
  UPPERDEV: '=REAM.UPPERDEV(0.5, "H7", "in")',
  LOWERDEV: '=REAM.LOWERDEV(0.5, "F7", "in")',
  ITWIDTH: '=REAM.ITWIDTH(0.5, 7, "in")',
  CLEARANCE: '=REAM.CLEARANCE(".5000 +.0005/-0", ".4998 +0/-.0003", "in")',
  FITTYPE: '=REAM.FITTYPE(".5000 +.0005/-0", ".4998 +0/-.0003", "in")',
  GRADEFOR: '=REAM.GRADEFOR(".5000 +.0005/-0", "in")',
  ACCEPTLIMITS: '=REAM.ACCEPTLIMITS(".5000 +.0005/-0", 0.0001, "in")',
  VBLOCK: '=REAM.VBLOCK(0.6, 3, , "in")',
  INSPECT: '=REAM.INSPECT(0.5003, ".5000 +.0005/-0", "in")',
  CAPABILITY: '=REAM.CAPABILITY({0.5002;0.5003;0.5002;0.5001}, ".5000 +.0005/-0", "in")',
  INTOLERANCE: '=REAM.INTOLERANCE(0.50025, 0.0001, ".5000 +.0005/-0", "in")',
  GAUGESHARE: '=REAM.GAUGESHARE(0.00002, 0.00001, ".5000 +.0005/-0", "in")',
  SIZEAT20: '=REAM.SIZEAT20(2, 86, "aluminum", , , "in")',
  PLUGGAUGE: '=REAM.PLUGGAUGE(".5000 +.0005/-0", "in")',
  HOLEFORM: '=REAM.HOLEFORM({0.5005;0.5003;0.5002}, {0.1;0.6;1.1}, "in")',
  DATAFOR:
    '=REAM.DATAFOR({"material","tool","over","up to","speed (ft/min)";"gray iron","HSS",0,0.75,70;"gray iron","HSS",0.75,2,60}, "speed", "GG25", , 0.5, "in")',
  WEARALLOWANCE: '=REAM.WEARALLOWANCE(".5000 +.0005/-0", 0.5003, , "in")',
  CUTSOVER: '=REAM.CUTSOVER({0.5004;0.5005;0.5004}, 0.5003, "in")',
  PREPLATE: '=REAM.PREPLATE(".5000 +.0010/-0", 0.0003, 0.0001, , "in")',
  SHAREDREAMERS: '=REAM.SHAREDREAMERS({".5000 +.0005/-0";".5000 +.0010/-0"}, , "in")',
  RUNOUT: '=REAM.RUNOUT(0, 0.0001, 0.0003, 0.0002, "in")',
  SCREWMOVES: '=REAM.SCREWMOVES(0, 0.0001, 0.0003, 0.0002, "in")',
  DEFLECTION: '=REAM.DEFLECTION(2, 3, 0.5, , "in")',
  SURFACESPEED: '=REAM.SURFACESPEED(611.155, 0.5, "in")',
  FLUTES: '=REAM.FLUTES(0.5, , "in")',
  HOLETIME: "=REAM.HOLETIME(30, 115)",
  HEADERS: '=REAM.HEADERS("LIMITS", "in")',
  CLEANUP: '=REAM.CLEANUP(0.01, 0.002, "in")',
  DRILLDEPTH: '=REAM.DRILLDEPTH(1.25, 0.06, 0.1, 0.484, , "in")',
  COSTATSPEED: '=REAM.COSTATSPEED(60, 0.25, 200, 0.5, 0.011, 1.25, 120, 40, 90, 2, "in")',
  TORQUE: '=REAM.TORQUE("1045", 0.5, 0.484, 0.011, 6, , "in")',
  POWER: '=REAM.POWER(10, 600, , "in")',
  PLAN: '=REAM.PLAN(".5000 +.0005/-0 THRU", "gray iron", 1.25, , , , "in")',
};

type Call = (...inputs: any[]) => Matrix;

/** Two tables at most: one in mm, or without units, and one in inches. Throws where an example gives an error. */
export function workedExamples(declaration: Declaration, call: Call): string {
  const isInch = ({ formula }: { formula: string }) => formula.endsWith('"in")');
  const other = otherExamples[declaration.id];
  const own = [...declaration.examples, ...(other ? [{ formula: other }] : [])];
  const metric = own.find((example) => !isInch(example))?.formula;
  const inch = own.find(isInch)?.formula;
  const shown = [
    [inch && metric ? "In mm" : "", metric, "mm"],
    [metric ? "In inches" : "", inch, "in"],
  ] as const;
  return shown
    .map(([title, formula, units]) =>
      formula === undefined
        ? ""
        : `${title ? `<h3>${title}</h3>` : ""}${exampleTable(declaration, formula, units, call)}`,
    )
    .join("");
}

function exampleTable(
  { id, parameters, cells, row }: Declaration,
  formula: string,
  units: "mm" | "in",
  call: Call,
): string {
  const { inputs } = literalArguments(formula);
  const result = call(...inputs);
  const failed = result.flat().find((cell) => typeof cell === "object");
  if (failed) throw new Error(`${formula} of the page of ${id} gives ${failed.message ?? failed.code}`);
  const given = inputs.flatMap((matrix, at) => {
    const parameter = parameters[Math.min(at, parameters.length - 1)];
    const name = parameter.repeating
      ? parameter.name.replace(/\d$/, String(at - parameters.length + 2))
      : parameter.name;
    return matrix ? [[name, matrix.map((line) => line.map(inWords).join(", ")).join("; ")]] : [];
  });
  const unit = (at: number) => cells[at]?.units[units === "mm" ? 0 : 1];
  const named = (name: string, at: number) => (unit(at) ? `${name}, ${unit(at)}` : name);
  const results =
    result.length > 1 || (row.length === 0 && result[0].length > 1)
      ? [["result", summary(result)]]
      : result[0].map((cell, at) => [named(row[at] ?? cells[at]?.name ?? "result", at), inWords(cell)]);
  const line = (pairs: string[][], tag: string, at: 0 | 1, kind: string) =>
    pairs.map((pair) => `<${tag} class="${kind}">${escaped(pair[at])}</${tag}>`).join("");
  return `<div class="wide" role="group" aria-label="Example of ${id}" tabindex="0"><table class="worked"><thead><tr>${line(given, "th", 0, "input")}${line(results, "th", 0, "output")}</tr></thead><tbody><tr>${line(given, "td", 1, "input")}${line(results, "td", 1, "output")}</tr></tbody></table></div>
<p><code>${escaped(formula)}</code> <button type="button" hidden data-copy="${escaped(formula)}">Copy</button></p>`;
}

/** A result with several rows: its first ones. */
function summary(result: Matrix): string {
  const lines = result.slice(0, 3).map((line) => line.map(inWords).join(", "));
  return result.length > 3 ? `${lines.join("; ")}; … ${result.length} rows` : lines.join("; ");
}

const inWords = (cell: unknown) =>
  typeof cell === "number" ? String(Number(cell.toPrecision(8))) : String(cell);
