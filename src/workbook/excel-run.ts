// workbook: runs a batch in Excel as one step to undo, and turns what Excel refuses into a sentence.

import { Refusal } from "./workbook.ts";

const SENTENCES: Readonly<Record<string, string>> = {
  InvalidSelection: "No cells are selected: a chart or picture may be. Select cells first.",
  AccessDenied: "Excel does not allow it here: the sheet or the workbook is protected.",
  ItemNotFound: "That sheet or range is not there any more.",
  InvalidOperationInCellEditMode: "A cell is being edited: press Enter or Esc first.",
  InvalidArgument: "Excel does not accept that there.",
};

/** Whether Excel can gather a batch into one step to undo. */
function canMergeUndo(): boolean {
  return typeof Office !== "undefined" && !!Office.context?.requirements?.isSetSupported("ExcelApi", "1.20");
}

/** @throws Refusal with a sentence for whatever Excel refuses */
export async function inExcel<T>(
  batch: (context: Excel.RequestContext) => Promise<T>,
  context?: Excel.RequestContext,
): Promise<T> {
  try {
    if (context) return await Excel.run(context, batch);
    return canMergeUndo() ? await Excel.run({ mergeUndoGroup: true }, batch) : await Excel.run(batch);
  } catch (thrown) {
    if (thrown instanceof Refusal) throw thrown;
    const { code = "", message = String(thrown) } = thrown as { code?: string; message?: string };
    throw new Refusal(SENTENCES[code] ?? `Excel refused: ${message}`);
  }
}
