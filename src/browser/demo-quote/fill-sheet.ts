// browser: a new sheet with some of its cells filled in, found by the labels left of them.

import { type Content, columnLetters, type NewSheet } from "../../workbook/workbook.ts";
import { readBox } from "../../workbook/xlsx/addresses.ts";

/**
 * @param entries label, and what stands in the cells right of it; "" leaves a cell as it is
 * @param from the column where the labels may begin
 */
export function filledIn(
  sheet: NewSheet,
  entries: readonly (readonly [label: string, ...contents: Content[]])[],
  from = 0,
): NewSheet {
  const top = sheet.top.map((row) => [...row]);
  const ends = new Map(
    (sheet.merges ?? []).map((area) => {
      const { top: row, left, right } = readBox(area)!;
      return [`${columnLetters(left)}${row}`, right] as const;
    }),
  );
  for (const [label, ...contents] of entries) {
    const row = top.findIndex((cells) => cells.indexOf(label, from) >= 0);
    if (row < 0) throw new Error(`the sheet has no ${label}`);
    let column = top[row].indexOf(label, from);
    for (const content of contents) {
      column = (ends.get(`${columnLetters(column)}${row}`) ?? column) + 1;
      while (top[row].length <= column) top[row].push("");
      if (content !== "") top[row][column] = content;
    }
  }
  return { ...sheet, top };
}

/** Rows without labels of their own, under a heading. */
export function filledUnder(
  sheet: NewSheet,
  heading: string,
  rows: readonly (readonly Content[])[],
  from = 0,
): NewSheet {
  const top = sheet.top.map((row) => [...row]);
  const at = top.findIndex((cells) => cells.indexOf(heading, from) >= 0);
  if (at < 0) throw new Error(`the sheet has no ${heading}`);
  const column = top[at].indexOf(heading, from);
  rows.forEach((contents, index) => {
    contents.forEach((content, across) => {
      if (content !== "") top[at + 1 + index][column + across] = content;
    });
  });
  return { ...sheet, top };
}
