// taskpane: what is odd in a column or a row of a sheet by itself: numbers typed over formulas, formulas unlike the
// others, texts that look like numbers.

import { boxOfArea } from "../../workbook/boxes.ts";
import { type Area, type Cells, type Content, cutTo } from "../../workbook/workbook.ts";
import { contains, LAST_COLUMN, LAST_ROW } from "../../workbook/xlsx/addresses.ts";
import { sharedFormula } from "../../workbook/xlsx/formula-shift.ts";
import { tokensOf } from "../../workbook/xlsx/formula-tokens.ts";
import { areasRead } from "./formula-calls.ts";

/** A place in the cells that were read, counted from their first one. */
export interface Odd {
  readonly down: number;
  readonly across: number;
  readonly what: string;
}

const isFormula = (content: Content | undefined): content is string =>
  typeof content === "string" && content.startsWith("=");

/** A cell of a column or a row. */
interface Cell {
  readonly down: number;
  readonly across: number;
  readonly content: Content;
  /** A formula as it would stand in the first cell of the sheet: the same for those filled down or to the right. */
  readonly form: string | undefined;
}

/** Columns of formulas, and rows of them where sheets run to the right. */
export function oddFormulas(cells: Cells): Odd[] {
  const grid = cells.formulas.map((line, down) =>
    line.map((content, across): Cell => {
      const form = isFormula(content) ? formOf(content, cells.row + down, cells.column + across) : undefined;
      return { down, across, content, form };
    }),
  );
  const found = new Map<Cell, string>();
  const columns = (grid[0] ?? []).map((_, across) => grid.map((line) => line[across]));
  for (const line of [...columns, ...grid]) {
    const isColumn = line !== grid[line[0]?.down];
    const words = isColumn ? COLUMN : ROW;
    for (const run of runsOf(line, cells)) {
      const usual = usualIn(run);
      if (usual === undefined) continue;
      for (const cell of oddIn(run, usual, isColumn, cells))
        if (!found.has(cell) && (isColumn || !fitsItsColumn(cell, grid)))
          found.set(cell, isFormula(cell.content) ? words.differs : `${cell.content} ${words.typed}`);
    }
  }
  return [...found].map(([{ down, across }, what]) => ({ down, across, what }));
}

const COLUMN = {
  typed: "is typed where the column has a formula.",
  differs: "The formula differs from those above and below it.",
};
const ROW = {
  typed: "is typed where the row has a formula.",
  differs: "The formula differs from those beside it.",
};

const formOf = (formula: string, row: number, column: number) =>
  sharedFormula(formula.slice(1)).at(LAST_ROW + 1 - row, LAST_COLUMN + 1 - column);

/** Formulas in a row or column with nothing but numbers between them. */
function runsOf(line: readonly Cell[], { fixed }: Cells): Cell[][] {
  const runs: Cell[][] = [];
  let run: Cell[] = [];
  for (const cell of line) {
    const counts = cell.form !== undefined || typeof cell.content === "number";
    if (counts && !fixed[cell.down][cell.across]) run.push(cell);
    else if (run.length > 0) {
      runs.push(run);
      run = [];
    }
  }
  return [...runs, run].filter((one) => one.length > 2);
}

/** The formula that most cells of a run hold; undefined where none is usual. */
function usualIn(run: readonly Cell[]): string | undefined {
  const counts = new Map<string, number>();
  for (const { form } of run) if (form !== undefined) counts.set(form, (counts.get(form) ?? 0) + 1);
  let [usual, most, all]: [string | undefined, number, number] = [undefined, 1, 0];
  for (const [form, count] of counts) {
    all += count;
    if (count > most) [usual, most] = [form, count];
  }
  return most * 5 >= all * 3 ? usual : undefined;
}

/** More cells than this that differ together are taken for meant. */
const MOST_TOGETHER = 2;

function oddIn(run: readonly Cell[], usual: string, isColumn: boolean, cells: Cells): Cell[] {
  const isUsual = run.map(({ form }) => form === usual);
  const first = isUsual.indexOf(true);
  const last = isUsual.lastIndexOf(true);
  const count = isUsual.filter(Boolean).length;
  // Inputs may stand between the formulas of a row: one alone among three formulas does not.
  const isOneTyped = count > 2 && run.filter(({ form }) => form === undefined).length === 1;
  const odd: Cell[] = [];
  // Below columns an average may stand among sums.
  const isOtherSum = (cell: Cell) => !isColumn && !isLike(cell, usual) && sumsUp(cell, true, cells);
  const isMeant = (cell: Cell) => isOften(cell, run) || sumsUp(cell, isColumn, cells) || isOtherSum(cell);
  for (let at = 0; at < run.length; ) {
    if (isUsual[at]) {
      at++;
      continue;
    }
    let end = at;
    while (end < run.length && !isUsual[end]) end++;
    const together = run.slice(at, end);
    const isBetween = at > first && end <= last;
    // At an end of the run, what differs must be one cell beside two of the usual ones.
    const isAtEnd = together.length === 1 && (isUsual[at - 1] ? isUsual[at - 2] : isUsual[end + 1]);
    const beside = run[isUsual[at - 1] ? at - 1 : end];
    const isInput = isAtEnd && !isBetween && (isReadBy(run[at], beside, cells) || isHeading(run[at], cells));
    const typed = isInput ? [] : together.filter(({ form }) => form === undefined);
    if ((isBetween || isAtEnd) && (isColumn || isOneTyped)) odd.push(...typed);
    const formulas = together.filter(({ form }) => form !== undefined);
    if (formulas.length <= MOST_TOGETHER)
      for (const cell of formulas) {
        if ((isBetween || (isAtEnd && count > 2 && isLike(cell, usual))) && !isMeant(cell)) odd.push(cell);
      }
    at = end;
  }
  return odd;
}

