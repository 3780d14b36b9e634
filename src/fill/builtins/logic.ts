// fill: the spreadsheet's choices and questions. What is not chosen is not computed, so that its errors do not count.

import {
  type Argument,
  broadcast,
  type Context,
  evaluate,
  isArrayMode,
  type Mode,
  operandMode,
  type SheetFunction,
} from "../formula/evaluate.ts";
import type { Node } from "../formula/nodes.ts";
import {
  Area,
  compare,
  isError,
  isMatrix,
  type Matrix,
  notAvailable,
  type Scalar,
  toBoolean,
  toNumber,
  Unsupported,
  type Value,
  valueError,
} from "../formula/values.ts";
import { eachCell, many, type Named, ranged, scalar, test, throwIfError } from "./define.ts";

const lazy = (
  name: string,
  fewestArguments: number,
  mostArguments: number,
  call: (args: readonly Node[], context: Context, mode: Mode) => Value,
): Named => [name, { kind: "lazy", fewestArguments, mostArguments, call } satisfies SheetFunction];

/**
 * A condition: one value; over an array the choice is made cell by cell, which here only IF, IFERROR and CHOOSE do.
 * Over a range they do it in array formulas alone, whatever function they stand in.
 */
function condition(node: Node, context: Context, mode: Mode): Value {
  const value = evaluate(node, context, operandMode(mode));
  if (isMatrix(value) && isArrayMode(mode) && !context.isArrayFormula && namesCells(node))
    throw new Unsupported("a choice for each cell of a range, outside of an array formula");
  return value;
}

function someLeaf(node: Node, test: (leaf: Node) => boolean): boolean {
  switch (node.kind) {
    case "operation":
      return someLeaf(node.left, test) || someLeaf(node.right, test);
    case "sign":
      return someLeaf(node.operand, test);
    case "call":
      return node.args.some((arg) => someLeaf(arg, test));
    default:
      return test(node);
  }
}

const namesCells = (node: Node) =>
  someLeaf(node, ({ kind }) => kind !== "value" && kind !== "missing" && kind !== "array");

/** Whether it may be more than one value; what goes over ranges makes one of them. */
function isSeveral(node: Node, { functions }: Context): boolean {
  const overRanges = node.kind === "call" && functions.get(node.name)?.kind === "range";
  return someLeaf(
    node,
    (leaf) => leaf.kind === "array" || (leaf.kind === "area" && !leaf.area.isCell && !overRanges),
  );
}

/** Whether the error of cells that do not meet is chosen from, or is the result whatever is chosen, is written nowhere. */
const apart = (): never => {
  throw new Unsupported("a choice between arrays of different sizes");
};

const omitted = (node: Node | undefined): node is undefined => node === undefined;
const branch = (node: Node, context: Context, mode: Mode): Value =>
  node.kind === "missing" ? 0 : evaluate(node, context, mode);

function choose(args: readonly Node[], context: Context, mode: Mode): Value {
  const given = condition(args[0], context, mode);
  if (!isMatrix(given)) {
    const truth = toBoolean(given as Scalar);
    if (isError(truth)) return truth;
    if (truth) return branch(args[1], context, mode);
    return omitted(args[2]) ? false : branch(args[2], context, mode);
  }
  const yes = branch(args[1], context, "array");
  const no = omitted(args[2]) ? false : branch(args[2], context, "array");
  return broadcast(
    [given, yes, no],
    (one, a, b) => {
      const truth = toBoolean(one!);
      return isError(truth) ? truth : truth ? a! : b!;
    },
    apart,
  );
}

const isLarger = (a: Matrix, b: Matrix) => a.length > b.length || a[0].length > b[0].length;

const instead =
  (isReplaced: (value: Scalar) => boolean) =>
  (args: readonly Node[], context: Context, mode: Mode): Value => {
    const inside = operandMode(mode);
    const value = args[0].kind === "missing" ? 0 : condition(args[0], context, mode);
    if (isMatrix(value)) {
      const others = branch(args[1], context, "array");
      // Microsoft's help has a result for each of the values, and is silent about more.
      if (isMatrix(others) && isLarger(others, value)) apart();
      return broadcast([value, others], (one, other) => (isReplaced(one!) ? other! : one!), apart);
    }
    if (isReplaced(value as Scalar)) return branch(args[1], context, inside);
    // An array of copies of the value is other to what goes over arrays than the value is.
    if (mode !== "plain" && isSeveral(args[1], context))
      throw new Unsupported("an array in place of an error");
    return value;
  };

