// taskpane: what the formulas of ours in a cell are worked out from: their arguments with the cells that they come from,
// the calculation in steps, where it is from, and what an error in it says.

import { isMatrix, type Matrix, type Value } from "../../fill/formula/values.ts";
import {
  type Area,
  addressOf,
  type Content,
  cellAddress,
  Refusal,
  type Workbook,
} from "../../workbook/workbook.ts";
import { errorCode, functionHere, isErrorCell } from "../functions-here.ts";
import { functionCalled, type Help, type HelpFunction } from "../help.ts";
import { ourCalls } from "./formula-calls.ts";
import { referenceTo } from "./references.ts";
import { type Placed, type WorkedCall, workedCalls } from "./worked-calls.ts";

export interface ExplainedArgument {
  readonly name: string;
  /** What it is, with its unit. */
  readonly description: string;
  /** As the formula has it, "" where it is left out. */
  readonly written: string;
  /** The cells that it names, as this sheet would write them. */
  readonly cells: readonly string[];
  /** The one value that counts for this row. */
  readonly value: Content | undefined;
}

export interface ExplainedCall {
  readonly described: HelpFunction;
  /** What it gives, cell by cell. */
  readonly value: readonly Content[];
  readonly args: readonly ExplainedArgument[];
  readonly steps: readonly string[];
  /** Why there are no steps, or which of several rows they are for. */
  readonly note: string | undefined;
  /** What an error in it says. */
  readonly message: string | undefined;
  readonly sources: readonly { readonly kind: string; readonly text: string }[];
}

export interface Explanation {
  readonly address: string;
  readonly formula: string;
  readonly value: Content;
  readonly message: string | undefined;
  /** What the formula gives where the cell shows something else. */
  readonly otherwise: Content | undefined;
  /** Every call of ours in the formula, in the order in which they start. */
  readonly calls: readonly ExplainedCall[];
}

/** Explains the active cell. @throws Refusal where it holds no formula of ours */
export async function explainCell(workbook: Workbook, help: Help): Promise<Explanation> {
  const active = await workbook.active();
  const placed = await placedIn(workbook, active, help);
  if (!placed) throw new Refusal(`${addressOf(active)} holds no REAM formula. Select a cell that does.`);
  const { values } = await workbook.read(active);
  const [[value]] = values;
  const worked = await workedCalls(workbook, placed, help);
  const calls = worked.calls.flatMap((call) => explained(call, placed, help));
  const here = worked.value === undefined ? undefined : cellOf(worked.value, placed);
  return {
    address: cellAddress(active.row, active.column),
    formula: placed.formula,
    value,
    message: errorCode(value) && calls.find(({ message }) => message !== undefined)?.message,
    otherwise: here === undefined || isSame(here, value) ? undefined : here,
    calls,
  };
}

/** What an error in a cell says; undefined where that cannot be told. */
export async function errorMessage(workbook: Workbook, cell: Area, help: Help): Promise<string | undefined> {
  const placed = await placedIn(workbook, cell, help);
  if (!placed) return undefined;
  const { calls } = await workedCalls(workbook, placed, help);
  return calls.flatMap((call) => explained(call, placed, help)).find(({ message }) => message !== undefined)
    ?.message;
}

interface Looked extends Placed {
  readonly across: number;
}

/** The formula that gives a cell its content; undefined where it calls none of ours. */
async function placedIn(workbook: Workbook, cell: Area, help: Help): Promise<Looked | undefined> {
  const home = await workbook.homeOf(cell);
  const formula = String((await workbook.read(home)).formulas[0][0]);
  if (!ourCalls(formula).some(({ id }) => functionCalled(help, id))) return undefined;
  return { formula, home, down: cell.row - home.row, across: cell.column - home.column };
}

function cellOf(value: Value, { down, across }: Looked): Content {
  const line = isMatrix(value) ? (value.length === 1 ? value[0] : value[down]) : [value];
  return contentOf(line?.length === 1 ? line[0] : line?.[across]);
}

const contentOf = (cell: unknown): Content => (isErrorCell(cell) ? cell.code : ((cell ?? "") as Content));

