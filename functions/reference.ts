// functions: the tables of materials and sources, and how a figure is calculated.

import { writtenSteps } from "../src/calc/checking/written-steps.ts";
import type { Formula } from "../src/calc/formula.ts";
import { materialTable } from "../src/calc/materials/material-table.ts";
import { hasOwn } from "../src/calc/own.ts";
import { shown, wrong } from "../src/calc/problem.ts";
import { sources as citations } from "../src/data/sources.ts";
import { type ArgumentName, vocabulary } from "./arguments.ts";
import { isErrorCell } from "./cells.ts";
import { explanationOf, spill } from "./map-rows.ts";
import { handedOver, type Matrix, registered } from "./register.ts";

/**
 * Shows how a function calculates its result, line by line.
 *
 * @customfunction STEPS
 * @param functionName Name of the function in quotes, such as "RPM"
 * @param inputs The function's own arguments in order, each with its own unit. Leave one empty between commas as in the function.
 * @returns Lines of text
 * @remarks Each line comes in symbols, with numbers and units, and as a result. The sources follow.
 * @example =REAM.STEPS("FEEDRATE", 0.012, 382) // "feedRate = feedPerRev · rpm"; "feedRate = 0.012 · 382 rev/min"; "feedRate = 4.584 length/min"; "source: feed rate = feed per revolution × rev/min; feed per tooth × teeth"
 * @see sources: derived
 */
export function steps(functionName: any[][], inputs: any[][][]): any[][] {
  return spill((name: string) => stepsOf(name, inputs ?? []), { functionName });
}

function stepsOf(name: string, inputs: readonly Matrix[]): unknown[][] {
  const id = name.toUpperCase().replace(/^REAM\./, "");
  const one = registered.get(id);
  if (!one || id === "STEPS")
    return wrong(`functionName is ${shown(name)}. Write the name of a function, such as "RPM".`);
  const matrix = one.call(...handedOver(one.call.length, inputs));
  const [first] = matrix as [any[]];
  if (isErrorCell(first[0]) || first[0] === "") return [[first[0]]];
  const how = explanationOf(matrix);
  const formula = how && (how.calculate as { formula?: Formula }).formula;
  if (!how || !formula) return [[`${id} looks its answer up in a table.`], ...sourceLines(one.sources)];
  if (how.rows > 1) return wrong(`inputs are ${how.rows} rows of ${id}. Enter one cell for each argument.`);
  const units = how.values[how.names.indexOf("units")] ?? "mm";
  const lines = writtenSteps({
    formula,
    names: how.names,
    values: how.values,
    units,
    results: matrix.length > 1 ? [] : first.filter((cell) => typeof cell === "number"),
    unitOf: (argument) => unitOf(argument, how.names.includes("units") ? units : undefined),
  });
  return [...lines.map((line) => [line]), ...sourceLines(one.sources)];
}

/** The unit of an argument; in a function without `units`, only one that is the same in both sets. */
function unitOf(name: string, units: "mm" | "in" | undefined): string {
  const unit = hasOwn(vocabulary, name) ? vocabulary[name as ArgumentName].unit : "";
  if (typeof unit === "string") return unit;
  return units === undefined ? "" : unit[units === "mm" ? 0 : 1];
}

function sourceLines(keys: readonly (keyof typeof citations)[]): string[][] {
  return keys.map((key) => [`source: ${citations[key].text}`]);
}

/**
 * Lists the materials with their starting values and sources.
 *
 * @customfunction MATERIALS
 * @returns A table with a header: key, ISO 513 group, what it is, cutting speed (m/min and ft/min), feed factor, stock factor, kc1.1 (N/mm²), mc, expansion (µm/(m·K)), source
 * @remarks Starting values: your own trials decide. The reference lists all the names that a material is found by.
 * @example =REAM.MATERIALS() // "key"
 * @see sources: start-speed, start-speed-carbide, start-feed-practice, stock-practice, kienzle, expansion, iso-513
 */
export function materials(): any[][] {
  return materialTable();
}

/**
 * Lists what each function is based on, and how far it can be trusted.
 *
 * @customfunction SOURCES
 * @returns A table with a header: function, kind of source, source
 * @remarks Kinds: print (seen in a published source), exact (a definition), derived (from first principles), practice, and memory. The kind practice is common practice without a source, memory a value from memory of the source named.
 * @example =REAM.SOURCES() // "function"
 * @see sources: derived
 */
export function sources(): any[][] {
  const rows = [...registered.values()].flatMap(({ id, sources: keys }) =>
    keys.map((key) => [id, citations[key].kind, citations[key].text]),
  );
  return [["function", "kind", "source"], ...rows];
}
