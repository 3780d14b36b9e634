// functions: arguments as the host gives them, read into columns of checked values that spread against each other.

import { LONGEST } from "../src/calc/lengths.ts";
import { type Argument, type ArgumentName, units as unitsArgument, vocabulary } from "./arguments.ts";
import { BLANK, CellReader, OUTSIDE, PROBLEM, VALUE } from "./cell-reader.ts";
import { isBlank, isErrorCell, valueError } from "./cells.ts";
import type { Matrix } from "./register.ts";

/** An argument taken whole, or read in another way than the vocabulary says. */
export class ArgumentSpec {
  constructor(
    readonly matrix: Matrix | undefined,
    readonly argument: Argument | undefined,
    readonly whole: boolean,
  ) {}
}

export type ArgumentSpecs = { readonly [name in ArgumentName]?: Matrix | ArgumentSpec | undefined };

/** One argument, read: a value for each result cell (`stride` 1), one for all of them, or one at a time (`turn`). */
export interface Column {
  readonly name: string;
  readonly argument: Argument;
  readonly required: boolean;
  /** Given as more than one cell. */
  readonly many: boolean;
  /** As how many rows and columns of cells it is given. */
  readonly shape: readonly [rows: number, columns: number];
  readonly stride: 0 | 1;
  /** The value; undefined where blank, the error cell where there is a problem. */
  readonly values: ArrayLike<any>;
  /** VALUE, BLANK, PROBLEM or OUTSIDE for each value; undefined where the calculation can take them all. */
  readonly state: Uint8Array | undefined;
  /** Reads the value for a result cell in place of the one before: texts come to objects that no later row needs. */
  readonly turn: ((i: number) => void) | undefined;
}

/** A call, read: the shape that its ranges spread to, and its arguments in order. */
export interface Call {
  readonly rows: number;
  readonly columns: number;
  readonly arguments: readonly Column[];
}

export interface CallArgument {
  readonly name: ArgumentName;
  readonly argument: Argument;
  readonly required: boolean;
  readonly whole: boolean;
  readonly matrix: Matrix;
}

/** The cells of an argument, [[null]] for one left out (an object that is no array, like the host's invocation). */
export function cellsOf(given: unknown): Matrix {
  if (given instanceof ArgumentSpec) return cellsOf(given.matrix);
  if (Array.isArray(given)) return Array.isArray(given[0]) && given[0].length > 0 ? given : [[null]];
  return given === undefined || (typeof given === "object" && !isErrorCell(given)) ? [[null]] : [[given]];
}

export function readCall(required: ArgumentSpecs, optional: ArgumentSpecs): Call {
  const stated = [...callArguments(required, true), ...callArguments(optional, false)];
  let rows = 1;
  let columns = 1;
  for (const { matrix, whole } of stated) {
    if (whole) continue;
    if (matrix.length > rows) rows = matrix.length;
    if (matrix[0].length > columns) columns = matrix[0].length;
  }
  const units = stated.find((one) => one.name === "units");
  const unitsColumn = units && readColumn(units, rows, columns, undefined, stated);
  const lists = stated.some((one) => one.whole) ? readLists(stated, unitsColumn) : undefined;
  return {
    rows,
    columns,
    arguments: stated.map((one) =>
      one === units ? unitsColumn! : (lists?.get(one) ?? readColumn(one, rows, columns, unitsColumn, stated)),
    ),
  };
}

function callArguments(given: ArgumentSpecs, required: boolean): CallArgument[] {
  return (Object.keys(given) as ArgumentName[]).map((name) => {
    const one = given[name];
    const special = one instanceof ArgumentSpec ? one : undefined;
    return {
      name,
      argument: special?.argument ?? (name === "units" ? unitsArgument : vocabulary[name]),
      required,
      whole: special?.whole ?? false,
      matrix: cellsOf(one),
    };
  });
}

