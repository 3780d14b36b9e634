// taskpane: works out a formula as it stands in its cell, and keeps what each call of ours in it was given. Names, tables,
// other functions and calls inside calls are worked out by the engine that fills files; what it is not certain of is not
// known here either.

import {
  type Argument,
  type Context,
  evaluate,
  type Functions,
  matrixOf,
} from "../../fill/formula/evaluate.ts";
import type { Node } from "../../fill/formula/nodes.ts";
import {
  Area as Box,
  isMatrix,
  type Matrix,
  type Scalar,
  Unsupported,
  type Value,
} from "../../fill/formula/values.ts";
import { withWorksheetFunctions } from "../../fill/worksheet-functions.ts";
import type { Area, Workbook } from "../../workbook/workbook.ts";
import { functionHere } from "../functions-here.ts";
import type { Help } from "../help.ts";
import { type FormulaCall, ourCalls } from "./formula-calls.ts";
import { type Room, readFormula } from "./formula-room.ts";

/** A call of ours as it was made. */
export interface WorkedCall extends FormulaCall {
  /** What each argument came to, null for one left out, undefined where that is not known; none where no call is made. */
  readonly given: readonly (Matrix | null | undefined)[];
  /** The cells that each argument names. */
  readonly cells: readonly (readonly Area[])[];
  /** Why not all that was given is known. */
  readonly why: string | undefined;
}

export interface Worked {
  readonly calls: readonly WorkedCall[];
  /** What the formula gives; undefined where that is not known. */
  readonly value: Value | undefined;
}

/** A formula where it stands, of which the row `down` of its results is looked at. */
export interface Placed {
  readonly formula: string;
  readonly home: Area;
  readonly down: number;
}

export async function workedCalls(workbook: Workbook, placed: Placed, help: Help): Promise<Worked> {
  const whole = await run(workbook, placed, help);
  const calls: WorkedCall[] = [];
  for (const [at, call] of ourCalls(placed.formula).entries()) {
    const { given, cells } = whole.made(at);
    if (given) calls.push({ ...call, given, cells, why: undefined });
    else if (whole.value === undefined) calls.push(await alone(workbook, call, placed, help));
    else calls.push({ ...call, given: [], cells, why: "Not computed: the formula takes another branch." });
  }
  return { calls, value: whole.value };
}

/** A call by itself, and its arguments by themselves, where what is around them is not known. */
async function alone(workbook: Workbook, call: FormulaCall, placed: Placed, help: Help): Promise<WorkedCall> {
  const { made, why } = await run(workbook, { ...placed, formula: `=REAM.${call.id}(${call.args})` }, help);
  const { given, cells } = made(0);
  if (given) return { ...call, given, cells, why: undefined };
  const parts: { matrix: Matrix | null | undefined; cells: readonly Area[] }[] = [];
  for (const arg of call.args) {
    const part = arg === "" ? undefined : await run(workbook, { ...placed, formula: `=${arg}` }, help);
    const { value } = part ?? { value: null };
    parts.push({
      matrix: !part ? null : value === undefined ? undefined : isMatrix(value) ? value : [[value as Scalar]],
      cells: part?.cells ?? [],
    });
  }
  return {
    ...call,
    given: parts.map(({ matrix }) => matrix),
    cells: parts.map((part) => part.cells),
    why: `There are no steps: ${why}.`,
  };
}

type Nodes = readonly Node[];
type Given = readonly (Matrix | null)[];

/** Computes a formula; `made` is the call of ours by its place among those in it. */
async function run(workbook: Workbook, { formula, home, down }: Placed, help: Help) {
  const room = await readFormula(workbook, formula, home, help);
  const node = room.node && inOneRow(room.node, down, help);
  const given = new Map<Nodes, Given>();
  const nodes = node ? callsIn(node) : [];
  const made = (at: number) => ({
    given: nodes[at] && given.get(nodes[at]),
    cells: nodes[at]?.map((arg) => room.cellsIn(arg)) ?? [],
  });
  const { value, why } = node
    ? await computed(room, node, recording(help, given))
    : { value: undefined, why: room.why };
  return { value, why, made, cells: node ? room.cellsIn(node) : [] };
}

async function computed(room: Room, node: Node, functions: Functions) {
  try {
    const context = await room.context(node, functions);
    const value = evaluate(node, context, "array");
    return { value: value instanceof Box ? matrixOf(value, context) : value, why: undefined };
  } catch (thrown) {
    const isDeep = thrown instanceof RangeError && /call stack/i.test(thrown.message);
    if (!(thrown instanceof Unsupported) && !isDeep) throw thrown;
    return { value: undefined, why: thrown.message };
  }
}

const isOurs = (name: string) => /^REAM\./i.test(name);

/** The arguments of our calls in the order in which they are written; calls behind a name are not written here. */
function callsIn(node: Node): Nodes[] {
  switch (node.kind) {
    case "call":
      return [...(isOurs(node.name) ? [node.args] : []), ...node.args.flatMap(callsIn)];
    case "operation":
      return [...callsIn(node.left), ...callsIn(node.right)];
    case "sign":
      return callsIn(node.operand);
    case "array":
      return node.rows.flat().flatMap(callsIn);
    default:
      return [];
  }
}

/** Columns of one length that are given to a call alone in its cell are read in the one row that is looked at. */
function inOneRow(node: Node, down: number, { functions }: Help): Node {
  if (node.kind !== "call" || !isOurs(node.name)) return node;
  const parameters = functions.find(({ id }) => `REAM.${id}` === node.name)?.parameters ?? [];
  const isColumn = (arg: Node, at: number): arg is Node & { kind: "area" } => {
    const parameter = parameters[at] ?? parameters[parameters.length - 1];
    return arg.kind === "area" && !parameter?.whole && arg.area.bottom > arg.area.top;
  };
  const heights = new Set(node.args.filter(isColumn).map(({ area: { top, bottom } }) => bottom - top + 1));
  const [height] = heights;
  if (heights.size !== 1 || down >= height) return node;
  const args = node.args.map((arg, at): Node => {
    if (!isColumn(arg, at)) return arg;
    const { sheet, top, left, right } = arg.area;
    return { kind: "area", area: new Box(sheet, top + down, left, top + down, right) };
  });
  return { ...node, args };
}

/** All functions, of which ours keep what they are given, by the nodes of their arguments. */
function recording({ functions: described }: Help, given: Map<Nodes, Given>): Functions {
  const calls = new Map(
    described.flatMap(({ id }) => {
      const call = functionHere(id);
      return call ? [[id, call] as const] : [];
    }),
  );
  const here = described.filter(({ id }) => calls.has(id));
  const functions = new Map(
    withWorksheetFunctions({ functions: here.map((one) => ({ ...one, name: one.id })) }, calls),
  );
  for (const [name, called] of [...functions]) {
    if (!isOurs(name) || called.kind !== "range") continue;
    const open: Nodes[] = [];
    functions.set(`within ${name}`, {
      ...called,
      call(args: readonly Argument[], context: Context) {
        const matrices = args.map((arg) => (arg === undefined ? null : matrixOf(arg, context)));
        given.set(open[open.length - 1], matrices);
        return called.call(args, context);
      },
    });
    functions.set(name, {
      kind: "lazy",
      fewestArguments: called.fewestArguments,
      mostArguments: called.mostArguments,
      call(nodes, context, mode) {
        open.push(nodes);
        try {
          return evaluate({ kind: "call", name: `within ${name}`, args: nodes }, context, mode);
        } finally {
          open.pop();
        }
      },
    });
  }
  return functions;
}
