// workbook: a formula with our functions as formulas without them, one for each cell that it fills.

import { cellName, readBox } from "../xlsx/addresses.ts";
import { listFunctions } from "./lists.ts";
import { ownFormulas } from "./own-formula.ts";

/** The formulas for the cells that a formula fills, row by row, or why there are none. */
export type Own = { readonly cells: readonly (readonly string[])[] } | { readonly why: string };

/** A call whose arguments are cells, ranges, numbers or words: nothing in them has brackets. */
const CALL = /(?:_xldudf_REAM_|REAM\.)(\w+)\(((?:[^()"]|"[^"()]*")*)\)/gi;
const NAMED = /_xldudf_REAM_|REAM\./i;
const QUOTED = /"[^"]*(?:_xldudf_REAM_|REAM\.)[^"]*"/i;
const RANGE = /\$?[A-Z]{1,3}\$?\d+:\$?[A-Z]{1,3}\$?\d+/gi;
const ALONE = new RegExp(`^=${CALL.source}$`, "i");
/** One cell of a function that gives several: `INDEX(REAM.RUNOUT(…),1,2)`. */
const PART = new RegExp(`INDEX\\(\\s*${CALL.source}\\s*,\\s*(?:1\\s*,\\s*)?(\\d)\\s*\\)`, "gi");

/** What a formula with calls of ours becomes. @param most as many rows as are wanted of a column */
export function ownCells(formula: string, most = Number.POSITIVE_INFINITY): Own {
  if (!formula.startsWith("=")) return { why: "it is no formula" };
  const alone = ALONE.exec(formula);
  if (!alone) {
    const own = within(formula);
    return typeof own === "string" ? { cells: [[own]] } : own;
  }
  const id = alone[1].toUpperCase();
  const args = argumentsOf(alone[2]);
  const rows = listFunctions.has(id) ? [args] : rowsOf(args, most);
  if (!rows) return { why: `the ranges of ${id} are no columns of one height` };
  const cells: string[][] = [];
  const isColumn = args.map((text) => new RegExp(RANGE.source, "i").test(text));
  for (const row of rows) {
    const own = ownFormulas(id, row, isColumn);
    if ("why" in own) return own;
    cells.push(own.map((text) => `=${text}`));
  }
  return { cells };
}

/** A formula of other functions with each call of ours, or a part of it, in the spreadsheet's own. */
function within(formula: string): string | { readonly why: string } {
  if (QUOTED.test(formula)) return { why: "a text in the formula names a function" };
  let why: string | undefined;
  const put = (id: string, args: string, cell?: number) => {
    const own = ownFormulas(id.toUpperCase(), argumentsOf(args));
    if ("why" in own) why ??= own.why;
    else if (cell === undefined ? own.length > 1 : own[cell] === undefined)
      why ??= `${id.toUpperCase()} gives ${own.length} cells, and the formula takes another number of them`;
    return "why" in own ? "" : `(${own[cell ?? 0]})`;
  };
  const text = formula
    .replace(PART, (_, id: string, args: string, cell: string) => put(id, args, Number(cell) - 1))
    .replace(CALL, (_, id: string, args: string) => put(id, args));
  if (why !== undefined) return { why };
  return text === formula || NAMED.test(text) ? { why: "an argument is a calculation of its own" } : text;
}

/** The arguments as they are written, parted at the commas outside quotation marks and square brackets. */
function argumentsOf(text: string): string[] {
  if (text.trim() === "") return [];
  const args = [""];
  let isQuoted = false;
  let depth = 0;
  for (const character of text) {
    if (character === '"') isQuoted = !isQuoted;
    if (character === "[" && !isQuoted) depth++;
    if (character === "]" && !isQuoted) depth--;
    if (character === "," && !isQuoted && depth === 0) args.push("");
    else args[args.length - 1] += character;
  }
  return args.map((one) => one.trim());
}

/** The arguments for each row, where some are columns of one height; undefined where they are other ranges. */
function rowsOf(args: readonly string[], most: number): (readonly string[])[] | undefined {
  const boxes = args.flatMap((text) => text.match(RANGE) ?? []).map((range) => readBox(range));
  if (boxes.length === 0) return [args];
  const [first] = boxes;
  const height = first ? first.bottom - first.top + 1 : 0;
  const isColumn = boxes.every((box) => box && box.left === box.right && box.bottom - box.top + 1 === height);
  if (!isColumn) return undefined;
  return Array.from({ length: Math.min(height, most) }, (_, at) =>
    args.map((text) =>
      text.replace(RANGE, (range) => {
        const box = readBox(range)!;
        return cellName(box.top + at, box.left);
      }),
    ),
  );
}
