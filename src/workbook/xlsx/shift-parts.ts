// workbook: the parts that hang on a sheet where rows or columns of it are inserted or taken out: tables, notes, drawings,
// and pivot tables move with its cells.

import { type Box, boxName, readBox } from "./addresses.ts";
import type { Base, SheetChange } from "./follow-formula.ts";
import { type LineShift, shiftedBox, shiftedRef } from "./line-shift.ts";
import { mapElements, mapInside, mapTags, NotCertain, withStart } from "./map-elements.ts";
import { shiftedFilter, shiftedNotes, shiftedSort } from "./shift-around.ts";
import { shiftedColumns } from "./table-columns.ts";
import { type NewCell, placeOf, withAttribute } from "./write-sheet.ts";
import { attribute, elements, escapeAttribute } from "./xml-text.ts";

const touches = ({ top, left, bottom, right }: Box, { axis, isWithin }: LineShift): boolean =>
  axis === "row" ? isWithin(top, bottom) : isWithin(left, right);

interface ShiftedTable {
  readonly text: string;
  readonly isResized: boolean;
  /** Its first row with values, from which its formulas are counted. */
  readonly base: Base | undefined;
  /** Headers that came in. */
  readonly cells: ReadonlyMap<number, NewCell>;
  /** Headers of columns that are gone. */
  readonly lost: readonly string[];
}

/** @throws NotCertain */
export function shiftedTable(text: string, shift: LineShift): ShiftedTable {
  const [table] = elements(text, "table");
  const box = readBox(attribute(table?.tag ?? "", "ref") ?? "");
  const now = box && shiftedBox(box, shift);
  if (!box || !now) throw new NotCertain("table");
  const isResized = touches(box, shift);
  const headers = Number(attribute(table.tag, "headerRowCount") ?? 1);
  const totals = Number(attribute(table.tag, "totalsRowCount") ?? 0);
  if (isResized) {
    const fixed = [box.top, ...(totals > 0 ? [box.bottom] : [])];
    const isFixedGone = (headers > 0 ? fixed : fixed.slice(1)).some((row) => shift.line(row) === undefined);
    const isEmpty = now.bottom - now.top + 1 <= headers + totals;
    if (isFixedGone || isEmpty) throw new NotCertain("table");
  }
  const moved = withStart(text, table, withAttribute(table.tag, "ref", boxName(now)));
  const placed = text.slice(0, table.start) + moved + text.slice(table.end);
  const columns = isResized && shift.axis === "column" ? shiftedColumns(placed, box, now, shift) : undefined;
  const whole = columns?.text ?? placed;
  const { lost = [] } = columns ?? {};
  const cells = new Map(
    [...(headers > 0 ? (columns?.headers ?? []) : [])].map(([column, value]) => [
      placeOf(now.top, column),
      { value },
    ]),
  );
  const [filter] = elements(whole, "autoFilter");
  const filtered = filter
    ? whole.slice(0, filter.start) +
      shiftedFilter(whole.slice(filter.start, filter.end), shift) +
      whole.slice(filter.end)
    : whole;
  const [sort] = elements(filtered, "sortState");
  const base = shift.axis === "row" ? { before: box.top + headers, now: now.top + headers } : undefined;
  if (!sort || (filter && sort.start < filter.end)) return { text: filtered, isResized, base, cells, lost };
  return { text: shiftedSort(filtered, shift), isResized, base, cells, lost };
}

/** Notes, and remarks with their answers. */
export const shiftedRemarks = (text: string, shift: LineShift): string =>
  shiftedNotes(shiftedNotes(text, "comment", shift), "threadedComment", shift);

const number = (text: string, name: string) => {
  const [found] = elements(text, name);
  return found ? Number(found.inside) : undefined;
};

/** The boxes of notes. @throws NotCertain where other things are drawn, such as buttons */
export const shiftedVml = (text: string, shift: LineShift): string =>
  mapElements(text, "shape", ({ start, end }) => {
    const whole = text.slice(start, end);
    const [data] = elements(whole, "ClientData");
    const isNote = data && attribute(data.tag, "ObjectType") === "Note";
    // Pictures of headers and footers have no cell.
    if (!data) return whole;
    const [name, line] =
      shift.axis === "row" ? ["Row", number(whole, "Row")] : ["Column", number(whole, "Column")];
    if (!isNote || line === undefined) throw new NotCertain("drawing");
    const now = shift.line(line);
    if (now === undefined) return "";
    const placed = mapInside(whole, name, () => String(now));
    const at = shift.axis === "row" ? 2 : 0;
    return mapInside(placed, "Anchor", (anchor) =>
      anchor
        .split(",")
        .map((given, i) => (i === at || i === at + 4 ? ` ${Math.max(0, Number(given) + now - line)}` : given))
        .join(","),
    );
  });

/** Charts, pictures, and shapes, which move with their cells unless they say otherwise. */
export function shiftedDrawing(text: string, shift: LineShift): string {
  const name = shift.axis === "row" ? "row" : "col";
  const lineIn = (corner: string) => number(corner, name) ?? 0;
  const withLine = (whole: string, corner: string, line: number) =>
    mapInside(whole, corner, (inside) => mapInside(inside, name, () => String(line)));
  const one = mapElements(text, "oneCellAnchor", ({ start, end }) => {
    const whole = text.slice(start, end);
    const [from] = elements(whole, "from");
    return withLine(whole, "from", shift.nearest(lineIn(from.inside)));
  });
  return mapElements(one, "twoCellAnchor", ({ start, end, tag }) => {
    const whole = one.slice(start, end);
    const moves = attribute(tag, "editAs") ?? "twoCell";
    const [from] = elements(whole, "from");
    const [to] = elements(whole, "to");
    if (moves === "absolute" || !from || !to) return whole;
    const [first, last] = [lineIn(from.inside), lineIn(to.inside)];
    const now = shift.nearest(first);
    const until = moves === "oneCell" ? last + now - first : Math.max(now, shift.nearest(last));
    return withLine(withLine(whole, "from", now), "to", until);
  });
}

export const shiftedPivot = {
  /** Where a pivot table stands. @throws NotCertain where it would be cut */
  place(text: string, shift: LineShift): string {
    return mapTags(text, "location", (tag) => {
      const box = readBox(attribute(tag, "ref") ?? "");
      const now = box && shiftedRef(boxName(box), shift);
      if (!box || touches(box, shift) || now === undefined) throw new NotCertain("pivot table");
      return withAttribute(tag, "ref", now);
    });
  },
  /** What it is made of. @throws NotCertain */
  source(text: string, { sheet, lines, name }: SheetChange): string {
    const follow = (tag: string): string => {
      if (attribute(tag, "sheet")?.toUpperCase() !== sheet.toUpperCase() || attribute(tag, "id")) return tag;
      if (name !== undefined) return withAttribute(tag, "sheet", escapeAttribute(name));
      const ref = attribute(tag, "ref");
      if (ref === undefined || !lines) return tag;
      const now = shiftedRef(ref, lines);
      if (now === undefined) throw new NotCertain("pivot table");
      return withAttribute(tag, "ref", now);
    };
    // One range, or several that are put together.
    return mapTags(mapTags(text, "worksheetSource", follow), "rangeSet", follow);
  },
};
