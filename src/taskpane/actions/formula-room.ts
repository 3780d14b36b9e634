// taskpane: a formula of the workbook parsed, with what its names and tables stand for, and the cells that it reads.

import type { Context, Functions, Cells as ReadCells } from "../../fill/formula/evaluate.ts";
import type { Node } from "../../fill/formula/nodes.ts";
import { parseFormula } from "../../fill/formula/parse.ts";
import { tableArea } from "../../fill/formula/tables.ts";
import { Area as Box, CellError, type Scalar, Unsupported } from "../../fill/formula/values.ts";
import { Grid } from "../../fill/grid.ts";
import { areaOfBox, boxOfArea } from "../../workbook/boxes.ts";
import { type Area, cutTo, Refusal, type Workbook } from "../../workbook/workbook.ts";
import { contains } from "../../workbook/xlsx/addresses.ts";
import { tokensOf } from "../../workbook/xlsx/formula-tokens.ts";
import { functionName, storedNames } from "../../workbook/xlsx/stored-names.ts";
import { errorCode } from "../functions-here.ts";
import type { Help } from "../help.ts";
import { namesIn } from "./formula-calls.ts";
import { readReference } from "./references.ts";
import { inCalls } from "./shown-operators.ts";

/** A formula with the workbook that it stands in. */
export interface Room {
  /** Undefined where a part of the formula is not read here. */
  readonly node: Node | undefined;
  readonly why: string | undefined;
  /** The cells that a part of the formula names. */
  cellsIn(node: Node): Area[];
  /** All that is needed to compute a part of it. @throws Unsupported where its cells are too many */
  context(node: Node, functions: Functions): Promise<Context>;
}

export async function readFormula(
  workbook: Workbook,
  formula: string,
  home: Area,
  help: Help,
): Promise<Room> {
  const sheets = await workbook.sheets();
  const { names, tables } =
    namesIn(formula).length > 0 ? await workbook.meanings() : { names: [], tables: [] };
  const placeOf = (sheet: string) => sheets.findIndex((one) => isSame(one, sheet));
  const stored = storedNames(help.functions.map(({ id }) => id));
  const { node, unknown } = parseFormula(inCalls(formula.slice(1)), {
    sheet: placeOf(home.sheet),
    sheetCalled: (name) => (placeOf(name) < 0 ? undefined : placeOf(name)),
    nameCalled(name, sheet = placeOf(home.sheet)) {
      const own = names.find((one) => isSame(one.name, name) && one.sheet && placeOf(one.sheet) === sheet);
      const meant = own ?? names.find((one) => isSame(one.name, name) && one.sheet === undefined);
      return meant && !isRelative(meant.formula) ? meant.formula.replace(/^=/, "") : undefined;
    },
    tableArea(name, inside) {
      const table = tables.find(({ name: own, area }) =>
        name === undefined
          ? area.sheet === home.sheet && contains(boxOfArea(area), home.row, home.column)
          : isSame(own, name),
      );
      return table && tableArea(tableOf(table, placeOf(table.area.sheet)), inside, home.row);
    },
    isVariable: () => false,
    functionCalled: (name) => functionName(name, stored),
  });
  const areaOf = (box: Box): Area => areaOfBox(sheets[box.sheet], box);
  return {
    node,
    why: node ? undefined : unknown,
    cellsIn: (part) => boxesIn(part).map(areaOf),
    async context(part, functions) {
      const cells = await readCells(workbook, boxesIn(part), spillsIn(part), sheets, areaOf);
      const { row, column } = home;
      const sheet = placeOf(home.sheet);
      return { cells, sheet, row, column, functions, variables: new Map(), isArrayFormula: true };
    },
  };
}

const isSame = (one: string, other: string) => one.toLowerCase() === other.toLowerCase();

const tableOf = (
  {
    name,
    area,
    headerRows,
    totalsRows,
    columns,
  }: Awaited<ReturnType<Workbook["meanings"]>>["tables"][number],
  sheet: number,
) => ({ name, sheet, box: boxOfArea(area), headerRows, totalsRows, columns });

/** Whether a name means other cells in every cell: one of its references has no dollar sign. */
const isRelative = (formula: string): boolean =>
  tokensOf(formula.replace(/^=/, "")).some(
    ({ kind, text }) =>
      kind === "name" && readReference(text, "") !== undefined && !/^\$[A-Z]+\$\d+$/i.test(text),
  );

