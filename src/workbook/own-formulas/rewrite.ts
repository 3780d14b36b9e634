// workbook: a formula with our functions as one without them.

import { cellName, readBox } from "../xlsx/addresses.ts";
import { ownFormula } from "./own-formula.ts";

/** A call whose arguments are cells, numbers or a unit: nothing in them has brackets. */
const CALL = /(?:_xldudf_REAM_|REAM\.)(\w+)\(((?:[^()"]|"(?:mm|in)")*)\)/gi;
const NAMED = /_xldudf_REAM_|REAM\./i;

/** The formula with each call in the spreadsheet's own functions; undefined if any cannot be written so. */
export function rewritten(formula: string): string | undefined {
  if (!formula.startsWith("=")) return undefined;
  let isWhole = true;
  const text = formula.replace(CALL, (_, id: string, args: string) => {
    const own = ownFormula(id.toUpperCase(), args.trim() === "" ? [] : args.split(","));
    if (own === undefined) isWhole = false;
    return own === undefined ? "" : `(${own})`;
  });
  if (!isWhole || text === formula || NAMED.test(text)) return undefined;
  // A formula that was one call alone needs no brackets round it.
  const alone = new RegExp(`^=${CALL.source}$`, "i").test(formula);
  return alone ? `=${text.slice(2, -1)}` : text;
}

/** The formulas of a spilled column, one for each of its cells; undefined where its arguments are no such column. */
export function rewrittenColumn(formula: string): string[] | undefined {
  const ranges = formula.match(/\$?[A-Z]{1,3}\$?\d+:\$?[A-Z]{1,3}\$?\d+/gi) ?? [];
  const boxes = ranges.map((range) => readBox(range));
  const rows = boxes.map((box) => (box ? box.bottom - box.top + 1 : 0));
  if (rows.length === 0 || rows.some((count) => count !== rows[0])) return undefined;
  if (boxes.some((box) => box!.left !== box!.right)) return undefined;
  const cells: string[] = [];
  for (let at = 0; at < rows[0]; at++) {
    const own = rewritten(
      formula.replace(/\$?[A-Z]{1,3}\$?\d+:\$?[A-Z]{1,3}\$?\d+/gi, (range) => {
        const box = readBox(range)!;
        return cellName(box.top + at, box.left);
      }),
    );
    if (own === undefined) return undefined;
    cells.push(own);
  }
  return cells;
}
