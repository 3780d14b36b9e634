// workbook: the adapter for a page that is in no workbook. Whatever is asked of it is refused in a sentence.

import { Refusal, type Workbook } from "./workbook.ts";

const refuse = async (): Promise<never> => {
  throw new Refusal("No workbook is open here: open this pane in Excel, or the browser workbook.");
};

export const noWorkbook: Workbook = {
  places: refuse,
  selected: refuse,
  active: refuse,
  read: refuse,
  readComputed: refuse,
  sheets: refuse,
  homeOf: refuse,
  filledFrom: refuse,
  meanings: refuse,
  tableAt: refuse,
  show: refuse,
  used: refuse,
  write: refuse,
  stepsToUndo: refuse,
  hasRules: refuse,
  addSheet: refuse,
  openNew: refuse,
  copyAsValues: refuse,
  hasDecimalComma: async () => false,
  dayShift: refuse,
  onChange: () => () => {},
};