function readColumn(
  stated: CallArgument,
  rows: number,
  columns: number,
  units: Column | undefined,
  call: readonly CallArgument[],
): Column {
  const { name, argument, required, matrix } = stated;
  const many = hasMany(matrix);
  const shape = [matrix.length, matrix[0].length] as const;
  const column = (
    stride: Column["stride"],
    values: Column["values"],
    state: Column["state"],
    turn?: Column["turn"],
  ): Column => ({ name, argument, required, many, shape, stride, values, state, turn });
  const reader = new CellReader(stated, units, call);
  const [[first]] = matrix;
  const isTakenAsItIs =
    !argument.isLength && typeof first === "number" && first >= argument.min && first <= argument.max;
  if (!many && !(argument.needsUnits && units?.stride === 1 && !isTakenAsItIs)) {
    const state = reader.read(matrix[0][0], 0);
    const ignored = state === VALUE || (state === BLANK && !required);
    return column(0, [reader.value], ignored ? undefined : new Uint8Array([state]));
  }
  const { min } = argument;
  const tall = matrix.length > 1;
  const across = matrix[0].length > 1;
  // No plain number is taken as it is. Other arguments need the whole column of units.
  if (Number.isNaN(min) && name !== "units") {
    const values = [undefined];
    const state = new Uint8Array(1);
    const turn = (i: number) => {
      const row = columns === 1 ? i : Math.floor(i / columns);
      const cell = (tall ? matrix[row] : matrix[0])?.[across ? i - row * columns : 0];
      state[0] = cell === undefined ? OUTSIDE : reader.read(cell, i);
      values[0] = reader.value;
    };
    turn(0);
    return column(0, values, state, turn);
  }
  const count = rows * columns;
  const fixedUnits =
    argument.needsUnits && units !== undefined && units.stride === 1 ? undefined : reader.units(0);
  const max = !argument.isLength
    ? argument.max
    : fixedUnits === undefined
      ? -1
      : Math.min(argument.max, LONGEST[fixedUnits]);
  const least = argument.isLength && min < 0 ? -max : min;
  const numbers =
    tall && columns === 1 && matrix.length === rows ? plainNumbers(matrix, least, max) : undefined;
  if (numbers) return column(1, numbers, undefined);
  const values: any[] = new Array(count);
  let states: Uint8Array | undefined;
  for (let i = 0; i < count; i++) {
    const row = columns === 1 ? i : Math.floor(i / columns);
    const cell = (tall ? matrix[row] : matrix[0])?.[across ? i - row * columns : 0];
    if (typeof cell === "number" && cell >= least && cell <= max) {
      values[i] = cell;
      continue;
    }
    const state = cell === undefined ? OUTSIDE : reader.read(cell, i);
    if (state !== VALUE) {
      states ??= new Uint8Array(count);
      states[i] = state;
    }
    values[i] = state === OUTSIDE ? undefined : reader.value;
  }
  return column(1, values, states);
}

/** Nearly every call: a column of numbers alone, each within the limits; undefined for any other. */
function plainNumbers(matrix: Matrix, least: number, most: number): Float64Array | undefined {
  const values = new Float64Array(matrix.length);
  for (let i = 0; i < values.length; i++) {
    const cell = matrix[i]?.[0];
    if (typeof cell !== "number" || !(cell >= least && cell <= most)) return undefined;
    values[i] = cell;
  }
  return values;
}

/**
 * Lists taken whole: blanks, and entries that read as undefined, are skipped, in all the lists of the call
 * together where one of them is blank.
 */
function readLists(stated: readonly CallArgument[], units: Column | undefined): Map<CallArgument, Column> {
  const lists = stated.filter((one) => one.whole);
  const cells = lists.map((one) => one.matrix.flat());
  const length = Math.max(...cells.map((list) => list.length));
  const uneven = lists.find((_, k) => cells[k].length !== length && !cells[k].every((cell) => isBlank(cell)));
  const readers = lists.map((one) => new CellReader(one, units && { ...units, stride: 0 }, stated));
  const values: any[][] = lists.map(() => []);
  const problems: unknown[] = lists.map(() =>
    uneven ? valueError(differentSizes(lists.map((list, k) => [list.name, cells[k].length]))) : undefined,
  );
  const spreads = stated.some((one) => !one.whole && hasMany(one.matrix));
  const filled: boolean[] = lists.map(() => false);
  for (let i = 0; i < length && !uneven; i++) {
    const states = readers.map((reader, k) => reader.read(cells[k][i], 0));
    states.forEach((state, k) => {
      filled[k] ||= state !== BLANK;
    });
    const problem = states.indexOf(PROBLEM);
    if (problem >= 0) {
      problems[problem] ??= inPosition(cells[problem][i], readers[problem].value, i, lists[problem].name);
    } else if (readers.every((reader) => reader.value !== undefined)) {
      readers.forEach((reader, k) => {
        values[k].push(reader.value);
      });
    }
  }
  return new Map(
    lists.map((one, k) => {
      const state = problems[k] !== undefined ? PROBLEM : !filled[k] && one.required ? BLANK : VALUE;
      return [
        one,
        {
          name: one.name,
          argument: one.argument,
          required: one.required,
          // Beside ranges that spread, a list is in no row and cannot keep one from being empty.
          many: cells[k].length > 1 && !spreads,
          shape: [cells[k].length, 1],
          stride: 0,
          values: [problems[k] ?? values[k]],
          state: state === VALUE ? undefined : new Uint8Array([state]),
          turn: undefined,
        } satisfies Column,
      ];
    }),
  );
}

const hasMany = (matrix: Matrix): boolean => matrix.length > 1 || matrix[0].length > 1;

/** `speeds has 3 cells and lives has 2. Make them the same size.` */
export function differentSizes(sizes: readonly (readonly [name: string, cells: number])[]): string {
  const [[first, cells], ...others] = sizes;
  const parts = [
    `${first} has ${cells} cell${cells === 1 ? "" : "s"}`,
    ...others.map((one) => one.join(" has ")),
  ];
  const last = parts.pop();
  return `${parts.join(", ")} and ${last}. Make them the same size.`;
}

function inPosition(cell: unknown, error: any, i: number, name: string): unknown {
  if (isErrorCell(cell)) return error;
  const rest = error.message.startsWith(name) ? error.message.slice(name.length) : ` ${error.message}`;
  return valueError(`${name} (entry ${i + 1} of the list)${rest}`);
}
