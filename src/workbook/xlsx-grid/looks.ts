// workbook: how cells look in the browser workbook's grid, and what of it is other than before, as the styles of a file
// have it.

import { contains, readBox } from "../xlsx/addresses.ts";
import { type Side, type StyleChange, sides } from "../xlsx/restyle.ts";
import { cellAt, placeOf } from "../xlsx/write-sheet.ts";

/** Values by the ranges of cells that have them. */
export type Zones<T> = readonly (readonly [range: string, value: T])[];

export interface GridStyle {
  readonly bold?: boolean;
  readonly italic?: boolean;
  readonly strikethrough?: boolean;
  readonly underline?: boolean;
  readonly align?: string;
  readonly verticalAlign?: string;
  readonly wrapping?: string;
  readonly fillColor?: string;
  readonly textColor?: string;
  readonly fontSize?: number;
  readonly rotation?: number;
  readonly hideGridLines?: boolean;
}

export type GridBorder = { readonly [side in Side]?: { readonly style: string; readonly color: string } };

/** How the cells of a sheet look. */
export interface CellLooks {
  readonly formats: Zones<string>;
  readonly styles: Zones<GridStyle>;
  readonly borders: Zones<GridBorder>;
}

export interface SheetLooks extends CellLooks {
  /** Rows and columns that are new, of which a file of before says nothing. */
  readonly inserted?: { readonly row: ReadonlySet<number>; readonly column: ReadonlySet<number> };
}

interface CellLook {
  format?: string | undefined;
  style?: GridStyle | undefined;
  border?: GridBorder | undefined;
}

/** A style for a cell: a change of its own, or the style that another cell has. */
export interface NewLook {
  readonly change: StyleChange;
  /** Where a cell stands that had this number format before. */
  readonly formatOf?: number;
  /** Where a cell stands that looks the same altogether. */
  readonly like?: number;
}

/** What the cells look like that look otherwise than before; undefined if a file cannot say it. */
export function looksOfCells(before: SheetLooks, now: SheetLooks): ReadonlyMap<number, NewLook> | undefined {
  const [was, is] = [new Map<number, CellLook>(), new Map<number, CellLook>()];
  for (const kind of ["formats", "styles", "borders"] as const) spread(kind, before, now, was, is);
  const formatsBefore = new Map(before.formats.map(([range, format]) => [format, range]));
  const looks = new Map<number, NewLook>();
  const beside = neighbors(now, before.inserted);
  for (const [place, look] of is) {
    const like = beside(place);
    // One that got its looks just now has others in the file.
    if (like !== undefined && JSON.stringify(was.get(like)) === JSON.stringify(is.get(like))) {
      looks.set(place, { change: {}, like });
      continue;
    }
    const found = newLook(was.get(place)!, look, formatsBefore);
    if (found === "none") continue;
    if (!found) return undefined;
    looks.set(place, found);
  }
  return looks;
}

/** For a cell of a new row or column the place of one beside it that is not new and looks the same. */
function neighbors(now: CellLooks, inserted: SheetLooks["inserted"]): (place: number) => number | undefined {
  if (!inserted || inserted.row.size + inserted.column.size === 0) return () => undefined;
  const zones = (["formats", "styles", "borders"] as const).map((kind) =>
    now[kind].map(([range, value]) => ({ box: readBox(range)!, value: JSON.stringify(value) })),
  );
  const lookAt = (row: number, column: number) =>
    zones.map((own) => own.find(({ box }) => contains(box, row, column))?.value ?? "").join("\n");
  const outside = (lines: ReadonlySet<number>, line: number, step: number) => {
    let at = line;
    while (lines.has(at)) at += step;
    return at;
  };
  return (place) => {
    const { row, column } = cellAt(place);
    const isRow = inserted.row.has(row);
    if (!isRow && !inserted.column.has(column)) return undefined;
    const look = lookAt(row, column);
    for (const step of [-1, 1]) {
      const at = isRow
        ? { row: outside(inserted.row, row, step), column }
        : { row, column: outside(inserted.column, column, step) };
      const isOld =
        at.row >= 0 && at.column >= 0 && !inserted.row.has(at.row) && !inserted.column.has(at.column);
      if (isOld && lookAt(at.row, at.column) === look) return placeOf(at.row, at.column);
    }
    return undefined;
  };
}

const keys = { formats: "format", styles: "style", borders: "border" } as const;

/** Notes what the cells had and have whose ranges are not the same; ranges are cut otherwise where one of their cells changes. */
function spread(
  kind: keyof typeof keys,
  before: CellLooks,
  now: CellLooks,
  was: Map<number, CellLook>,
  is: Map<number, CellLook>,
): void {
  const key = keys[kind];
  const texts = (zones: Zones<unknown>) =>
    new Map(zones.map(([range, value]) => [range, JSON.stringify(value)]));
  const [textsBefore, textsNow] = [texts(before[kind]), texts(now[kind])];
  const note = (zones: Zones<unknown>, others: ReadonlyMap<string, string>, into: Map<number, CellLook>) => {
    for (const [range, value] of zones) {
      if (others.get(range) === JSON.stringify(value)) continue;
      const { top, left, bottom, right } = readBox(range)!;
      for (let row = top; row <= bottom; row++)
        for (let column = left; column <= right; column++) {
          const place = placeOf(row, column);
          for (const looks of [was, is]) if (!looks.has(place)) looks.set(place, {});
          into.get(place)![key] = value as never;
        }
    }
  };
  note(before[kind], textsNow, was);
  note(now[kind], textsBefore, is);
}

