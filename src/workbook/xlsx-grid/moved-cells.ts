// workbook: cells that were cut and pasted in the browser workbook, whose formulas the grid lets follow: whether a file
// names such cells in what the grid does not know.

import type { Box } from "../xlsx/addresses.ts";
import { cellName } from "../xlsx/addresses.ts";
import { follow } from "../xlsx/follow-formula.ts";
import type { LineShift } from "../xlsx/line-shift.ts";
import { holdsElements } from "../xlsx/map-elements.ts";
import { formulaRoom, readSheet } from "../xlsx/read-sheet.ts";
import { relationsOf } from "../xlsx/workbook-parts.ts";
import { elements, unescapeXml } from "../xlsx/xml-text.ts";
import type { OpenedWorkbook } from "./open-file.ts";
import type { Snapshot } from "./snapshot.ts";

export interface MovedCells {
  /** The place of their sheet in the file. */
  readonly sheet: number;
  readonly box: Box;
}

/** Formulas outside of cells, by the names of their elements. */
const inElements = [
  "formula",
  "formula1",
  "formula2",
  "f",
  "sqref",
  "calculatedColumnFormula",
  "totalsRowFormula",
];

/** Whether something names one of the cells that stays as it is in the file. */
export function isNamedElsewhere(
  { file, parts, places }: OpenedWorkbook,
  { sheets: shown, names: shownNames }: Snapshot,
  moved: readonly MovedCells[],
): boolean {
  const names = parts.sheets.map(({ name }) => name);
  const isNamed = (formula: string, home: string | undefined) =>
    moved.some(({ sheet, box }) =>
      [lines("row", box.top, box.bottom), lines("column", box.left, box.right)].every((own) => {
        const now = follow(formula, home, { sheet: names[sheet], lines: own }, names);
        return !now || now.isOther || now.text !== formula;
      }),
    );
  const isNamedIn = (text: string, home: string | undefined) =>
    inElements.some((name) =>
      [...elements(text, name)].some(
        ({ inside }) => !holdsElements(inside) && isNamed(unescapeXml(inside), home),
      ),
    );
  const namedRanges = new Set(Object.keys(JSON.parse(shownNames)));
  const isNamedByName = parts.names.some(({ name, sheet, formula }) => {
    const isShown = sheet === undefined && namedRanges.has(name);
    // What is printed stays what is printed.
    const isForPrint = name.startsWith("_xlnm.");
    return !isShown && !isForPrint && isNamed(formula, sheet === undefined ? undefined : names[sheet]);
  });
  if (isNamedByName) return true;
  const isOnSheet = parts.sheets.some(({ name, part }, place) => {
    const text = file.read(part);
    const cells = shown[places.indexOf(place)]?.cells ?? {};
    let isFound = false;
    readSheet(text, formulaRoom(), ({ row, column }, formula) => {
      if (formula?.text === undefined || cells[cellName(row, column)]?.startsWith("=")) return;
      if (isNamed(formula.text, name)) isFound = true;
    });
    const tables = relationsOf(file, part).filter((one) => one.kind === "table" && file.has(one.part));
    return (
      isFound ||
      [...elements(text, "sheetData")].some(({ end }) => isNamedIn(text.slice(end), name)) ||
      tables.some((table) => isNamedIn(file.read(table.part), name))
    );
  });
  return (
    isOnSheet ||
    file.names.some(
      (name) => /(?:^|\/)charts\/[^/]+\.xml$/i.test(name) && isNamedIn(file.read(name), undefined),
    )
  );
}

/** Some lines gone from between the others, which stay where they are. */
function lines(axis: LineShift["axis"], first: number, last: number): LineShift {
  const isGone = (from: number, to: number) => from <= last && to >= first;
  return {
    axis,
    last: Number.MAX_SAFE_INTEGER,
    line: (at) => (isGone(at, at) ? undefined : at),
    nearest: (at) => at,
    run: (from, to) => (isGone(from, to) ? undefined : [from, to]),
    isWithin: isGone,
  };
}
