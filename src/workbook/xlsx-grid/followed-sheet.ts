// workbook: a sheet as the browser workbook would have it if its file had the rows and columns that it has now, and
// nothing else were changed: what is still other than that is written into the file.

import { boxName, readBox } from "../xlsx/addresses.ts";
import { insertion, type LineShift, removal, shiftedBox } from "../xlsx/line-shift.ts";
import type { Restructuring } from "../xlsx/restructure.ts";
import { type Figure, type Headers, isSame, type SheetSnapshot, type Validation } from "./changes.ts";
import type { Zones } from "./looks.ts";

/**
 * @param before as it was when the file was opened
 * @param again as a file shows it in which the steps were taken
 */
export function followedSheet(
  before: SheetSnapshot,
  steps: readonly Restructuring[],
  again: SheetSnapshot,
  now: SheetSnapshot,
): SheetSnapshot {
  const inserted = { row: new Set<number>(), column: new Set<number>() };
  const { formats, styles, borders, rows, columns } = before;
  let moved = { formats, styles, borders, rows, columns };
  for (const step of steps) {
    if (step.kind === "rename") continue;
    const { axis } = step;
    const shift = step.kind === "insert" ? insertion(axis, step.at, step.count) : removal(axis, step.at);
    moved = {
      formats: movedZones(moved.formats, shift),
      styles: movedZones(moved.styles, shift),
      borders: movedZones(moved.borders, shift),
      rows: axis === "row" ? movedHeaders(moved.rows, shift) : moved.rows,
      columns: axis === "column" ? movedHeaders(moved.columns, shift) : moved.columns,
    };
    const lines = [...inserted[axis]].flatMap((line) => shift.line(line) ?? []);
    if (step.kind === "insert") for (let i = 0; i < step.count; i++) lines.push(step.at + i);
    inserted[axis] = new Set(lines);
  }
  const usual = (headers: Headers, count: number) => headers[count - 1];
  return {
    ...again,
    ...moved,
    rows: withUsual(moved.rows, now.rows, now.size[0], usual(before.rows, before.size[0])),
    columns: withUsual(moved.columns, now.columns, now.size[1], usual(before.columns, before.size[1])),
    id: before.id,
    inserted,
    figures: asDrawn(again.figures, now.figures, before.figures),
    validations: asRuled(again.validations, now.validations, before.validations),
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

/** Where rows or columns are put in under a figure, a file draws it larger and the grid does not: nobody has changed it. */
const asDrawn = (
  again: readonly Figure[],
  now: readonly Figure[],
  before: readonly Figure[],
): readonly Figure[] =>
  again.map((figure, i) => {
    const was = before.find(({ id }) => id === now[i]?.id);
    const sizeOf = (one: Figure) => [one.width, one.height, one.offset];
    if (!was || !isSame(sizeOf(was), sizeOf(now[i]))) return figure;
    const { width, height, offset } = now[i];
    return { ...figure, width, height, ...(offset === undefined ? {} : { offset }) };
  });

/** Where rules name cells, the file follows, and the grid does not: nobody has changed them. */
const asRuled = (
  again: readonly Validation[],
  now: readonly Validation[],
  before: readonly Validation[],
): readonly Validation[] =>
  again.map((rule, i) => {
    const was = before.find(({ id }) => id === now[i]?.id);
    return was && isSame(was.criterion, now[i].criterion) ? { ...rule, criterion: was.criterion } : rule;
  });