/** Whether a cell shows what its formula gives, to the digits that matter. An empty result may show as 0. */
function isSame(one: Content, shown: Content): boolean {
  if (typeof one === "number" && typeof shown === "number")
    return Math.abs(one - shown) <= 1e-6 * Math.max(Math.abs(one), Math.abs(shown));
  return one === shown || (one === "" && shown === 0);
}

function explained(call: WorkedCall, { home, down, across }: Looked, help: Help): ExplainedCall[] {
  const described = functionCalled(help, call.id);
  if (!described) return [];
  const { parameters, row, id } = described;
  const last = parameters[parameters.length - 1];
  const count = Math.max(parameters.length, last?.repeating ? call.args.length : 0);
  const notes = new Set<string>();
  // Columns of unequal length are no rows: the call says so.
  const isInRows = heightsOf(call, parameters).size < 2;
  const taken: (Matrix | null)[] = [];
  const args = Array.from({ length: count }, (_, at): ExplainedArgument => {
    const { name, description, whole } = parameters[at] ?? last;
    const matrix = call.given[at] ?? null;
    const one =
      matrix && !whole && isInRows ? oneOf(matrix, down, row.length > 0 ? undefined : across, notes) : matrix;
    taken.push(one);
    const isOne = one?.length === 1 && one[0].length === 1;
    return {
      name,
      description,
      written: call.args[at] ?? "",
      cells: call.cells[at]?.map((area) => referenceTo(area, home.sheet)) ?? [],
      value: isOne ? contentOf(one[0][0]) : undefined,
    };
  });
  const worked = call.why ? { ...NOTHING, note: call.why } : workOut(described, taken);
  const note = worked.note ?? [...notes].join(" ");
  return [{ described, args, ...worked, note: note || undefined, sources: sourcesOf(id) }];
}

/** How long the columns are that a call is given beside one another. */
const heightsOf = ({ given }: WorkedCall, parameters: HelpFunction["parameters"]): ReadonlySet<number> =>
  new Set(
    given.flatMap((matrix, at) => {
      const isWhole = (parameters[at] ?? parameters[parameters.length - 1])?.whole;
      return matrix && matrix.length > 1 && !isWhole ? [matrix.length] : [];
    }),
  );

/** Of several rows the one that is looked at, and of several columns too where they are not the cells of a row. */
function oneOf(matrix: Matrix, down: number, across: number | undefined, notes: Set<string>): Matrix {
  const rows = matrix.length;
  const lines = rows === 1 ? matrix : [matrix[down] ?? matrix[0].map(() => null)];
  if (rows > 1) notes.add(`The steps are for row ${down + 1} of ${rows}.`);
  const columns = lines[0].length;
  if (across === undefined || columns === 1) return lines;
  notes.add(`The steps are for column ${across + 1} of ${columns}.`);
  return lines.map((line) => [line[across] ?? null]);
}

const NOTHING = { value: [], steps: [], message: undefined };

function workOut(
  { id, parameters }: HelpFunction,
  taken: readonly (Matrix | null)[],
): Pick<ExplainedCall, "value" | "steps" | "note" | "message"> {
  const [call, steps] = [functionHere(id), functionHere("STEPS")];
  if (!call || !steps) return { ...NOTHING, note: "The functions are not loaded in this page." };
  const given = taken.map((matrix): unknown[][] => matrix ?? [[null]]);
  while (given.length > 0 && taken[given.length - 1] === null) given.pop();
  const fixed = parameters.filter(({ repeating }) => !repeating).length;
  const isRepeating = fixed < parameters.length;
  const result = call(...(isRepeating ? [...given.slice(0, fixed), given.slice(fixed)] : given)).flat();
  const value = result.map(contentOf);
  const failed = result.find(isErrorCell);
  if (failed) return { value, steps: [], message: failed.message ?? failed.code, note: undefined };
  const lines = steps([[id]], given).map(([line]) => (isErrorCell(line) ? "" : String(line)));
  const told = lines.filter((line) => line !== "" && !line.startsWith("source: "));
  return {
    value,
    steps: told,
    message: undefined,
    note: told.length > 0 ? undefined : "The inputs are empty.",
  };
}

function sourcesOf(id: string): ExplainedCall["sources"] {
  const table = functionHere("SOURCES")?.() ?? [];
  return table
    .filter(([name]) => String(name).replace(/^REAM\./, "") === id)
    .map(([, kind, text]) => ({ kind: String(kind), text: String(text) }));
}