function firstTrue(args: readonly Node[], context: Context, mode: Mode): Value {
  if (args.length % 2 !== 0) return valueError();
  for (let i = 0; i < args.length; i += 2) {
    const truth = toBoolean(onlyOne(condition(args[i], context, mode)));
    if (isError(truth)) return truth;
    if (truth) return branch(args[i + 1], context, mode);
  }
  return notAvailable();
}

function matching(args: readonly Node[], context: Context, mode: Mode): Value {
  const value = onlyOne(condition(args[0], context, mode));
  if (isError(value)) return value;
  const last = args.length % 2 === 0 ? args[args.length - 1] : undefined;
  for (let i = 1; i + 1 < args.length; i += 2) {
    const other = onlyOne(condition(args[i], context, mode));
    if (isError(other)) return other;
    if (compare(value, other) === 0) return branch(args[i + 1], context, mode);
  }
  return last ? branch(last, context, mode) : notAvailable();
}

function byPlace(args: readonly Node[], context: Context, mode: Mode): Value {
  const given = condition(args[0], context, mode);
  if (isMatrix(given)) return byPlaces(args, given, context);
  const place = toNumber(given as Scalar);
  if (isError(place)) return place;
  const chosen = args[Math.trunc(place)];
  return Math.trunc(place) < 1 || omitted(chosen) ? valueError() : branch(chosen, context, mode);
}

/** Of each choice the cell at the same place, as in `CHOOSE({1,2},B2:B9,A2:A9)`. */
function byPlaces(args: readonly Node[], places: Value, context: Context): Value {
  const choices = args.slice(1).map((arg) => branch(arg, context, "array"));
  return broadcast(
    [places, ...choices],
    (given, ...cells) => {
      const place = toNumber(given!);
      if (isError(place)) return place;
      return cells[Math.trunc(place) - 1] ?? (place < 1 || place >= cells.length + 1 ? valueError() : 0);
    },
    apart,
  );
}

function onlyOne(value: Value): Scalar {
  if (isMatrix(value) || value instanceof Area) throw new Unsupported("a choice for each cell of an array");
  return value;
}

function named(args: readonly Node[], context: Context, mode: Mode): Value {
  const variables = new Map(context.variables);
  const inside = { ...context, variables };
  for (let i = 0; i + 1 < args.length; i += 2) {
    const name = args[i];
    if (name.kind !== "variable") return valueError();
    // A name stands for all the cells of its range; what uses it decides.
    variables.set(name.name, evaluate(args[i + 1], inside, "arrayRange"));
  }
  return evaluate(args[args.length - 1], inside, mode);
}

/** Texts in ranges are skipped; those in the formula itself are read. */
const truths = (name: string, call: (values: readonly boolean[]) => boolean): Named =>
  ranged(name, 1, many, "r", (args: readonly Argument[], context) => {
    const found: boolean[] = [];
    eachCell(args, context, (value, isDirect) => {
      if (isDirect || typeof value !== "string") {
        if (value !== null || isDirect) found.push(throwIfError(toBoolean(value)));
      }
    });
    return found.length === 0 ? valueError() : call(found);
  });

export const logic: readonly Named[] = [
  lazy("IF", 2, 3, choose),
  lazy("IFERROR", 2, 2, instead(isError)),
  lazy(
    "IFNA",
    2,
    2,
    instead((value) => isError(value) && value.code === "#N/A"),
  ),
  lazy("IFS", 2, many, firstTrue),
  lazy("SWITCH", 3, many, matching),
  lazy("CHOOSE", 2, many, byPlace),
  lazy("LET", 3, many, named),
  truths("AND", (values) => values.every(Boolean)),
  truths("OR", (values) => values.some(Boolean)),
  truths("XOR", (values) => values.filter(Boolean).length % 2 === 1),
  scalar(
    "NOT",
    (value) => {
      const truth = toBoolean(value!);
      return isError(truth) ? truth : !truth;
    },
    1,
  ),
  scalar("TRUE", () => true),
  scalar("FALSE", () => false),
  scalar("NA", () => notAvailable()),
  test("ISBLANK", (value) => value === null),
  test("ISERROR", isError),
  test("ISERR", (value) => isError(value) && value.code !== "#N/A"),
  test("ISNA", (value) => isError(value) && value.code === "#N/A"),
  test("ISNUMBER", (value) => typeof value === "number"),
  test("ISTEXT", (value) => typeof value === "string"),
  test("ISNONTEXT", (value) => typeof value !== "string"),
  test("ISLOGICAL", (value) => typeof value === "boolean"),
  test("N", (value) =>
    typeof value === "boolean" ? Number(value) : typeof value === "string" ? 0 : (value ?? 0)),
  test("T", (value) => (typeof value === "string" || isError(value) ? value : "")),
];
