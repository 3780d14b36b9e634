// fill: columns that are computed from others, `rpm=REAM.RPM(speed,diameter)`, a batch of rows at a time.

import type { Metadata } from "../../build/metadata.ts";
import { Refusal } from "../../workbook/workbook.ts";
import { type StoredNames, storedNames } from "../../workbook/xlsx/stored-names.ts";
import { type Cells, type Context, evaluate, type Functions, isByValue } from "../formula/evaluate.ts";
import type { Node } from "../formula/nodes.ts";
import { parseFormula } from "../formula/parse.ts";
import {
  DoubtfulText,
  isMatrix,
  type Matrix,
  Unsupported,
  type Value,
  valueError,
} from "../formula/values.ts";
import { functionName } from "../load.ts";
import { isWorksheetFunction } from "../worksheet-functions.ts";

export interface NewColumns {
  readonly names: readonly string[];
  readonly formula: string;
  readonly node: Node;
}

export interface Plan {
  readonly columns: readonly NewColumns[];
  /** Columns of the file that are read, by place, with their names as formulas have them. */
  readonly read: ReadonlyMap<number, string>;
}

const keyOf = (name: string) => name.trim().toLowerCase();

/** What is to be computed; refuses what cannot be before a row is read. */
export function planColumns(
  orders: readonly string[],
  header: readonly string[],
  functions: Functions,
  metadata: Metadata,
  units: "mm" | "in" | undefined,
): Plan {
  const places = new Map<string, number>();
  header.forEach((name, place) => {
    // A name that two columns share means neither.
    places.set(keyOf(name), places.has(keyOf(name)) ? -1 : place);
  });
  const known = new Set(places.keys());
  const names = storedNames(metadata.functions.map(({ name }) => name));
  const read = new Map<number, string>();
  const columns: NewColumns[] = [];
  for (const order of orders) {
    const { names: made, formula } = readOrder(order);
    const used = new Set<string>();
    const node = parseColumn(formula, known, used, names);
    for (const name of used) {
      const place = places.get(name);
      if (place === -1) throw new Refusal(`the header has the column "${name}" twice`);
      if (place !== undefined) read.set(place, name);
    }
    checkCalls(node, functions, formula);
    for (const name of made) {
      if (known.has(keyOf(name))) throw new Refusal(`the file has a column "${name}" already`);
      known.add(keyOf(name));
    }
    columns.push({ names: made, formula, node: units ? withUnits(node, metadata, units) : node });
  }
  return { columns, read };
}

function readOrder(order: string): { names: string[]; formula: string } {
  const at = order.indexOf("=");
  const names = order
    .slice(0, Math.max(at, 0))
    .split(",")
    .map((name) => name.trim());
  const formula = order
    .slice(at + 1)
    .trim()
    .replace(/^=/, "");
  if (at < 0 || formula === "" || names.includes(""))
    throw new Refusal(
      `"${order}" is no column: write a name and a formula, as in rpm=REAM.RPM(speed,diameter)`,
    );
  return { names, formula };
}

function parseColumn(
  formula: string,
  known: ReadonlySet<string>,
  used: Set<string>,
  names: StoredNames,
): Node {
  const { node, unknown, areas } = parseFormula(names.decode(formula), {
    sheet: 0,
    sheetCalled: () => undefined,
    nameCalled: () => undefined,
    tableArea: () => undefined,
    isVariable(name) {
      if (known.has(name)) used.add(name);
      return known.has(name);
    },
    functionCalled: (name) => functionName(name, names),
  });
  if (areas.length > 0 || !node) {
    const asked = /^the name (.*)$/.exec(unknown ?? "")?.[1];
    const columns = [...known].map((name) => `"${name}"`).join(", ");
    if (asked) throw new Refusal(`${formula} names the column "${asked}", and the file has ${columns}`);
    throw new Refusal(`${formula} cannot be read: ${unknown ?? "it names cells, not columns"}`);
  }
  return node;
}

/** Only what gives a value for each row can be computed a batch at a time. */
function checkCalls(node: Node, functions: Functions, formula: string): void {
  for (const call of callsIn(node)) {
    const called = functions.get(call.name);
    if (!called) throw new Refusal(`${formula} calls ${call.name}, which is not known here`);
    if (!isByValue(called) && !isWorksheetFunction(call.name))
      throw new Refusal(
        `${formula} calls ${call.name}, which takes columns whole and gives no value for each row`,
      );
  }
}

type Call = Extract<Node, { kind: "call" }>;

function* callsIn(node: Node): Generator<Call> {
  if (node.kind === "call") yield node;
  for (const child of childrenOf(node)) yield* callsIn(child);
}

function childrenOf(node: Node): readonly Node[] {
  switch (node.kind) {
    case "call":
      return node.args;
    case "operation":
      return [node.left, node.right];
    case "sign":
      return [node.operand];
    case "array":
      return node.rows.flat();
    default:
      return [];
  }
}

/** Gives the units to every function that takes them and is not told. */
function withUnits(node: Node, metadata: Metadata, units: string): Node {
  switch (node.kind) {
    case "operation":
      return {
        ...node,
        left: withUnits(node.left, metadata, units),
        right: withUnits(node.right, metadata, units),
      };
    case "sign":
      return { ...node, operand: withUnits(node.operand, metadata, units) };
    case "call": {
      const args = node.args.map((arg) => withUnits(arg, metadata, units));
      const described = metadata.functions.find(({ name }) => node.name === `REAM.${name}`);
      const place = described?.parameters.findIndex(({ name }) => name === "units") ?? -1;
      if (place < 0 || (args[place] && args[place].kind !== "missing")) return { ...node, args };
      while (args.length < place) args.push({ kind: "missing" });
      args[place] = { kind: "value", value: units };
      return { ...node, args };
    }
    default:
      return node;
  }
}

