// workbook: formulas outside of cells that follow where another sheet changes, or the name of a sheet: formats by
// condition, validation, small charts in cells, charts, and pictures that show a cell.

import type { Followed } from "./follow-formula.ts";
import { mapElements, mapInside, NotCertain } from "./map-elements.ts";
import { followed } from "./shift-around.ts";
import { withAttribute } from "./write-sheet.ts";
import { attribute, elements, escapeXml } from "./xml-text.ts";

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
    if (attribute(tag, "type") === "formula" && shared(value)?.text !== value) throw new NotCertain(value);
  }
  const inForms = (part: string) => {
    const plain = ["formula", "formula1", "formula2"].reduce(
      (own, element) =>
        mapInside(own, element, (inside) => (inside.includes("<") ? inside : followed(inside, shared))),
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

/** @throws NotCertain */
export const chartNow = (text: string, follow: Follow): string =>
  mapInside(text, "f", (inside) => followed(inside, follow));

/** Shapes whose text is that of a cell. @throws NotCertain */
export const linksNow = (text: string, follow: Follow): string =>
  mapElements(text, "sp", (element) => {
    const whole = text.slice(element.start, element.end);
    const link = attribute(element.tag, "textlink");
    if (!link) return whole;
    const now = follow(link);
    if (!now) throw new NotCertain(link);
    const tag = withAttribute(element.tag, "textlink", escapeXml(now.text).replaceAll('"', "&quot;"));
    return tag + whole.slice(element.tag.length);
  });
