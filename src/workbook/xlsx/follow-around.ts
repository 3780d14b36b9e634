// workbook: formulas outside of cells that follow where another sheet changes, or the name of a sheet: formats by
// condition, validation, small charts in cells, charts, and pictures that show a cell.

import type { Followed } from "./follow-formula.ts";
import { holdsElements, mapElements, mapInside, NotCertain } from "./map-elements.ts";
import type { PackageParts } from "./package.ts";
import { followed } from "./shift-around.ts";
import { relationsOf, type SheetPart } from "./workbook-parts.ts";
import { withAttribute } from "./write-sheet.ts";
import { attribute, elements, escapeAttribute } from "./xml-text.ts";

type Follow = (formula: string) => Followed | undefined;

/** What names cells in ways that are not read here. */
const unknownElsewhere = /<(?:\w+:)?(?:dataConsolidate|webPublishItem|control|scenarios)\b/;

interface Followers {
  /** For a formula that stands for itself. */
  readonly alone: Follow;
  /** For one that many cells share. */
  readonly shared: Follow;
  /** Whether cells move, not the name of their sheet alone. */
  readonly isMoved: boolean;
}

/** A sheet whose cells stay, with the formulas behind them. @throws NotCertain */
export function formulasAround(text: string, { alone, shared, isMoved }: Followers): string {
  const [data] = elements(text, "sheetData");
  if (!data) return text;
  const around = text.slice(data.end);
  if (isMoved && unknownElsewhere.test(around)) throw new NotCertain("sheet");
  for (const { tag } of elements(around, "cfvo")) {
    const value = attribute(tag, "val") ?? "";
    if (shared(value)?.text !== value) throw new NotCertain(value);
  }
  const inForms = (part: string) => {
    const plain = ["formula", "formula1", "formula2"].reduce(
      (own, element) =>
        mapInside(own, element, (inside) => (holdsElements(inside) ? inside : followed(inside, shared))),
      part,
    );
    return mapInside(plain, "f", (inside) => followed(inside, shared));
  };
  // What small charts show is counted from no cell.
  const pieces: string[] = [];
  let copied = 0;
  for (const { start, end } of elements(around, "sparklineGroups")) {
    pieces.push(inForms(around.slice(copied, start)), chartNow(around.slice(start, end), alone));
    copied = end;
  }
  return text.slice(0, data.end) + pieces.join("") + inForms(around.slice(copied));
}

/** Charts and pictures that show cells. @throws NotCertain */
export function drawnNow(
  file: PackageParts,
  sheets: readonly SheetPart[],
  isRenamed: boolean,
  follow: (formula: string, home: string | undefined) => Followed | undefined,
): [part: string, text: string][] {
  /** The sheets on which things are drawn, by the names of the parts that hold them. */
  const homes = new Map(
    sheets.flatMap(({ name, part }) =>
      relationsOf(file, part)
        .filter(({ kind }) => kind === "drawing")
        .map((drawing) => [drawing.part.toLowerCase(), name] as const),
    ),
  );
  return file.names.flatMap((name) => {
    const isChart = /(?:^|\/)charts\/[^/]+\.xml$/i.test(name);
    if (!isChart && !/(?:^|\/)drawings\/[^/]+\.xml$/i.test(name)) return [];
    const text = file.read(name);
    // Where a chart has the pivot table that it shows is told in words of its own.
    if (isRenamed && /<(?:[\w.-]+:)?pivotSource\b/.test(text)) throw new NotCertain(name);
    const own = (formula: string) => follow(formula, homes.get(name.toLowerCase()));
    return [[name, isChart ? chartNow(text, own) : linksNow(text, own)]];
  });
}

/** A part that hangs on a copy of a sheet. @throws NotCertain */
export function drawingNow(name: string, text: string, follow: Follow): string {
  if (/<(?:[\w.-]+:)?(?:pivotSource|Fmla\w+)\b/.test(text)) throw new NotCertain(name);
  if (/(?:^|\/)charts\/[^/]+\.xml$/i.test(name)) return chartNow(text, follow);
  return /(?:^|\/)drawings\/[^/]+\.xml$/i.test(name) ? linksNow(text, follow) : text;
}

/** Of a chart, lines that are filtered out as well. @throws NotCertain */
const chartNow = (text: string, follow: Follow): string =>
  ["f", "sqref"].reduce((own, name) => mapInside(own, name, (inside) => followed(inside, follow)), text);

/** Shapes whose text is that of a cell, and pictures of cells. @throws NotCertain */
const linksNow = (text: string, follow: Follow): string =>
  withLinks(withLinks(text, "sp", "textlink", follow), "cameraTool", "cellRange", follow);

const withLinks = (text: string, name: string, link: string, follow: Follow): string =>
  mapElements(text, name, (element) => {
    const whole = text.slice(element.start, element.end);
    const formula = attribute(element.tag, link);
    if (!formula) return whole;
    const now = follow(formula);
    if (!now) throw new NotCertain(formula);
    const tag = withAttribute(element.tag, link, escapeAttribute(now.text));
    return tag + whole.slice(element.tag.length);
  });
