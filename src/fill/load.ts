// fill: a workbook as it is computed: its sheets with their formulas, and what names in formulas mean.

import { contains } from "../workbook/xlsx/addresses.ts";
import { type SharedFormula, sharedFormula } from "../workbook/xlsx/formula-shift.ts";
import type { PackageParts } from "../workbook/xlsx/package.ts";
import { type CellFormula, formulaRoom, readSheet } from "../workbook/xlsx/read-sheet.ts";
import { functionName, type StoredNames } from "../workbook/xlsx/stored-names.ts";
import type { SheetShape } from "../workbook/xlsx/walk-sheet.ts";
import { readWorkbookParts, type WorkbookParts } from "../workbook/xlsx/workbook-parts.ts";
import type { Scope } from "./formula/nodes.ts";
import { tableArea } from "./formula/tables.ts";
import type { Area } from "./formula/values.ts";

export interface FormulaCell extends CellFormula {
  readonly sheet: number;
  readonly row: number;
  readonly column: number;
  /** Whether the file has a value for it; an empty text is one. */
  readonly hasValue: boolean;
}

export interface Sheet {
  readonly name: string;
  readonly part: string;
  readonly text: string;
  readonly shape: SheetShape;
  readonly formulas: readonly FormulaCell[];
}

export interface LoadedWorkbook {
  readonly parts: WorkbookParts;
  readonly sheets: readonly Sheet[];
}

export function loadWorkbook(file: PackageParts, names: StoredNames): LoadedWorkbook {
  const parts = readWorkbookParts(file);
  const room = formulaRoom();
  const sheets = parts.sheets.map(({ name, part }, sheet) => {
    const text = file.read(part);
    const formulas: FormulaCell[] = [];
    const shape = readSheet(text, room, ({ row, column, type, value }, formula) => {
      if (!formula) return;
      // As a user writes it.
      const written = formula.text && names.decode(formula.text).replace(/^=/, "");
      const hasValue = value !== undefined && (type === "str" || value.close > value.open);
      formulas.push({ ...formula, sheet, row, column, text: written, hasValue });
    });
    return { name, part, text, shape, formulas };
  });
  return { parts, sheets };
}

/** What names mean in the formulas of a workbook; `at` makes the scope of one cell. */
export function scopes({ parts, sheets }: LoadedWorkbook, names: StoredNames) {
  const bySheet = new Map(sheets.map(({ name }, i) => [name.toLowerCase(), i]));
  const byTable = new Map(parts.tables.map((table) => [table.name.toLowerCase(), table]));
  const byName = new Map<string, SharedFormula>();
  for (const { name, sheet, formula } of parts.names) {
    const key = `${sheet ?? ""}:${name.toLowerCase()}`;
    byName.set(key, sharedFormula(names.decode(formula)));
  }
  const ownName = (name: string, sheet: number | undefined) => byName.get(`${sheet}:${name.toLowerCase()}`);
  /** @param home the sheet whose names are meant before those of the workbook; undefined within one of these */
  const scopeAt = (sheet: number, row: number, column: number, home: number | undefined): Scope => ({
    sheet,
    sheetCalled: (name) => bySheet.get(name.toLowerCase()),
    // A name without dollar signs stands for another place in every cell; the file has it as it is in A1.
    nameCalled: (name, from = home) =>
      (ownName(name, from) ?? byName.get(`:${name.toLowerCase()}`))?.at(row, column),
    withinName: (name, from = home) => scopeAt(sheet, row, column, ownName(name, from) ? from : undefined),
    tableArea(name, inside): Area | undefined {
      const table =
        name === undefined
          ? parts.tables.find((one) => one.sheet === sheet && contains(one.box, row, column))
          : byTable.get(name.toLowerCase());
      return table && tableArea(table, inside, row);
    },
    isVariable: () => false,
    functionCalled: (name) => functionName(name, names),
  });
  return (sheet: number, row: number, column: number) => scopeAt(sheet, row, column, sheet);
}
