// browser: a new sheet as data that the grid's library reads, from the same commands that add it to an open workbook: so
// what opens with the page is what the buttons make.

import { newSheetSteps } from "../workbook/grid-sheet.ts";
import type { Step } from "../workbook/grid-steps.ts";
import { cellAddress, type NewSheet } from "../workbook/workbook.ts";
import type { Box } from "../workbook/xlsx/addresses.ts";
import { emptySheet } from "../workbook/xlsx-grid/grid-data.ts";
import type { SheetData } from "./sheet.ts";

/** Styles, formats and borders of a workbook, each once, by number. */
export class Looks {
  private readonly known = new Map<string, number>();
  private readonly lists = { styles: {}, formats: {}, borders: {} } as Record<
    "styles" | "formats" | "borders",
    Record<number, unknown>
  >;

  /** @param first numbers under it are taken */
  constructor(private readonly first = 100) {}

  idOf(list: "styles" | "formats" | "borders", look: unknown): number {
    const key = `${list} ${JSON.stringify(look)}`;
    let id = this.known.get(key);
    if (id === undefined) {
      id = this.first + this.known.size;
      this.known.set(key, id);
      this.lists[list][id] = look;
    }
    return id;
  }

  get all() {
    return this.lists;
  }
}

type Line = { readonly style: string; readonly color: string };
interface Cell {
  style?: object;
  format?: string;
  border?: Record<string, Line>;
}

export function sheetOfSteps(sheet: NewSheet, sheetId: string, looks: Looks): SheetData {
  const data: SheetData & { dataValidationRules: object[] } = {
    ...emptySheet(sheetId, sheet.name, 0, 0),
    panes: { xSplit: 0, ySplit: 0 },
    dataValidationRules: [],
  };
  const cells = new Map<number, Map<number, Cell>>();
  const each = (zones: readonly Box[], change: (cell: Cell, row: number, zone: Box) => void) => {
    for (const zone of zones)
      for (let row = zone.top; row <= zone.bottom; row++)
        for (let col = zone.left; col <= zone.right; col++) {
          const line = cells.get(row) ?? new Map<number, Cell>();
          const cell = line.get(col) ?? {};
          change(cell, row, zone);
          cells.set(row, line.set(col, cell));
        }
  };
  const actions: Readonly<Record<string, (step: any) => void>> = {
    CREATE_SHEET: ({ cols, rows }) => Object.assign(data, { colNumber: cols, rowNumber: rows }),
    UPDATE_CELL: ({ row, col, content }) => {
      data.cells[cellAddress(row, col)] = content;
    },
    RESIZE_COLUMNS_ROWS: ({ dimension, elements, size }) => {
      for (const at of elements) (dimension === "COL" ? data.cols : data.rows)[at] = { size };
    },
    ADD_MERGE: ({ target }) => data.merges.push(...target.map(addressOf)),
    FREEZE_ROWS: ({ quantity }) => {
      data.panes.ySplit = quantity;
    },
    FREEZE_COLUMNS: ({ quantity }) => {
      data.panes.xSplit = quantity;
    },
    SET_FORMATTING: ({ target, style, format }) =>
      each(target, (cell) => {
        cell.style = { ...cell.style, ...style };
        if (format) cell.format = format;
      }),
    SET_ZONE_BORDERS: ({ target, border: { position, style, color } }) =>
      each(target, (cell, row, zone) => {
        const sides = position === "all" ? ["top", "bottom", "left", "right"] : [position];
        if (position === "bottom" && row !== zone.bottom) return;
        for (const side of sides) cell.border = { ...cell.border, [side]: { style, color } };
      }),
    ADD_DATA_VALIDATION_RULE: ({ ranges, rule }) =>
      data.dataValidationRules.push({
        ...rule,
        ranges: ranges.map(({ _zone }: { _zone: Box }) => addressOf(_zone)),
      }),
  };
  for (const step of newSheetSteps(sheet, { sheetId, name: sheet.name, position: 0 }) as readonly Step[]) {
    const action = actions[step.type];
    if (!action) throw new Error(`no data for ${step.type}`);
    action(step);
  }
  for (const [row, line] of cells) writeLooks(data, row, line, looks);
  return data;
}

const addressOf = ({ top, left, bottom, right }: Box): string =>
  `${cellAddress(top, left)}:${cellAddress(bottom, right)}`;

/** Runs of equal neighbors as one entry. */
function writeLooks(data: SheetData, row: number, line: ReadonlyMap<number, Cell>, looks: Looks): void {
  const columns = [...line.keys()].sort((a, b) => a - b);
  for (const [kind, of] of [
    ["styles", ({ style }: Cell) => (style && Object.keys(style).length > 0 ? style : undefined)],
    ["formats", ({ format }: Cell) => format],
    ["borders", ({ border }: Cell) => border],
  ] as const) {
    let first = -1;
    let last = -2;
    let id = 0;
    const end = () => {
      if (first >= 0) data[kind][addressOf({ top: row, bottom: row, left: first, right: last })] = id;
      first = -1;
    };
    for (const col of columns) {
      const look = of(line.get(col)!);
      if (look === undefined) continue;
      const own = looks.idOf(kind, look);
      if (first < 0 || own !== id || col !== last + 1) {
        end();
        [first, id] = [col, own];
      }
      last = col;
    }
    end();
  }
}
