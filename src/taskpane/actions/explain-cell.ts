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
import { functionCalled, type Help, type HelpFunction } from "../help.ts";
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
  const found = await calledIn(workbook, active, help);
  if (!found) throw new Refusal(`${addressOf(active)} holds no REAM formula. Select a cell that does.`);
  const { formula, described } = found;
  const { values } = await workbook.read(active);
  const args = await argumentsIn(workbook, found, active);
  const { steps, withoutSteps, message } = workOut(described, args);
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

/** What an error in a cell says; undefined where that cannot be told. */
export async function errorMessage(workbook: Workbook, cell: Area, help: Help): Promise<string | undefined> {
  const found = await calledIn(workbook, cell, help);
  if (!found) return undefined;
  const args = await argumentsIn(workbook, found, cell);
  return workOut(found.described, args).message;
}

/** The first call of ours in the formula that gives a cell its content. */
async function calledIn(workbook: Workbook, cell: Area, help: Help) {
  const home = await workbook.homeOf(cell);
  const formula = String((await workbook.read(home)).formulas[0][0]);
  const [call] = ourCalls(formula);
  const described = call && functionCalled(help, call.id);
  return described && { formula, home, call, described };
}

type Called = NonNullable<Awaited<ReturnType<typeof calledIn>>>;

const argumentsIn = (workbook: Workbook, { described, call, home }: Called, cell: Area): Promise<Worked[]> =>
  Promise.all(argumentsOf(described, call).map((given) => explained(workbook, given, home, cell.row)));

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
  described: HelpFunction,
  args: readonly Worked[],
): Pick<Explanation, "steps" | "withoutSteps" | "message"> {
  const { id } = described;
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
  const given = matrices.map((matrix) => matrix ?? [[null]]);
  const fixed = described.parameters.filter(({ repeating }) => !repeating).length;
  const isRepeating = fixed < described.parameters.length;
  const failed = call(...(isRepeating ? [...given.slice(0, fixed), given.slice(fixed)] : given))
    .flat()
    .find(isErrorCell);
  if (failed) return { ...none, message: failed.message ?? failed.code, withoutSteps: undefined };
  const lines = steps([[id]], given);
  const told = lines
    .map(([line]) => (isErrorCell(line) ? "" : String(line)))
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
