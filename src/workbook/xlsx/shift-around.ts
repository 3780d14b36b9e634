// workbook: what a sheet's part has around its cells where rows or columns of it are inserted or taken out: merged cells,
// formats by condition, validation, links, filters, breaks and widths move with the cells; what is not known here stops it.

import { readBox } from "./addresses.ts";
import type { Base, Followed } from "./follow-formula.ts";
import { type LineShift, shiftedRef, shiftedRefs } from "./line-shift.ts";
import { mapElements, mapInside, mapTags, NotCertain, withStart } from "./map-elements.ts";
import { withAttribute } from "./write-sheet.ts";
import { attribute, type Element, elements, escapeAttribute, escapeXml, unescapeXml } from "./xml-text.ts";

/** A formula that cells share, counted from the first of them; undefined if it is not certain what it is now. */
export type FollowShared = (formula: string, base?: Base | null) => Followed | undefined;

/** What says nothing of single cells. */
const unmoved = new Set(
  "sheetPr sheetFormatPr sheetCalcPr sheetProtection phoneticPr printOptions pageMargins pageSetup headerFooter drawing legacyDrawing legacyDrawingHF picture tableParts customProperties".split(
    " ",
  ),
);

const moved = (tag: string, name: string, shift: LineShift): string | undefined => {
  const ref = attribute(tag, name);
  const now = ref === undefined ? undefined : shiftedRef(ref, shift);
  return now === undefined ? undefined : withAttribute(tag, name, now);
};

const movedAll = (tag: string, shift: LineShift): string | undefined => {
  const now = shiftedRefs(attribute(tag, "sqref") ?? "", shift);
  return now === "" ? undefined : withAttribute(tag, "sqref", now);
};

/** The lists that go where nothing is left in them. */
const lists: Readonly<Record<string, string>> = {
  mergeCells: "mergeCell",
  dataValidations: "dataValidation",
  hyperlinks: "hyperlink",
  ignoredErrors: "ignoredError",
  protectedRanges: "protectedRange",
  cellWatches: "cellWatch",
  cols: "col",
  rowBreaks: "brk",
  colBreaks: "brk",
};

/** @throws NotCertain */
export function shiftedAround(name: string, whole: string, shift: LineShift, follow: FollowShared): string {
  if (unmoved.has(name)) return whole;
  const change = changes[name];
  if (!change) throw new NotCertain(name);
  const now = change(whole, shift, follow);
  const item = lists[name];
  if (item === undefined) return now;
  const count = [...elements(now, item)].length;
  if (count === 0) return "";
  return mapTags(now, name, (tag) =>
    ["count", "manualBreakCount"].reduce(
      (own, counted) =>
        attribute(own, counted) === undefined ? own : withAttribute(own, counted, String(count)),
      tag,
    ),
  );
}

type Change = (whole: string, shift: LineShift, follow: FollowShared) => string;

const changes: Readonly<Record<string, Change>> = {
  dimension: (whole, shift) =>
    mapTags(whole, "dimension", (tag) => moved(tag, "ref", shift) ?? withAttribute(tag, "ref", "A1")),
  sheetViews: (whole, shift) =>
    [
      ["pane", "topLeftCell"],
      ["sheetView", "topLeftCell"],
    ].reduce(
      (text, [element, name]) => mapTags(text, element, (tag) => moved(tag, name, shift) ?? tag),
      mapTags(
        mapTags(whole, "selection", (tag) => selected(tag, shift)),
        "pane",
        (tag) => frozen(tag, shift),
      ),
    ),
  cols: (whole, shift) => (shift.axis === "row" ? whole : columnsNow(whole, shift)),
  protectedRanges: (whole, shift) => mapTags(whole, "protectedRange", (tag) => movedAll(tag, shift)),
  autoFilter: (whole, shift) => shiftedFilter(whole, shift),
  sortState: (whole, shift) => shiftedSort(whole, shift),
  mergeCells: (whole, shift) =>
    mapTags(whole, "mergeCell", (tag) => {
      const now = moved(tag, "ref", shift);
      return now && attribute(now, "ref")!.includes(":") ? now : undefined;
    }),
  conditionalFormatting: (whole, shift, follow) =>
    mapElements(whole, "conditionalFormatting", (element) => {
      const tag = movedAll(element.tag, shift);
      if (tag === undefined) return "";
      const base = baseOf(attribute(element.tag, "sqref")!, attribute(tag, "sqref")!, shift);
      const body = withFormulas(whole.slice(element.start + element.tag.length, element.end), follow, base, [
        "formula",
      ]);
      return tag + mapTags(body, "cfvo", (cfvo) => withFormulaValue(cfvo, follow, base));
    }),
  dataValidations: (whole, shift, follow) =>
    mapElements(whole, "dataValidation", (element) => {
      const tag = movedAll(element.tag, shift);
      if (tag === undefined) return "";
      const base = baseOf(attribute(element.tag, "sqref")!, attribute(tag, "sqref")!, shift);
      const body = whole.slice(element.start + element.tag.length, element.end);
      return tag + withFormulas(body, follow, base, ["formula1", "formula2"]);
    }),
  hyperlinks: (whole, shift) => mapTags(whole, "hyperlink", (tag) => moved(tag, "ref", shift)),
  rowBreaks: (whole, shift) => (shift.axis === "row" ? breaksNow(whole, shift) : whole),
  colBreaks: (whole, shift) => (shift.axis === "column" ? breaksNow(whole, shift) : whole),
  cellWatches: (whole, shift) => mapTags(whole, "cellWatch", (tag) => moved(tag, "r", shift)),
  ignoredErrors: (whole, shift) => mapTags(whole, "ignoredError", (tag) => movedAll(tag, shift)),
  extLst: (whole, shift, follow) =>
    mapElements(whole, "ext", (element) => extensionNow(whole, element, shift, follow)),
};

