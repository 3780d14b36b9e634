// taskpane: a copy of the sheet with values in place of our formulas, for someone who has no add-in.

import { ownCells } from "../../workbook/own-formulas/rewrite.ts";
import { type Cells, type Content, literal, Refusal, type Workbook } from "../../workbook/workbook.ts";
import { callsOurs, ourCalls } from "./formula-calls.ts";

/** What a cell shows while its function is still at work. */
const UNFINISHED = new Set(["#BUSY!", "#GETTING_DATA", "Loading..."]);

export interface Frozen {
  readonly name: string;
  /** Cells that hold a value now, spilled ones among them. */
  readonly replaced: number;
  /** Formulas of other kinds, which stay formulas. */
  readonly others: number;
  /** Cells among the replaced that hold a formula of the spreadsheet's own. */
  readonly own: number;
  /** Functions that stand as values, since the spreadsheet has no such formula. */
  readonly asValues: readonly string[];
}

/** Copies the sheet of the active cell. @throws Refusal, and then there is no copy */
export async function freezeSheet(workbook: Workbook, withOwn = false): Promise<Frozen> {
  const { sheet } = await workbook.active();
  const used = await workbook.used(sheet);
  if (!used) throw new Refusal(`The sheet "${sheet}" is empty: there is nothing to copy.`);
  const cells = await workbook.read(used);
  const { formulas, values } = cells;
  const written = formulas
    .flat()
    .filter((cell): cell is string => typeof cell === "string" && cell.startsWith("="));
  const ours = written.filter(callsOurs).length;
  if (ours === 0) throw new Refusal(`The sheet "${sheet}" has no REAM formula: it can be sent as it is.`);
  const unknown = formulas.flatMap((row, r) =>
    row.filter((cell, c) => callsOurs(String(cell)) && values[r][c] === "#NAME?"),
  ).length;
  if (unknown > 0)
    throw new Refusal(
      `${unknown} REAM formulas show #NAME?, so they have no values yet. Enter them again under Check this sheet.`,
    );
  const unfinished = values.flat().filter((value) => UNFINISHED.has(String(value))).length;
  if (unfinished > 0)
    throw new Refusal(
      `${unfinished} cells are still computing: wait until they show a result, then try again.`,
    );
  const { name, replaced } = await workbook.copyAsValues(sheet, callsOurs);
  const others = written.length - ours;
  if (!withOwn) return { name, replaced, others, own: 0, asValues: [] };
  return { name, replaced, others, ...(await writeOwn(workbook, name, cells)) };
}

/** Puts the spreadsheet's own formulas over the values of the copy, and takes back each that shows another result. */
async function writeOwn(
  workbook: Workbook,
  copy: string,
  cells: Cells,
): Promise<Pick<Frozen, "own" | "asValues">> {
  const { formulas, values, formats } = cells;
  const written = new Map<string, { row: number; column: number; formula: string }>();
  const left = new Set<string>();
  formulas.forEach((line, row) => {
    line.forEach((content, column) => {
      if (typeof content !== "string" || !callsOurs(content)) return;
      const own = ownCells(content, values.length - row);
      if ("why" in own) for (const { id } of ourCalls(content)) left.add(id);
      else
        own.cells.forEach((cells, down) => {
          cells.forEach((formula, along) => {
            const place = { row: row + down, column: column + along };
            const format = formats[place.row]?.[place.column];
            // In a cell with the format Text the formula would be a text.
            if (format !== undefined && format !== "@")
              written.set(`${place.row},${place.column}`, { ...place, formula });
          });
        });
    });
  });
  /** One change over the whole sheet, all other cells left as they are. */
  const change = (contents: readonly { row: number; column: number; content: Content }[]) => {
    const lines: (Content | undefined)[][] = values.map((line) => line.map(() => undefined));
    for (const { row, column, content } of contents) lines[row][column] = content;
    return { sheet: copy, row: cells.row, column: cells.column, formulas: lines };
  };
  const places = [...written.values()];
  try {
    if (places.length > 0)
      await workbook.write([change(places.map((place) => ({ ...place, content: place.formula })))]);
    const now = (await workbook.read({ ...cells, sheet: copy })).values;
    const off = places.filter(({ row, column }) => !isSame(now[row][column], values[row][column]));
    if (off.length > 0)
      await workbook.write([
        change(off.map((place) => ({ ...place, content: literal(values[place.row][place.column]) }))),
      ]);
    return { own: places.length - off.length, asValues: [...left].sort() };
  } catch (thrown) {
    const { message } = thrown as Refusal;
    throw new Refusal(
      `${message} The sheet "${copy}" may show other results than "${cells.sheet}". Delete it, then try again.`,
    );
  }
}

const CLOSE = 1e-9;

/** Whether two cells show the same; an error stands for any other. */
function isSame(one: Content, other: Content): boolean {
  if (typeof one === "number" && typeof other === "number")
    return Math.abs(one - other) <= CLOSE * Math.max(1, Math.abs(other));
  return one === other || (/^#/.test(String(one)) && /^#/.test(String(other)));
}
