// taskpane: what a formula of ours in a cell is worked out from: its arguments with the cells that they come from, the
// calculation in steps, where it is from, and what an error in it says.

import {
  type Area,
  addressOf,
  type Content,
  cellAddress,
  Refusal,
  type Workbook,
} from "../../workbook/workbook.ts";
import { functionHere, isErrorCell } from "../functions-here.ts";
import type { Help, HelpFunction } from "../help.ts";
import { type FormulaCall, ourCalls } from "./formula-calls.ts";
import { readReference } from "./references.ts";

export interface ExplainedArgument {
  readonly name: string;
  /** What it is, with its unit. */
  readonly description: string;
  /** As the formula has it, "" where it is left out. */
  readonly written: string;
  /** The one cell that counts for this row. */
  readonly area: Area | undefined;
  readonly value: Content | undefined;
}

export interface Explanation {
  readonly address: string;
  readonly formula: string;
  readonly described: HelpFunction;
  readonly value: Content;
  /** What an error in the cell says. */
  readonly message: string | undefined;
  readonly args: readonly ExplainedArgument[];
  readonly steps: readonly string[];
  /** Why there are no steps. */
  readonly withoutSteps: string | undefined;
  readonly sources: readonly { readonly kind: string; readonly text: string }[];
}

/** Explains the active cell. @throws Refusal where it holds no formula of ours */
export async function explainCell(workbook: Workbook, help: Help): Promise<Explanation> {
  const active = await workbook.active();
  const { formula, home } = await formulaOf(workbook, active);
  const [call] = ourCalls(formula);
  const described = help.functions.find(({ id }) => id === call?.id || id.replaceAll(".", "_") === call?.id);
  if (!call || !described)
    throw new Refusal(`${addressOf(active)} holds no REAM formula. Select a cell that does.`);
  const { values } = await workbook.read(active);
  const args = await Promise.all(
    argumentsOf(described, call).map((given) => explained(workbook, given, home, active.row)),
  );
  const { steps, withoutSteps, message } = workOut(described.id, args);
  return {
    address: cellAddress(active.row, active.column),
    formula,
    described,
    value: values[0][0],
    message,
    args: args.map(({ matrix: _, ...argument }) => argument),
    steps,
    withoutSteps,
    sources: sourcesOf(described.id),
  };
}

/** The formula in a cell, or of the cell whose result spills into it. */
async function formulaOf(workbook: Workbook, active: Area): Promise<{ formula: string; home: Area }> {
  const { formulas, holds } = await workbook.read(active);
  const own = String(formulas[0][0]);
  if (own.startsWith("=") || holds[0][0] !== "spilled") return { formula: own, home: active };
  const used = await workbook.used(active.sheet);
  if (!used) return { formula: own, home: active };
  // A result spills downward and to the right: its formula is the nearest one above or to the left.
  const rows = active.row - used.row + 1;
  const columns = active.column - used.column + 1;
  const before = await workbook.read({ ...used, rows, columns });
  for (let column = columns - 1; column >= 0; column--)
    for (let row = rows - 1; row >= 0; row--) {
      const formula = String(before.formulas[row][column]);
      if (ourCalls(formula).length > 0)
        return { formula, home: { ...active, row: used.row + row, column: used.column + column } };
      if (before.formulas[row][column] !== "" && before.holds[row][column] !== "spilled") break;
    }
  return { formula: own, home: active };
}

interface GivenArgument {
  readonly name: string;
  readonly description: string;
  readonly written: string;
  readonly whole: boolean;
}

function argumentsOf({ parameters }: HelpFunction, { args }: FormulaCall): GivenArgument[] {
  const last = parameters[parameters.length - 1];
  const count = Math.max(parameters.length, last?.repeating ? args.length : 0);
  return Array.from({ length: count }, (_, at) => {
    const parameter = parameters[at] ?? last;
    const { name, description, whole } = parameter;
    return { name, description, whole, written: args[at] ?? "" };
  });
}

type Worked = ExplainedArgument & { readonly matrix: unknown[][] | null | undefined };

async function explained(workbook: Workbook, given: GivenArgument, home: Area, row: number): Promise<Worked> {
  const { name, description, written, whole } = given;
  const plain = { name, description, written, area: undefined, value: undefined };
  if (written === "") return { ...plain, matrix: null };
  const reference = readReference(written, home.sheet);
  if (reference) {
    const { area } = reference;
    const place = whole || area.rows === 1 ? area : { ...area, row: area.row + (row - home.row), rows: 1 };
    const { values } = await workbook.read(place);
    const matrix = values.map((line) => line.map(asCell));
    const isOne = place.rows === 1 && place.columns === 1;
    return { ...plain, area: place, value: isOne ? values[0][0] : undefined, matrix };
  }
  const value = literalOf(written);
  return { ...plain, value, matrix: value === undefined ? undefined : [[value]] };
}

/** An error's code in a cell is an error for a function. */
const asCell = (value: Content): unknown =>
  typeof value === "string" && /^#(?:N\/A|[A-Z]+(?:\/0)?[!?])$/.test(value) ? { code: value } : value;

function literalOf(written: string): Content | undefined {
  if (/^"(?:[^"]|"")*"$/.test(written)) return written.slice(1, -1).replaceAll('""', '"');
  if (/^(?:true|false)$/i.test(written)) return written.toUpperCase() === "TRUE";
  return /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i.test(written) ? Number(written) : undefined;
}

function workOut(
  id: string,
  args: readonly Worked[],
): Pick<Explanation, "steps" | "withoutSteps" | "message"> {
  const [call, steps] = [functionHere(id), functionHere("STEPS")];
  const none = { steps: [], message: undefined };
  if (!call || !steps) return { ...none, withoutSteps: "The functions are not loaded in this page." };
  const unknown = args.find(({ matrix }) => matrix === undefined);
  if (unknown)
    return {
      ...none,
      withoutSteps: `${unknown.name} is worked out inside the formula (${unknown.written}), so there are no steps.`,
    };
  const matrices = args.map(({ matrix }) => matrix ?? null);
  while (matrices.length > 0 && matrices[matrices.length - 1] === null) matrices.pop();
  const lines = steps(
    [[id]],
    matrices.map((matrix) => matrix ?? [[null]]),
  );
  const [[first]] = lines;
  if (isErrorCell(first)) return { ...none, message: first.message ?? first.code, withoutSteps: undefined };
  const told = lines
    .map(([line]) => String(line))
    .filter((line) => line !== "" && !line.startsWith("source: "));
  return {
    steps: told,
    message: undefined,
    withoutSteps: told.length > 0 ? undefined : "The inputs are empty.",
  };
}

function sourcesOf(id: string): Explanation["sources"] {
  const table = functionHere("SOURCES")?.() ?? [];
  return table
    .filter(([name]) => String(name).replace(/^REAM\./, "") === id)
    .map(([, kind, text]) => ({ kind: String(kind), text: String(text) }));
}