/** What is selected and seen is no matter of the numbers: it moves as far as it can. */
const selected = (tag: string, shift: LineShift): string => {
  const refs = shiftedRefs(attribute(tag, "sqref") ?? "", shift);
  const active = attribute(tag, "activeCell");
  const cell = active && shiftedRef(active, shift);
  if (refs === "" || cell === undefined)
    return ["sqref", "activeCell", "activeCellId"].reduce(
      (own, name) => withAttribute(own, name, undefined),
      tag,
    );
  return withAttribute(withAttribute(tag, "sqref", refs), "activeCell", cell);
};

/** Lines that stay in sight are as many as there are of them now. */
function frozen(tag: string, shift: LineShift): string {
  const name = shift.axis === "row" ? "ySplit" : "xSplit";
  const count = Number(attribute(tag, name) ?? 0);
  if (!/^frozen/.test(attribute(tag, "state") ?? "") || !(count > 0)) return tag;
  const run = shift.run(0, count - 1);
  return withAttribute(tag, name, String(run ? run[1] + 1 : 1));
}

function columnsNow(whole: string, shift: LineShift): string {
  return mapElements(whole, "col", ({ tag }) => {
    const [first, last] = [Number(attribute(tag, "min")) - 1, Number(attribute(tag, "max")) - 1];
    const pieces: [number, number][] = [];
    for (let at = first; at <= Math.min(last, shift.last); ) {
      const end = endOfRun(at, last, shift);
      const [from, to] = [shift.line(at), shift.line(end)];
      if (from !== undefined && to !== undefined) pieces.push([from, to]);
      at = end + 1;
    }
    return pieces
      .map(([from, to]) =>
        withAttribute(withAttribute(tag, "min", String(from + 1)), "max", String(to + 1)).replace(
          /([^/])>$/,
          "$1/>",
        ),
      )
      .join("");
  });
}

/** The last line from one on that moves as it does. */
function endOfRun(at: number, last: number, shift: LineShift): number {
  const by = (line: number) => {
    const now = shift.line(line);
    return now === undefined ? undefined : now - line;
  };
  if (by(at) === by(last) && !shift.isWithin(at, last)) return last;
  let end = at;
  while (end < last && by(end + 1) === by(at)) end++;
  return end;
}

/** A break stands before a line. */
const breaksNow = (whole: string, shift: LineShift): string =>
  mapTags(whole, "brk", (tag) => {
    const now = shift.line(Number(attribute(tag, "id")));
    return now === undefined || now === 0 ? undefined : withAttribute(tag, "id", String(now));
  });

/** A filter, in a sheet or in a table. @throws NotCertain */
export function shiftedFilter(whole: string, shift: LineShift): string {
  const [filter] = elements(whole, "autoFilter");
  const box = readBox(attribute(filter.tag, "ref") ?? "");
  if (!box) throw new NotCertain("autoFilter");
  const isHeaderGone = shift.axis === "row" && shift.line(box.top) === undefined;
  const isSet = [...elements(whole, "filterColumn")].length > 0;
  if (isHeaderGone || (isSet && shift.axis === "column" && shift.isWithin(box.left, box.right)))
    throw new NotCertain("autoFilter");
  return shiftedSort(
    mapTags(whole, "autoFilter", (tag) => moved(tag, "ref", shift)),
    shift,
  );
}

