// workbook: a sheet as the browser workbook would have it if its file had the rows and columns that it has now, and
// nothing else were changed: what is still other than that is written into the file.

import { boxName, readBox } from "../xlsx/addresses.ts";
import { insertion, type LineShift, removal, shiftedBox } from "../xlsx/line-shift.ts";
import type { Restructuring } from "../xlsx/restructure-step.ts";
import type { Zones } from "./looks.ts";
import type { Headers, SheetSnapshot } from "./snapshot.ts";

/**
 * @param before as it was when the file was opened
 * @param moved as the grid has it after the steps alone, with the looks that it gives to new rows and columns
 */
export function followedSheet(
  before: SheetSnapshot,
  steps: readonly Restructuring[],
  moved: SheetSnapshot,
  now: SheetSnapshot,
): SheetSnapshot {
  const inserted = { row: new Set<number>(), column: new Set<number>() };
  const { formats, styles, borders, rows, columns } = before;
  let looks = { formats, styles, borders, rows, columns };
  for (const step of steps) {
    if (step.kind !== "insert" && step.kind !== "remove") continue;
    const { axis } = step;
    const shift = step.kind === "insert" ? insertion(axis, step.at, step.count) : removal(axis, step.at);
    looks = {
      formats: movedZones(looks.formats, shift),
      styles: movedZones(looks.styles, shift),
      borders: movedZones(looks.borders, shift),
      rows: axis === "row" ? movedHeaders(looks.rows, shift) : looks.rows,
      columns: axis === "column" ? movedHeaders(looks.columns, shift) : looks.columns,
    };
    const lines = [...inserted[axis]].flatMap((line) => shift.line(line) ?? []);
    if (step.kind === "insert") for (let i = 0; i < step.count; i++) lines.push(step.at + i);
    inserted[axis] = new Set(lines);
  }
  const usual = (headers: Headers, count: number) => headers[count - 1];
  return {
    ...moved,
    ...looks,
    rows: withUsual(looks.rows, now.rows, now.size[0], usual(before.rows, before.size[0])),
    columns: withUsual(looks.columns, now.columns, now.size[1], usual(before.columns, before.size[1])),
    id: before.id,
    inserted,
  };
}

/** The ranges where they are now; new lines are in none of them. */
function movedZones<T>(zones: Zones<T>, shift: LineShift): Zones<T> {
  return zones.flatMap(([range, value]) => {
    const box = readBox(range)!;
    const [first, last] = shift.axis === "row" ? [box.top, box.bottom] : [box.left, box.right];
    const start = shift.line(first);
    const end = shift.line(last);
    const isSplit = start !== undefined && end !== undefined && end - start > last - first;
    const halves = isSplit ? split(first, last, shift) : [[first, last] as const];
    return halves.flatMap(([from, to]) => {
      const half =
        shift.axis === "row" ? { ...box, top: from, bottom: to } : { ...box, left: from, right: to };
      const now = shiftedBox(half, shift);
      return now ? [[boxName(now), value] as const] : [];
    });
  });
}

/** Before the new lines, and behind them. */
function split(first: number, last: number, shift: LineShift): (readonly [number, number])[] {
  let at = first;
  while (shift.line(at) === at) at++;
  return [
    [first, at - 1],
    [at, last],
  ];
}

const movedHeaders = (headers: Headers, shift: LineShift): Headers =>
  Object.fromEntries(
    Object.entries(headers).flatMap(([at, header]) => {
      const now = shift.line(Number(at));
      return now === undefined ? [] : [[now, header] as const];
    }),
  );

/** Lines that were not there before are like the last one was, whose size nobody has chosen. */
function withUsual(headers: Headers, now: Headers, count: number, usual: unknown): Headers {
  const all: Record<string, unknown> = { ...headers };
  for (const at of Object.keys(now)) if (Number(at) < count && usual !== undefined) all[at] ??= usual;
  return all;
}
