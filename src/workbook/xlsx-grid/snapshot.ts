// workbook: all that a file would hold of the workbook that the grid shows, at one moment.

import type { Model } from "@odoo/o-spreadsheet";
import type { Frozen } from "../xlsx/panes.ts";
import type { SheetLooks, Zones } from "./looks.ts";
import { type StructureStep, structureSteps } from "./structure.ts";

/** As the grid's library exports them, as far as they matter here. */
export interface SheetData {
  readonly id: string;
  readonly name: string;
  readonly cells: Readonly<Record<string, string>>;
  readonly rowNumber: number;
  readonly colNumber: number;
  readonly rows?: Headers;
  readonly cols?: Headers;
  readonly panes?: { readonly xSplit: number; readonly ySplit: number };
  readonly merges?: readonly string[];
  readonly figures?: readonly Figure[];
  readonly dataValidationRules?: readonly Validation[];
  readonly styles?: Readonly<Record<string, number>>;
  readonly formats?: Readonly<Record<string, number>>;
  readonly borders?: Readonly<Record<string, number>>;
}

interface WorkbookData {
  readonly sheets: readonly SheetData[];
  readonly styles: object;
  readonly formats: object;
  readonly borders: object;
  readonly namedRanges: object;
}

export type Headers = Readonly<Record<string, unknown>>;

export interface SheetSnapshot extends SheetLooks {
  readonly id: string;
  readonly cells: SheetData["cells"];
  readonly rows: Headers;
  readonly columns: Headers;
  readonly size: readonly [rows: number, columns: number];
  readonly frozen: Frozen;
  readonly merges: readonly string[];
  readonly figures: readonly Figure[];
  readonly validations: readonly Validation[];
  /** All else that a file would hold of it. */
  readonly around: string;
}

/** A chart or a picture. */
interface Figure {
  readonly id: string;
  readonly width: number;
  readonly height: number;
  readonly offset?: unknown;
}

/** A rule for what may be typed. */
interface Validation {
  readonly id: string;
  readonly ranges: readonly string[];
  readonly criterion: unknown;
}

/** The workbook as it is now. */
export interface Snapshot {
  readonly sheets: readonly SheetSnapshot[];
  readonly names: string;
  /** How rows, columns and sheets had been changed by then. */
  readonly steps: readonly StructureStep[];
}

export function snapshotOf(model: Model): Snapshot {
  // The grid leaves out the alignment that the content of a cell has anyway, which changes with the content.
  const cells = handlerWith(model, "extractCustomStyle");
  cells.extractCustomStyle = ({ style }: { style?: object }) => ({ ...style });
  // Not exportData: its short form of formulas that repeat down a column fails on a running total (SUM(F$1:F2)).
  const data = (model as any)._exportData(false) as WorkbookData;
  delete cells.extractCustomStyle;
  return {
    sheets: data.sheets.map((sheet) => sheetSnapshot(sheet, data)),
    names: JSON.stringify(data.namedRanges ?? {}),
    steps: structureSteps(model),
  };
}

/** The part of the grid that has a method; these are none of its published interface. */
const handlerWith = (model: Model, method: string): any =>
  (model as any).handlers.find((handler: any) => typeof handler[method] === "function");

/** From now on tables stay as they are when something is typed beside them: a file's cells can be written, its tables not. */
export function keepTables(model: Model): void {
  handlerWith(model, "canUpdateCellCmdExtendTable").canUpdateCellCmdExtendTable = () => "none";
}

function sheetSnapshot(sheet: SheetData, data: WorkbookData): SheetSnapshot {
  const {
    id,
    cells,
    rowNumber,
    colNumber,
    rows,
    cols,
    panes,
    merges = [],
    figures = [],
    dataValidationRules = [],
    ...rest
  } = sheet;
  /** Looks by what they are, not by their numbers. */
  const resolved = <T>(kind: "styles" | "formats" | "borders") =>
    Object.entries(sheet[kind] ?? {}).map(([zone, number]) => [
      zone,
      (data[kind] as any)[number],
    ]) as Zones<T>;
  return {
    id,
    cells,
    rows: rows ?? {},
    columns: cols ?? {},
    size: [rowNumber, colNumber],
    frozen: { rows: panes?.ySplit ?? 0, columns: panes?.xSplit ?? 0 },
    merges,
    figures,
    validations: dataValidationRules,
    formats: resolved("formats"),
    styles: resolved("styles"),
    borders: resolved("borders"),
    around: JSON.stringify({ ...rest, styles: [], formats: [], borders: [] }, withoutIds),
  };
}

/** Rules and figures are told apart by what they are: another opening of the file gives them other numbers. */
export const withoutIds = (key: string, value: unknown) =>
  /^(?:id|chartId|cfId)$/.test(key) ? undefined : value;