export function shiftedSort(whole: string, shift: LineShift): string {
  const kept = mapTags(whole, "sortCondition", (tag) => moved(tag, "ref", shift));
  return mapElements(kept, "sortState", (element) => {
    const tag = moved(element.tag, "ref", shift);
    return tag === undefined ? "" : withStart(kept, element, tag);
  });
}

/** Where the first of the cells that share a formula is; null if they lie so that this is not certain. */
function baseOf(before: string, now: string, shift: LineShift): Base | null {
  const lines = (refs: string) =>
    refs.split(/\s+/).flatMap((ref) => {
      const box = readBox(ref);
      return box ? (shift.axis === "row" ? box.top : box.left) : [];
    });
  const [was, is] = [lines(before), lines(now)];
  if (was.length === 0 || was[0] !== Math.min(...was) || is[0] !== Math.min(...is)) return null;
  return { before: was[0], now: is[0] };
}

/** @throws NotCertain */
export function followed(inside: string, follow: FollowShared, base?: Base | null): string {
  const formula = unescapeXml(inside);
  const now = follow(formula, base);
  if (!now) throw new NotCertain(formula);
  return now.text === formula ? inside : escapeXml(now.text);
}

const withFormulas = (
  text: string,
  follow: FollowShared,
  base: Base | null,
  names: readonly string[],
): string =>
  names.reduce((body, name) => mapInside(body, name, (inside) => followed(inside, follow, base)), text);

function withFormulaValue(tag: string, follow: FollowShared, base: Base | null): string {
  const value = attribute(tag, "val");
  if (value === undefined) return tag;
  const now = follow(value, base);
  if (!now) throw new NotCertain(value);
  return withAttribute(tag, "val", escapeAttribute(now.text));
}

/** How one program shows pages. */
const PAGE_VIEW = "{64002731-A6B0-56B0-2670-7721B7C09600}";

/** Of the newer forms of what a sheet has, each item with the cells it is for. */
const items = "conditionalFormatting dataValidation sparkline ignoredError".split(" ");

function extensionNow(whole: string, element: Element, shift: LineShift, follow: FollowShared): string {
  const { inside, tag } = element;
  if (attribute(tag, "uri") === PAGE_VIEW) return whole.slice(element.start, element.end);
  const known =
    /<x14:(?:conditionalFormattings|dataValidations|sparklineGroups|slicerList|ignoredErrors)\b|<x15:(?:slicerList|tableSlicerCaches)\b/;
  if (!known.test(inside)) throw new NotCertain(`extension ${attribute(tag, "uri")}`);
  let now = inside;
  for (const name of items)
    now = mapElements(now, name, (item) => {
      const text = now.slice(item.start, item.end);
      const [cells] = elements(text, "sqref");
      if (!cells) return text;
      const refs = shiftedRefs(unescapeXml(cells.inside), shift);
      if (refs === "") return "";
      const base = baseOf(cells.inside, refs, shift);
      const placed = mapInside(text, "sqref", () => refs);
      // What a small chart shows is counted from no cell.
      return mapInside(placed, "f", (formula) =>
        followed(formula, follow, name === "sparkline" ? undefined : base),
      );
    });
  // The dates that a group of small charts goes by stand before its charts.
  now = mapElements(now, "sparklineGroup", (group) => {
    const text = now.slice(group.start, group.end);
    const [charts] = elements(text, "sparklines");
    if (!charts) return text;
    const dates = mapInside(text.slice(0, charts.start), "f", (formula) => followed(formula, follow));
    return dates + text.slice(charts.start);
  });
  const count = (text: string) => items.reduce((sum, name) => sum + [...elements(text, name)].length, 0);
  if (count(now) === 0 && count(inside) > 0) return "";
  const counted = mapTags(now, "dataValidations", (list) =>
    withAttribute(list, "count", String([...elements(now, "dataValidation")].length)),
  );
  return tag + counted + whole.slice(element.start + tag.length + inside.length, element.end);
}

/** Notes and the like that hang on one cell. */
export const shiftedNotes = (text: string, name: string, shift: LineShift): string =>
  mapTags(text, name, (tag) => moved(tag, "ref", shift));
