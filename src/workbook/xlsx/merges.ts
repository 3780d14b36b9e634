// workbook: which cells of a sheet are merged, written into its part; no other character of it changes.

import { boxName, readBox } from "./addresses.ts";
import { walkSheet } from "./walk-sheet.ts";
import { attribute, elements } from "./xml-text.ts";

/** The names of what may stand before the merged cells, from the rows on. */
const BEFORE =
  "sheetData sheetCalcPr sheetProtection protectedRanges scenarios autoFilter sortState dataConsolidate customSheetViews";

/** @param merged, unmerged ranges, `A1:B2` */
export function withMerges(text: string, merged: readonly string[], unmerged: readonly string[]): string {
  if (merged.length + unmerged.length === 0) return text;
  const { prefix } = walkSheet(text);
  const [list] = elements(text, "mergeCells");
  const kept = [...elements(list?.inside ?? "", "mergeCell")].flatMap(({ tag }) => {
    const box = readBox(attribute(tag, "ref") ?? "");
    return box && unmerged.includes(boxName(box)) ? [] : tag;
  });
  const all = [...kept, ...merged.map((range) => `<${prefix}mergeCell ref="${range}"/>`)];
  const now =
    all.length === 0
      ? ""
      : `<${prefix}mergeCells count="${all.length}">${all.join("")}</${prefix}mergeCells>`;
  if (list) return text.slice(0, list.start) + now + text.slice(list.end);
  const end = Math.max(
    ...BEFORE.split(" ").flatMap((name) => [...elements(text, name)].map((one) => one.end)),
  );
  return text.slice(0, end) + now + text.slice(end);
}
