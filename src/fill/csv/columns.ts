// fill: columns that are computed from others, `rpm=REAM.RPM(speed,diameter)`, a batch of rows at a time.

import type { Metadata } from "../../build/metadata.ts";
import { Refusal } from "../../workbook/workbook.ts";
import { functionName, type StoredNames, storedNames } from "../../workbook/xlsx/stored-names.ts";
import { type Functions, isByValue } from "../formula/evaluate.ts";
import type { Node } from "../formula/nodes.ts";
import { parseFormula } from "../formula/parse.ts";
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

export const keyOf = (name: string) => name.trim().toLowerCase();

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

export type Call = Extract<Node, { kind: "call" }>;

export function* callsIn(node: Node): Generator<Call> {
  if (node.kind === "call") yield node;
  for (const child of childrenOf(node)) yield* callsIn(child);
}

export function childrenOf(node: Node): readonly Node[] {
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
