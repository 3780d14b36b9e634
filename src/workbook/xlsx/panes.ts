// workbook: which rows and columns of a sheet stay in sight, written into its part; no other character of it changes.

import { cellName } from "./addresses.ts";
import { walkSheet } from "./walk-sheet.ts";
import { withAttribute } from "./write-sheet.ts";
import { elements } from "./xml-text.ts";

/** How many rows above and columns left of the rest stay in sight. */
export interface Frozen {
  readonly rows: number;
  readonly columns: number;
}

/** Every view of the sheet; what was selected in it goes, since it may have been in a part that is no more. */
export function withFrozen(text: string, frozen: Frozen): string {
  const { prefix, data } = walkSheet(text);
  if (!data) return text;
  const views = [...elements(text, "sheetView")].filter(({ start }) => start < data.start);
  const pane = paneOf(frozen, prefix);
  if (views.length === 0) {
    const view = `<${prefix}sheetView workbookViewId="0">${pane}</${prefix}sheetView>`;
    const behind = ["sheetFormatPr", "cols"].flatMap((name) => [...elements(text, name)]);
    const at = Math.min(data.start, ...behind.map(({ start }) => start));
    return `${text.slice(0, at)}<${prefix}sheetViews>${view}</${prefix}sheetViews>${text.slice(at)}`;
  }
  return views.reduceRight((whole, { start, end, tag, inside }) => {
    const others = inside.replace(/<(?:[\w.-]+:)?(?:pane|selection)\b(?:[^>]*\/>|[^>]*>\s*<\/[^>]*>)/g, "");
    // Rows above what is seen first would be out of reach.
    const open = withAttribute(tag, "topLeftCell", undefined).replace(/\s*\/>$/, ">");
    return `${whole.slice(0, start)}${open}${pane}${others}</${prefix}sheetView>${whole.slice(end)}`;
  }, text);
}

function paneOf({ rows, columns }: Frozen, prefix: string): string {
  if (rows === 0 && columns === 0) return "";
  const active = rows === 0 ? "topRight" : columns === 0 ? "bottomLeft" : "bottomRight";
  const split = `${columns > 0 ? ` xSplit="${columns}"` : ""}${rows > 0 ? ` ySplit="${rows}"` : ""}`;
  return `<${prefix}pane${split} topLeftCell="${cellName(rows, columns)}" activePane="${active}" state="frozen"/>`;
}
