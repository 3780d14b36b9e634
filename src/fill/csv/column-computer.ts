// fill: computes the new columns of a CSV file, a batch of rows at a time.

import { Refusal } from "../../workbook/workbook.ts";
import { type Cells, type Context, evaluate, type Functions } from "../formula/evaluate.ts";
import type { Node } from "../formula/nodes.ts";
import {
  DoubtfulText,
  isMatrix,
  type Matrix,
  Unsupported,
  type Value,
  valueError,
} from "../formula/values.ts";
import { isWorksheetFunction } from "../worksheet-functions.ts";
import { type Call, callsIn, childrenOf, keyOf, type Plan } from "./columns.ts";

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
