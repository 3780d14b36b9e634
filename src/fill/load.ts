// fill: a workbook as it is computed: its sheets with their formulas, and what names in formulas mean.

import { Refusal } from "../workbook/workbook.ts";
import { type Box, contains, readBox } from "../workbook/xlsx/addresses.ts";
import { type SharedFormula, sharedFormula } from "../workbook/xlsx/formula-shift.ts";
import type { Package } from "../workbook/xlsx/package.ts";
import {
  insideOf,
  type SheetCell,
  type SheetText,
  sheetText,
  visitCells,
} from "../workbook/xlsx/sheet-cells.ts";
import type { StoredNames } from "../workbook/xlsx/stored-names.ts";
import { readWorkbookParts, type WorkbookParts } from "../workbook/xlsx/workbook-parts.ts";
import { attribute } from "../workbook/xlsx/xml-text.ts";
import type { Scope } from "./formula/nodes.ts";
import { tableArea } from "./formula/tables.ts";
import type { Area } from "./formula/values.ts";

export interface FormulaCell {
  readonly sheet: number;
  readonly row: number;
  readonly column: number;
  /** As a person writes it; undefined for what has no text, such as a what-if table. */
  readonly text: string | undefined;
  /** The cells of an array formula. */
  readonly array: Box | undefined;
  /** Whether an array formula takes the size of its result. */
  readonly isSpill: boolean;
  readonly cell: SheetCell;
}

export interface Sheet {
  readonly name: string;
  readonly part: string;
  readonly source: SheetText;
  readonly formulas: readonly FormulaCell[];
  readonly hasHiddenRows: boolean;
}

export interface LoadedWorkbook {
  readonly parts: WorkbookParts;
  readonly sheets: readonly Sheet[];
}

/** Signs of all formulas together, shared ones written out. */
const LARGEST_FORMULAS = 256 * 2 ** 20;

export function loadWorkbook(file: Package, names: StoredNames): LoadedWorkbook {
  const parts = readWorkbookParts(file);
  const size = { left: LARGEST_FORMULAS };
  const sheets = parts.sheets.map(({ name, part }, sheet) => {
    const source = sheetText(file.read(part));
    const hasHiddenRows = /<(?:[\w.-]+:)?row\s[^>]*\bhidden="(?:1|true)"/.test(source.text);
    return { name, part, source, formulas: formulasOf(source, sheet, names, size), hasHiddenRows };
  });
  return { parts, sheets };
}

function formulasOf(
  source: SheetText,
  sheet: number,
  names: StoredNames,
  size: { left: number },
): FormulaCell[] {
  const { text } = source;
  const formulas: FormulaCell[] = [];
  const shared = new Map<string, { formula: SharedFormula; row: number; column: number }>();
  visitCells(source, (cell) => {
    if (!cell.formula) return;
    const { row, column, formula: span } = cell;
    const tag = text.slice(span.start, span.open);
    const kind = attribute(tag, "t");
    let formula: string | undefined = insideOf(text, span);
    if (kind === "shared") {
      const group = attribute(tag, "si") ?? "";
      const first = shared.get(group);
      if (formula !== "") shared.set(group, { formula: sharedFormula(formula), row, column });
      else formula = first?.formula.at(row - first.row, column - first.column);
    }
    if (kind === "dataTable" || formula === "") formula = undefined;
    size.left -= formula?.length ?? 0;
    if (size.left < 0) throw new Refusal("the workbook holds more formulas than are read");
    const array = kind === "array" ? readBox(attribute(tag, "ref") ?? "") : undefined;
    const isSpill =
      array !== undefined && attribute(text.slice(cell.span.start, cell.span.open), "cm") !== undefined;
    formulas.push({
      sheet,
      row,
      column,
      text: formula && names.decode(formula).replace(/^=/, ""),
      array,
      isSpill,
      cell,
    });
  });
  return formulas;
}

/** What names mean in the formulas of a workbook; `at` makes the scope of one cell. */
export function scopes({ parts, sheets }: LoadedWorkbook, names: StoredNames) {
  const bySheet = new Map(sheets.map(({ name }, i) => [name.toLowerCase(), i]));
  const byTable = new Map(parts.tables.map((table) => [table.name.toLowerCase(), table]));
  const byName = new Map<string, string>();
  for (const { name, sheet, formula } of parts.names) {
    const key = `${sheet ?? ""}:${name.toLowerCase()}`;
    byName.set(key, names.decode(formula));
  }
  const at = (sheet: number, row: number, column: number): Scope => ({
    sheet,
    sheetCalled: (name) => bySheet.get(name.toLowerCase()),
    nameCalled: (name, from) =>
      byName.get(`${from}:${name.toLowerCase()}`) ?? byName.get(`:${name.toLowerCase()}`),
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
  return at;
}

/** Newer functions have prefixes in a file. */
export const functionName = (name: string, names: StoredNames): string =>
  names.find(name) ?? name.replace(/^_xlfn\.(?:_xlws\.)?/i, "").toUpperCase();