/** Formulas of a CSV file read no cells. */
const noCells = new Proxy({} as Cells, {
  get(_, name) {
    if (name === "from1904") return false;
    throw new Unsupported("a cell");
  },
});

export class ColumnComputer {
  private isProved = false;

  constructor(
    private readonly plan: Plan,
    private readonly functions: Functions,
  ) {}

  /** The new columns of a batch, a matrix for each formula; `columns` are those of the file by name. */
  compute(columns: ReadonlyMap<string, Matrix>, rows: number): Matrix[] {
    for (let row = 0; !this.isProved && row < rows; row++) this.proveBy(columns, row);
    return this.run(columns, rows);
  }

  private run(columns: ReadonlyMap<string, Matrix>, rows: number): Matrix[] {
    const variables = new Map<string, Value>(columns);
    return this.plan.columns.map(({ names, formula, node }) => {
      const matrix = this.evaluateAll(node, variables, formula, names.length, rows);
      const width = matrix?.[0]?.length ?? 0;
      if (!matrix || width !== names.length) throw wrongShape(formula, names, matrix && width);
      names.forEach((name, i) => {
        variables.set(keyOf(name), width === 1 ? matrix : matrix.map((line) => [line[i]!]));
      });
      return matrix;
    });
  }

  /** All rows at once; or, where a text in one of them may be a number, one by one: it spoils only its own. */
  private evaluateAll(
    node: Node,
    variables: ReadonlyMap<string, Value>,
    formula: string,
    width: number,
    rows: number,
  ): Matrix | undefined {
    try {
      return spread(this.evaluate(node, variables, formula), rows);
    } catch (error) {
      if (!(error instanceof DoubtfulText)) throw error;
    }
    return Array.from({ length: rows }, (_, row) => {
      const own = [...variables].map(([name, column]): [string, Value] => [name, [(column as Matrix)[row]]]);
      try {
        return spread(this.evaluate(node, new Map(own), formula), 1)?.[0] ?? [];
      } catch (error) {
        if (!(error instanceof DoubtfulText)) throw error;
        return new Array(width).fill(valueError(`The formula ${error.message}. Write a plain number.`));
      }
    });
  }

  private evaluate(node: Node, variables: ReadonlyMap<string, Value>, formula: string): Value {
    const context: Context = {
      cells: noCells,
      sheet: 0,
      row: 0,
      column: 0,
      functions: this.functions,
      variables,
      isArrayFormula: true,
    };
    try {
      return evaluate(node, context, "array");
    } catch (error) {
      if (error instanceof DoubtfulText) throw error;
      if (error instanceof Unsupported) throw new Refusal(`${formula} cannot be computed: ${error.message}`);
      throw error;
    }
  }

  /** A row with a text that may be a number proves nothing. */
  private proveBy(columns: ReadonlyMap<string, Matrix>, row: number): void {
    try {
      this.prove(new Map([...columns].map(([name, matrix]) => [name, matrix[row]])));
    } catch (error) {
      if (!(error instanceof DoubtfulText)) throw error;
    }
  }

  /** A function that takes a column as one list gives no value for each row: told by one row, twice over. */
  private prove(cells: ReadonlyMap<string, Matrix[number]>): void {
    const twice = new Map([...cells].map(([name, line]) => [name, [line, line]]));
    const once = new Map([...cells].map(([name, line]) => [name, [line]]));
    const results = this.run(twice, 2);
    this.plan.columns.forEach(({ names }, i) => {
      names.forEach((name, k) => {
        twice.set(
          keyOf(name),
          results[i].map((line) => [line[k]!]),
        );
        once.set(keyOf(name), [[results[i][0][k]!]]);
      });
    });
    for (const { formula, node } of this.plan.columns)
      for (const call of callsIn(node)) this.proveCall(call, formula, once, twice);
    this.isProved = true;
  }

  private proveCall(
    call: Call,
    formula: string,
    once: ReadonlyMap<string, Matrix>,
    twice: ReadonlyMap<string, Matrix>,
  ): void {
    if (!isWorksheetFunction(call.name)) return;
    call.args.forEach((arg, i) => {
      const used = new Set(variablesIn(arg));
      if (used.size === 0) return;
      const others = call.args.filter((_, k) => k !== i).flatMap((other) => [...variablesIn(other)]);
      const variables = new Map(once);
      const alone = [...used].filter((name) => !others.includes(name));
      for (const name of alone.length > 0 ? alone : used) variables.set(name, twice.get(name)!);
      const result = this.evaluate(call, variables, formula);
      if (!isMatrix(result) || result.length !== 2)
        throw new Refusal(`${formula} cannot be computed row by row: ${call.name} takes columns whole`);
    });
  }
}

function* variablesIn(node: Node): Generator<string> {
  if (node.kind === "variable") yield node.name;
  for (const child of childrenOf(node)) yield* variablesIn(child);
}

/** A line for each row: a constant is repeated. */
function spread(value: Value, rows: number): Matrix | undefined {
  const matrix = isMatrix(value) ? value : ([[value]] as Matrix);
  if (matrix.length === rows) return matrix;
  return matrix.length === 1 ? Array.from({ length: rows }, () => matrix[0]) : undefined;
}

function wrongShape(formula: string, names: readonly string[], width: number | undefined): Refusal {
  if (width === undefined)
    return new Refusal(`${formula} cannot be computed row by row: it gives no value for each row`);
  return new Refusal(
    `${formula} gives ${width} columns, and ${names.length} ${names.length === 1 ? "is" : "are"} named: write as many names, with commas between them`,
  );
}
