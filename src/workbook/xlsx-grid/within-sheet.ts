// workbook: ranges of a sheet cut to the cells that it has in the grid, which goes through every cell of a range, be it
// a whole column of Excel's.

import { cellName, readBox, readCorner } from "../xlsx/addresses.ts";

interface Size {
  readonly rowNumber: number;
  readonly colNumber: number;
}

/** The range within the sheet, `A1:C9`; undefined if nothing of it is, or if it is no range of this sheet. */
export function cutRange(range: string, { rowNumber, colNumber }: Size): string | undefined {
  const [first = "", last = first] = range.replaceAll("$", "").split(":");
  const [start, end] = [readCorner(first), readCorner(last)];
  if (!start || !end) return undefined;
  const box = readBox(
    `${cellName(start.row ?? 0, start.column ?? 0)}:${cellName(end.row ?? rowNumber - 1, end.column ?? colNumber - 1)}`,
  );
  if (!box || box.top >= rowNumber || box.left >= colNumber) return undefined;
  const from = cellName(box.top, box.left);
  const to = cellName(Math.min(box.bottom, rowNumber - 1), Math.min(box.right, colNumber - 1));
  return from === to ? from : `${from}:${to}`;
}

/** A sheet of the grid's data with all its ranges cut. */
export function withinSheet(sheet: any): any {
  const cut = (ranges: readonly string[] = []) => ranges.flatMap((range) => cutRange(range, sheet) ?? []);
  const rules = (list: readonly any[] = []) =>
    list.map((rule) => ({ ...rule, ranges: cut(rule.ranges) })).filter(({ ranges }) => ranges.length > 0);
  return {
    ...sheet,
    tables: (sheet.tables ?? []).flatMap((table: any) => {
      const [range] = cut([table.range]);
      return range ? [{ ...table, range }] : [];
    }),
    merges: cut(sheet.merges).filter((range) => range.includes(":")),
    conditionalFormats: rules(sheet.conditionalFormats),
    dataValidationRules: rules(sheet.dataValidationRules),
  };
}
