// taskpane: what is odd in the calls of our functions on a sheet: ranges of unequal length or from other rows, and units
// that a header or a label contradicts.

import { type Area, addressOf, type Cells, type Content, cellAddress } from "../../workbook/workbook.ts";
import { functionCalled, type Help, type HelpArgument } from "../help.ts";
import type { Odd } from "./check-columns.ts";
import { type ConversionKind, conversionKinds } from "./conversion-kinds.ts";
import { type FormulaCall, ourCalls } from "./formula-calls.ts";
import { changeHeader, unitNamed } from "./header-units.ts";
import { readReference } from "./references.ts";

interface Given {
  readonly argument: HelpArgument;
  readonly area: Area;
}

export function oddCalls(cells: Cells, help: Help): Odd[] {
  const above = wordsAbove(cells);
  return cells.formulas.flatMap((line, down) =>
    line.flatMap((content, across) =>
      ourCalls(String(content)).flatMap((call) => {
        const described = functionCalled(help, call.id);
        if (!described) return [];
        const { parameters } = described;
        const given = call.args.flatMap((written, at): Given[] => {
          const argument = parameters[at] ?? parameters[parameters.length - 1];
          const area = readReference(written, cells.sheet)?.area;
          return argument && area ? [{ argument, area }] : [];
        });
        const units = unitsOf(call, parameters, cells);
        return [...unlikeRanges(given), ...unlikeUnits(given, units, cells, above)].map((what) => ({
          down,
          across,
          what,
        }));
      }),
    ),
  );
}

/** Columns that spread beside one another must be as long, and from the same rows where they lie on one sheet. */
function unlikeRanges(given: readonly Given[]): string[] {
  const found: string[] = [];
  for (const [count, start, first] of [
    ["rows", "row", "row"],
    ["columns", "column", "column"],
  ] as const) {
    const ranges = given.filter(({ argument, area }) => !argument.whole && area[count] > 1);
    const [one] = ranges;
    const longer = ranges.find(({ area }) => area[count] !== one.area[count]);
    if (longer)
      found.push(
        `${one.argument.name} has ${one.area[count]} cells and ${longer.argument.name} has ${longer.area[count]}.`,
      );
    const shifted = ranges.find(({ area }) => {
      const apart = Math.abs(area[start] - one.area[start]);
      return area.sheet === one.area.sheet && apart > 0 && apart < area[count];
    });
    if (shifted && !longer)
      found.push(
        `${one.argument.name} is ${addressOf(one.area)} and ${shifted.argument.name} is ${addressOf(shifted.area)}: not the same ${first}s.`,
      );
  }
  return found;
}

/** The unit that a call takes its plain numbers in; undefined for a function without units, and where rows differ. */
function unitsOf(
  { args }: FormulaCall,
  parameters: readonly HelpArgument[],
  cells: Cells,
): "mm" | "in" | undefined {
  const index = parameters.findIndex(({ name }) => name === "units");
  if (index < 0) return undefined;
  const written = args[index] ?? "";
  if (written === "") return "mm";
  const area = readReference(written, cells.sheet)?.area;
  if (!area) return /^"/.test(written) ? unitIn(written.replace(/"/g, "")) : undefined;
  if (area.sheet !== cells.sheet) return undefined;
  const said = new Set<"mm" | "in" | undefined>();
  for (let row = area.row; row < area.row + area.rows; row++)
    said.add(unitIn(valueAt(cells, row, area.column) ?? ""));
  return said.size === 1 ? [...said][0] : undefined;
}

/** Blank is mm, as for the functions. */
function unitIn(content: Content): "mm" | "in" | undefined {
  const text = String(content);
  return text.trim() === "" ? "mm" : unitNamed(text);
}

const kindNamed = (key: string): ConversionKind => conversionKinds.find((kind) => kind.key === key)!;

/** What an argument is, as far as its unit follows the units of the call. */
function kindOf({ name, description }: HelpArgument): ConversionKind | undefined {
  if (description.includes("m/min or ft/min")) return kindNamed("surface speed");
  if (description.includes("mm/min or in/min")) return kindNamed("feed rate");
  if (description.includes("N·m or lbf·in")) return kindNamed("torque");
  if (!description.includes("mm or in")) return undefined;
  return kindNamed(/feed/i.test(name) ? "feed per revolution" : "length");
}

function unlikeUnits(
  given: readonly Given[],
  units: "mm" | "in" | undefined,
  cells: Cells,
  above: WordsAbove,
): string[] {
  if (!units) return [];
  return given.flatMap(({ argument, area }) => {
    const kind = kindOf(argument);
    const said = kind && saidUnit(cells, area, kind, above);
    if (!said || said.unit === units) return [];
    const taken = units === "mm" ? kind.metricHeader : kind.inchHeader;
    return [`${argument.name} is taken in ${taken}, but ${said.address} says "${said.text}".`];
  });
}

function valueAt(cells: Cells, row: number, column: number): Content | undefined {
  return cells.values[row - cells.row]?.[column - cells.column];
}

/** The row of the nearest words in a column, at a row or above it; undefined where there are none. */
type WordsAbove = (row: number, column: number) => number | undefined;

function wordsAbove(cells: Cells): WordsAbove {
  const columns = new Map<number, (number | undefined)[]>();
  const isWord = (value: Content) =>
    typeof value === "string" &&
    value.trim() !== "" &&
    !value.startsWith("#") &&
    !/^[\s\d.,+-]+$/.test(value);
  const columnOf = (column: number) => {
    let last: number | undefined;
    return cells.values.map((line, down) => {
      const value = line[column - cells.column];
      if (value !== undefined && isWord(value)) last = cells.row + down;
      return last;
    });
  };
  return (row, column) => {
    let known = columns.get(column);
    if (!known) {
      known = columnOf(column);
      columns.set(column, known);
    }
    return known[Math.min(row - cells.row, known.length - 1)];
  };
}

/** The unit in the label at the left of a single cell, or else in the nearest text above a column. */
function saidUnit(cells: Cells, { sheet, row, column, rows }: Area, kind: ConversionKind, above: WordsAbove) {
  if (sheet !== cells.sheet) return undefined;
  const label = rows === 1 ? valueAt(cells, row, column - 1) : undefined;
  // A unit alone at the left is that of another cell, or of the row.
  const atLeft =
    typeof label === "string" && /\p{L}{3}.*[\s,([]/u.test(label) ? unitSaid(label, kind) : undefined;
  if (atLeft) return { unit: atLeft, text: label, address: cellAddress(row, column - 1) };
  const place = above(row, column);
  if (place === undefined) return undefined;
  const text = String(valueAt(cells, place, column));
  const unit = unitSaid(text, kind);
  return unit && { unit, text, address: cellAddress(place, column) };
}

function unitSaid(text: string, kind: ConversionKind): "mm" | "in" | undefined {
  const isInch = changeHeader(text, kind, "to metric").after !== undefined;
  const isMetric = changeHeader(text, kind, "to inch").after !== undefined;
  return isInch === isMetric ? undefined : isInch ? "in" : "mm";
}
