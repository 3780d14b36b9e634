// functions: the tables of materials and sources, and how a figure comes about.

import { writtenSteps } from "../src/calc/checking/written-steps.ts";
import type { Formula } from "../src/calc/formula.ts";
import { materialTable } from "../src/calc/materials.ts";
import { shown, wrong } from "../src/calc/problem.ts";
import { sources as citations } from "../src/data/sources.ts";
import { type ArgumentName, vocabulary } from "./arguments.ts";
import { isErrorCell } from "./cells.ts";
import { spill, witnessed } from "./map-rows.ts";
import { type Matrix, registered } from "./register.ts";

/**
 * Writes out how a function comes to its result, line by line: the formula in symbols, the same with numbers and units, the result, the source.
 *
 * @customfunction STEPS
 * @param functionName Name of the function in quotes such as "RPM", no unit
 * @param inputs The function's own arguments in order, each with its own unit; leave one empty between commas as in the function
 * @returns Lines of text
 * @remarks Functions that look their answer up have no formula: their line says so and the source follows.
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
    return wrong(`functionName ${shown(name)} is not a function with steps: write one like "RPM"`);
  const { matrix, seen } = witnessed(() => one.call(...handedOver(one.call.length, inputs)));
  const [first] = matrix as [any[]];
  if (isErrorCell(first[0]) || first[0] === "") return [[first[0]]];
  const formula = seen && (seen.calculate as { formula?: Formula }).formula;
  if (!seen || !formula)
    return [[`${id} looks its answer up: it has no formula`], ...sourceLines(one.sources)];
  if (matrix.length > 1)
    return wrong(`inputs give ${matrix.length} rows of ${id}: give one cell for each argument`);
  const units = seen.values[seen.names.indexOf("units")] ?? "mm";
  return writtenSteps({
    formula,
    names: seen.names,
    values: seen.values,
    units,
    results: first.filter((cell) => typeof cell === "number"),
    unitOf: (argument) => unitOf(argument, seen.names.includes("units") ? units : undefined),
  }).map((line) => [line]);
}

/** As a host hands ranges over: what a function has no parameter for belongs to its last one, which repeats. */
function handedOver(parameters: number, inputs: readonly Matrix[]): unknown[] {
  if (inputs.length <= parameters) return [...inputs];
  return [...inputs.slice(0, parameters - 1), inputs.slice(parameters - 1)];
}

/** The unit of an argument; in a function without `units`, only one that is the same in both sets. */
function unitOf(name: string, units: "mm" | "in" | undefined): string {
  const unit = Object.hasOwn(vocabulary, name) ? vocabulary[name as ArgumentName].unit : "";
  if (typeof unit === "string") return unit;
  return units === undefined ? "" : unit[units === "mm" ? 0 : 1];
}

function sourceLines(keys: readonly (keyof typeof citations)[]): string[][] {
  return keys.map((key) => [`source: ${citations[key].text}`]);
}

/**
 * Gives the table of materials: their keys, starting speeds in HSS, and what is calculated with, each with its source.
 *
 * @customfunction MATERIALS
 * @returns A table with a header: key, ISO 513 group, what it is, speed range (ft/min and m/min), feed factor, kc1.1 (N/mm²), mc, expansion (µm/(m·K)), source
 * @remarks Starting values: your own trials decide. Other names that a material is found by are in the reference, under Materials and their names.
 * @example =REAM.MATERIALS() // "key"
 * @see sources: start-speed, start-feed, kienzle, reference-temperature, iso-513
 */
export function materials(): any[][] {
  return materialTable();
}

/**
 * Gives what each function rests on: its sources, and how far each can be trusted.
 *
 * @customfunction SOURCES
 * @returns A table with a header: function, kind of source, source
 * @remarks Kinds: print (seen in a published source), exact (a definition), derived (from first principles), practice (common practice, no source), memory (a value from memory of the source named).
 * @example =REAM.SOURCES() // "function"
 * @see sources: derived
 */
export function sources(): any[][] {
  const rows = [...registered.values()].flatMap(({ id, sources: keys }) =>
    keys.map((key) => [id, citations[key].kind, citations[key].text]),
  );
  return [["function", "kind", "source"], ...rows];
}