/** Every part of a formula, what its names stand for among them. */
function* partsOf(node: Node): Generator<Node> {
  yield node;
  if (node.kind === "named") yield* partsOf(node.node);
  else if (node.kind === "call") for (const arg of node.args) yield* partsOf(arg);
  else if (node.kind === "sign") yield* partsOf(node.operand);
  else if (node.kind === "array") for (const cell of node.rows.flat()) yield* partsOf(cell);
  else if (node.kind === "operation") {
    yield* partsOf(node.left);
    yield* partsOf(node.right);
  }
}

const boxesIn = (node: Node): Box[] =>
  [...partsOf(node)].flatMap((part) =>
    part.kind === "area" ? [part.area] : part.kind === "sheets" ? [...part.areas] : [],
  );

/** The cells of which all that they spill is meant, `A2#`. */
const spillsIn = (node: Node): Box[] =>
  [...partsOf(node)].flatMap((part) => {
    const [arg] = part.kind === "call" && part.name === "ANCHORARRAY" ? part.args : [];
    return arg?.kind === "area" ? [arg.area] : [];
  });

const keyOf = (sheet: number, row: number, column: number) => `${sheet} ${row} ${column}`;

/** Reads what a formula names, and nothing else is known then. */
async function readCells(
  workbook: Workbook,
  boxes: readonly Box[],
  spills: readonly Box[],
  sheets: readonly string[],
  areaOf: (box: Box) => Area,
): Promise<ReadCells> {
  const grids = sheets.map(() => new Grid());
  const spilled = new Map<string, Box>();
  const known: Box[] = [...boxes];
  for (const box of spills) {
    const { row, column, rows, columns } = await workbook.filledFrom(areaOf(box));
    const filled = new Box(box.sheet, row, column, row + rows - 1, column + columns - 1);
    spilled.set(keyOf(box.sheet, box.top, box.left), filled);
    known.push(filled);
  }
  const read = new Set<string>();
  const useds = new Map<string, Promise<Area | undefined>>();
  const usedIn = (sheet: string) => {
    if (!useds.has(sheet)) useds.set(sheet, workbook.used(sheet));
    return useds.get(sheet);
  };
  for (const box of known) {
    const area = areaOf(box);
    const key = JSON.stringify(area);
    if (read.has(key)) continue;
    read.add(key);
    const used = await usedIn(area.sheet);
    if (used) grids[box.sheet].reach(used.row + used.rows - 1, used.column + used.columns - 1);
    const part = used && cutTo(area, used);
    if (!part) continue;
    const { formulas, values } = await workbook.read(part).catch((thrown) => {
      if (thrown instanceof Refusal) throw new Unsupported("the formula reads too many cells");
      throw thrown;
    });
    values.forEach((line, down) => {
      line.forEach((value, across) => {
        const scalar: Scalar =
          value === "" && formulas[down][across] === "" ? null : (cellError(value) ?? value);
        grids[box.sheet].set(part.row + down, part.column + across, scalar);
      });
    });
  }
  /** What was not foreseen, as behind OFFSET, was not read. */
  const gridWith = (sheet: number, top: number, left: number, bottom: number, right: number) => {
    const isIn = known.some(
      (box) =>
        box.sheet === sheet &&
        box.top <= top &&
        box.left <= left &&
        box.bottom >= bottom &&
        box.right >= right,
    );
    if (!isIn) throw new Unsupported("which cells it reads is worked out on the way");
    return grids[sheet];
  };
  const gridOf = ({ sheet, top, left, bottom, right }: Box) => gridWith(sheet, top, left, bottom, right);
  return {
    cell: (sheet, row, column) => gridWith(sheet, row, column, row, column).get(row, column),
    matrix: (area) => gridOf(area).matrix(area),
    each: (area, visit) => gridOf(area).each(area, visit),
    cut: (area) => grids[area.sheet].cut(area),
    mark: () => 0,
    isChangedSince: () => false,
    hasHiddenRows: () => true,
    spilledArea: (sheet, row, column) => spilled.get(keyOf(sheet, row, column)),
    area: () => undefined,
    hasSubtotal: () => true,
    from1904: false,
  };
}

/** An error's code in a cell is an error for a formula. */
function cellError(value: unknown): CellError | undefined {
  const code = errorCode(value);
  return code === undefined ? undefined : new CellError(code);
}
