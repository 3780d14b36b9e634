// workbook: the cells of a sheet's part where rows or columns are inserted or taken out, in this sheet or in another, or
// where a sheet gets another name: every formula follows.

import { type Box, boxName, cellName, contains } from "./addresses.ts";
import type { Followed } from "./follow-formula.ts";
import { functionsIn } from "./formula-tokens.ts";
import { type LineShift, shiftedBox } from "./line-shift.ts";
import { type CellFormula, formulaRoom, readSheet } from "./read-sheet.ts";
import { type SheetCell, walkSheet } from "./walk-sheet.ts";
import { placeOf, withAttribute } from "./write-sheet.ts";
import { escapeXml } from "./xml-text.ts";

export interface ShiftedCells {
  readonly text: string;
  /** Where formulas stand now whose values may be others. */
  readonly changed: ReadonlySet<number>;
}

/** What a formula is where it stands now; undefined if that is not certain. */
export type FollowFormula = (formula: string) => Followed | undefined;

/** Functions whose value depends on where cells stand. */
const placed = new Set(
  "ROW ROWS COLUMN COLUMNS CELL INDIRECT OFFSET FORMULATEXT ADDRESS SHEET SHEETS AREAS".split(" "),
);

const reads = (formula: string): boolean => functionsIn(formula).some((name) => placed.has(name));

/**
 * Undefined if what becomes of a formula is not certain.
 * @param shift of the lines of this very sheet
 * @param isAffected whether the value of a formula may be another for another reason
 */
export function shiftedCells(
  text: string,
  follow: FollowFormula,
  shift: LineShift | undefined,
  isAffected: (formula: string) => boolean,
): ShiftedCells | undefined {
  const found = readFormulas(text, follow, shift);
  if (!found) return undefined;
  const { formulas, torn } = found;
  const changed = new Set<number>();
  const pieces: string[] = [];
  let copied = 0;
  /** Whether the row that is read is taken out. */
  let isGone = false;
  const put = (from: number, to: number, now: string) => {
    pieces.push(text.slice(copied, from), now);
    copied = to;
  };
  const nowAt = (row: number, column: number) => (shift ? cellNow(shift, row, column) : { row, column });
  walkSheet(text, {
    rowStart({ row, span }) {
      if (!shift) return;
      const now = shift.axis === "row" ? shift.line(row) : row;
      isGone = now === undefined;
      if (now === undefined) {
        pieces.push(text.slice(copied, span.start));
        return;
      }
      const tag = withAttribute(text.slice(span.start, span.open), "r", String(now + 1));
      put(span.start, span.open, withoutSpans(tag, shift));
    },
    cell(cell) {
      if (isGone) return;
      const { row, column, span } = cell;
      const now = nowAt(row, column);
      const isTorn = !cell.formula && torn.some((box) => contains(box, row, column));
      if (!now) {
        put(span.start, span.end, "");
        return;
      }
      const place = placeOf(row, column);
      const own = formulas.get(place);
      if (shift) {
        const tag = withAttribute(text.slice(span.start, span.open), "r", cellName(now.row, now.column));
        if (isTorn) put(span.start, span.end, withoutValue(tag));
        else put(span.start, span.open, tag);
      }
      if (!own) return;
      if (own.isOther || isAffected(own.before) || reads(own.before))
        changed.add(placeOf(now.row, now.column));
      const element = formulaNow(text, cell, own, shift);
      if (element !== undefined) put(cell.formula!.start, cell.formula!.end, element);
    },
    rowEnd({ span }) {
      if (isGone) copied = span.end;
    },
  });
  pieces.push(text.slice(copied));
  return { text: pieces.join(""), changed };
}

/** A cell that keeps its looks. */
const withoutValue = (tag: string): string =>
  ["t", "cm", "vm"].reduce((own, name) => withAttribute(own, name, undefined), tag).replace(/\s*\/?>$/, "/>");

function cellNow(shift: LineShift, row: number, column: number) {
  const line = shift.line(shift.axis === "row" ? row : column);
  if (line === undefined) return undefined;
  return shift.axis === "row" ? { row: line, column } : { row, column: line };
}

/** Rows tell between which columns they have cells, which need not be told. */
const withoutSpans = (tag: string, { axis }: LineShift): string =>
  axis === "column" ? withAttribute(tag, "spans", undefined) : tag;

interface FoundFormula {
  readonly before: string;
  readonly now: string;
  readonly isOther: boolean;
  /** Written once for several cells, one of which is another now. */
  isApart: boolean;
  readonly array: Box | undefined;
}

interface FoundFormulas {
  readonly formulas: ReadonlyMap<number, FoundFormula>;
  /** Cells of results that are cut in two: they are computed anew. */
  readonly torn: readonly Box[];
}

function readFormulas(
  text: string,
  follow: FollowFormula,
  shift: LineShift | undefined,
): FoundFormulas | undefined {
  const formulas = new Map<number, FoundFormula>();
  const torn: Box[] = [];
  const groups = new Map<string, FoundFormula[]>();
  let isCertain = true;
  const visit = (cell: SheetCell, formula: CellFormula | undefined) => {
    if (!formula) return;
    const { row, column } = cell;
    const isGone = shift && !cellNow(shift, row, column);
    const { array } = formula;
    const isTorn = array !== undefined && shift !== undefined && isCut(array, shift);
    if (formula.isWhatIfTable || (isTorn && !formula.isSpill)) {
      // What-if tables read cells that they do not name.
      isCertain = false;
      return;
    }
    if (isTorn) torn.push(array);
    else if (isGone && array) torn.push(array);
    if (formula.text === undefined || isGone) return;
    const followed = follow(formula.text);
    if (!followed) {
      isCertain = false;
      return;
    }
    const own: FoundFormula = {
      before: formula.text,
      now: followed.text,
      isOther: followed.isOther || isTorn,
      isApart: false,
      array: isTorn ? { top: row, left: column, bottom: row, right: column } : array,
    };
    formulas.set(placeOf(row, column), own);
    const { t: kind, si = "" } = cell.formula!.attributes;
    if (kind === "shared") groups.set(si, [...(groups.get(si) ?? []), own]);
  };
  readSheet(text, formulaRoom(), visit);
  for (const group of groups.values())
    if (shift || group.some(({ before, now }) => before !== now)) for (const own of group) own.isApart = true;
  return isCertain ? { formulas, torn } : undefined;
}

const isCut = ({ top, left, bottom, right }: Box, shift: LineShift): boolean => {
  const [first, last] = shift.axis === "row" ? [top, bottom] : [left, right];
  return first !== last && shift.isWithin(first, last) && shift.run(first, last) !== undefined;
};

/** The element of a formula as it is now; undefined if it stays. */
function formulaNow(
  text: string,
  { formula }: SheetCell,
  { before, now, isApart, array }: FoundFormula,
  shift: LineShift | undefined,
): string | undefined {
  const { start, open, end } = formula!;
  let tag = text.slice(start, open).replace(/\s*\/>$/, ">");
  const whole = /^<([^\s>]+)/.exec(tag)![1];
  if (isApart) for (const name of ["t", "si", "ref"]) tag = withAttribute(tag, name, undefined);
  else if (array && shift) tag = withAttribute(tag, "ref", boxName(shiftedBox(array, shift) ?? array));
  if (!isApart && before === now && tag === text.slice(start, open)) return undefined;
  return text.slice(start, end).endsWith("/>") && !isApart ? undefined : `${tag}${escapeXml(now)}</${whole}>`;
}
