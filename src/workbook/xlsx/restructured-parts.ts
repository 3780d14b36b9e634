// workbook: the parts of a file that hang on a sheet, and what becomes of them where its cells move or it goes.

import type { LineShift } from "./line-shift.ts";
import { shiftedDrawing, shiftedPivot, shiftedRemarks, shiftedVml } from "./shift-parts.ts";

/** Parts of which it is not known here what in them names cells. */
export const unknownParts =
  /^xl\/(?:activeX|ctrlProps|revisions|macrosheets|dialogsheets|webExtensions)\/|^xl\/(?:tables\/tableSingleCells|singleXmlCells)/i;

/** What hangs on a sheet and names its cells, by the last word of a relation. */
export const shiftedParts: ReadonlyMap<string, (text: string, lines: LineShift) => string> = new Map([
  ["comments", shiftedRemarks],
  ["threadedComment", shiftedRemarks],
  ["vmlDrawing", shiftedVml],
  ["drawing", shiftedDrawing],
  ["pivotTable", shiftedPivot.place],
]);

/** What else may hang on it: tables are followed elsewhere, the others name no cells. */
export const followedRelations = new Set([
  ...shiftedParts.keys(),
  ..."table queryTable printerSettings hyperlink image slicer timeline customProperty".split(" "),
]);

/** What may hang on a sheet that goes, and go with it: nothing outside of it knows of them. */
export const removableRelations = new Set(
  "comments threadedComment vmlDrawing drawing table printerSettings hyperlink image".split(" "),
);

/** What may hang on a sheet that is copied, and is copied with it. */
export const copiedRelations = new Set([...removableRelations].filter((kind) => kind !== "threadedComment"));