/** A formula without its numbers and cells. */
const shapeOf = (formula: string): string =>
  tokensOf(formula)
    .map(({ kind, text }) =>
      kind === "number" || (kind === "name" && /^\$?[A-Z]{1,3}\$?\d+$/i.test(text)) ? "1" : text,
    )
    .join("");

/** A formula that comes back as often as this is a pattern, such as a line for each group. */
const OFTEN = 3;

const isOften = ({ form }: Cell, run: readonly Cell[]): boolean =>
  run.filter((other) => other.form === form).length >= OFTEN;

const placeOf = ({ down, across }: Cell, { sheet, row, column }: Cells): Area => ({
  sheet,
  row: row + down,
  column: column + across,
  rows: 1,
  columns: 1,
});

/** Whether the formula beside a cell reads it: an opening balance, or the size that a row or a column is for. */
const isReadBy = (cell: Cell, beside: Cell, cells: Cells): boolean =>
  areasRead(String(beside.content), cells.sheet, () => cells).some(
    (read) => read.sheet === cells.sheet && cutTo(read, placeOf(cell, cells)) !== undefined,
  );

/** Whether a number stands over a column as its header: a year, or the size of a batch. */
function isHeading({ down, across }: Cell, { formulas }: Cells): boolean {
  if (typeof formulas[down - 1]?.[across] === "string" && formulas[down - 1][across] !== "") return false;
  const [row, below = []] = [formulas[down], formulas[down + 1]];
  const isWord = (content: Content) => typeof content === "string" && content !== "" && !isFormula(content);
  const isFigure = (content: Content | undefined) => typeof content === "number" || isFormula(content);
  if (row.some((content, at) => isWord(content) && isFigure(below[at]))) return true;
  const overFormulas = row.filter((content, at) => typeof content === "number" && isFormula(below[at]));
  return overFormulas.length > 1 && !row.some(isFormula);
}

/** Whether a formula is another in all but its numbers and cells. */
const isLike = ({ form }: Cell, usual: string): boolean => shapeOf(String(form)) === shapeOf(usual);

/** Whether a formula reads several cells of its own column or row, as a sum between others does. */
function sumsUp(cell: Cell, isColumn: boolean, cells: Cells): boolean {
  const { sheet } = cells;
  const { row, column } = placeOf(cell, cells);
  const own = isColumn
    ? { sheet, row: 0, column, rows: LAST_ROW + 1, columns: 1 }
    : { sheet, row, column: 0, rows: 1, columns: LAST_COLUMN + 1 };
  const read = areasRead(String(cell.content), sheet, () => cells).map((area) => {
    const part = area.sheet === sheet ? cutTo(area, own) : undefined;
    return part ? part.rows * part.columns : 0;
  });
  return read.reduce((sum, count) => sum + count, 0) > 1;
}

/** Whether the formula of a cell is that above or below it, and so belongs to its column. */
const fitsItsColumn = ({ down, across, form }: Cell, grid: readonly (readonly Cell[])[]): boolean =>
  form !== undefined && [grid[down - 1], grid[down + 1]].some((line) => line?.[across].form === form);

/** Functions that pass over a text without a word. */
const PASS_OVER = /\b(?:SUM|AVERAGE|MIN|MAX|MEDIAN|SUBTOTAL|AGGREGATE|STDEV|COUNT)/i;

/** A text that reads as a number, in a column of numbers or where a sum would pass over it; a formula that is a text. */
export function oddTexts(cells: Cells): Odd[] {
  const { sheet, formulas, values, fixed, row, column } = cells;
  const summed = formulas
    .flat()
    .filter((content): content is string => isFormula(content) && PASS_OVER.test(content))
    .flatMap((content) => areasRead(content, sheet, () => cells))
    .filter((area) => area.sheet === sheet && area.rows * area.columns > 1)
    .map(boxOfArea);
  const isSummed = (down: number, across: number) =>
    summed.some((box) => contains(box, row + down, column + across));
  return (formulas[0] ?? []).flatMap((_, across) => {
    const numbers = values.filter((line) => typeof line[across] === "number").length;
    return formulas.flatMap((line, down): Odd[] => {
      const content = line[across];
      if (typeof content !== "string" || fixed[down][across] === "spilled") return [];
      if (/^'=\s*[A-Za-z(]/.test(content))
        return [
          {
            down,
            across,
            what: `"${content.slice(1)}" is a text, so it computes nothing. Enter it as a formula.`,
          },
        ];
      if (!looksLikeNumber(content) || (numbers < 2 && !isSummed(down, across))) return [];
      return [{ down, across, what: `"${content}" is a text that looks like a number.` }];
    });
  });
}

/** Not what begins with 0 and has no decimals, such as the number of a part or a day. */
function looksLikeNumber(text: string): boolean {
  const plain = text.replace(/^'/, "").trim();
  if (/^[+\-\u2212]?0\d/.test(plain)) return false;
  return (
    /^[+\-\u2212]?(?:\d+|\d{1,3}(?:[.,\s']\d{3})+)?(?:[.,]\d*)?(?:e[+-]?\d+)?\s*%?$/i.test(plain) &&
    /\d/.test(plain)
  );
}