function newLook(
  was: CellLook,
  is: CellLook,
  formatsBefore: ReadonlyMap<string, string>,
): NewLook | "none" | undefined {
  const change = styleChange(was.style ?? {}, is.style ?? {});
  const borders = borderChange(was.border ?? {}, is.border ?? {});
  if (!change || !borders) return undefined;
  const hasBorders = Object.keys(borders).length > 0;
  const all: { -readonly [K in keyof StyleChange]: StyleChange[K] } = { ...change };
  if (hasBorders) all.borders = borders;
  const { format = "General" } = is;
  const range = formatsBefore.get(format);
  if (format === (was.format ?? "General")) return Object.keys(all).length > 0 ? { change: all } : "none";
  if (format === "General" || isCommon(format)) return { change: { ...all, format } };
  if (range === undefined) return undefined;
  const { top, left } = readBox(range)!;
  return { change: all, formatOf: placeOf(top, left) };
}

/** Figures with decimals, percentages, money, dates, times and texts, which are written alike in all programs. */
const isCommon = (format: string): boolean =>
  /^(?:\[\$[^\]"\\]{1,5}\])?(?:#,##)?0(?:\.0{1,15})?%?(?:\[\$[^\]"\\]{1,5}\])?$/.test(format) ||
  /^(?:d{1,4}|m{1,4}|yyyy|yy|[-/ ,.]){1,12}$/.test(format) ||
  /^hh?:mm(?::ss)?$/.test(format) ||
  format === "@";

type Font = { -readonly [K in keyof NonNullable<StyleChange["font"]>]: NonNullable<StyleChange["font"]>[K] };

function styleChange(was: GridStyle, is: GridStyle): StyleChange | undefined {
  if ((was.hideGridLines ?? false) !== (is.hideGridLines ?? false)) return undefined;
  const font: Font = {};
  for (const flag of ["bold", "italic", "strikethrough", "underline"] as const)
    if ((was[flag] ?? false) !== (is[flag] ?? false)) font[flag] = is[flag] ?? false;
  if (was.fontSize !== is.fontSize) font.size = is.fontSize ?? null;
  if (was.textColor !== is.textColor) font.color = is.textColor || null;
  const change: { -readonly [K in keyof StyleChange]: StyleChange[K] } = {};
  if (Object.keys(font).length > 0) change.font = font;
  if ((was.fillColor ?? "") !== (is.fillColor ?? "")) change.fill = is.fillColor || null;
  if ([font.color, change.fill].some((color) => color && !isColor(color))) return undefined;
  const alignment = alignmentChange(was, is);
  if (Object.keys(alignment).length > 0) change.alignment = alignment;
  return change;
}

const isColor = (color: string): boolean => /^#[0-9A-F]{6}(?:FF)?$/i.test(color);

const verticals: Readonly<Record<string, string>> = { top: "top", middle: "center", bottom: "bottom" };

function alignmentChange(was: GridStyle, is: GridStyle): Record<string, string | null> {
  const change: Record<string, string | null> = {};
  if (was.align !== is.align) change.horizontal = is.align ?? null;
  if (was.verticalAlign !== is.verticalAlign) change.vertical = verticals[is.verticalAlign ?? ""] ?? null;
  const [wrapped, wrapping] = [was.wrapping ?? "overflow", is.wrapping ?? "overflow"];
  if (wrapped !== wrapping) {
    change.wrapText = wrapping === "wrap" ? "1" : null;
    // The nearest that a file has, as the exporter of the grid's library writes it.
    change.shrinkToFit = wrapping === "clip" ? "1" : null;
  }
  if ((was.rotation ?? 0) !== (is.rotation ?? 0)) change.textRotation = rotated(is.rotation ?? 0);
  return change;
}

/** Degrees upward from 0 to 90, and from 91 to 180 downward. */
function rotated(radians: number): string | null {
  const degrees = Math.round((-radians / Math.PI) * 180);
  if (degrees === 0) return null;
  return String(degrees > 0 ? Math.min(degrees, 90) : 90 - Math.max(degrees, -90));
}

function borderChange(was: GridBorder, is: GridBorder): StyleChange["borders"] | undefined {
  const change: { [side in Side]?: { style: string; color: string } | null } = {};
  for (const side of sides) {
    if (JSON.stringify(was[side]) === JSON.stringify(is[side])) continue;
    const line = is[side];
    if (line && !(isColor(line.color) && /^(?:thin|medium|thick|dashed|dotted)$/.test(line.style)))
      return undefined;
    change[side] = line ?? null;
  }
  return change;
}
