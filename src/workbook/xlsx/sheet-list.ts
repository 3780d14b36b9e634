// workbook: the list of a workbook's sheets in another order, or without some; what counts sheets by their places follows.

import { mapElements, mapInside, mapTags, NotCertain } from "./map-elements.ts";
import { withAttribute } from "./write-sheet.ts";
import { attribute, type Element, elements } from "./xml-text.ts";

/**
 * The part that lists the sheets.
 * @param order the places that the sheets which stay have had, in the order that they have now
 * @throws NotCertain
 */
export function listed(workbook: string, order: readonly number[]): string {
  const [list] = elements(workbook, "sheets");
  const sheets = [...elements(list.inside, "sheet")];
  if (order.length === sheets.length && order.every((place, i) => place === i)) return workbook;
  if (order.length < sheets.length && /<(?:\w+:)?customWorkbookViews\b/.test(workbook))
    throw new NotCertain("customWorkbookViews");
  const now = new Map(order.map((place, i) => [place, i]));
  const whole = sheets.map(({ start, end }) => list.inside.slice(start, end));
  let slot = 0;
  const arranged = mapInside(workbook, "sheets", (inside) =>
    mapElements(inside, "sheet", () => whole[order[slot++]] ?? ""),
  );
  const named = mapInside(arranged, "definedNames", (inside) => {
    const own = mapElements(inside, "definedName", (name) => localName(inside, name, now));
    return [...elements(own, "definedName")].length > 0 ? own : undefined;
  });
  const isHidden = (place: number) => /\bstate=["'](?!visible)/.test(sheets[place].tag);
  return mapTags(named, "workbookView", (tag) => viewNow(tag, now, order, isHidden));
}

/** A name of one sheet goes where its sheet goes. */
function localName(inside: string, { tag, start, end }: Element, now: ReadonlyMap<number, number>): string {
  const local = attribute(tag, "localSheetId");
  const whole = inside.slice(start, end);
  if (local === undefined) return whole;
  const place = now.get(Number(local));
  return place === undefined
    ? ""
    : withAttribute(tag, "localSheetId", String(place)) + whole.slice(tag.length);
}

/** Which sheet is in sight, and which tab is the first: if it is gone, the next that can be seen. */
function viewNow(
  tag: string,
  now: ReadonlyMap<number, number>,
  order: readonly number[],
  isHidden: (place: number) => boolean,
): string {
  let text = tag;
  for (const name of ["activeTab", "firstSheet"]) {
    const place = Number(attribute(tag, name) ?? 0);
    const seen = order.findIndex((old) => old >= place && !isHidden(old));
    const fallback = Math.max(0, seen < 0 ? order.findIndex((old) => !isHidden(old)) : seen);
    const at = now.get(place) ?? fallback;
    if (at !== place || attribute(tag, name) !== undefined) text = withAttribute(text, name, String(at));
  }
  return text;
}
