// workbook: runs a batch in Excel, and turns what Excel refuses into a sentence. No batch is gathered into an undo group:
// Excel refuses to copy or name a sheet inside one, and a single sync is one step to undo as it is.

import { Refusal } from "./workbook.ts";

/** What to say of each code of Excel's. */
export const SENTENCES: Readonly<Record<string, string>> = {
  AccessDenied: "The sheet or the workbook is protected. Unprotect it under Review, then try again.",
  ActivityLimitReached: "Excel is busy with too much at once. Wait a moment, then try again.",
  ApiNotFound: "This version of Excel cannot do that. Update Excel, then try again.",
  CellLimitExceeded: "These are more cells than Excel takes at once. Select fewer cells.",
  Conflict: "Somebody else changed these cells at the same time. Look at them, then try again.",
  FilteredRangeConflict: "A filter is in the way. Clear the filter, then try again.",
  FormulaLengthExceedsLimit: "A formula would be longer than Excel takes. Use fewer or shorter references.",
  GeneralException: "Excel could not do it and does not say why. Try again.",
  HostRestartNeeded: "Excel must be closed and opened again first.",
  InactiveWorkbook: "Another workbook is in front. Click into the workbook of this pane, then try again.",
  InsertDeleteConflict: "Excel is inserting or deleting cells. Wait a moment, then try again.",
  InvalidArgument: "Excel does not take that there. Select other cells.",
  InvalidObjectPath: "That sheet or range is not there any more. Select cells again.",
  InvalidOperation: "Excel does not allow that on these cells. Select other cells.",
  InvalidOperationInCellEditMode: "A cell is being edited. Press Enter or Esc, then try again.",
  InvalidReference: "A reference leads to no cell. Correct it first.",
  InvalidSelection: "No cells are selected: a chart or picture may be. Select cells first.",
  ItemAlreadyExists: "A sheet of that name exists already. Rename it first.",
  ItemNotFound: "That sheet or range is not there any more. Select cells again.",
  MergedRangeConflict: "Merged cells are in the way. Unmerge them first.",
  NonBlankCellOffSheet: "Filled cells would leave the sheet. Make room first.",
  NotImplemented: "This version of Excel cannot do that. Update Excel, then try again.",
  OperationCellsExceedLimit: "These are more cells than Excel takes at once. Select fewer cells.",
  PivotTableRangeConflict: "A PivotTable is in the way. Select cells outside it.",
  RangeExceedsLimit: "These are more cells than Excel takes at once. Select fewer cells.",
  RequestAborted: "Excel stopped in the middle. Try again.",
  RequestPayloadSizeLimitExceeded: "These are more cells than Excel takes at once. Select fewer cells.",
  ResponsePayloadSizeLimitExceeded: "These are more cells than Excel gives at once. Select fewer cells.",
  ServiceNotAvailable: "Excel does not answer. Check the connection, then try again.",
  SpillConflict: "The result would run over filled cells. Empty them first.",
  UndoNotSupported: "Excel cannot undo that, so nothing was done.",
  UnsupportedFeature: "This Excel does not have that. Update Excel, then try again.",
  UnsupportedOperation: "Excel does not allow that here.",
  UnsupportedSheet: "That works on a worksheet alone. Select cells on a worksheet.",
};

/** @throws Refusal with a sentence for whatever Excel refuses */
export async function inExcel<T>(
  batch: (context: Excel.RequestContext) => Promise<T>,
  of?: Excel.RequestContext | Excel.RunOptions,
): Promise<T> {
  try {
    return of ? await Excel.run(of as Excel.RunOptions, batch) : await Excel.run(batch);
  } catch (thrown) {
    throw refusalOf(thrown);
  }
}

function refusalOf(thrown: unknown): Refusal {
  if (thrown instanceof Refusal) return thrown;
  const { code = "", message = String(thrown) } = thrown as { code?: string; message?: string };
  return new Refusal(SENTENCES[code] ?? `Excel does not do it and says: ${message}`);
}
