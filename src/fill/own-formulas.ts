// fill: a filled workbook as a copy that computes without our functions: their formulas become the spreadsheet's own, or
// values where there are none. What the own formulas give is computed, and each that shows something else becomes a value.

import { ownCells } from "../workbook/own-formulas/rewrite.ts";
import { type Box, cellName } from "../workbook/xlsx/addresses.ts";
import { editSheet } from "../workbook/xlsx/edit-sheet.ts";
import { askForAll, calculatedKey, withoutCalculated } from "../workbook/xlsx/edit-workbook.ts";
import { over, type PackageParts } from "../workbook/xlsx/package.ts";
import { type CellValue, formulaRoom, readSheet, storedValue } from "../workbook/xlsx/read-sheet.ts";
import { mentionsNamespace, type StoredNames } from "../workbook/xlsx/stored-names.ts";
import { readSharedStrings, readWorkbookParts } from "../workbook/xlsx/workbook-parts.ts";
import { cellAt, type NewCell, placeOf } from "../workbook/xlsx/write-sheet.ts";
import type { OwnReport } from "./report.ts";

/** Computes the formulas of these cells anew, and gives the parts with their values. */
export type Recompute = (
  file: PackageParts,
  changed: readonly ReadonlySet<number>[],
) => ReadonlyMap<string, string>;

export interface WithoutFunctions {
  readonly parts: ReadonlyMap<string, string>;
  readonly report: OwnReport;
}

/** @param kept formulas whose values may no longer hold, by the place of their sheet: they are left as they are */
export function withoutFunctions(
  file: PackageParts,
  names: StoredNames,
  kept: readonly ReadonlySet<number>[],
  recompute: Recompute,
): WithoutFunctions {
  const workbook = readWorkbookParts(file);
  const strings = workbook.sharedStrings ? readSharedStrings(file.read(workbook.sharedStrings)) : [];
  const sharedString = (place: number) => strings[place];
  const sheets = workbook.sheets.map(
    ({ part }, i) => new SheetCopy(file.read(part), names, kept[i], sharedString),
  );
  const parts = new Map<string, string>();
  const write = () => {
    workbook.sheets.forEach(({ part }, i) => {
      if (sheets[i].edits.size > 0) parts.set(part, editSheet(file.read(part), sheets[i].edits).text);
    });
  };
  write();
  const own = sheets.map(({ own }) => own);
  if (own.some((places) => places.size > 0)) {
    const computed = over(file, new Map([...parts, ...recompute(over(file, parts), own)]));
    const isOff = workbook.sheets.map(
      ({ part }, i) =>
        sheets[i].own.size > 0 && sheets[i].takeBack(valuesIn(computed.read(part), sharedString)),
    );
    if (isOff.includes(true)) write();
  }
  const gone = new Set(
    workbook.sheets.flatMap(({ id }, i) =>
      [...sheets[i].edits].flatMap(([place, { formula }]) => {
        const { row, column } = cellAt(place);
        return formula ? [] : [calculatedKey(id, row, column)];
      }),
    ),
  );
  const chain = workbook.calculationChain;
  if (chain && gone.size > 0) parts.set(chain, withoutCalculated(file.read(chain), gone));
  if (parts.size > 0) parts.set(workbook.main, askForAll(file.read(workbook.main)));
  const named = workbook.names.filter(({ formula }) => mentionsNamespace(formula));
  return {
    parts,
    report: {
      formulas: own.reduce((sum, { size }) => sum + size, 0),
      values: workbook.sheets.flatMap(({ name }, i) => sheets[i].values(name)),
      left: sheets.reduce((sum, { left }) => sum + left, 0),
      names: named.map(({ name }) => name),
    },
  };
}

const DIFFERS = "the spreadsheet's own formula shows another result here";

class SheetCopy {
  readonly edits = new Map<number, NewCell>();
  /** Cells with a formula of the spreadsheet's own. */
  readonly own = new Set<number>();
  private readonly old = new Set<number>();
  /** Formulas with our functions that stay, as they could not be computed. */
  left = 0;
  private readonly before: ReadonlyMap<number, CellValue>;
  private readonly whys = new Map<string, number[]>();

  constructor(
    text: string,
    names: StoredNames,
    kept: ReadonlySet<number>,
    sharedString: (place: number) => string | undefined,
  ) {
    const found: { place: number; box: Box; formula: string }[] = [];
    readSheet(text, formulaRoom(), ({ row, column }, formula) => {
      if (!formula?.text || !mentionsNamespace(formula.text)) return;
      const decoded = names.decode(formula.text);
      if (!/\bREAM\./i.test(decoded)) return;
      const box = formula.array ?? { top: row, left: column, bottom: row, right: column };
      found.push({ place: placeOf(row, column), box, formula: `=${decoded.replace(/^=/, "")}` });
    });
    this.before = found.length === 0 ? new Map() : valuesIn(text, sharedString);
    for (const { place, box, formula } of found) this.replace(box, formula, kept.has(place));
  }

  /** @param isOld whether the values are no longer certain: then they cannot stand alone, nor be compared */
  private replace(box: Box, formula: string, isOld: boolean): void {
    const own = ownCells(formula, box.bottom - box.top + 1);
    if (isOld && "why" in own) {
      this.left++;
      return;
    }
    for (let row = box.top; row <= box.bottom; row++)
      for (let column = box.left; column <= box.right; column++) {
        const place = placeOf(row, column);
        const value = this.before.get(place) ?? null;
        const text = "why" in own ? undefined : own.cells[row - box.top]?.[column - box.left];
        if (text === undefined) {
          this.edits.set(place, { value, formula: null });
          if (value !== null) this.note("why" in own ? own.why : DIFFERS, place);
        } else {
          this.edits.set(place, { value, formula: { text: text.replace(/^=/, "") } });
          this.own.add(place);
          if (isOld) this.old.add(place);
        }
      }
  }

  private note(why: string, place: number): void {
    this.whys.set(why, [...(this.whys.get(why) ?? []), place]);
  }

  /** Values again in the place of formulas that show something else; whether there are any. */
  takeBack(now: ReadonlyMap<number, CellValue>): boolean {
    const off = [...this.own].filter(
      (place) => !this.old.has(place) && !isSame(now.get(place) ?? null, this.before.get(place) ?? null),
    );
    for (const place of off) {
      this.edits.set(place, { value: this.before.get(place) ?? null, formula: null });
      this.own.delete(place);
      this.note(DIFFERS, place);
    }
    return off.length > 0;
  }

  values(sheet: string): OwnReport["values"] {
    return [...this.whys].map(([why, places]) => {
      const { row, column } = cellAt(places[0]);
      return { sheet, why, cells: places.length, first: cellName(row, column) };
    });
  }
}

function valuesIn(
  text: string,
  sharedString: (place: number) => string | undefined,
): ReadonlyMap<number, CellValue> {
  const values = new Map<number, CellValue>();
  readSheet(text, formulaRoom(), (cell) => {
    const value = storedValue(text, cell, sharedString);
    if (value !== null) values.set(placeOf(cell.row, cell.column), value);
  });
  return values;
}

const CLOSE = 1e-9;
const isError = (value: CellValue) => typeof value === "object" && value !== null;

/** Whether two cells show the same; an error stands for any other, an empty text for an empty cell. */
function isSame(one: CellValue, other: CellValue): boolean {
  if (typeof one === "number" && typeof other === "number")
    return Math.abs(one - other) <= CLOSE * Math.max(1, Math.abs(other));
  return (one ?? "") === (other ?? "") || (isError(one) && isError(other));
}
